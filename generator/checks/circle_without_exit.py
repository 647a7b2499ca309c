"""Tests that lead to each other and nowhere else.

Wrong: On one vehicle every outcome leads to a test whose outcomes lead back. A way out is a
replacement, a procedure, a referral, an end, or the next test in the complaint's order.

Why: The reader would be sent round and round without ever proving anything.

Mend: Give one outcome of the circle a verdict with its repair, a referral or an end.

Fails, in tests/wire-or-control-unit:

    outcomes:
      - finding: as_expected
        label: Right at both ends
        verdict: neither
        means: The fault is asleep.
        next:
          - repeat: true
      - finding: cannot_tell
        label: The feed of the control unit is not proved
        verdict: neither
        means: Nothing can be said.
        next:
          - repeat: true

Passes:

    outcomes:
      - finding: as_expected
        label: Right at both ends
        verdict: neither
        means: The fault is asleep.
        next:
          - test: heat-and-wiggle-hall
      - finding: cannot_tell
        label: The feed of the control unit is not proved
        verdict: neither
        means: Nothing can be said.
        next:
          - repeat: true
"""

from __future__ import annotations

from generator.checks.fault_page import fault
from generator.checks.ways import ways_on
from generator.problems import Problem
from generator.records.kinds.things import Vehicle
from generator.records.kinds.work import Test
from generator.records.knowledge_base import KnowledgeBase

NO_WAY_OUT = fault("circle-without-exit", __doc__)

EXITS = ("replacement", "procedure", "carry_on", "refer", "done")


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each test from which no way out can be reached."""
    caught: dict[str, list[str]] = {}
    for vehicle in kb.all("vehicles", Vehicle):
        for id_ in _caught(kb, vehicle.id):
            caught.setdefault(id_, []).append(vehicle.id)
    return [
        kb.problem(
            NO_WAY_OUT, kb.get("tests", id_, Test), ("outcomes",),
            f"on {', '.join(vehicles)} every outcome leads to tests that lead back here",
            "give one of them a repair, a referral or an end", of_key=True,
        )
        for id_, vehicles in caught.items()
    ]  # fmt: skip


def _caught(kb: KnowledgeBase, vehicle: str) -> list[str]:
    """Give the tests that no way leaves, by working back from the exits."""
    onward = {
        test.id: [way for outcome in test.outcomes for way in ways_on(kb, outcome, vehicle)]
        for test in kb.all("tests", Test)
        if vehicle in test.applies_to
    }
    leaving: set[str] = set()
    grew = True
    while grew:
        grew = False
        for id_, ways in onward.items():
            if id_ not in leaving and any(
                way.way in EXITS or (way.test is not None and way.test in leaving) for way in ways
            ):
                leaving.add(id_)
                grew = True
    # A test without any way on is another fault, with a finding of its own.
    return [id_ for id_, ways in onward.items() if ways and id_ not in leaving]
