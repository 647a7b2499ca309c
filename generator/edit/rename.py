"""Renaming a record: its file, every reference to it, and its old address.

References are spliced, so every comment and digit around them stays. The file moves last: a run
that was cut short leaves the old name in place, and the same command run again finishes the work.
"""

from __future__ import annotations

import os
import re
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

from generator.checks.targets import LinkAt, links
from generator.edit import ids
from generator.edit.files import Change, RecordFile, every
from generator.edit.source import Source, read
from generator.problems import Span
from generator.records.kinds.base import COMMON_PRACTICE, links_of
from generator.records.kinds.knowledge import Moved
from generator.records.knowledge_base import KnowledgeBase
from generator.records.load import SUFFIX
from generator.shapes.outline import SETTINGS

MOVED = "moved"
_PLAIN = re.compile(r"[a-z][a-z0-9]*(-[a-z0-9]+)*")
_NOT_PLAIN = frozenset(("y", "n", "yes", "no", "on", "off", "true", "false", "null"))


class CannotRename(ValueError):
    """The record cannot have the new name; the text says why."""


@dataclass(frozen=True, slots=True)
class Plan:
    """What a renaming changes: other files first, then the record's own file moves.

    Parameters
    ----------
    changes : tuple of Change
        Files in which something is spliced.
    old, new : Path
        The record's file, and what it is to be called.
    """

    changes: tuple[Change, ...]
    old: Path
    new: Path


def uses(kb: KnowledgeBase, kind: str, id_: str) -> list[LinkAt]:
    """Give every place that names a record, in the order of the manual.

    Parameters
    ----------
    kb : KnowledgeBase
        The manual.
    kind, id_ : str
        The record.

    Returns
    -------
    list of LinkAt
        The settings last. An id that records of several kinds have counts as each of them
        where any of them may stand.
    """
    practice = (kind, id_) == ("sources", COMMON_PRACTICE)
    return [
        link for link in links(kb) if link.id == id_ and kind in link.kinds and not practice
    ]  # fmt: skip


def plan(
    kb: KnowledgeBase, records: Path, shown_as: str, kind: str, old: str, new: str
) -> Plan:  # fmt: skip
    """Work out what a renaming changes, and write nothing.

    Parameters
    ----------
    kb : KnowledgeBase
        The manual.
    records : Path
        The folder of records.
    shown_as : str
        What findings call it.
    kind, old, new : str
        The record, and the id it is to have.

    Returns
    -------
    Plan
        Each change.

    Raises
    ------
    CannotRename
        If there is no such record, or the new id is taken or unfit.
    Unreadable
        If a file that has to change cannot be read.
    """
    by_id = kb.records.get(kind, {})
    if old not in by_id:
        raise CannotRename(f"there is no record {kind}/{old}")
    source = records / kind / f"{old}{SUFFIX}"
    target = source.with_name(f"{new}{SUFFIX}")
    # One file under two names is what a run leaves that was killed at its last step.
    if new in by_id and not source.samefile(target):
        raise CannotRename(f"{kind}/{new} is there already, and stays as it is")
    try:
        ids.fit_id(kind, new)
    except ids.Unfit as wrong:
        raise CannotRename(str(wrong)) from None
    files = every(records, shown_as)
    changes = [_change(kb, file, kind, old, new) for file in files if file.kind != SETTINGS]
    changes += [_settings(kb, file, kind, old, new) for file in files if file.kind == SETTINGS]
    return Plan(
        tuple(change for change in changes if change.before != change.after), source, target
    )


def carry_out(planned: Plan) -> None:
    """Do what was planned; the record's own file moves last.

    Raises
    ------
    ChangedMeanwhile
        If somebody else wrote to a file since it was read.
    FileExistsError
        If a file came up where the record is to lie.
    OSError
        If a file cannot be written.
    """
    for change in planned.changes:
        change.file.replace(change.before, change.after)
    # A link first, since a rename would take the place of a file that came up meanwhile.
    if not (planned.new.exists() and planned.old.samefile(planned.new)):
        os.link(planned.old, planned.new)
    planned.old.unlink()


def _change(kb: KnowledgeBase, file: RecordFile, kind: str, old: str, new: str) -> Change:
    record = kb.records.get(file.kind, {}).get(file.path.name.removesuffix(SUFFIX))
    before = file.read()
    found = links_of(record, keys=True) if record is not None else ()
    paths = [path for path, kinds, id_ in found if id_ == old and kind in kinds]
    if not paths:
        return Change(file, before, before)
    source = read(before, file.shown)
    return Change(file, before, source.spliced(splices(source, paths, old, new)).encode())


def _settings(kb: KnowledgeBase, file: RecordFile, kind: str, old: str, new: str) -> Change:
    before = file.read()
    source = read(before, file.shown)
    found = links_of(kb.settings, keys=True)
    paths = [path for path, kinds, id_ in found if id_ == old and kind in kinds]
    changes = list(splices(source, paths, old, new))
    listed = _moved(kb.settings.moved, kind, old, new)
    place = source.places.get((MOVED,))
    if place is not None:
        changes.append((place.value, listed.lstrip()))
        return Change(file, before, source.spliced(changes).encode())
    text = source.spliced(changes)
    end = "" if text.endswith("\n") else "\n"
    return Change(file, before, f"{text}{end}{MOVED}:\n  {listed.lstrip()}\n".encode())


def _moved(listed: Iterable[Moved], kind: str, old: str, new: str) -> str:
    """Give the list of moved records, the new one last; each old address leads to the last id."""
    kept = [
        (m.kind, m.old, new if (m.kind, m.new) == (kind, old) else m.new)
        for m in listed
        if (m.kind, m.old) not in ((kind, new), (kind, old))  # the latter by a run cut short
    ]
    return "\n".join(
        f"  - kind: {of}\n    old: {_scalar(was)}\n    new: {_scalar(now)}"
        for of, was, now in [*kept, (kind, old, new)]
    )


def splices(
    source: Source, paths: Iterable[tuple[str | int, ...]], old: str, new: str
) -> Iterable[tuple[Span, str]]:
    """Give each stretch of a file where a field names a record, and what is to stand there."""
    for path in paths:
        if path not in source.places:  # one item, written without the brackets of a list
            path = path[:-1]
        place = source.places[path]
        span = place.value if source.at(path) == old else place.key
        assert span is not None, "a key that links stands in the file"
        written = source.written(span)
        quote = written[:1] if written[:1] in "'\"" else ""
        yield span, f"{quote}{new}{quote}" if quote else _scalar(new)


def _scalar(id_: str) -> str:
    """Give an id as it can be written: in quotes where bare it would be read as something else."""
    bare = _PLAIN.fullmatch(id_) and id_ not in _NOT_PLAIN
    return id_ if bare else f'"{id_}"'
