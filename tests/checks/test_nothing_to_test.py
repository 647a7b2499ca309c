"""A complaint or a code that leads to no test on one of its vehicles."""

from __future__ import annotations

from generator.checks import nothing_to_test
from tests.checks.manuals import patched

CAUSES = """causes:
  - name: Inductive crank sensor
    component: crank-sensor-inductive
    weight: 10
    reason: It happens.
    tests: [winding-resistance]
  - name: Battery
    component: battery
    weight: 10
    reason: It happens.
    tests: [{battery}]
    vehicles: [corrie-1-2]
"""
SYMPTOM = "symptoms/long-cranking"


def test_a_cause_on_another_vehicle_is_no_test_on_this_one() -> None:
    """The battery's test would apply, but its cause is said to be on the 1.2 alone."""
    manual = patched(SYMPTOM, CAUSES.format(battery="battery-rest"))
    (found,) = nothing_to_test.problems(manual.kb)
    assert (manual.marked(found), found.message) == ("causes", "no test here applies to corrie-1-6")


def test_a_cause_on_every_vehicle_is_one() -> None:
    """The same cause without its `vehicles` gives the 1.6 something to do."""
    causes = CAUSES.format(battery="battery-rest").replace("    vehicles: [corrie-1-2]\n", "")
    assert not nothing_to_test.problems(patched(SYMPTOM, causes).kb)


def test_a_code_is_asked_too() -> None:
    """A code that both vehicles store needs a test on both."""
    manual = patched("codes/p0337", "tests: [winding-resistance]")
    assert [mark for _, _, mark in manual.found(nothing_to_test.problems)] == ["tests"]
    assert not nothing_to_test.problems(patched("codes/p0337", "tests: [recent-work]").kb)
