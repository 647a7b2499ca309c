"""Where an outcome leads on one vehicle."""

from __future__ import annotations

from generator.records.kinds.work import LEADS_TO, Job, Next, Outcome
from generator.records.knowledge_base import KnowledgeBase


def ways_on(kb: KnowledgeBase, outcome: Outcome, vehicle: str) -> list[Next]:
    """Give the ways that an outcome offers on a vehicle."""
    return [way for way in outcome.next if _holds(kb, way, vehicle)]


def _holds(kb: KnowledgeBase, way: Next, vehicle: str) -> bool:
    if way.vehicles and vehicle not in way.vehicles:
        return False
    kind = LEADS_TO.get(way.way)
    if kind is None:
        return True
    target = kb.records[kind][getattr(way, way.way)]
    return isinstance(target, Job) and vehicle in target.applies_to
