"""A verdict where the test has shown nothing.

Wrong: An outcome condemns or clears although the complaint is absent, or although the test could
not tell.

Why: A good reading while the fault is asleep clears nothing, and a part judged on no evidence is
judged by luck.

Mend: Give the verdict neither, and lead to what wakes the fault or makes the test possible.

Fails, in tests/output-while-cranking:

    outcomes:
      - finding: complaint_absent
        label: Within limits, but the fault is asleep
        verdict: clears
        means: The sensor is good.
        next:
          - carry_on: true
      - finding: cannot_tell
        label: The engine turns slowly
        verdict: neither
        means: No fair test.
        next:
          - test: battery-cranking

Passes:

    outcomes:
      - finding: complaint_absent
        label: Within limits, but the fault is asleep
        verdict: neither
        means: A good reading clears nothing now.
        next:
          - test: heat-and-wiggle-inductive
      - finding: cannot_tell
        label: The engine turns slowly
        verdict: neither
        means: No fair test.
        next:
          - test: battery-cranking
"""

from __future__ import annotations

from generator.checks.fault_page import fault
from generator.problems import Problem
from generator.records.kinds.facts import Finding, Verdict
from generator.records.kinds.work import Test
from generator.records.knowledge_base import KnowledgeBase

WITHOUT_EVIDENCE = fault("verdict-without-evidence", __doc__)

SHOWN_NOTHING = {
    Finding.COMPLAINT_ABSENT: "the complaint is absent",
    Finding.CANNOT_TELL: "the test cannot tell",
}


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each verdict of an outcome that has shown nothing."""
    return [
        kb.problem(
            WITHOUT_EVIDENCE, test, ("outcomes", index, "verdict"),
            f"it {outcome.verdict} although {SHOWN_NOTHING[outcome.finding]}", "write neither",
        )
        for test in kb.all("tests", Test)
        for index, outcome in enumerate(test.outcomes)
        if outcome.finding in SHOWN_NOTHING and outcome.verdict is not Verdict.NEITHER
    ]  # fmt: skip
