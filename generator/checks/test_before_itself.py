"""Tests that each have to come before the other.

Wrong: Following `after` from test to test leads back to where it began.

Why: None of them could be the first, so the order the page shows would be an accident.

Mend: Take the `after` out that is not needed for safety or for sense.

Fails, in tests/identify-sensor-type:

    after: [winding-resistance]

Passes:

    after: []
"""

from __future__ import annotations

from generator.checks.fault_page import fault
from generator.problems import Problem
from generator.records.kinds.work import Test
from generator.records.knowledge_base import KnowledgeBase

BEFORE_ITSELF = fault("test-before-itself", __doc__)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each `after` that leads back to its own test."""
    found = []
    for test in kb.all("tests", Test):
        for index, earlier in enumerate(test.after):
            if test.id in _before(kb, earlier):
                message = f"{test.id} comes after {earlier}, which has to come after {test.id}"
                if earlier == test.id:
                    message = f"{test.id} has to come before itself"
                hint = "drop what is not needed for safety or for sense"
                found.append(kb.problem(BEFORE_ITSELF, test, ("after", index), message, hint))
    return found


def _before(kb: KnowledgeBase, first: str) -> set[str]:
    """Give a test and every test that has to come before it."""
    reached: set[str] = set()
    waiting = [first]
    while waiting:
        id_ = waiting.pop()
        if id_ not in reached:
            reached.add(id_)
            waiting.extend(kb.get("tests", id_, Test).after)
    return reached
