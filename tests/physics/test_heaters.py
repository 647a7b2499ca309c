"""Properties of self-regulating heaters."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.physics.domain import OutsideRange
from generator.physics.heaters import (
    heater_current_band,
    initial_current_a,
    settled_current_a,
    settled_ohm,
)


@given(st.floats(6.0, 30.0), st.floats(0.1, 50.0), st.floats(1.0, 20.0))
def test_current_and_resistance_settle_together(supply_v, cold_ohm, ratio):
    """Settled current times settled resistance is the supply (Ohm's law)."""
    settled = settled_current_a(initial_current_a(supply_v, cold_ohm), ratio)
    assert settled * settled_ohm(cold_ohm, ratio) == pytest.approx(supply_v)
    assert settled <= initial_current_a(supply_v, cold_ohm)


@given(st.floats(9.0, 15.0), st.floats(0.2, 5.0), st.floats(1.0, 10.0), st.floats(0.0, 0.3))
def test_the_band_contains_its_nominal_and_its_corners(supply_v, cold_ohm, ratio, share):
    """Limits contain the nominal and are the extremes over all corners."""
    supply = tuple(supply_v * k for k in (1 - share, 1, 1 + share))
    cold = tuple(cold_ohm * k for k in (1 - share, 1, 1 + share))
    ratios = (ratio, ratio * (1 + share), ratio * (1 + 2 * share))
    low, nominal, high = heater_current_band(supply, cold, ratios)
    corners = [v / r / k for v in supply for r in cold for k in ratios]
    assert low <= nominal <= high
    assert low == pytest.approx(min(corners)) and high == pytest.approx(max(corners))


def test_without_a_ratio_the_band_is_that_of_the_first_current():
    """Left at ones, the ratio gives the current at switching on."""
    band = heater_current_band((11.0, 12.0, 13.0), (0.5, 0.6, 0.65))
    assert band == pytest.approx((11.0 / 0.65, 20.0, 26.0))


@pytest.mark.parametrize(
    ("call", "name"),
    [
        (lambda: initial_current_a(37.0, 1.0), "supply"),
        (lambda: initial_current_a(12.0, 0.0), "cold resistance"),
        (lambda: settled_current_a(10.0, 0.9), "current ratio"),
        (lambda: settled_current_a(-1.0, 2.0), "initial current"),
        (lambda: settled_ohm(1.0, 21.0), "current ratio"),
    ],
)
def test_beyond_the_range_is_an_error(call, name):
    """Each quantity out of range raises, and the error names it."""
    with pytest.raises(OutsideRange) as caught:
        call()
    assert caught.value.name == name


def test_floats_stay_floats():
    """One number in gives one Python float out."""
    assert type(initial_current_a(12, 1)) is float
    assert type(settled_current_a(12, 2)) is float and type(settled_ohm(1, 2)) is float
