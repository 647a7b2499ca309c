"""Two records of one kind with the same title.

Wrong: Two records of one kind are called the same, capitals and spaces aside.

Why: In a list, in a search and on a job card nobody could tell the two apart.

Mend: Say in the title what sets the record apart, as the vehicle or the wire it is for.

Fails, in specs/inductive-gap:

    title: Air gap, Corrie 1.6

Passes:

    title: Air gap, Corrie 1.2
"""

from __future__ import annotations

from dataclasses import replace

from generator.checks.fault_page import fault
from generator.checks.places import second
from generator.problems import Problem
from generator.records.kinds import Record
from generator.records.knowledge_base import KnowledgeBase

DUPLICATE_TITLE = fault("duplicate-title", __doc__)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each record whose title a record of its kind has already."""
    first: dict[tuple[str, str], Record] = {}
    found = []
    for record in kb:
        taken = first.setdefault((record.kind, " ".join(record.title.casefold().split())), record)
        if taken is record:
            continue
        made = kb.problem(
            DUPLICATE_TITLE, record, ("title",),
            f"{taken.key} has the title {taken.title!r} already",
            "say in the title what sets this one apart",
        )  # fmt: skip
        found.append(replace(made, second=second(kb, taken, ("title",), "first used here")))
    return found
