"""What every page is made from: the records, the engines' results and the links both ways."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from generator.diagnosis import Order, order
from generator.hazards import Guarded, guard
from generator.pages import routes
from generator.pages.strings import joined
from generator.records.kinds import Record
from generator.records.kinds.base import links_of
from generator.records.kinds.knowledge import Person, Symptom
from generator.records.kinds.things import Vehicle
from generator.records.kinds.work import Job, Procedure, Replacement, Test
from generator.records.knowledge_base import KnowledgeBase


@dataclass(frozen=True, slots=True)
class LinkTo:
    """A link as a page shows it."""

    title: str
    target: str
    kind: str = ""
    note: str = ""


@dataclass(frozen=True)
class Book:
    """A checked knowledge base, with everything worked out that pages share.

    Parameters
    ----------
    kb : KnowledgeBase
        The records; no error stands.
    guarded : mapping
        Record key of each test, replacement and procedure to its guarded steps.
    orders : mapping
        Symptom id to vehicle id to the order of tests.
    backlinks : mapping
        Record key to the records that link to it, in the order of the knowledge base.
    """

    kb: KnowledgeBase
    guarded: Mapping[str, Guarded]
    orders: Mapping[str, Mapping[str, Order]]
    backlinks: Mapping[str, tuple[Record, ...]]

    @classmethod
    def of(cls, kb: KnowledgeBase) -> Book:
        """Work out everything pages share."""
        jobs: list[Job] = [
            *kb.all("tests", Test),
            *kb.all("replacements", Replacement),
            *kb.all("procedures", Procedure),
        ]
        return cls(
            kb,
            {job.key: guard(kb, job) for job in jobs},
            {
                symptom.id: {
                    vehicle: order(kb, symptom, vehicle) for vehicle in symptom.applies_to
                }
                for symptom in kb.all("symptoms", Symptom)
            },
            _backlinks(kb),
        )

    def linked_from(self, record: Record, kind: str) -> list[Record]:
        """Give the records of a kind that link to this one."""
        return [r for r in self.backlinks.get(record.key, ()) if r.kind == kind]

    def link(self, record: Record, note: str = "") -> LinkTo:
        """Give the link to a record."""
        return LinkTo(record.title, routes.address(record), record.kind, note)

    def links(self, kind: str, ids: list[str]) -> list[LinkTo]:
        """Give the links to records of a kind, in the order named."""
        return [self.link(self.kb.records[kind][id_]) for id_ in ids]

    def vehicles(self, ids: list[str]) -> str:
        """Give vehicle titles in words."""
        return joined([self.kb.get("vehicles", id_, Vehicle).title for id_ in ids])

    def role(self, id_: str) -> LinkTo:
        """Give the link to a role."""
        return self.link(self.kb.get("people", id_, Person))


def _backlinks(kb: KnowledgeBase) -> dict[str, tuple[Record, ...]]:
    found: dict[str, dict[str, Record]] = {}
    for record in kb:
        for _path, kinds, id_ in links_of(record):
            for kind in kinds:
                if id_ in kb.records.get(kind, {}):
                    found.setdefault(f"{kind}/{id_}", {})[record.key] = record
    return {key: tuple(by_key.values()) for key, by_key in found.items()}
