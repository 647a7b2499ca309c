"""A step of more than twenty words.

Wrong: The instruction of a step has more than twenty words.

Why: It is read with dirty hands at arm's length; what does not fit a glance is done from memory.

Mend: Make two steps of it, or move what explains it to `note`.

Fails, in procedures/clear-and-watch-codes:

    steps:
      - do: >-
          Write down the codes that are stored together with every figure of the freeze frame, and
          then print them out for the owner too.
        action: record
        place: away

Passes:

    steps:
      - do: Write down the codes with their freeze frame.
        action: record
        place: away
"""

from __future__ import annotations

from generator.checks.fault_page import fault
from generator.hazards.findings import jobs_of
from generator.problems import Problem, Severity
from generator.records.knowledge_base import KnowledgeBase

LONG_STEP = fault("long-step", __doc__, Severity.WARNING)

MOST_WORDS = 20
"""Words of the longest instruction (ASD-STE100, rule 5.1: from memory)."""


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a warning for each instruction that is too long for a glance."""
    return [
        kb.problem(
            LONG_STEP, job, ("steps", index, "do"),
            f"the step has {count} words; {MOST_WORDS} is the most",
            "make two steps of it, or move what explains it to note",
        )
        for job in jobs_of(kb)
        for index, step in enumerate(job.steps)
        if (count := len(step.do.split())) > MOST_WORDS
    ]  # fmt: skip
