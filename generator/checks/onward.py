"""An outcome that leads to work for another vehicle, or a circle of tests with no way out.

After every reading the mechanic must know what to do next on the vehicle in front of them.
"""

from __future__ import annotations

from generator.problems import Problem, code
from generator.records.kinds.work import LEADS_TO, Job, Next, Test
from generator.records.knowledge_base import KnowledgeBase

NO_WAY_ON = code(
    "no-way-on",
    "On one of the vehicles the reader would stand before a reading with no next step.",
)
NO_WAY_OUT = code(
    "circle-without-exit",
    "The reader would be sent round and round without ever proving anything.",
)

EXITS = ("replacement", "procedure", "carry_on", "refer", "done")


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each outcome with no way on for a vehicle, and each closed circle."""
    tests = kb.all("tests", Test)
    found: list[Problem] = []
    for test in tests:
        for index, outcome in enumerate(test.outcomes):
            left = [v for v in test.applies_to if not any(_holds(kb, w, v) for w in outcome.next)]
            if left:
                found.append(
                    kb.problem(
                        NO_WAY_ON, test, ("outcomes", index, "next"),
                        f"the outcome {outcome.label!r} leads nowhere on {left[0]}",
                        "add a way on for that vehicle", of_key=True,
                    )
                )  # fmt: skip
    leaving = _that_can_leave(tests)
    for test in tests:
        if test.id not in leaving:
            found.append(
                kb.problem(
                    NO_WAY_OUT, test, ("outcomes",),
                    "every outcome leads to tests that lead back here",
                    "give one of them a verdict, a referral or an end", of_key=True,
                )
            )  # fmt: skip
    return found


def _holds(kb: KnowledgeBase, way: Next, vehicle: str) -> bool:
    if way.vehicles and vehicle not in way.vehicles:
        return False
    for name, kind in LEADS_TO.items():
        if way.way == name:
            target = kb.records[kind][getattr(way, name)]
            return isinstance(target, Job) and vehicle in target.applies_to
    return True


def _that_can_leave(tests: list[Test]) -> set[str]:
    """Give the tests from which an exit can be reached, by working back from the exits."""
    leaving: set[str] = set()
    grew = True
    while grew:
        grew = False
        for test in tests:
            if test.id not in leaving and any(
                way.way in EXITS or (way.test is not None and way.test in leaving)
                for outcome in test.outcomes
                for way in outcome.next
            ):
                leaving.add(test.id)
                grew = True
    return leaving
