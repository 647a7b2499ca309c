"""Properties of platinum sensors."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.physics.domain import OutsideRange
from generator.physics.platinum import (
    CURVES,
    platinum_band,
    platinum_ohm,
    platinum_temp_c,
    platinum_tolerance_k,
)

NAMES = st.sampled_from(sorted(CURVES))
SHARES = st.floats(0.0, 1.0)


def inside(name: str, share: float) -> float:
    """A temperature at a share of the curve's range, ends included."""
    curve = CURVES[name]
    return curve.low_c + share * (curve.high_c - curve.low_c)


@given(NAMES, SHARES, SHARES)
def test_resistance_rises_with_temperature(name, first, second):
    """A hotter platinum sensor never has the lower resistance."""
    low_c, high_c = sorted((inside(name, first), inside(name, second)))
    assert platinum_ohm(low_c, 200.0, name) <= platinum_ohm(high_c, 200.0, name)


@given(NAMES, SHARES, st.sampled_from([100.0, 200.0, 1000.0]))
def test_the_inverse_finds_the_temperature_back(name, share, r0_ohm):
    """Temperature to resistance and back is the identity, across 0 °C too."""
    temp_c = inside(name, share)
    there = platinum_ohm(temp_c, r0_ohm, name)
    assert platinum_temp_c(there, r0_ohm, name) == pytest.approx(temp_c, abs=1e-7)


@given(st.floats(-90.0, 440.0), st.floats(0.0, 5.0))
def test_a_better_class_lies_within_a_worse_one(temp_c, spread_k):
    """Class A's limits lie within class B's, and both contain the nominal."""
    a_low, nominal, a_high = platinum_band(temp_c, 100.0, "A", spread_k)
    b_low, _, b_high = platinum_band(temp_c, 100.0, "B", spread_k)
    assert b_low < a_low < nominal < a_high < b_high
    assert nominal == platinum_ohm(temp_c, 100.0)


def test_the_band_runs_from_the_cold_end_to_the_warm_end():
    """The limits are the curve's own values at temperature, spread and class taken together."""
    low, _, high = platinum_band(200.0, 100.0, "B", 5.0)
    assert low == pytest.approx(platinum_ohm(195.0 - (0.30 + 0.005 * 195.0), 100.0))
    assert high == pytest.approx(platinum_ohm(205.0 + (0.30 + 0.005 * 205.0), 100.0))


def test_the_curves_part_where_it_hurts():
    """At 850 °C the exhaust curve lies about 15 K below the standard one: the record must say."""
    ohm = platinum_ohm(850.0, 200.0, "tcr-3770")
    assert 850.0 - platinum_temp_c(ohm, 200.0) > 15.0


@pytest.mark.parametrize(
    ("call", "error"),
    [
        (lambda: platinum_ohm(851.0, 100.0), OutsideRange),
        (lambda: platinum_ohm(-201.0, 100.0), OutsideRange),
        (lambda: platinum_ohm(-1.0, 200.0, "tcr-3770"), OutsideRange),
        (lambda: platinum_ohm(20.0, 0.0), OutsideRange),
        (lambda: platinum_temp_c(391.0, 100.0), OutsideRange),
        (lambda: platinum_temp_c(10.0, 100.0), OutsideRange),
        (lambda: platinum_tolerance_k(450.1, "A"), OutsideRange),
        (lambda: platinum_tolerance_k(-100.1, "A"), OutsideRange),
        (lambda: platinum_tolerance_k(-196.1, "B"), OutsideRange),
        (lambda: platinum_tolerance_k(600.1, "C"), OutsideRange),
        (lambda: platinum_tolerance_k(250.1, "AA"), OutsideRange),
        (lambda: platinum_band(440.0, 100.0, "A", 20.0), OutsideRange),
        (lambda: platinum_band(20.0, 100.0, "A", -1.0), OutsideRange),
        (lambda: platinum_ohm(20.0, 100.0, "tcr-9999"), ValueError),
        (lambda: platinum_tolerance_k(20.0, "Z"), ValueError),
    ],
)
def test_beyond_the_range_is_an_error(call, error):
    """Each quantity out of range, and each unknown name, raises."""
    with pytest.raises(error):
        call()


def test_floats_stay_floats_and_arrays_stay_arrays():
    """One number in gives one Python float out; an array gives an array."""
    assert type(platinum_ohm(25, 100)) is float and type(platinum_temp_c(110, 100)) is float
    assert type(platinum_tolerance_k(25)) is float
    assert platinum_ohm(np.array([-10.0, 10.0]), 100.0).shape == (2,)
    assert all(type(limit) is float for limit in platinum_band(25.0, 100.0))
