"""A lead on a pin that the connector does not have."""

from __future__ import annotations

from generator.checks import pin_not_there
from tests.checks.manuals import edited

TEST = "tests/hall-pull-up"


def test_a_pin_too_many_is_found_with_those_there_are() -> None:
    """The number is marked, the hint lists the pins, and the connector is shown."""
    manual = edited(TEST, "        pin: 2", "        pin: 4")
    (found,) = pin_not_there.problems(manual.kb)
    assert (manual.marked(found), found.hint) == ("4", "its pins are 1, 2, 3")
    assert found.second is not None
    assert found.second.path == "kb_source/components/crank-sensor-hall.yml"


def test_a_part_without_a_connector_has_no_pins() -> None:
    """A battery's post is no pin."""
    text = "        to: positive post of the battery"
    manual = edited("tests/battery-rest", text, text + "\n        pin: 1")
    (found,) = pin_not_there.problems(manual.kb)
    assert found.hint == "its pins are not recorded"


def test_another_pin_that_is_there_is_right() -> None:
    """The rule asks whether the pin is there, not whether it is the right one."""
    assert not pin_not_there.problems(edited(TEST, "        pin: 2", "        pin: 3").kb)
