"""A complaint or a code that leads to no test on one of its vehicles.

Wrong: The record is for a vehicle, and none of the tests it names applies to that vehicle. The
first looks, which every complaint begins with, do not count.

Why: The reader would come in by the owner's words and stand there with nothing to do.

Mend: Name a test that applies to the vehicle, or take the vehicle out.

Fails, in codes/p0336:

    tests: [winding-resistance]

Passes:

    tests: [winding-resistance, square-wave-on-scope]
"""

from __future__ import annotations

from collections.abc import Iterable

from generator.checks.fault_page import fault
from generator.problems import Problem
from generator.records.kinds.knowledge import FaultCode, Symptom
from generator.records.kinds.work import Test
from generator.records.knowledge_base import KnowledgeBase, Path

NOTHING_TO_TEST = fault("nothing-to-test", __doc__)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each complaint or code without a test for one of its vehicles."""
    found = []
    for symptom in kb.all("symptoms", Symptom):
        tested = {
            vehicle: [
                id_
                for cause in symptom.causes
                if not cause.vehicles or vehicle in cause.vehicles
                for id_ in cause.tests
            ]
            for vehicle in symptom.applies_to
        }
        left = [v for v, ids in tested.items() if not _applies(kb, ids, v)]
        found += _finding(kb, symptom, left, ("causes",))
    for code in kb.all("codes", FaultCode):
        left = [v for v in code.applies_to if not _applies(kb, code.tests, v)]
        found += _finding(kb, code, left, ("tests",))
    return found


def _applies(kb: KnowledgeBase, ids: Iterable[str], vehicle: str) -> bool:
    return any(vehicle in kb.get("tests", id_, Test).applies_to for id_ in ids)


def _finding(
    kb: KnowledgeBase, record: Symptom | FaultCode, left: list[str], path: Path
) -> list[Problem]:
    if not left:
        return []
    return [
        kb.problem(
            NOTHING_TO_TEST, record, path, f"no test here applies to {', '.join(left)}",
            "name a test that does, or take the vehicle out", of_key=True,
        )
    ]  # fmt: skip
