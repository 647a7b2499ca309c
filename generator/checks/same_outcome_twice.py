"""An outcome that is there twice.

Wrong: Two outcomes of a test have the same finding and the same label.

Why: One reading would give two answers.

Mend: Keep one of them, or say in the label what sets them apart.

Fails, in tests/recent-work:

    outcomes:
      - finding: as_expected
        label: Nothing was done nearby
        verdict: neither
        means: Go on.
        next:
          - carry_on: true
      - finding: as_expected
        label: Nothing was done nearby
        verdict: neither
        means: Start again.
        next:
          - repeat: true

Passes:

    outcomes:
      - finding: as_expected
        label: Nothing was done nearby
        verdict: neither
        means: Go on.
        next:
          - carry_on: true
      - finding: cannot_tell
        label: Nobody knows
        verdict: neither
        means: Go on, and keep it in mind.
        next:
          - carry_on: true
"""

from __future__ import annotations

from dataclasses import replace

from generator.checks.fault_page import fault
from generator.checks.places import second
from generator.problems import Problem
from generator.records.kinds.work import Test
from generator.records.knowledge_base import KnowledgeBase

SAME_OUTCOME = fault("same-outcome-twice", __doc__)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each outcome that repeats an earlier one."""
    found = []
    for test in kb.all("tests", Test):
        first: dict[tuple[str, str], int] = {}
        for index, outcome in enumerate(test.outcomes):
            earlier = first.setdefault((outcome.finding.value, outcome.label), index)
            if earlier == index:
                continue
            made = kb.problem(
                SAME_OUTCOME, test, ("outcomes", index, "label"),
                f"the outcome {outcome.label!r} is there twice", "keep one of them",
            )  # fmt: skip
            at = second(kb, test, ("outcomes", earlier, "label"), "first here")
            found.append(replace(made, second=at))
    return found
