"""What every page is made from: the records, the engines' results and the links both ways."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import partial
from typing import TypeVar

from generator.diagnosis import Order, order
from generator.hazards import Guarded, guard
from generator.pages import routes
from generator.pages.strings import joined, say
from generator.records.kinds import Record
from generator.records.kinds.base import links_of
from generator.records.kinds.knowledge import Person, Symptom
from generator.records.kinds.things import Vehicle
from generator.records.kinds.work import Job
from generator.records.knowledge_base import KnowledgeBase, table

R = TypeVar("R", bound=Record)
T = TypeVar("T")
RecordKey = tuple[str, str]
"""Kind and id."""
Table = Callable[[KnowledgeBase], Mapping[str, tuple[RecordKey, ...]]]


DRAFT = "draft"
"""Status of a record that nobody has released."""


@dataclass(frozen=True, slots=True)
class LinkTo:
    """A link as a page shows it."""

    title: str
    target: str
    kind: str = ""
    note: str = ""
    vehicles: tuple[str, ...] = ()


@dataclass(frozen=True)
class Book:
    """A checked knowledge base, with everything worked out that pages share.

    Nothing is worked out before a page asks for it, and each thing once.

    Parameters
    ----------
    kb : KnowledgeBase
        The records; no error stands.
    guarded : mapping
        Record key of each test, replacement and procedure to its guarded steps.
    orders : mapping
        Symptom id to vehicle id to the order of tests.
    preview : bool
        Whether drafts are among the records: such pages are for their authors, never published.
    """

    kb: KnowledgeBase
    guarded: Mapping[str, Guarded]
    orders: Mapping[str, Mapping[str, Order]]
    preview: bool = False

    @classmethod
    def of(cls, kb: KnowledgeBase, *, preview: bool = False) -> Book:
        """Give the book of a knowledge base."""
        kb = kb.remembering()
        return cls(kb, _Asked(partial(_jobs, kb), partial(_guarded, kb)),
                   _Asked(partial(_symptoms, kb), partial(orders_of, kb)), preview)  # fmt: skip

    def pick(self, entries: Table, key: str, shape: type[R]) -> list[R]:
        """Give the records of one shape that a table lists under a key."""
        found = self.kb.table(entries).get(key, ())
        return [self.kb.get(kind, id_, shape) for kind, id_ in found]

    def linked_from(self, record: Record, kind: str) -> list[Record]:
        """Give the records of a kind that link to this one."""
        found = self.kb.table(backlinks).get(f"{record.key} {kind}", ())
        return [self.kb.records[kind][id_] for kind, id_ in found]

    def link(self, record: Record, note: str = "") -> LinkTo:
        """Give the link to a record."""
        named = getattr(record, "applies_to", None) or getattr(record, "fitted_to", None) or ()
        if record.status == DRAFT:
            note = f"{say('draft.mark')}. {note}".strip()
        return LinkTo(record.title, routes.address(record), record.kind, note, tuple(named))

    def links(self, kind: str, ids: list[str]) -> list[LinkTo]:
        """Give the links to records of a kind, in the order named."""
        return [self.link(self.kb.records[kind][id_]) for id_ in ids]

    def vehicles(self, ids: list[str]) -> str:
        """Give vehicle titles in words."""
        return joined([self.kb.get("vehicles", id_, Vehicle).title for id_ in ids])

    def role(self, id_: str) -> LinkTo:
        """Give the link to a role."""
        return self.link(self.kb.get("people", id_, Person))


def planned_for(
    book: Book, records: Iterable[R], make: Callable[[Book, R], T]
) -> dict[str, Callable[[], T]]:
    """Plan the page of each record by its address.

    Whoever makes such a page reads the record first, so that it is known what the page shows.
    """

    def made(record: R) -> T:
        book.kb.records[record.kind][record.id]
        return make(book, record)

    return {routes.address(record): partial(made, record) for record in records}


class _Asked(Mapping[str, T]):
    """A mapping whose values are worked out when they are asked for."""

    def __init__(self, keys: Callable[[], Iterable[str]], make: Callable[[str], T]) -> None:
        self._keys, self._make = keys, make

    def __getitem__(self, key: str) -> T:
        return self._make(key)

    def __iter__(self) -> Iterator[str]:
        return iter(self._keys())

    def __len__(self) -> int:
        return sum(1 for _ in self._keys())


def _jobs(kb: KnowledgeBase) -> Iterator[str]:
    for kind in ("tests", "replacements", "procedures"):
        yield from (f"{kind}/{id_}" for id_ in kb.records.get(kind, {}))


def _guarded(kb: KnowledgeBase, key: str) -> Guarded:
    kind, _, id_ = key.partition("/")
    job = kb.records[kind][id_]
    assert isinstance(job, Job)
    return guard(kb, job)


def _symptoms(kb: KnowledgeBase) -> Iterable[str]:
    return kb.records.get("symptoms", {}).keys()


def orders_of(kb: KnowledgeBase, symptom_id: str) -> dict[str, Order]:
    """Give the order of tests of a complaint on each of its vehicles."""
    symptom = kb.get("symptoms", symptom_id, Symptom)
    return {
        vehicle: kb.remember(
            "order", f"{symptom_id} {vehicle}", partial(order, kb, symptom, vehicle)
        )
        for vehicle in symptom.applies_to
    }


def listed(
    kb: KnowledgeBase, kind: str, shape: type[R], keys: Callable[[R], Iterable[str]]
) -> dict[str, tuple[RecordKey, ...]]:
    """Give the records of a kind by what each is to be found under, for a table."""
    found: dict[str, dict[RecordKey, None]] = {}
    for record in kb.all(kind, shape):
        for key in keys(record):
            found.setdefault(key, {})[kind, record.id] = None
    return {key: tuple(by) for key, by in found.items()}


@table
def backlinks(kb: KnowledgeBase) -> dict[str, tuple[RecordKey, ...]]:
    """Give the records that link to a record, by its key and their kind."""
    found: dict[str, dict[RecordKey, None]] = {}
    for record in kb:
        for _path, kinds, id_ in links_of(record):
            for kind in kinds:
                if id_ in kb.records.get(kind, {}):
                    by = found.setdefault(f"{kind}/{id_} {record.kind}", {})
                    by[record.kind, record.id] = None
    return {key: tuple(by) for key, by in found.items()}
