"""Properties of thermistor curves and bands."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.physics.domain import OutsideRange
from generator.physics.thermistors import (
    Beta,
    SteinhartHart,
    ThermistorCurve,
    beta_from_points,
    steinhart_hart_fit,
    thermistor_band,
    thermistor_band_from_curves,
)

POINTS = [(-10.0, 9400.0), (20.0, 2500.0), (80.0, 327.0)]
FIT = steinhart_hart_fit(POINTS)
# Three points on an exact beta curve make c vanish but for rounding; a bent one makes it negative.
BETA = Beta(2500.0, 3500.0, 20.0, -10.0, 80.0)
BENT = SteinhartHart(8.85e-4, 2.72e-4, -4.4e-8, 0.0, 40.0)
STRAIGHT = SteinhartHart(1.2e-3, 2.8e-4, 0.0, -10.0, 80.0)
CURVES = st.sampled_from([FIT, BETA, BENT, STRAIGHT])


def inside(curve: ThermistorCurve, share: float) -> float:
    """A temperature at a share of the curve's range, ends included."""
    return curve.low_c + share * (curve.high_c - curve.low_c)


@given(CURVES, st.floats(0.0, 1.0), st.floats(0.0, 1.0))
def test_resistance_falls_with_temperature(curve, first, second):
    """A warmer thermistor never has the higher resistance."""
    low_c, high_c = sorted((inside(curve, first), inside(curve, second)))
    assert curve.ohm(low_c) >= curve.ohm(high_c)


@given(CURVES, st.floats(0.0, 1.0))
def test_the_inverse_finds_the_temperature_back(curve, share):
    """Temperature to resistance and back is the identity, for every sign of the cubic term."""
    temp_c = inside(curve, share)
    assert curve.temp_c(curve.ohm(temp_c)) == pytest.approx(temp_c, abs=1e-6)


@given(
    st.floats(2000.0, 5000.0),
    st.floats(100.0, 1e5),
    st.lists(st.integers(-30, 120), min_size=3, max_size=3, unique=True),
)
def test_a_fit_goes_through_its_points(beta_k, ref_ohm, temps_c):
    """Whatever the points, in whatever order, the fitted curve passes through all three."""
    source = Beta(ref_ohm, beta_k, 25.0, -40.0, 130.0)
    points = [(float(t), source.ohm(float(t))) for t in temps_c]
    fit = steinhart_hart_fit(points)
    assert (fit.low_c, fit.high_c) == (min(temps_c), max(temps_c))
    for temp_c, ohm in points:
        assert fit.ohm(temp_c) == pytest.approx(ohm, rel=1e-6)


@given(CURVES, st.floats(0.1, 0.9), st.floats(0.0, 0.5), st.floats(0.0, 3.0))
def test_the_band_contains_its_nominal_and_its_corners(curve, share, tolerance, spread_k):
    """Limits contain the nominal and are the extremes over part and temperature."""
    temp_c = inside(curve, share)
    low, nominal, high = thermistor_band(curve, temp_c, tolerance, spread_k)
    corners = [
        curve.ohm(t) * k
        for t in (temp_c - spread_k, temp_c, temp_c + spread_k)
        for k in (1 - tolerance, 1 + tolerance)
    ]
    assert low <= nominal <= high
    assert low == pytest.approx(min(corners)) and high == pytest.approx(max(corners))


def test_printed_limits_make_their_own_curves():
    """With curves of its own low and high values, a band gives those values back."""
    low_fit = steinhart_hart_fit([(-10.0, 8260.0), (20.0, 2280.0), (80.0, 290.0)])
    high_fit = steinhart_hart_fit([(-10.0, 10_560.0), (20.0, 2720.0), (80.0, 364.0)])
    low, nominal, high = thermistor_band_from_curves((low_fit, FIT, high_fit), 20.0)
    assert (low, nominal, high) == pytest.approx((2280.0, 2500.0, 2720.0))
    wide = thermistor_band_from_curves((low_fit, FIT, high_fit), 20.0, 2.0)
    assert wide[0] < low and wide[1] == nominal and wide[2] > high


def test_a_fit_holds_where_it_is_told_to_and_no_further():
    """A fit holds between its outer points; only the caller can widen it."""
    wider = steinhart_hart_fit(POINTS, beyond_k=10.0)
    assert wider.ohm(90.0) < FIT.ohm(80.0)
    with pytest.raises(OutsideRange):
        FIT.ohm(80.1)
    with pytest.raises(OutsideRange):
        wider.ohm(90.1)


def test_a_resistance_rounded_at_the_end_of_a_table_still_reads():
    """The inverse lets the last printed digit pass at the ends, and not a kelvin."""
    assert FIT.temp_c(FIT.ohm(80.0) * 0.9999) == pytest.approx(80.0, abs=0.05)
    with pytest.raises(OutsideRange):
        FIT.temp_c(FIT.ohm(80.0) * 0.97)
    with pytest.raises(OutsideRange):
        BETA.temp_c(BETA.ohm(-10.0) * 1.03)


@pytest.mark.parametrize(
    "points",
    [
        [(0.0, 1000.0), (20.0, 500.0)],
        [(0.0, 1000.0), (20.0, 1100.0), (40.0, 500.0)],
        [(0.0, 1000.0), (0.0, 900.0), (40.0, 500.0)],
        [(0.0, 1000.0), (20.0, 1000.0), (40.0, 500.0)],
    ],
)
def test_points_that_make_no_thermistor_are_refused(points):
    """Too few points, a rise, a repeat and a flat are all refused."""
    with pytest.raises(ValueError, match=r"three points|fall"):
        steinhart_hart_fit(points)


@pytest.mark.parametrize(
    ("a", "b", "c"),
    [(1e-3, -2e-4, 1e-7), (1e-3, 0.0, 0.0), (1.2e-3, 2.8e-4, -4e-6), (1e-3, 1e-6, -1e-6)],
)
def test_coefficients_that_make_no_thermistor_are_refused(a, b, c):
    """Coefficients under which resistance does not fall all the way are refused at once."""
    with pytest.raises(ValueError, match="fall with temperature"):
        SteinhartHart(a, b, c, -10.0, 80.0)


@pytest.mark.parametrize(
    "call",
    [
        lambda: Beta(1e4, 50.0),
        lambda: Beta(0.0, 3500.0),
        lambda: Beta(1e4, 3500.0, 10.0),
        lambda: Beta(1e4, 3500.0).ohm(0.0),
        lambda: SteinhartHart(1.2e-3, 2.8e-4, 1e-7, 80.0, -10.0),
        lambda: beta_from_points((25.0, 1000.0), (25.0, 500.0)),
        lambda: beta_from_points((25.0, 1000.0), (85.0, 5000.0)),
        lambda: thermistor_band(FIT, 79.0, 0.1, 2.0),
        lambda: thermistor_band(FIT, 20.0, 1.5),
        lambda: FIT.ohm(np.array([20.0, float("nan")])),
        lambda: steinhart_hart_fit(POINTS, beyond_k=500.0),
    ],
)
def test_beyond_the_range_is_an_error(call):
    """Each quantity out of range raises."""
    with pytest.raises(OutsideRange):
        call()


@pytest.mark.parametrize("curve", [FIT, BETA, BENT, STRAIGHT])
def test_floats_stay_floats_and_arrays_stay_arrays(curve):
    """One number in gives one Python float out; an array gives an array."""
    assert type(curve.ohm(20)) is float and type(curve.temp_c(curve.ohm(20.0))) is float
    assert curve.ohm(np.array([10.0, 20.0])).shape == (2,)
    assert all(type(limit) is float for limit in thermistor_band(curve, 20.0, 0.1, 1.0))
