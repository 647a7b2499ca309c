"""The page of changes: what each version in git changed for the reader, newest first."""

from __future__ import annotations

import tempfile
from collections.abc import Callable, Iterator
from dataclasses import astuple, dataclass
from itertools import groupby
from pathlib import Path

from generator import layout, manual
from generator.edit import compare, versions
from generator.edit.compare import Effect, Sort
from generator.edit.compare.effects import SAFETY
from generator.edit.versions import Commit
from generator.memory import keep
from generator.memory.version import of_generator
from generator.pages.book import Book
from generator.pages.strings import say
from generator.pages.upkeep import link_to
from generator.problems import has_errors
from generator.records.knowledge_base import KnowledgeBase

WARNING = frozenset((*SAFETY, Sort.CAUTION_WORDS, Sort.CAUTION_GAINED))
"""Effects that are about what may hurt somebody."""

MOST = 40
"""Records that one version names; the rest is counted."""

_FILE = "changes"


@dataclass(frozen=True, slots=True)
class Change:
    """A version, and what it changed.

    Parameters
    ----------
    commit : Commit
        The version.
    effects : tuple of Effect or None
        What a reader finds otherwise; None where one of the two versions has errors.
    touched : tuple of tuple
        "added", "changed" or "removed", and the "kind/id", of each record file.
    """

    commit: Commit
    effects: tuple[Effect, ...] | None
    touched: tuple[tuple[str, str], ...]


def changes(folder: Path, limit: int) -> list[Change]:
    """Give what the newest versions changed, newest first.

    Each pair of versions is compared once, and remembered beside the manual.

    Parameters
    ----------
    folder : Path
        The manual's folder, in a git repository.
    limit : int
        Versions at most.

    Raises
    ------
    versions.NoGit
        If there is no history to read.
    """
    place = folder / layout.CACHE / _FILE
    known = keep.load(place, of_generator()) or {}
    told: dict[str, list[tuple[str, ...]] | None] = {}
    found = []
    for commit in versions.commits(folder, limit):
        before = versions.parent(folder, commit.id)
        if before is None or not versions.tree(folder, before):
            break  # the first version, or the end of what a shallow clone holds
        pair = f"{versions.tree(folder, before)} {versions.tree(folder, commit.id)}"
        if pair not in told:
            told[pair] = known[pair] if pair in known else _compared(folder, before, commit.id)
        rows = told[pair]
        effects = None if rows is None else tuple(Effect(Sort(row[0]), *row[1:]) for row in rows)
        touched = tuple(versions.touched(folder, before, commit.id))
        found.append(Change(commit, effects, touched))
    keep.save(place, of_generator(), told)
    return found


def _compared(folder: Path, before: str, after: str) -> list[tuple[str, ...]] | None:
    old, new = _checked(folder, before), _checked(folder, after)
    if old is None or new is None:
        return None
    return [tuple(map(str, astuple(effect))) for effect in compare.compare(old, new).effects]


def _checked(folder: Path, revision: str) -> KnowledgeBase | None:
    with tempfile.TemporaryDirectory(prefix="fettlebook-") as laid_out:
        versions.lay_out(folder, revision, Path(laid_out))
        read = manual.read(Path(laid_out))
    return None if has_errors(read.problems) else read.kb


def as_markdown(kb: KnowledgeBase, found: list[Change], *, cut_short: bool) -> str:
    """Give the page of changes as a hand-written page would stand in docs/.

    Parameters
    ----------
    kb : KnowledgeBase
        The manual as it is now, to which the page links.
    found : list of Change
        What :func:`changes` gave.
    cut_short : bool
        Whether the repository lacks older versions.
    """
    link = _linker(Book.of(kb.released()))
    lines = [*_head(), ""]
    for change in found:
        commit = change.commit
        lines += [f"## {commit.day} {_plain(commit.subject)}", "", f"`{commit.id[:8]}`", ""]
        lines += [*_effects(change, link), ""]
    return "\n".join([*lines, say("changes.cut_short" if cut_short else "changes.end"), ""])


def written_by_hand(text: str) -> bool:
    """Say whether a page is somebody else's: it does not begin as :func:`as_markdown` begins."""
    return text.splitlines()[: len(_head())] != _head()


def _head() -> list[str]:
    return [f"# {say('changes.heading')}", "", say("changes.lead")]


def _linker(book: Book) -> Callable[[str, str], str]:
    def link(key: str, title: str) -> str:
        kind, _, id_ = key.partition("/")
        record = book.kb.records.get(kind, {}).get(id_)
        if record is None:
            return f"**{_plain(title or key)}**"
        return f"[{_plain(record.title)}]({link_to(book, record).target})"

    return link


def _effects(change: Change, link: Callable[[str, str], str]) -> Iterator[str]:
    if change.effects is None:
        yield f"**{say('changes.not_compared')}**"
        yield ""
        rows = [f"- {link(key, '')}: {say(f'changes.{how}')}" for how, key in change.touched]
        yield from _bounded(rows)
        return
    if not change.effects:
        yield say("changes.nothing")
        return
    safety = [one for one in change.effects if one.sort in WARNING]
    others = [one for one in change.effects if one.sort not in WARNING]
    if safety:
        yield f"**{say('changes.safety')}**"
        yield ""
        # Never cut: whoever worked from the page has to find each of them.
        yield from (
            f"- {link(one.record, one.title)}: **{one.sort}**, {_plain(one.what)}{_from_to(one)}"
            for one in safety
        )
        yield ""
    by_record = sorted(others, key=lambda one: one.record)
    grouped = groupby(by_record, key=lambda one: one.record)
    yield from _bounded([_row(link, key, list(group)) for key, group in grouped])


def _row(link: Callable[[str, str], str], key: str, effects: list[Effect]) -> str:
    """Give one record's line; a single value that changed is told with both its figures."""
    sorts = ", ".join(dict.fromkeys(str(one.sort) for one in effects))
    values = [one for one in effects if one.sort is Sort.VALUE]
    told = _from_to(values[0]) if len(values) == 1 else ""
    return f"- {link(key, effects[0].title)}: {sorts}{told}"


def _bounded(rows: list[str]) -> list[str]:
    more = len(rows) - MOST
    return [*rows[:MOST], *([f"- {say('changes.more', count=more)}"] if more > 0 else [])]


def _from_to(effect: Effect) -> str:
    return f" ({_plain(effect.before) or '–'} → {_plain(effect.after) or '–'})"


def _plain(text: str) -> str:
    """Give a text in which nothing is read as Markdown or HTML."""
    flat = " ".join(text.split()).replace("&", "&amp;").replace("<", "&lt;")
    return "".join(f"\\{letter}" if letter in r"\`*_{}[]#|" else letter for letter in flat)
