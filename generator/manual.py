"""A manual on disk: the folder that holds mkdocs.yml, the records and the hand-written pages."""

from __future__ import annotations

import datetime
import gc
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from generator import site
from generator.layout import CACHE, DOCS, PREVIEW, RECORDS, SETTINGS, SITE, theme_folder
from generator.memory import Memory, Result, keep
from generator.memory.version import of_generator
from generator.problems import Problem, in_order
from generator.records import fingerprint
from generator.records.kinds import Record
from generator.records.knowledge_base import KnowledgeBase
from generator.records.load import Loaded, load

__all__ = [
    "CACHE", "DOCS", "PREVIEW", "RECORDS", "SETTINGS", "SITE", "Manual", "read", "theme_folder",
]  # fmt: skip

_RECORDS, _RESULTS = "records", "results"


@dataclass(frozen=True, slots=True)
class Manual:
    """A manual, read and checked.

    Parameters
    ----------
    kb : KnowledgeBase or None
        The records; None where the settings could not be read.
    problems : list of Problem
        Every finding, in order.
    sources : mapping
        Text of each record file, for excerpts.
    keep : callable
        Keeps on disk what has been worked out from the records so far.
    """

    kb: KnowledgeBase | None
    problems: list[Problem]
    sources: Mapping[str, str]
    keep: Callable[[], None]


def read(
    folder: Path, as_of: datetime.date | None = None, cache: Path | keep.Shelf | None = None
) -> Manual:
    """Read and check the manual in a folder; bad content gives findings, never an exception.

    Parameters
    ----------
    folder : Path
        Where the manual lies.
    as_of : date, optional
        The day on which reviews are overdue; without a day none is.
    cache : Path or Shelf, optional
        A folder or another shelf that keeps from one run to the next what has not changed.
    """
    shelf = keep.OnDisk(cache) if isinstance(cache, Path) else cache
    version = of_generator() if shelf else ""
    # Reading leaves no garbage, and looking for it again and again doubles the time; what has
    # been read stays to the end, so nobody need look through it later either.
    gc.unfreeze()
    with _no_collector():
        known = shelf.load(_RECORDS, version) if shelf else None
        loaded = load(folder / RECORDS, RECORDS, known)
    gc.freeze()
    if shelf and loaded.parsed.keys() != (known or {}).keys():
        shelf.save(_RECORDS, version, loaded.parsed)
    if loaded.kb is None:
        return Manual(None, in_order(loaded.problems), loaded.sources, lambda: None)
    whole = not site.broken(loaded.kb, loaded.problems)
    results = _Results(shelf if whole else None, version, loaded)
    problems = site.check(results.kb, loaded.problems, as_of)
    results.keep()
    return Manual(results.kb, problems, loaded.sources, results.keep)


@contextmanager
def _no_collector() -> Iterator[None]:
    was = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was:
            gc.enable()


class _Results:
    """What has been worked out from the records, and where it is kept.

    Where a record could not be read nothing is kept: rules then look away from what leans on it.
    """

    def __init__(self, shelf: keep.Shelf | None, version: str, loaded: Loaded) -> None:
        assert loaded.kb is not None
        self._shelf = shelf
        self._version = f"{version} {loaded.digests[fingerprint.SETTINGS_KEY]}"
        records = loaded.kb.records
        self._records = records
        kept: tuple[int, dict[str, Result]] | None = None
        if shelf is not None:
            kept = shelf.load(_RESULTS, self._version)
        self._run, before = kept or (0, {})
        dumps, loads = (None, None) if shelf is None else (self._dumps, self._loads)
        self._memory = Memory(records, loaded.digests, before, self._run + 1, dumps, loads)
        self._made = 0
        self.kb = loaded.kb.remembering(self._memory)

    def keep(self) -> None:
        """Write down what was made since the last time."""
        made = len(self._memory.made)
        if self._shelf is not None and made > self._made:
            self._shelf.save(_RESULTS, self._version, (self._run + 1, self._memory.kept()))
        self._made = made

    def _dumps(self, found: object) -> bytes:
        return keep.dumps(found, self._name)

    def _loads(self, content: bytes) -> object:
        return keep.loads(content, self._named)

    def _name(self, found: object) -> str | None:
        """Name a record of this manual, so that a result holds it and not a copy of it."""
        if isinstance(found, Record) and self._records.get(found.kind, {}).get(found.id) is found:
            return found.key
        return None

    def _named(self, key: str) -> Record:
        kind, _, id_ = key.partition("/")
        return self._records[kind][id_]
