"""Set-up that two tests share, read off their steps."""

from __future__ import annotations

from typing import Any

import pytest

from generator.diagnosis import setups
from generator.diagnosis.policy import Exact
from generator.diagnosis.setups import (
    BATTERY_MINUTES,
    CONNECTOR_MINUTES,
    COVER_MINUTES,
    LIFT_MINUTES,
)
from generator.diagnosis.state import Board
from generator.diagnosis.survey import survey
from tests.diagnosis.test_order import a_test, complaint
from tests.hazards.build import manual


def steps(*acts: str) -> list[dict[str, Any]]:
    """Give steps from "action" or "action part"."""
    found = []
    for act in acts:
        action, _, part = act.partition(" ")
        step = {"do": "Do it.", "action": action, "place": "engine_bay"}
        found.append(step | ({"acts_on": [part]} if part else {}))
    return found


BATTERY, LIFT, PLUG, COVER = (
    "disconnect_battery", "raise_on_lift", "unplug sensor", "remove fan-guard",
)  # fmt: skip


@pytest.mark.parametrize(
    ("acts", "taken", "left"),
    [
        (["disconnect_battery", "measure sensor", "connect_battery"], {BATTERY}, {BATTERY}),
        (
            ["raise_on_lift", "remove fan-guard", "measure sensor", "fit fan-guard",
             "lower_to_ground"],
            {LIFT, COVER}, {LIFT, COVER},
        ),
        # It is needed live first, so it cannot begin with the battery off; it may end so.
        (["key_on", "disconnect_battery", "measure sensor", "connect_battery"], set(), {BATTERY}),
        # It is cranked at the end, so it cannot end with the sensor unplugged; it may begin so.
        (["unplug sensor", "measure sensor", "plug sensor", "crank sensor"], {PLUG}, set()),
        # What is never undone is no set-up but a state, which the record speaks of elsewhere.
        (["disconnect_battery", "measure sensor"], set(), set()),
        # Another part is another set-up.
        (["unplug sensor", "measure sensor", "plug fan-guard"], set(), set()),
    ],
)  # fmt: skip
def test_what_a_test_takes_over_and_leaves(
    acts: list[str], taken: set[str], left: set[str]
) -> None:
    """Set-up before the first act that might need the vehicle whole can be found done already."""
    test = a_test("one", 5, steps=steps(*acts))
    assert setups.takes(test).keys() == taken
    assert setups.leaves(test).keys() == left


def test_the_minutes_are_the_stated_judgement() -> None:
    """Lift over battery over connector: the figures rank as the work does."""
    acts = ["raise_on_lift", "disconnect_battery", "unplug sensor", "remove fan-guard",
            "measure sensor", "fit fan-guard", "plug sensor", "connect_battery",
            "lower_to_ground"]  # fmt: skip
    found = setups.takes(a_test("one", 5, steps=steps(*acts)))
    assert found == {
        LIFT: LIFT_MINUTES, BATTERY: BATTERY_MINUTES, PLUG: CONNECTOR_MINUTES, COVER: COVER_MINUTES,
    }  # fmt: skip
    assert LIFT_MINUTES > BATTERY_MINUTES > CONNECTOR_MINUTES > 0


def test_set_up_in_the_records_reaches_the_order() -> None:
    """Two tests that both raise the vehicle save the lift between them, up to half of the second.

    By hand: 20, then 20 less the lift, paid by half of the vehicles.
    """
    lifted = steps("raise_on_lift", "measure sensor", "lower_to_ground")
    symptom = complaint({"weight": 1, "tests": ["a"]}, {"weight": 1, "tests": ["b"]})
    kb = manual(symptom, a_test("look-first", 1),
                a_test("a", 20, steps=lifted), a_test("b", 20, steps=lifted))  # fmt: skip
    found = survey(kb, symptom.causes, [0.5, 0.5], "petrol-car", ())
    assert Exact(Board(found.search)).minutes == pytest.approx(20 + (20 - LIFT_MINUTES) / 2)
