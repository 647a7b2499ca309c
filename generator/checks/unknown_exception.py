"""An exception to a check that does not exist.

Wrong: An entry under `exceptions` names a code that no check has.

Why: It would look as if somebody had weighed something, and nothing is silenced.

Mend: Write the code as the finding names it, or delete the entry.

Fails, in components/crank-sensor-hall:

    exceptions:
      - check: long-steps
        reason: There is no shorter way to say it.
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

from difflib import get_close_matches

from generator.checks.fault_page import EXCUSABLE, fault
from generator.problems import CODES, Problem
from generator.records.knowledge_base import KnowledgeBase

UNKNOWN_EXCEPTION = fault("unknown-exception", __doc__, excusable=False)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each exception to a code that there is not."""
    found = []
    for record in kb:
        for index, allowed in enumerate(record.exceptions):
            if allowed.check in CODES:
                continue
            near = get_close_matches(allowed.check, sorted(EXCUSABLE), n=1, cutoff=0.6)
            found.append(
                kb.problem(
                    UNKNOWN_EXCEPTION, record, ("exceptions", index, "check"),
                    f"there is no check {allowed.check}",
                    f"did you mean {near[0]}?" if near else "delete the entry",
                )
            )  # fmt: skip
    return found
