"""An outcome whose reading no value of the test measures."""

from __future__ import annotations

from generator.checks import reading_of_another_quantity
from tests.checks.manuals import edited

TEST = "tests/winding-resistance"
SHORTED = "reading: at most 50 ohm"


def test_volts_in_a_test_of_ohms_are_found() -> None:
    """The finding marks the reading and says what is measured."""
    manual = edited(TEST, SHORTED, "reading: at most 0.5 V")
    (found,) = reading_of_another_quantity.problems(manual.kb)
    assert manual.marked(found) == "at most 0.5 V"
    assert "measures" in found.message
    assert "resistance" in found.message


def test_another_unit_of_the_same_quantity_is_right() -> None:
    """Kilohms are ohms."""
    manual = edited(TEST, SHORTED, "reading: at most 0.05 kohm")
    assert not reading_of_another_quantity.problems(manual.kb)


def test_a_value_of_a_step_counts() -> None:
    """Where only a step names the value, the reading belongs to it."""
    manual = edited(TEST, "specs: [inductive-winding", "specs: [inductive-gap")
    manual = edited(TEST, SHORTED, "reading: at most 0.1 mm", manual)
    assert not reading_of_another_quantity.problems(manual.kb)
