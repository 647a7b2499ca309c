"""A replacement that no test condemns the part for.

Wrong: On one of its vehicles no outcome of a test condemns this very part and leads to this
replacement. A released replacement wants a released test.

Why: The part would be changed on a guess.

Mend: Give a test an outcome that condemns the part, with `next: replacement` here; or take the
vehicle out.

Fails, in replacements/replace-crank-sensor-hall:

    component: trigger-wheel-36-1

Passes:

    component: crank-sensor-hall
"""

from __future__ import annotations

from generator.checks.fault_page import fault
from generator.checks.ways import ways_on
from generator.problems import Problem
from generator.records.kinds.facts import Verdict
from generator.records.kinds.work import Replacement, Test
from generator.records.knowledge_base import KnowledgeBase

WITHOUT_TEST = fault("replacement-without-test", __doc__)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each replacement that is not reached by condemning its part."""
    proved = _proved(kb)
    found = []
    for job in kb.all("replacements", Replacement):
        left = [
            vehicle for vehicle in job.applies_to
            if not any(
                test.status == "approved" or job.status != "approved"
                for test in proved.get((job.id, job.component, vehicle), ())
            )
        ]  # fmt: skip
        if left:
            found.append(
                kb.problem(
                    WITHOUT_TEST, job, ("component",),
                    f"on {', '.join(left)} no test condemns {job.component} and leads here",
                    "give a test an outcome that condemns it, with next: replacement here",
                )
            )  # fmt: skip
    return found


def _proved(kb: KnowledgeBase) -> dict[tuple[str, str, str], list[Test]]:
    """Map replacement, part and vehicle to the tests that lead there by condemning the part."""
    proved: dict[tuple[str, str, str], list[Test]] = {}
    for test in kb.all("tests", Test):
        for outcome in test.outcomes:
            if outcome.verdict is not Verdict.CONDEMNS:
                continue
            for vehicle in test.applies_to:
                for way in ways_on(kb, outcome, vehicle):
                    for part in outcome.about or test.components:
                        if way.replacement is not None:
                            key = (way.replacement, part, vehicle)
                            proved.setdefault(key, []).append(test)
    return proved
