"""An exception to a check that nobody may silence.

Wrong: An entry under `exceptions` names a caution, a fault of the file itself, a link that leads
nowhere, or a guard of the release.

Why: A caution that can be waved away will be, on the day somebody is in a hurry.

Mend: Mend what the finding names. Where a caution does not fit the step, mend the fact it follows
from.

Fails, in components/crank-sensor-hall:

    exceptions:
      - check: silent-step
        reason: Everybody knows.
        approved_by: workshop-lead
        date: 2026-09-21

Passes:

    exceptions:
      - check: long-step
        reason: There is no shorter way to say it.
        approved_by: workshop-lead
        date: 2026-09-21
"""

from __future__ import annotations

from generator.checks.fault_page import EXCUSABLE, fault
from generator.problems import CODES, Problem
from generator.records.knowledge_base import KnowledgeBase

NOT_ALLOWED = fault("exception-not-allowed", __doc__, excusable=False)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each exception to a code that no record may silence."""
    return [
        kb.problem(
            NOT_ALLOWED, record, ("exceptions", index, "check"),
            f"{allowed.check} cannot be silenced", "mend what it names, and delete this entry",
        )
        for record in kb
        for index, allowed in enumerate(record.exceptions)
        if allowed.check in CODES and allowed.check not in EXCUSABLE
    ]  # fmt: skip
