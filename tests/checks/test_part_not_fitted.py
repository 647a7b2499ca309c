"""Work on a part that the vehicle does not have."""

from __future__ import annotations

import pytest

from generator.checks import part_not_fitted
from tests.checks.manuals import edited

BOTH = "applies_to: [corrie-1-2, corrie-1-6]"


@pytest.mark.parametrize(
    ("record", "old", "new", "marked"),
    [
        ("replacements/replace-crank-sensor-hall", "applies_to: [corrie-1-6]", BOTH,
         "crank-sensor-hall"),
        ("specs/hall-gap", "applies_to: [corrie-1-6]", BOTH, "trigger-wheel-36-1"),
        ("tests/battery-rest", "components: [battery]", "components: [crank-sensor-hall]",
         "[crank-sensor-hall]"),
        ("tests/inductive-input-bias", "    component: crank-sensor-inductive",
         "    component: crank-sensor-hall", "crank-sensor-hall"),
    ],
)  # fmt: skip
def test_each_kind_of_work_is_found_at_the_part(
    record: str, old: str, new: str, marked: str
) -> None:
    """A replacement, a value, a test and a hook-up each have the finding at the part."""
    manual = edited(record, old, new)
    assert (("part-not-fitted", record, marked)) in manual.found(part_not_fitted.problems)


def test_one_part_of_several_is_enough() -> None:
    """A test that judges the sensor of either engine is right on both."""
    new = "components: [crank-sensor-hall, crank-sensor-inductive]"
    manual = edited("tests/battery-rest", "components: [battery]", new)
    assert not part_not_fitted.problems(manual.kb)
