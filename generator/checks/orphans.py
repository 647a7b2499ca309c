"""A record that nothing leads to.

It is either forgotten or missing its link; in both cases no reader will ever find it.
"""

from __future__ import annotations

from generator.problems import Problem, Severity, code
from generator.records.kinds.base import links_of
from generator.records.knowledge_base import KnowledgeBase

ORPHAN = code("orphan", "No reader will ever come to it.", Severity.WARNING)

ENTRANCES = ("symptoms", "codes", "vehicles", "terms", "hazards")
"""Kinds a reader finds from the home page or a list of their own."""


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a warning for each record that no other record links to."""
    linked = {
        (kind, id_)
        for record in (*kb, kb.settings)
        for _path, kinds, id_ in links_of(record)
        for kind in kinds
    }
    return [
        kb.problem(
            ORPHAN, record, ("title",), f"nothing links to {record.key}",
            "link to it where it is needed, or remove it",
        )
        for record in kb
        if record.kind not in ENTRANCES and (record.kind, record.id) not in linked
        and not _shown_by_owner(record)
    ]  # fmt: skip


def _shown_by_owner(record: object) -> bool:
    """A spec is shown on the page of the part it names, whether or not a test uses it."""
    return getattr(record, "kind", "") == "specs"
