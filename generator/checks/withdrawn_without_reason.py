"""A withdrawn record that does not say why, or one that says why and is not withdrawn.

Wrong: The status is withdrawn and there is no `withdrawn` with reason, role and day; or there is
one, or a `replaced_by`, and the status is another; or `replaced_by` names a record that is not
released.

Why: Whoever comes back to the page, from a job card or a saved address, has to learn what was wrong
with the work they may have done from it, and what to use now.

Mend: Write `withdrawn` with its reason, by and date, or set the status that holds. Let
`replaced_by` name a released record of the same kind, or leave it out.

Fails, in terms/dwell:

    title: Dwell
    author: technician
    owner: technician
    status: withdrawn
    means: How long a coil is charged before it fires.

Passes:

    title: Dwell
    author: technician
    owner: technician
    status: withdrawn
    withdrawn:
      reason: It mixed up the angle and the time.
      by: workshop-lead
      date: 2026-09-21
    means: How long a coil is charged before it fires.
"""

from __future__ import annotations

from generator.checks.fault_page import fault
from generator.problems import Problem
from generator.records.kinds import Record
from generator.records.knowledge_base import KnowledgeBase, Path

WITHOUT_REASON = fault("withdrawn-without-reason", __doc__, excusable=False)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each record whose status and reason do not go together."""
    return [
        kb.problem(
            WITHOUT_REASON, record, path, message, hint, of_key=record.status != "withdrawn"
        )
        for record in kb
        for path, message, hint in _faults(kb, record)
    ]  # fmt: skip


def _faults(kb: KnowledgeBase, record: Record) -> list[tuple[Path, str, str]]:
    if record.status != "withdrawn":
        hint = "set status: withdrawn, or take it out"
        return [
            ((name,), f"it says {words}, and its status is {record.status}", hint)
            for name, words in (
                ("withdrawn", "why it was withdrawn"), ("replaced_by", "what replaces it")
            )
            if getattr(record, name) is not None
        ]  # fmt: skip
    found: list[tuple[Path, str, str]] = []
    if record.withdrawn is None:
        message = "it is withdrawn, and does not say why"
        found.append((("status",), message, "add withdrawn with reason, by and date"))
    other = kb.records.get(record.kind, {}).get(record.replaced_by or "")
    if other is not None and other.status != "approved":
        message = f"what replaces it is {other.status}"
        found.append((("replaced_by",), message, "name a released record, or take it out"))
    return found
