"""A cause that can be neither tested nor looked up.

Wrong: On one of the vehicles a cause names no test that applies, and does not say under `refer`
where to look.

Why: The reader is told what it may be, and not what to do about it.

Mend: Name a test, say where to look, or give `vehicles` where it can only be on some.

Fails, in symptoms/long-cranking:

    causes:
      - name: Fuel supply
        weight: 24
        reason: The commonest single group.
      - name: Battery
        component: battery
        weight: 10
        reason: A slow engine makes a weak signal.
        tests: [battery-rest]

Passes:

    causes:
      - name: Fuel supply
        refer: Fuel pressure, by the vehicle maker's data.
        weight: 24
        reason: The commonest single group.
      - name: Battery
        component: battery
        weight: 10
        reason: A slow engine makes a weak signal.
        tests: [battery-rest]
"""

from __future__ import annotations

from generator.checks.fault_page import fault
from generator.problems import Problem
from generator.records.kinds.knowledge import Symptom
from generator.records.kinds.work import Test
from generator.records.knowledge_base import KnowledgeBase

CAUSE_WITHOUT_WAY = fault("cause-without-way", __doc__)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each cause that leaves the reader of a vehicle without a way."""
    found = []
    for symptom in kb.all("symptoms", Symptom):
        for index, cause in enumerate(symptom.causes):
            if cause.refer is not None:
                continue
            tested = {v for id_ in cause.tests for v in kb.get("tests", id_, Test).applies_to}
            on = [v for v in symptom.applies_to if not cause.vehicles or v in cause.vehicles]
            left = [v for v in on if v not in tested]
            if left:
                found.append(
                    kb.problem(
                        CAUSE_WITHOUT_WAY, symptom, ("causes", index, "name"),
                        f"{cause.name!r} has no test on {', '.join(left)} and no refer",
                        "name a test, say where to look, or give its vehicles",
                    )
                )  # fmt: skip
    return found
