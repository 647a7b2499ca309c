"""Properties of plain bands and tabulated curves."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.physics.curves import PlainBand, TabulatedCurve
from generator.physics.domain import OutsideRange

KINDS = st.sampled_from(["linear", "log-linear"])
GAPS = st.lists(st.floats(0.1, 20.0), min_size=1, max_size=8)
NTC = TabulatedCurve(
    [-20.0, 0.0, 20.0, 40.0],
    [15000.0, 6000.0, 2500.0, 1200.0],
    "log-linear",
    "resistance",
    "temperature",
    "°C",
    "ohm",
)


@st.composite
def curves(draw, monotonic=False):
    """A curve of either kind through rows at rising inputs, falling if monotonic."""
    gaps = draw(GAPS)
    x = np.cumsum([0.0, *gaps])
    if monotonic:
        factors = draw(st.lists(st.floats(0.3, 0.95), min_size=len(gaps), max_size=len(gaps)))
        y = 1000.0 * np.cumprod([1.0, *factors])
    else:
        y = draw(st.lists(st.floats(0.1, 1e4), min_size=len(x), max_size=len(x)))
    return TabulatedCurve(tuple(x), tuple(y), draw(KINDS))


@given(curves())
def test_every_row_comes_back_as_printed(curve):
    """At its rows a curve gives exactly the table's values."""
    assert [curve.at(x) for x in curve.x] == list(curve.y)
    assert (curve.at(np.array(curve.x)) == np.array(curve.y)).all()


@given(curves(), st.floats(0.0, 1.0))
def test_between_rows_a_curve_stays_between_their_values(curve, share):
    """No interpolation leaves the span of its two neighbours."""
    x = curve.x[0] + share * (curve.x[-1] - curve.x[0])
    after = min(max(int(np.searchsorted(curve.x, x)), 1), len(curve.x) - 1)
    ends = sorted((curve.y[after - 1], curve.y[after]))
    assert ends[0] * (1 - 1e-9) <= curve.at(x) <= ends[1] * (1 + 1e-9)


@given(curves(monotonic=True), st.floats(0.0, 1.0))
def test_a_falling_curve_is_inverted(curve, share):
    """Where a curve only falls, its inverse gives the input back."""
    assert curve.rising is False
    x = curve.x[0] + share * (curve.x[-1] - curve.x[0])
    value = min(max(curve.at(x), curve.y[-1]), curve.y[0])
    assert curve.inverse(value) == pytest.approx(x, abs=1e-6 * curve.x[-1])


@given(curves(), st.floats(0.0, 1.0), st.floats(0.0, 1.0), st.floats(-1.0, 1.0))
def test_the_band_takes_in_what_lies_between(curve, middle, width, share):
    """Any input within its tolerance gives a value in the band, also where the curve turns."""
    span = curve.x[-1] - curve.x[0]
    x = curve.x[0] + span * (0.25 + 0.5 * middle)
    tolerance = 0.249 * span * width
    low, nominal, high = curve.band(x, tolerance, 0.05)
    assert low <= nominal <= high
    there = curve.at(x + share * tolerance)
    assert low * (1 - 1e-9) <= 0.95 * there and 1.05 * there <= high * (1 + 1e-9)


def test_logarithmic_reading_runs_below_the_straight_one():
    """Between two rows the geometric mean lies below the arithmetic one."""
    straight = TabulatedCurve(NTC.x, NTC.y)
    assert NTC.at(10.0) == pytest.approx((6000.0 * 2500.0) ** 0.5)
    assert straight.at(10.0) == pytest.approx(4250.0)


def test_it_refuses_outside_its_ends():
    """One degree beyond an end is an error that names the quantity, not a number."""
    for temp_c in (-21.0, 41.0, float("nan")):
        with pytest.raises(OutsideRange, match="temperature"):
            NTC.at(temp_c)
    with pytest.raises(OutsideRange, match="resistance"):
        NTC.inverse(20e3)
    with pytest.raises(OutsideRange, match="temperature"):
        NTC.band(39.0, 2.0)
    with pytest.raises(OutsideRange, match="tolerance"):
        NTC.band(20.0, 2.0, 1.5)


def test_a_turning_curve_has_no_inverse():
    """A value that belongs to two inputs is refused rather than guessed."""
    with pytest.raises(ValueError, match="turns"):
        TabulatedCurve([0.0, 1.0, 2.0], [1.0, 3.0, 2.0]).inverse(2.5)
    with pytest.raises(ValueError, match="turns"):
        TabulatedCurve([0.0, 1.0], [1.0, 1.0]).inverse(1.0)
    assert TabulatedCurve([0.0, 1.0], [1.0, 3.0]).inverse(2.0) == pytest.approx(0.5)


@pytest.mark.parametrize(
    ("x", "y", "kind", "fault"),
    [
        ([0.0], [1.0], "linear", "rows"),
        ([0.0, 0.0], [1.0, 2.0], "linear", "step of input"),
        ([1.0, 0.0], [1.0, 2.0], "linear", "step of input"),
        ([0.0, 1.0], [1.0, 0.0], "log-linear", "value"),
        ([0.0, 1.0], [1.0, float("nan")], "linear", "value"),
        ([0.0, 1.0], [1.0], "linear", "2 inputs but 1 values"),
        ([0.0, 1.0], [1.0, 2.0], "cubic", "cubic"),
    ],
)
def test_a_table_that_is_none_is_refused(x, y, kind, fault):
    """Too few rows, rows out of order, bad values and unknown readings are errors."""
    with pytest.raises(ValueError, match=fault):
        TabulatedCurve(x, y, kind)


def test_floats_stay_floats_and_arrays_stay_arrays():
    """One number in gives one Python float out; an array gives an array."""
    assert type(NTC.at(20)) is float and type(NTC.at(21)) is float
    assert type(NTC.inverse(2500)) is float
    assert NTC.at(np.array([0.0, 30.0])).shape == (2,)
    assert all(limit.shape == (2,) for limit in NTC.band(np.array([0.0, 30.0]), 5.0))
    assert all(type(limit) is float for limit in NTC.band(0, 5.0))


def test_a_plain_band_holds_its_limits():
    """Limits belong to the band, an open side takes everything, order is checked."""
    assert PlainBand(1.0, 2.0).contains(2.0) and not PlainBand(1.0, 2.0).contains(2.0000001)
    assert PlainBand(None, 0.2).contains(-5.0) and PlainBand(0.2, None).limits()[1] == float("inf")
    assert not PlainBand(1.0, 2.0).contains(float("nan"))
    with pytest.raises(ValueError, match="at least one limit"):
        PlainBand(None, None)
    with pytest.raises(OutsideRange, match="high limit"):
        PlainBand(2.0, 1.0)
    with pytest.raises(OutsideRange, match="nominal value"):
        PlainBand(1.0, 2.0, 3.0)
