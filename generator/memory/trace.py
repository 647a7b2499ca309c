"""Results, and what was read while they were made."""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Iterable, Iterator, Mapping
from contextlib import contextmanager
from functools import cached_property
from typing import Any, NamedTuple, TypeVar

T = TypeVar("T")

FORGOTTEN_AFTER = 50
"""Runs in which nobody asks for a result before it is forgotten."""


class Result(NamedTuple):
    """A result as it goes from one run to the next.

    Parameters
    ----------
    run : int
        The last run in which somebody asked for it.
    read : tuple of str
        What was read for it.
    versions : tuple
        What that held.
    packed : bytes
        The result.
    """

    run: int
    read: tuple[str, ...]
    versions: tuple[Any, ...]
    packed: bytes


def one(kind: str, id_: str) -> str:
    """Name a single record as something that is read."""
    return f"{kind}/{id_}"


def every(kind: str) -> str:
    """Name all records of a kind, with what they hold, as something that is read."""
    return f"every {kind}"


def names(kind: str) -> str:
    """Name the ids of a kind as something that is read."""
    return f"names {kind}"


class Memory:
    """Remembers results for as long as nothing that was read for them has changed.

    Parameters
    ----------
    records : mapping
        Kind to the ids of its records.
    digests : mapping
        Record key to a digest of what the record holds.
    before : mapping, optional
        Name to result: what the last run left. Nothing of it is changed.
    run : int
        Number of this run.
    dumps, loads : callable, optional
        Pack and unpack a result; without them results last for this run alone.
    """

    def __init__(
        self,
        records: Mapping[str, Iterable[str]],
        digests: Mapping[str, str],
        before: Mapping[str, Result] | None = None,
        run: int = 0,
        dumps: Callable[[Any], bytes] | None = None,
        loads: Callable[[bytes], Any] | None = None,
    ) -> None:
        self._records, self._digests = records, digests
        self._before = before or {}
        self._run = run
        self._dumps, self._loads = dumps, loads
        self._readers: list[set[str]] = []
        self._results: dict[str, tuple[tuple[str, ...], Any]] = {}
        self._asked: dict[str, Result] = {}
        self.tables: Callable[[str], Mapping[str, Any]] = _no_table
        self._tables: dict[str, Mapping[str, Any]] = {}
        self._views: list[Memory] = []
        self._prefix = ""
        self.made: list[str] = []
        """Names of the results that were made in this run and not remembered."""

    def read(self, what: str) -> None:
        """Note that something was read."""
        if self._readers:
            self._readers[-1].add(what)

    def remember(self, name: str, key: str, make: Callable[[], T], *, keep: bool = True) -> T:
        """Give a result: the remembered one if it stands, one made now otherwise.

        Parameters
        ----------
        name, key : str
            Which result it is, and of what.
        make : callable
            Makes it. It has to take all that it needs from watched mappings and tables, or from
            what the whole memory is kept for.
        keep : bool
            Whether the next run may have it.
        """
        full = f"{self._prefix}{name} {key}"
        found = self._results.get(full)
        if found is None:
            found = self._remembered(full) if keep else None
            if found is None:
                found = self._made(full, make, keep and self._dumps is not None)
            self._results[full] = found
        if self._readers:
            self._readers[-1].update(found[0])
        return found[1]  # type: ignore[no-any-return]

    def table(self, name: str) -> Mapping[str, Any]:
        """Give a table that is worked out from all records, to be read entry by entry.

        Parameters
        ----------
        name : str
            Its name, which :attr:`tables` knows.

        Notes
        -----
        It is worked out once in every run. Whoever read an entry is made anew when that entry
        changes, however many records the table comes from.
        """
        return _Entries(name, self)

    def view(self, name: str, records: Mapping[str, Iterable[str]]) -> Memory:
        """Give the memory of a choice of the records; its results are told from these by name."""
        view = Memory(
            records, self._digests, self._before, self._run, self._dumps, self._loads
        )  # fmt: skip
        view._prefix = f"{name}: "
        view.made = self.made
        self._views.append(view)
        return view

    def kept(self) -> dict[str, Result]:
        """Give what the next run may use: what was asked for of late."""
        oldest = self._run - FORGOTTEN_AFTER
        older = {name: one for name, one in self._before.items() if one.run > oldest}
        asked = {name: one for view in (self, *self._views) for name, one in view._asked.items()}
        return {**older, **asked}

    def _made(self, full: str, make: Callable[[], T], keep: bool) -> tuple[tuple[str, ...], T]:
        with self._reading() as seen:
            made = make()
        read = tuple(sorted(seen))
        self.made.append(full)
        if keep and self._dumps is not None:
            versions = tuple(self._version(what) for what in read)
            self._asked[full] = Result(self._run, read, versions, self._dumps(made))
        return read, made

    def _remembered(self, full: str) -> tuple[tuple[str, ...], Any] | None:
        before = self._before.get(full)
        if before is None or self._loads is None:
            return None
        for what, version in zip(before.read, before.versions, strict=True):
            if self._version(what) != version:
                return None
        self._asked[full] = before._replace(run=self._run)
        return before.read, self._loads(before.packed)

    @cached_property
    def _versions(self) -> dict[str, str]:
        return _versions(self._records, self._digests)

    def _version(self, what: str) -> Any:
        """Give what something that was read holds now; None where there is nothing."""
        table, colon, key = what.partition(":")
        if not colon:
            return self._versions.get(what)
        try:
            return self._table(table).get(key)
        except LookupError:
            return _UNKNOWN

    def _table(self, name: str) -> Mapping[str, Any]:
        found = self._tables.get(name)
        if found is None:
            with self._reading():  # what a table reads is not what its reader reads
                found = self._tables[name] = self.tables(name)
        return found

    @contextmanager
    def _reading(self) -> Iterator[set[str]]:
        seen: set[str] = set()
        self._readers.append(seen)
        try:
            yield seen
        finally:
            self._readers.pop()


def _versions(
    records: Mapping[str, Iterable[str]], digests: Mapping[str, str]
) -> dict[str, str]:
    """Give all that can be read, with a digest of each."""
    found: dict[str, str] = {}
    for kind, by_id in records.items():
        ids = list(by_id)
        keys = {one(kind, id_): id_ for id_ in ids}
        found |= {key: digests[key] for key in keys}
        found[names(kind)] = _digest(ids)
        found[every(kind)] = _digest([f"{id_} {digests[key]}" for key, id_ in keys.items()])
    return found


def _digest(lines: Iterable[str]) -> str:
    return hashlib.blake2b("\n".join(lines).encode(), digest_size=20).hexdigest()


class _Entries(Mapping[str, Any]):
    """A table, read under the eyes of its memory."""

    def __init__(self, name: str, memory: Memory) -> None:
        self._name, self._memory = name, memory

    def __getitem__(self, key: str) -> Any:
        self._memory.read(f"{self._name}:{key}")
        return self._memory._table(self._name)[key]

    def __iter__(self) -> Iterator[str]:
        raise TypeError("a table is read entry by entry")

    def __len__(self) -> int:
        raise TypeError("a table is read entry by entry")


def _no_table(name: str) -> Mapping[str, Any]:
    raise KeyError(name)


_UNKNOWN = object()
"""Equal to no version: who cannot say how a table is made cannot say that it is the same."""
