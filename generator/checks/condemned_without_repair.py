"""A verdict that condemns a part and leaves it in the vehicle.

Wrong: An outcome condemns a part, and on one of the test's vehicles leads neither to the
replacement of that part, nor to a procedure, nor to a referral.

Why: The reader knows what is broken and is sent on to something else, or changes another part.

Mend: Lead on to the part's replacement or repair, or say who does it under `refer`. Where more
proof is wanted first, the verdict is neither.

Fails, in tests/winding-resistance:

    outcomes:
      - finding: open
        label: Over-range
        verdict: condemns
        means: The coil is broken.
        next:
          - carry_on: true
      - finding: cannot_tell
        label: The temperature is unknown
        verdict: neither
        means: Near a limit it decides.
        next:
          - repeat: true

Passes:

    outcomes:
      - finding: open
        label: Over-range
        verdict: condemns
        means: The coil is broken.
        next:
          - replacement: replace-crank-sensor-inductive
      - finding: cannot_tell
        label: The temperature is unknown
        verdict: neither
        means: Near a limit it decides.
        next:
          - repeat: true
"""

from __future__ import annotations

from collections.abc import Iterator

from generator.checks.fault_page import fault
from generator.checks.ways import ways_on
from generator.problems import Problem
from generator.records.kinds.facts import Verdict
from generator.records.kinds.things import Component
from generator.records.kinds.work import Next, Outcome, Replacement, Test
from generator.records.knowledge_base import KnowledgeBase

CONDEMNED_WITHOUT_REPAIR = fault("condemned-without-repair", __doc__)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each outcome that condemns a part and does not lead to its repair."""
    return [
        kb.problem(
            CONDEMNED_WITHOUT_REPAIR, test, ("outcomes", index, "next"),
            f"it condemns {part} and, on {vehicle}, does not lead to its repair",
            f"lead to the replacement of {part}, a procedure or a referral", of_key=True,
        )
        for test in kb.all("tests", Test)
        for index, outcome in enumerate(test.outcomes)
        for part, vehicle in list(_left_in(kb, test, outcome))[:1]
    ]  # fmt: skip


def _left_in(kb: KnowledgeBase, test: Test, outcome: Outcome) -> Iterator[tuple[str, str]]:
    """Give each condemned part that stays in, with the vehicle; a missing way is another fault."""
    if outcome.verdict is not Verdict.CONDEMNS:
        return
    for vehicle in test.applies_to:
        ways = ways_on(kb, outcome, vehicle)
        for id_ in outcome.about or test.components:
            fitted = vehicle in kb.get("components", id_, Component).fitted_to
            if fitted and ways and not any(_mends(kb, way, id_) for way in ways):
                yield id_, vehicle


def _mends(kb: KnowledgeBase, way: Next, part: str) -> bool:
    if way.replacement is not None:
        return kb.get("replacements", way.replacement, Replacement).component == part
    return way.procedure is not None or way.refer is not None
