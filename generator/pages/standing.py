"""What a page rests on: its documents, how far to trust it, who keeps it and until when."""

from __future__ import annotations

import datetime
from collections.abc import Iterable
from dataclasses import dataclass

from generator.checks import review_overdue
from generator.pages.book import Book, LinkTo, RecordKey, listed
from generator.pages.coverage import doubts
from generator.pages.strings import say
from generator.records.kinds import Record
from generator.records.kinds.base import COMMON_PRACTICE, links_of
from generator.records.kinds.things import Component, Spec, Vehicle
from generator.records.knowledge_base import KnowledgeBase, table


@dataclass(frozen=True, slots=True)
class Standing:
    """What the foot of a record's page says of it.

    Parameters
    ----------
    owner : LinkTo
        The role that keeps it true.
    due : date or None
        Last day on which its next review is in time.
    confidence : str
        "good", "fair" or "low", by the rule of :func:`standing`.
    verified, values : int
        How many of its values somebody vouches for, of how many.
    sources : tuple of LinkTo
        The documents it rests on.
    practice : bool
        Whether common practice is among what it rests on.
    """

    owner: LinkTo
    due: datetime.date | None
    confidence: str
    verified: int
    values: int
    sources: tuple[LinkTo, ...]
    practice: bool


def standing(book: Book, record: Record) -> Standing:
    """Give what a page rests on.

    Confidence is low where nobody has reviewed the record, or fewer than half of its values are
    verified; good where somebody other than its author reviewed it and every value is verified,
    with one value or document at least; fair otherwise.
    """
    kb = book.kb
    specs = [kb.get("specs", id_, Spec) for id_ in _values_of(kb, record)]
    named = {getattr(record, "source", None), *(spec.source for spec in specs)}
    named |= {id_ for _, kinds, id_ in links_of(record) if kinds == ("sources",)}
    known = kb.records.get("sources", {})
    sources = tuple(book.link(known[id_]) for id_ in sorted(filter(None, named)) if id_ in known)
    verified = sum(not doubts(kb, spec) for spec in specs)
    return Standing(
        book.role(record.owner),
        review_overdue.due(kb, record),
        _confidence(record, verified, len(specs), bool(sources)),
        verified, len(specs), sources, COMMON_PRACTICE in named,
    )  # fmt: skip


def _confidence(record: Record, verified: int, values: int, documented: bool) -> str:
    if record.reviewed is None or 2 * verified < values:
        return "low"
    checked = record.reviewed.by != record.author
    return "good" if checked and documented and verified == values else "fair"


def _values_of(kb: KnowledgeBase, record: Record) -> list[str]:
    """Give the ids of the values that a page shows: named by it, of its part, of its vehicle."""
    found = {id_ for _, kinds, id_ in links_of(record) if kinds == ("specs",)}
    if isinstance(record, (Component, Vehicle)):
        found |= {id_ for _, id_ in kb.table(_shown_with).get(record.key, ())}
    return sorted(found)


@table
def _shown_with(kb: KnowledgeBase) -> dict[str, tuple[RecordKey, ...]]:
    return listed(kb, "specs", Spec, _keys)


def _keys(spec: Spec) -> Iterable[str]:
    own = spec.standing == "vehicle_value"
    return [f"components/{spec.component}", *(f"vehicles/{v}" for v in spec.applies_to if own)]


def confidence_words(found: Standing) -> str:
    """Give the sentence about confidence, with the count behind it."""
    words = say(f"standing.{found.confidence}")
    if not found.values:
        return f"{words} {say('standing.no_values')}"
    return f"{words} {say('standing.verified', have=found.verified, all=found.values)}"
