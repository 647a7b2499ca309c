"""A verdict that rests on a value nobody can look up.

Wrong: A test condemns or clears a part by a value whose source is common practice.

Why: When a customer, a maker or a court asks why the part was changed, there is no document to
show.

Mend: Name the document the value comes from, or give the verdict neither.

Fails, in specs/inductive-winding:

    source: common-practice

Passes:

    source: corrie-data-sheet
"""

from __future__ import annotations

from dataclasses import replace

from generator.checks.fault_page import fault
from generator.checks.places import second
from generator.checks.verdict_from_band import BY_LIMITS
from generator.problems import Problem
from generator.records.kinds.base import COMMON_PRACTICE
from generator.records.kinds.facts import Verdict
from generator.records.kinds.things import Spec
from generator.records.kinds.work import Test
from generator.records.knowledge_base import KnowledgeBase

WITHOUT_SOURCE = fault("verdict-without-source", __doc__)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each vehicle's value of common practice that decides over a part."""
    found: dict[str, Problem] = {}
    for test in kb.all("tests", Test):
        deciding = [
            index for index, outcome in enumerate(test.outcomes)
            if outcome.verdict is not Verdict.NEITHER and outcome.finding in BY_LIMITS
        ]  # fmt: skip
        for spec in (kb.get("specs", id_, Spec) for id_ in test.specs):
            own = spec.standing == "vehicle_value" and spec.source == COMMON_PRACTICE
            if not deciding or not own:
                continue
            made = kb.problem(
                WITHOUT_SOURCE, spec, ("source",),
                f"{test.id} judges a part by this value, and no document stands behind it",
                "name the document, or let that test say neither",
            )  # fmt: skip
            at = second(kb, test, ("outcomes", deciding[0], "verdict"), "the verdict")
            found.setdefault(spec.id, replace(made, second=at))
    return list(found.values())
