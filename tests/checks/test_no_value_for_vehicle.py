"""A reading or a setting for which one vehicle has no value."""

from __future__ import annotations

from generator.checks import no_value_for_vehicle
from tests.checks.manuals import edited

TEST = "tests/battery-rest"


def test_a_test_whose_values_leave_a_vehicle_out_is_found() -> None:
    """The list of values is marked, and the vehicle named."""
    manual = edited(TEST, "specs: [battery-at-rest]", "specs: [hall-ground-drop]")
    (found,) = no_value_for_vehicle.problems(manual.kb)
    assert (manual.marked(found), found.message) == ("specs", "no value here holds for corrie-1-2")


def test_a_step_is_asked_too() -> None:
    """A step that is done on both vehicles needs its value on both."""
    manual = edited(TEST, "    spec: battery-settle-time", "    spec: hall-gap")
    (found,) = no_value_for_vehicle.problems(manual.kb)
    assert (found.record, manual.marked(found)) == (TEST, "spec")


def test_values_of_one_vehicle_each_are_enough_together() -> None:
    """The 1.2's value and the 1.6's cover both; a step without a value asks for none."""
    manual = edited(TEST, "specs: [battery-at-rest]", "specs: [hall-gap, inductive-gap]")
    assert not no_value_for_vehicle.problems(manual.kb)
