"""Properties of dividers and loaded readings."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.physics.dividers import (
    divider_band,
    divider_lower_ohm,
    divider_v,
    lead_corrected_ohm,
    lead_drop_v,
    metered_v,
)
from generator.physics.domain import OutsideRange

OHMS = st.floats(1.0, 1e6)
INF = float("inf")


@given(OHMS, OHMS, OHMS)
def test_the_tap_rises_with_the_lower_arm(upper_ohm, first_ohm, second_ohm):
    """More resistance below gives more voltage, always between ground and supply."""
    low_ohm, high_ohm = sorted((first_ohm, second_ohm))
    low, high = (divider_v(5.0, upper_ohm, lower) for lower in (low_ohm, high_ohm))
    assert 0.0 <= low <= high <= 5.0


@given(OHMS, st.floats(1.0, 1e6))
def test_the_inverse_finds_the_lower_arm_back(upper_ohm, lower_ohm):
    """Resistance to voltage and back is the identity."""
    volts = divider_v(5.0, upper_ohm, lower_ohm)
    assert divider_lower_ohm(volts, 5.0, upper_ohm) == pytest.approx(lower_ohm, rel=1e-6)


@given(OHMS, OHMS, OHMS)
def test_a_load_lowers_the_tap_as_thevenin_says(upper_ohm, lower_ohm, load_ohm):
    """A load on the tap reads as a meter of that resistance on the Thévenin source."""
    open_v = divider_v(5.0, upper_ohm, lower_ohm)
    source_ohm = upper_ohm * lower_ohm / (upper_ohm + lower_ohm)
    loaded = divider_v(5.0, upper_ohm, lower_ohm, load_ohm)
    assert loaded == pytest.approx(metered_v(open_v, source_ohm, load_ohm), rel=1e-9)


def test_open_and_shorted_sensors_read_supply_and_ground():
    """An open lower arm reads the supply, a shorted one nothing: no division by nought."""
    assert divider_v(5.0, 2490.0, INF) == 5.0
    assert divider_v(5.0, 2490.0, 0.0) == 0.0
    assert divider_v(5.0, 2490.0, np.array([0.0, 2490.0, INF])).tolist() == [0.0, 2.5, 5.0]


@given(st.floats(4.5, 5.5), OHMS, OHMS, st.floats(0.0, 0.5))
def test_the_band_contains_its_nominal_and_its_corners(supply_v, upper_ohm, lower_ohm, share):
    """Limits contain the nominal and are the extremes over all corners."""
    upper = (upper_ohm * (1 - share), upper_ohm, upper_ohm * (1 + share))
    lower = (lower_ohm * (1 - share), lower_ohm, lower_ohm * (1 + share))
    supply = (supply_v * 0.98, supply_v, supply_v * 1.02)
    low, nominal, high = divider_band(supply, upper, lower)
    corners = [divider_v(v, u, lo) for v in supply for u in upper for lo in lower]
    assert low <= nominal <= high
    assert low == pytest.approx(min(corners)) and high == pytest.approx(max(corners))


@given(st.floats(-60.0, 60.0), st.floats(0.0, 1e8))
def test_a_meter_never_shows_more_than_is_there(open_v, source_ohm):
    """A meter's own load can only take from the voltage, and keeps its sign."""
    shown = metered_v(open_v, source_ohm)
    assert abs(shown) <= abs(open_v)
    assert shown * open_v >= 0.0


def test_a_corroded_joint_fools_a_voltmeter_and_not_a_lamp():
    """Through 220 Ω a 10 MΩ meter still shows the supply, while a 6.9 Ω lamp gets nothing."""
    assert metered_v(12.0, 220.0) > 11.99
    assert divider_v(12.0, 220.0, 6.9) < 0.4


@pytest.mark.parametrize(
    ("call", "name"),
    [
        (lambda: divider_v(61.0, 1.0, 1.0), "supply"),
        (lambda: divider_v(5.0, 0.0, 1.0), "upper arm"),
        (lambda: divider_v(5.0, 1.0, -1.0), "lower arm"),
        (lambda: divider_v(5.0, 1.0, 1.0, 0.0), "load"),
        (lambda: divider_lower_ohm(5.0, 5.0, 2490.0), "voltage"),
        (lambda: divider_lower_ohm(-0.1, 5.0, 2490.0), "voltage"),
        (lambda: metered_v(100.0, 1.0), "voltage"),
        (lambda: metered_v(10.0, -1.0), "source resistance"),
        (lambda: lead_corrected_ohm(0.1, 0.2), "reading"),
        (lambda: lead_drop_v(1.0, -1.0), "lead resistance"),
    ],
)
def test_beyond_the_range_is_an_error(call, name):
    """Each quantity out of range raises, and the error names it."""
    with pytest.raises(OutsideRange) as caught:
        call()
    assert caught.value.name == name


def test_floats_stay_floats():
    """One number in gives one Python float out."""
    values = (
        divider_v(5, 1000, 1000),
        divider_lower_ohm(2.5, 5, 1000),
        metered_v(12, 100),
        lead_corrected_ohm(0.9, 0.2),
        lead_drop_v(10, 0.04),
    )
    assert all(type(value) is float for value in values)
