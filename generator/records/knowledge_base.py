"""The knowledge base: every record of a manual, each with its place in its file."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from typing import Any, TypeVar, cast

from generator.memory import Memory, watched
from generator.problems import Code, Problem, Span, problem
from generator.records.kinds import KINDS, Record, Settings

R = TypeVar("R", bound=Record)
T = TypeVar("T")

Path = tuple[str | int, ...]
"""The way to a field inside a record: keys and list positions."""


TABLES: dict[str, Callable[[KnowledgeBase], Mapping[str, Any]]] = {}
"""Every table that is worked out from a knowledge base, by name."""

Make = TypeVar("Make", bound=Callable[["KnowledgeBase"], Mapping[str, Any]])


def table(make: Make) -> Make:
    """Declare what works a table out: keys to plain values that can be compared and kept."""
    TABLES[_name(make)] = make
    return make


def _name(make: Callable[..., Any]) -> str:
    return f"{make.__module__}.{make.__qualname__}"


@dataclass(frozen=True, slots=True)
class Place:
    """Where a field stands in its file."""

    key: Span | None
    value: Span


@dataclass(frozen=True, slots=True)
class Origin:
    """The file a record came from, and where each of its fields stands."""

    path: str
    places: Mapping[Path, Place] = field(default_factory=dict)

    def span(self, path: Path, *, of_key: bool = False) -> Span:
        """Give the stretch of a field, or of the nearest field around it that was written."""
        for length in range(len(path), -1, -1):
            place = self.places.get(path[:length])
            if place is not None:
                if of_key and length == len(path) and place.key is not None:
                    return place.key
                return place.value
        return Span()


@dataclass(frozen=True, slots=True)
class KnowledgeBase:
    """All records of a manual.

    Parameters
    ----------
    settings : Settings
        The manual's own settings.
    records : mapping
        Kind to id to record; ids in alphabetical order.
    origins : mapping
        Record key ("kind/id") to its origin; the settings have the key "settings".
    broken : frozenset of str
        Keys of records that have a file but could not be read: a link to one of them is no
        fault of the link.
    withdrawn : tuple of Record
        Records that were left out since nobody may work from them any more; what is told of them
        goes through a table, since no memory watches them.
    memory : Memory or None
        Where what is worked out from the records is remembered; the records are then watched by
        it. None for a knowledge base that nobody asks twice.
    """

    settings: Settings
    records: Mapping[str, Mapping[str, Record]]
    origins: Mapping[str, Origin]
    broken: frozenset[str] = frozenset()
    withdrawn: tuple[Record, ...] = ()
    memory: Memory | None = field(default=None, compare=False, repr=False)

    def remember(self, name: str, key: str, make: Callable[[], T], *, keep: bool = True) -> T:
        """Give what is worked out from the records, once for as long as they stand.

        Parameters
        ----------
        name, key : str
            Which result it is, and of what: the two tell it from every other one.
        make : callable
            Works it out. It may read this knowledge base and nothing else that could be another
            at the next call, and what it gives may not be changed by anybody.
        keep : bool
            Whether it may be kept on disk; a result that knows its maker by identity may not.
        """
        if self.memory is None:
            return make()
        return self.memory.remember(name, key, make, keep=keep)

    def table(self, make: Callable[[KnowledgeBase], Mapping[str, T]]) -> Mapping[str, T]:
        """Give a table over many records, to be read entry by entry.

        Parameters
        ----------
        make : callable
            Works the table out of a knowledge base; declared by :func:`table`.

        Notes
        -----
        Whoever asks for an entry depends on that entry, not on every record the table was worked
        out from.
        """
        if self.memory is None:
            return make(self)
        return self.memory.table(_name(make))

    def remembering(self, memory: Memory | None = None) -> KnowledgeBase:
        """Give the same records, watched by a memory; one for this run unless it is given."""
        if self.memory is not None and memory is None:
            return self
        memory = memory or Memory(self.records, {})
        found = replace(self, records=watched(self.records, memory), memory=memory)
        memory.tables = found._table_named
        return found

    def _table_named(self, name: str) -> Mapping[str, Any]:
        return TABLES[name](self)

    def all(self, kind: str, shape: type[R]) -> list[R]:
        """Give every record of a kind, by id; `shape` is the class the caller works with."""
        if KINDS[kind] is not shape:
            raise TypeError(f"{kind} holds {KINDS[kind].__name__}, not {shape.__name__}")
        return cast("list[R]", list(self.records.get(kind, {}).values()))

    def get(self, kind: str, id_: str, shape: type[R]) -> R:
        """Give one record; a checked knowledge base has every record that is linked to.

        Raises
        ------
        KeyError
            If there is none: the caller skipped the link check.
        """
        found = self.records[kind][id_]
        if not isinstance(found, shape):
            raise TypeError(f"{kind}/{id_} is not a {shape.__name__}")
        return found

    def find(self, kind: str, id_: str | None, shape: type[R]) -> R | None:
        """Give one record, or None where there is none."""
        found = self.records.get(kind, {}).get(id_ or "")
        return found if isinstance(found, shape) else None

    def released(self) -> KnowledgeBase:
        """Give the records a reader may work from: those that are approved."""
        if all(record.status == "approved" for record in self):
            return self
        return self._with("released", ("approved",))

    def previewed(self) -> KnowledgeBase:
        """Give what its authors look at: the approved records, and the drafts among them."""
        return self._with("previewed", ("approved", "draft"))

    def _with(self, name: str, statuses: tuple[str, ...]) -> KnowledgeBase:
        kept = {
            kind: {id_: record for id_, record in by_id.items() if record.status in statuses}
            for kind, by_id in self.records.items()
        }
        gone = tuple(record for record in self if record.status == "withdrawn")
        found = replace(self, records=kept, withdrawn=gone)
        return found if self.memory is None else found.remembering(self.memory.view(name, kept))

    def __iter__(self) -> Iterator[Record]:
        """Walk every record, kind by kind, id by id."""
        for by_id in self.records.values():
            yield from by_id.values()

    def problem(
        self, what: Code, record: Record, path: Path, message: str, hint: str, **options: Any
    ) -> Problem:
        """Give a finding at a field of a record.

        Parameters
        ----------
        what : Code
            The fault.
        record : Record
            Where it is.
        path : tuple
            The way to the field; a field that was not written points at what is around it.
        message, hint : str
            What is wrong, and the smallest mend.
        options
            ``of_key=True`` to point at the key instead of the value.
        """
        origin = self.origins[record.key]
        return problem(what, origin.path, origin.span(path, **options), message, hint, record.key)
