"""A test or a job that applies to a vehicle for which its values, leads or parts do not exist.

The page would ask for a reading and give no figure to hold it against.
"""

from __future__ import annotations

from generator.problems import Problem, code
from generator.records.kinds.things import Component, Spec
from generator.records.kinds.work import Replacement, Test
from generator.records.knowledge_base import KnowledgeBase

NO_VALUE_FOR_VEHICLE = code(
    "no-value-for-vehicle",
    "On that vehicle the reader would have a reading and nothing to hold it against.",
)
PART_NOT_FITTED = code(
    "part-not-fitted",
    "The reader would look for a part that the vehicle does not have.",
)
PIN_NOT_THERE = code(
    "pin-not-there",
    "A probe would go into a pin that the connector does not have.",
)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each vehicle a job names but cannot serve."""
    found: list[Problem] = []
    for test in kb.all("tests", Test):
        found.extend(_values(kb, test))
        found.extend(_pins(kb, test))
        parts = [kb.get("components", id_, Component) for id_ in test.components]
        for vehicle in test.applies_to:
            if not any(vehicle in part.fitted_to for part in parts):
                found.append(
                    kb.problem(
                        PART_NOT_FITTED, test, ("components",),
                        f"none of these parts is fitted to {vehicle}",
                        "add the part of that vehicle, or take the vehicle out", of_key=True,
                    )
                )  # fmt: skip
    for job in kb.all("replacements", Replacement):
        part = kb.get("components", job.component, Component)
        lacking = [v for v in job.applies_to if v not in part.fitted_to]
        if lacking:
            found.append(
                kb.problem(
                    PART_NOT_FITTED, job, ("component",),
                    f"{part.id} is not fitted to {lacking[0]}", "take the vehicle out",
                )
            )  # fmt: skip
    return found


def _values(kb: KnowledgeBase, test: Test) -> list[Problem]:
    if not test.specs:
        return []
    covered = {v for id_ in test.specs for v in kb.get("specs", id_, Spec).applies_to}
    return [
        kb.problem(
            NO_VALUE_FOR_VEHICLE, test, ("specs",), f"no value here holds for {vehicle}",
            "add a spec of that vehicle, or take the vehicle out", of_key=True,
        )
        for vehicle in test.applies_to
        if vehicle not in covered
    ]  # fmt: skip


def _pins(kb: KnowledgeBase, test: Test) -> list[Problem]:
    found = []
    for index, hookup in enumerate(test.hookups):
        connector = kb.get("components", hookup.component, Component).connector
        known = {pin.pin for pin in connector.pins} if connector else set()
        for number, lead in enumerate(hookup.leads):
            if lead.pin is not None and lead.pin not in known:
                found.append(
                    kb.problem(
                        PIN_NOT_THERE, test, ("hookups", index, "leads", number, "pin"),
                        f"{hookup.component} has no pin {lead.pin}",
                        f"its pins are {', '.join(map(str, sorted(known))) or 'not recorded'}",
                    )
                )  # fmt: skip
    return found
