"""A record that nothing leads to.

Wrong: No other record links to it, and it is of a kind that readers reach through links.
Complaints, codes, vehicles, terms, hazards and solved cases have lists of their own; a value is
shown with the part it belongs to. A withdrawn record is told by its own page alone.

Why: No reader will ever come to it: it is forgotten, or its link is.

Mend: Link to it where it is needed, or delete it.

Fails, in components/crank-sensor-hall:

    circuit: crank-circuit-1-2

Passes:

    circuit: crank-circuit-1-6
"""

from __future__ import annotations

from generator.checks.fault_page import fault
from generator.checks.targets import links
from generator.problems import Problem, Severity
from generator.records.knowledge_base import KnowledgeBase

ORPHAN = fault("orphan", __doc__, Severity.WARNING)

ENTRANCES = ("symptoms", "codes", "vehicles", "terms", "hazards", "specs", "cases")
"""Kinds a reader finds without a link to the record itself."""


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a warning for each record that no other record links to."""
    linked = {
        key for link in links(kb) for kind in link.kinds
        if (key := f"{kind}/{link.id}") != link.key
    }  # fmt: skip
    return [
        kb.problem(
            ORPHAN, record, ("title",), f"nothing links to {record.key}",
            "link to it where it is needed, or delete it",
        )
        for record in kb
        if record.kind not in ENTRANCES
        and record.key not in linked
        and record.status != "withdrawn"
    ]  # fmt: skip
