"""An outcome that leads nowhere on one of the test's vehicles."""

from __future__ import annotations

from generator.checks import no_way_on
from tests.checks.manuals import edited

TEST = "tests/codes-stay-away"
WAY = """      - test: hall-supply-under-load
        vehicles: [corrie-1-6]
"""


def test_a_vehicle_that_is_left_out_is_named_at_the_outcome() -> None:
    """Without its way on, the other vehicle's reader stands before the reading."""
    manual = edited(TEST, WAY, "")
    (found,) = no_way_on.problems(manual.kb)
    assert (found.record, manual.marked(found)) == (TEST, "next")
    assert "on corrie-1-6" in found.message
    assert "'A crank code or the complaint is back'" in found.message


def test_work_for_another_vehicle_is_no_way_on() -> None:
    """A way without `vehicles` still holds only where its target applies."""
    manual = edited(TEST, WAY, "      - test: winding-resistance\n")
    assert [f.record for f in no_way_on.problems(manual.kb)] == [TEST]


def test_a_way_for_each_vehicle_is_enough() -> None:
    """Two ways, each for its vehicle, leave nobody standing; so does one for both."""
    assert not no_way_on.problems(edited(TEST, WAY, WAY).kb)
    assert not no_way_on.problems(edited(TEST, WAY, WAY + "      - carry_on: true\n").kb)
