"""A reading or a setting for which one vehicle has no value.

Wrong: The record applies to a vehicle, and none of the values it names, for the test as a whole
or for one step, holds for that vehicle.

Why: On that vehicle the reader would have a reading and nothing to hold it against.

Mend: Add the value of that vehicle, or take the vehicle out.

Fails, in tests/control-unit-feed:

    specs: [hall-ground-drop]

Passes:

    specs: [control-unit-feed-loss]
"""

from __future__ import annotations

from collections.abc import Iterable

from generator.checks.fault_page import fault
from generator.hazards.findings import jobs_of
from generator.problems import Problem
from generator.records.kinds.things import Spec
from generator.records.kinds.work import Job, Test
from generator.records.knowledge_base import KnowledgeBase, Path

NO_VALUE_FOR_VEHICLE = fault("no-value-for-vehicle", __doc__)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each list of values that leaves out a vehicle of its job."""
    found = []
    for job in jobs_of(kb):
        if isinstance(job, Test):
            found += _left_out(kb, job, job.specs, ("specs",))
        for index, step in enumerate(job.steps):
            found += _left_out(kb, job, step.specs, ("steps", index, "spec"))
    return found


def _left_out(kb: KnowledgeBase, job: Job, ids: Iterable[str], path: Path) -> list[Problem]:
    covered = {v for id_ in ids for v in kb.get("specs", id_, Spec).applies_to}
    left = [v for v in job.applies_to if v not in covered]
    if not covered or not left:
        return []
    return [
        kb.problem(
            NO_VALUE_FOR_VEHICLE, job, path, f"no value here holds for {', '.join(left)}",
            "add a spec of that vehicle, or take the vehicle out", of_key=True,
        )
    ]  # fmt: skip
