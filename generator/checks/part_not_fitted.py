"""Work on a part that the vehicle does not have.

Wrong: A test, a replacement, a value or a hook-up is for a vehicle to which its part is not
fitted. A test that judges several parts needs one of them on each of its vehicles.

Why: The reader would look for a part that is not there.

Mend: Add the part of that vehicle, or take the vehicle out.

Fails, in replacements/replace-crank-sensor-hall:

    applies_to: [corrie-1-2]

Passes:

    applies_to: [corrie-1-6]
"""

from __future__ import annotations

from collections.abc import Iterable

from generator.checks.fault_page import fault
from generator.problems import Problem
from generator.records.kinds import Record
from generator.records.kinds.things import Component, Spec
from generator.records.kinds.work import Replacement, Test
from generator.records.knowledge_base import KnowledgeBase, Path

PART_NOT_FITTED = fault("part-not-fitted", __doc__)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each part that a vehicle of its record does not have."""
    found = []
    for test in kb.all("tests", Test):
        found += _lacking(kb, test, test.components, test.applies_to, ("components",))
        for index, hookup in enumerate(test.hookups):
            vehicles = hookup.vehicles or test.applies_to
            path = ("hookups", index, "component")
            found += _lacking(kb, test, [hookup.component], vehicles, path)
    for job in kb.all("replacements", Replacement):
        found += _lacking(kb, job, [job.component], job.applies_to, ("component",))
    for spec in kb.all("specs", Spec):
        found += _lacking(kb, spec, [spec.component], spec.applies_to, ("component",))
    return found


def _lacking(
    kb: KnowledgeBase, record: Record, ids: Iterable[str], vehicles: Iterable[str], path: Path
) -> list[Problem]:
    parts = [kb.get("components", id_, Component) for id_ in ids]
    left = [v for v in vehicles if not any(v in part.fitted_to for part in parts)]
    if not left:
        return []
    names = " or ".join(part.id for part in parts)
    return [
        kb.problem(
            PART_NOT_FITTED, record, path, f"{', '.join(left)} has no {names}",
            "add the part of that vehicle, or take the vehicle out",
        )
    ]  # fmt: skip
