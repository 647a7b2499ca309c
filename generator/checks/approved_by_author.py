"""A record or an exception that its own author let pass.

Wrong: The role that wrote the record also released it, or allowed an exception in it. A shop of
one person says so in its settings, and every page then says that it is not second-checked.

Why: A slip that its author cannot see would reach the bay unread.

Mend: Have another role read it and put its name there.

Fails, in tests/winding-resistance:

    approved:
      by: diagnostic-technician
      date: 2026-09-21

Passes:

    approved:
      by: workshop-lead
      date: 2026-09-21
"""

from __future__ import annotations

from dataclasses import replace

from generator.checks.fault_page import fault
from generator.checks.places import second
from generator.problems import Problem
from generator.records.knowledge_base import KnowledgeBase, Path

OWN_APPROVAL = fault("approved-by-author", __doc__, excusable=False)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each signature that stands under the signer's own work."""
    if kb.settings.one_person_shop:
        return []
    found = []
    for record in kb:
        signed: list[tuple[Path, str]] = [
            (("exceptions", index, "approved_by"), allowed.approved_by)
            for index, allowed in enumerate(record.exceptions)
        ]
        if record.status == "approved" and record.approved is not None:
            signed.insert(0, (("approved", "by"), record.approved.by))
        for path, by in signed:
            if by != record.author:
                continue
            made = kb.problem(
                OWN_APPROVAL, record, path, f"{by} wrote it and let it pass", "name another role"
            )
            at = second(kb, record, ("author",), "the author")
            found.append(replace(made, second=at))
    return found
