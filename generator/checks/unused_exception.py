"""An exception that silences nothing.

Wrong: An entry under `exceptions` names a check that finds no fault in this record.

Why: It would silence a fault that comes later, and nobody would have weighed that one.

Mend: Delete the entry.

Fails, in components/crank-sensor-hall:

    exceptions:
      - check: orphan
        reason: It stands for itself.
        approved_by: workshop-lead
        date: 2026-09-21

Passes:

    exceptions: []
"""

from __future__ import annotations

from collections.abc import Collection, Sequence

from generator.checks.fault_page import EXCUSABLE, fault
from generator.problems import Problem, Severity
from generator.records.knowledge_base import KnowledgeBase

UNUSED_EXCEPTION = fault("unused-exception", __doc__, Severity.WARNING, excusable=False)


def problems(
    kb: KnowledgeBase, found: Sequence[Problem], not_asked: Collection[str] = ()
) -> list[Problem]:
    """Give a warning for each exception that none of the findings falls under.

    Parameters
    ----------
    kb : KnowledgeBase
        The manual.
    found : sequence of Problem
        Every finding, before any was silenced.
    not_asked : collection of str
        Codes whose rules did not run, so that nobody can say.
    """
    met = {(finding.record, finding.code) for finding in found}
    return [
        kb.problem(
            UNUSED_EXCEPTION, record, ("exceptions", index, "check"),
            f"{allowed.check} finds no fault here", "delete the entry",
        )
        for record in kb
        for index, allowed in enumerate(record.exceptions)
        if allowed.check in EXCUSABLE
        and allowed.check not in not_asked
        and (record.key, allowed.check) not in met
    ]  # fmt: skip


def excused(kb: KnowledgeBase, found: Sequence[Problem]) -> list[Problem]:
    """Give the findings that no exception silences; only what may be silenced ever is."""
    allowed = {
        (record.key, entry.check)
        for record in kb
        for entry in record.exceptions
        if entry.check in EXCUSABLE
    }
    return [finding for finding in found if (finding.record, finding.code) not in allowed]
