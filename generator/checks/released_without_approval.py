"""A released record that nobody approved.

Wrong: The status is approved, and no `approved` says by whom and when.

Why: The page would look released although nobody answers for it.

Mend: Add `approved` with the role and the day, or set the status to draft.

Fails, in terms/dwell:

    title: Dwell
    author: technician
    owner: technician
    means: How long a coil is charged before it fires.

Passes:

    title: Dwell
    author: technician
    owner: technician
    approved:
      by: workshop-lead
      date: 2026-09-21
    means: How long a coil is charged before it fires.
"""

from __future__ import annotations

from generator.checks.fault_page import fault
from generator.problems import Problem
from generator.records.knowledge_base import KnowledgeBase

NOT_APPROVED = fault("released-without-approval", __doc__, excusable=False)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each released record without an approval."""
    if kb.settings.one_person_shop:
        return []
    return [
        kb.problem(
            NOT_APPROVED, record, ("title",), "it is released, and nobody approved it",
            "add approved with by and date, or set status: draft",
        )
        for record in kb
        if record.status == "approved" and record.approved is None
    ]  # fmt: skip
