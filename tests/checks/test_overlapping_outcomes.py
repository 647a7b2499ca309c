"""Two outcomes that take the same reading.

The winding is 860 ohm ± 10 % at 20 °C. Copper's coefficient there is 0.00393 /K (IEC 60028), so
at −20 °C, the coldest row of the table, its least good reading is
774 · (1 − 0.00393 · 40) = 652 ohm, and at 100 °C, the hottest, its largest is
946 · (1 + 0.00393 · 80) = 1243 ohm.
"""

from __future__ import annotations

import pytest

from generator.checks import overlapping_outcomes
from tests.checks.manuals import edited, patched

TEST = "tests/winding-resistance"
SHORTED, OPEN = "    reading: at most 50 ohm", "    reading: at least 10 kohm"


@pytest.mark.parametrize(("shorted", "overlaps"), [(640, False), (660, True), (700, True)])
def test_the_limits_count_at_every_temperature_of_the_table(shorted: int, overlaps: bool) -> None:
    """A "shorted" that a good coil reaches on a cold night is found; one just below is not."""
    manual = edited(TEST, SHORTED, f"    reading: at most {shorted} ohm")
    found = overlapping_outcomes.problems(manual.kb)
    assert bool(found) is overlaps
    assert [manual.marked(f) for f in found] == [f"at most {shorted} ohm"] * overlaps


@pytest.mark.parametrize(("open_", "overlaps"), [(1250, False), (1235, True)])
def test_the_hot_end_counts_too(open_: int, overlaps: bool) -> None:
    """An "open" that a good coil reaches when hot is found once, though several rows show it."""
    manual = edited(TEST, OPEN, f"    reading: at least {open_} ohm")
    assert len(overlapping_outcomes.problems(manual.kb)) == overlaps


def test_two_written_readings_may_meet_and_not_cross() -> None:
    """Sharing an end is no overlap; sharing a stretch is, and the second place is the other."""
    meet = """outcomes:
  - finding: flat_low
    label: No speed
    reading: at most 20 rpm
    verdict: neither
    means: No signal.
    next:
      - carry_on: true
  - finding: low
    label: A low speed
    reading: 20 to 150 rpm
    verdict: neither
    means: A slow engine.
    next:
      - carry_on: true
"""
    speed = "tests/speed-on-scan-tool"
    assert not overlapping_outcomes.problems(patched(speed, meet).kb)
    manual = patched(speed, meet.replace("20 to 150", "15 to 150"))
    (found,) = overlapping_outcomes.problems(manual.kb)
    assert found.second is not None
    assert {manual.marked(found), manual.marked(found.second)} == {
        "at most 20 rpm", "15 to 150 rpm"
    }  # fmt: skip
    assert "17.5 rpm" in found.message, "the middle of what both take"


def test_taking_a_part_of_low_is_no_overlap() -> None:
    """A shorted coil is low as well; the outcome that says so is the more exact one."""
    manual = edited(TEST, SHORTED, "    reading: at most 300 ohm")
    assert not overlapping_outcomes.problems(manual.kb)


def test_a_reading_in_volts_is_not_held_against_ohms() -> None:
    """A test of drop and insulation has two number lines."""
    manual = edited("tests/harness-under-load-hall", "reading: at least 6 V", "reading: 1 to 9 V")
    assert not overlapping_outcomes.problems(manual.kb)
