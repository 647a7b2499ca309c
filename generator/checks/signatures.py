"""A record released by the role that wrote it.

A second pair of eyes is the cheapest safeguard a shop has. A one-person shop says so in its
settings, and every page then says so too.
"""

from __future__ import annotations

from generator.problems import Problem, code
from generator.records.knowledge_base import KnowledgeBase

OWN_APPROVAL = code(
    "approved-by-author",
    "A slip that its author cannot see would reach the bay unread.",
)
NOT_APPROVED = code(
    "released-without-approval",
    "The page would look released although nobody released it.",
)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each record whose author released it, or that nobody did."""
    if kb.settings.one_person_shop:
        return []
    found: list[Problem] = []
    for record in kb:
        if record.status != "approved":
            continue
        if record.approved is None:
            found.append(
                kb.problem(
                    NOT_APPROVED, record, (), "it is released, but nobody approved it",
                    "add approved with by and date, or set status: draft",
                )
            )  # fmt: skip
        elif record.approved.by == record.author:
            found.append(
                kb.problem(
                    OWN_APPROVAL, record, ("approved", "by"),
                    f"{record.author} wrote it and released it", "name another role",
                )
            )  # fmt: skip
    return found
