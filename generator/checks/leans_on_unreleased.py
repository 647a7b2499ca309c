"""A released record that leans on a draft or a withdrawn one.

Wrong: The record is approved, and a record it links to is not.

Why: A released page would pass on what nobody has released, or what was withdrawn for a reason.

Mend: Release that record, link to another one, or set this one to draft.

Fails, in tests/winding-resistance:

    status: draft

Passes:

    status: approved
"""

from __future__ import annotations

from generator.checks.fault_page import fault
from generator.checks.places import second
from generator.checks.targets import links
from generator.problems import Problem
from generator.records.knowledge_base import KnowledgeBase

LEANS_ON_UNRELEASED = fault("leans-on-unreleased", __doc__, excusable=False)

RELEASED = "approved"


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each link from what is released to what is not."""
    unreleased = {record.key: record for record in kb if record.status != RELEASED}
    if not unreleased:
        return []
    found = []
    for link in links(kb):
        if link.record is not None and link.record.status != RELEASED:
            continue
        for kind in link.kinds:
            target = unreleased.get(f"{kind}/{link.id}")
            if target is not None:
                at = second(kb, target, ("status",), f"{target.status} by this")
                message = f"{link.id} is {target.status}, but this is released"
                hint = "release that record, or link to another"
                found.append(link.problem(kb, LEANS_ON_UNRELEASED, message, hint, at))
    return found
