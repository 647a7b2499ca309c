"""A verdict that rests on a plausibility band."""

from __future__ import annotations

from generator.checks import verdict_from_band
from tests.checks.manuals import edited

TEST = "tests/winding-resistance"
SPECS = "specs: [inductive-winding"


def test_each_verdict_by_limits_is_found() -> None:
    """Low and high condemn; open and shorted need no limits and are left alone."""
    manual = edited(TEST, SPECS, "specs: [inductive-winding-band")
    found = manual.found(verdict_from_band.problems)
    assert found == [("verdict-from-band", TEST, "condemns")] * 2


def test_a_vehicle_without_its_own_value_is_named() -> None:
    """A value of the 1.6 gives no verdict on the 1.2, where only the band holds."""
    test, specs = "tests/battery-cranking", "specs: [battery-cranking]"
    manual = edited(test, specs, "specs: [hall-supply, cranking-speed-band]")
    (found,) = verdict_from_band.problems(manual.kb)
    assert "on corrie-1-2 " in found.message


def test_a_vehicle_without_any_value_is_another_fault() -> None:
    """Where not even a band holds, no-value-for-vehicle says so and this rule is silent."""
    manual = edited("tests/battery-cranking", "specs: [battery-cranking]", "specs: [hall-supply]")
    assert not verdict_from_band.problems(manual.kb)


def test_a_band_without_a_verdict_is_right() -> None:
    """Live data held against a band may say neither, as the demonstration does."""
    manual = edited("tests/speed-on-scan-tool", "verdict: neither", "verdict: clears")
    assert [mark for _, _, mark in manual.found(verdict_from_band.problems)] == ["clears"]
    assert not verdict_from_band.problems(edited(TEST, "minutes: ", "minutes: 1").kb)
