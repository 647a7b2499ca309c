"""A verdict on a part that the test does not judge.

Wrong: An outcome names a part under `about` that is not among the test's `components`.

Why: The part's own page and the order of tests go by `components`; they would not know that this
test can judge it.

Mend: Add the part to `components` if the test can judge it, or name another part.

Fails, in tests/winding-resistance:

    components: [crank-sensor-inductive]
    outcomes:
      - finding: open
        label: Over-range
        verdict: condemns
        about: [crank-sensor-harness]
        means: The wire is broken.
        next:
          - procedure: repair-wiring
      - finding: cannot_tell
        label: The temperature is unknown
        verdict: neither
        means: Near a limit it decides.
        next:
          - repeat: true

Passes:

    components: [crank-sensor-inductive, crank-sensor-harness]
    outcomes:
      - finding: open
        label: Over-range
        verdict: condemns
        about: [crank-sensor-harness]
        means: The wire is broken.
        next:
          - procedure: repair-wiring
      - finding: cannot_tell
        label: The temperature is unknown
        verdict: neither
        means: Near a limit it decides.
        next:
          - repeat: true
"""

from __future__ import annotations

from dataclasses import replace

from generator.checks.fault_page import fault
from generator.checks.places import second
from generator.problems import Problem
from generator.records.kinds.facts import Verdict
from generator.records.kinds.work import Test
from generator.records.knowledge_base import KnowledgeBase

ANOTHER_PART = fault("verdict-on-another-part", __doc__)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each part an outcome judges and the test does not."""
    found = []
    for test in kb.all("tests", Test):
        for index, outcome in enumerate(test.outcomes):
            if outcome.verdict is Verdict.NEITHER:
                continue
            for position, part in enumerate(outcome.about):
                if part in test.components:
                    continue
                made = kb.problem(
                    ANOTHER_PART, test, ("outcomes", index, "about", position),
                    f"it {outcome.verdict} {part}, which is not among the test's components",
                    "add it to components, or name a part that is there",
                )  # fmt: skip
                at = second(kb, test, ("components",), "the parts it judges", of_key=True)
                found.append(replace(made, second=at))
    return found
