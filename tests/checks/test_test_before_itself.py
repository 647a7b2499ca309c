"""Tests that each have to come before the other."""

from __future__ import annotations

from generator.checks import test_before_itself
from tests.checks.manuals import edited


def test_a_circle_of_two_is_found_at_both_ends() -> None:
    """Both `after` that make the circle have a finding; others that lead into it have none."""
    manual = edited("tests/battery-rest", "after: [look-and-wiggle]", "after: [battery-cranking]")
    assert manual.found(test_before_itself.problems) == [
        ("test-before-itself", "tests/battery-cranking", "battery-rest"),
        ("test-before-itself", "tests/battery-rest", "battery-cranking"),
    ]


def test_a_test_after_itself_is_found() -> None:
    """The smallest circle is one."""
    manual = edited("tests/battery-rest", "after: [look-and-wiggle]", "after: [battery-rest]")
    (found,) = test_before_itself.problems(manual.kb)
    assert found.message == "battery-rest has to come before itself"


def test_two_ways_to_one_earlier_test_are_no_circle() -> None:
    """Coming after the same test by two ways is only sense."""
    old = "after: [identify-sensor-type, hall-supply-under-load]"
    new = "after: [save-codes, identify-sensor-type, hall-supply-under-load]"
    assert not test_before_itself.problems(edited("tests/hall-ground-under-load", old, new).kb)
