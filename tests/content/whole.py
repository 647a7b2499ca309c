"""The demonstration manual's records, read once for all tests of its content."""

from __future__ import annotations

from functools import cache

from generator.records.knowledge_base import KnowledgeBase
from generator.records.load import load
from tests.demonstration import DEMONSTRATION


@cache
def manual() -> KnowledgeBase:
    """Give the demonstration manual, as far as its records can be read."""
    loaded = load(DEMONSTRATION, "kb_source")
    assert loaded.kb is not None, loaded.problems
    return loaded.kb
