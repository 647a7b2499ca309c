"""The small manual in memory, and copies of it with one thing changed."""

from __future__ import annotations

from functools import cache
from typing import Any

from generator.records.kinds import Record
from generator.records.knowledge_base import KnowledgeBase
from generator.records.load import load
from tests.demonstration import SMALL_RECORDS


@cache
def demonstration() -> KnowledgeBase:
    """Give the small manual's knowledge base, read once."""
    loaded = load(SMALL_RECORDS, "kb_source")
    assert loaded.kb is not None, loaded.problems
    return loaded.kb


def changed(kb: KnowledgeBase, kind: str, id_: str, **fields: Any) -> KnowledgeBase:
    """Give a copy in which some fields of one record are others."""
    record = kb.records[kind][id_]
    other = record.model_copy(update=fields)
    other.named(kind, id_)
    return with_record(kb, other)


def with_record(kb: KnowledgeBase, record: Record) -> KnowledgeBase:
    """Give a copy with one more record, or with another in its place."""
    records = {kind: dict(by_id) for kind, by_id in kb.records.items()}
    records.setdefault(record.kind, {})[record.id] = record
    origins = {**kb.origins}
    origins.setdefault(record.key, next(iter(kb.origins.values())))
    return KnowledgeBase(kb.settings, records, origins)


def without(kb: KnowledgeBase, kind: str, id_: str) -> KnowledgeBase:
    """Give a copy in which one record is missing."""
    records = {k: {i: r for i, r in by_id.items() if (k, i) != (kind, id_)}
               for k, by_id in kb.records.items()}  # fmt: skip
    return KnowledgeBase(kb.settings, records, kb.origins)
