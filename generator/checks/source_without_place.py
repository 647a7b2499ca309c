"""A value from a document that does not say where in it.

Wrong: The value names a source record, and not the page, table or clause.

Why: Nobody who checks the figure could find it again, so nobody would check it.

Mend: Write under `where` the page, table, row or clause.

Fails, in specs/battery-settle-time:

    source: corrie-data-sheet

Passes:

    source: corrie-data-sheet
    where: Battery, row 3
"""

from __future__ import annotations

from generator.checks.fault_page import fault
from generator.problems import Problem, Severity
from generator.records.kinds.base import COMMON_PRACTICE
from generator.records.kinds.things import Spec
from generator.records.knowledge_base import KnowledgeBase

WITHOUT_PLACE = fault("source-without-place", __doc__, Severity.WARNING)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a warning for each value whose document is named without a place in it."""
    return [
        kb.problem(
            WITHOUT_PLACE, spec, ("source",), f"it does not say where in {spec.source} it stands",
            "add where: page, table or clause",
        )
        for spec in kb.all("specs", Spec)
        if spec.source != COMMON_PRACTICE and spec.where is None
    ]  # fmt: skip
