"""An outcome that leads nowhere on one of the test's vehicles.

Wrong: Every way on is for other vehicles, or leads to work that does not apply to this one.

Why: On one of the vehicles the reader would stand before a reading with no next step.

Mend: Add a way on for that vehicle, or take the vehicle out of the test.

Fails, in tests/control-unit-feed:

    outcomes:
      - finding: in_limits
        label: The loss is within its limit
        verdict: neither
        means: Feed and ground are good.
        next:
          - test: winding-resistance
      - finding: high
        label: More is lost than the limit allows
        verdict: neither
        means: A joint in the feed or in the ground.
        next:
          - procedure: repair-wiring

Passes:

    outcomes:
      - finding: in_limits
        label: The loss is within its limit
        verdict: neither
        means: Feed and ground are good.
        next:
          - test: winding-resistance
            vehicles: [corrie-1-2]
          - test: hall-supply-under-load
            vehicles: [corrie-1-6]
      - finding: high
        label: More is lost than the limit allows
        verdict: neither
        means: A joint in the feed or in the ground.
        next:
          - procedure: repair-wiring
"""

from __future__ import annotations

from generator.checks.fault_page import fault
from generator.checks.ways import ways_on
from generator.problems import Problem
from generator.records.kinds.work import Test
from generator.records.knowledge_base import KnowledgeBase

NO_WAY_ON = fault("no-way-on", __doc__)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each outcome that leaves a vehicle without a next step."""
    found = []
    for test in kb.all("tests", Test):
        for index, outcome in enumerate(test.outcomes):
            left = [v for v in test.applies_to if not ways_on(kb, outcome, v)]
            if left:
                found.append(
                    kb.problem(
                        NO_WAY_ON, test, ("outcomes", index, "next"),
                        f"the outcome {outcome.label!r} leads nowhere on {', '.join(left)}",
                        "add a way on for that vehicle", of_key=True,
                    )
                )  # fmt: skip
    return found
