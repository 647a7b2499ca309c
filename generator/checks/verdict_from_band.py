"""A verdict that rests on a plausibility band.

Wrong: An outcome condemns or clears by a reading within, below or above limits, and the only
values the test knows are spreads over all designs.

Why: A spread over all designs proves nothing about this part; a good one would be thrown away,
and a bad one kept.

Mend: Add the vehicle's own value to `specs`, or give the verdict neither.

Fails, in tests/winding-resistance:

    specs: [inductive-winding-band]

Passes:

    specs: [inductive-winding, inductive-winding-band]
"""

from __future__ import annotations

from generator.checks.fault_page import fault
from generator.problems import Problem
from generator.records.kinds.facts import Finding, Verdict
from generator.records.kinds.things import Spec
from generator.records.kinds.work import Test
from generator.records.knowledge_base import KnowledgeBase

BAND_FOR_VERDICT = fault("verdict-from-band", __doc__, excusable=False)

BY_LIMITS = (Finding.IN_LIMITS, Finding.LOW, Finding.HIGH)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each verdict that has nothing but a band behind it."""
    found = []
    for test in kb.all("tests", Test):
        specs = [kb.get("specs", id_, Spec) for id_ in test.specs]
        own = {v for s in specs if s.standing == "vehicle_value" for v in s.applies_to}
        banded = {v for s in specs for v in s.applies_to} - own
        left = [v for v in test.applies_to if v in banded]
        if not left:
            continue
        found += [
            kb.problem(
                BAND_FOR_VERDICT, test, ("outcomes", index, "verdict"),
                f"on {', '.join(left)} this verdict rests on a plausibility band alone",
                "add the vehicle's own value to specs, or say neither",
            )
            for index, outcome in enumerate(test.outcomes)
            if outcome.verdict is not Verdict.NEITHER and outcome.finding in BY_LIMITS
        ]  # fmt: skip
    return found
