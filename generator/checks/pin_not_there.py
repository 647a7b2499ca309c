"""A lead on a pin that the connector does not have.

Wrong: A hook-up puts a lead on a pin number that the part's connector does not list.

Why: A probe would go into the wrong cavity, or be forced where there is none.

Mend: Correct the number, or complete the connector of the part.

Fails, in tests/inductive-input-bias:

    hookups:
      - instrument: multimeter
        setting: DC volts
        component: crank-sensor-inductive
        side: harness
        plugged: false
        leads:
          - colour: red
            to: signal wire
            pin: 7

Passes:

    hookups:
      - instrument: multimeter
        setting: DC volts
        component: crank-sensor-inductive
        side: harness
        plugged: false
        leads:
          - colour: red
            to: signal wire
            pin: 1
"""

from __future__ import annotations

from dataclasses import replace

from generator.checks.fault_page import fault
from generator.checks.places import second
from generator.problems import Problem
from generator.records.kinds.things import Component
from generator.records.kinds.work import Test
from generator.records.knowledge_base import KnowledgeBase

PIN_NOT_THERE = fault("pin-not-there", __doc__, excusable=False)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each lead on a pin that is not there."""
    found = []
    for test in kb.all("tests", Test):
        for index, hookup in enumerate(test.hookups):
            part = kb.get("components", hookup.component, Component)
            known = sorted(pin.pin for pin in part.connector.pins) if part.connector else []
            for number, lead in enumerate(hookup.leads):
                if lead.pin is None or lead.pin in known:
                    continue
                made = kb.problem(
                    PIN_NOT_THERE, test, ("hookups", index, "leads", number, "pin"),
                    f"{part.id} has no pin {lead.pin}",
                    f"its pins are {', '.join(map(str, known)) or 'not recorded'}",
                )  # fmt: skip
                at = second(kb, part, ("connector", "pins"), "its pins", of_key=True)
                found.append(replace(made, second=at))
    return found
