"""Properties of deciding with an imperfect reading."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.physics.deciding import (
    conformance_probability,
    decision_limits,
    guard_band,
    judge_interval,
    normal_below,
)
from generator.physics.domain import OutsideRange
from generator.physics.meters import MeterAccuracy

INF = float("inf")
READINGS = st.floats(-1e4, 1e4)
WIDTHS = st.floats(1e-3, 1e4)
RISKS = st.floats(0.001, 0.49)


@given(READINGS, st.floats(0.0, 1e4), READINGS, WIDTHS, RISKS)
def test_the_three_probabilities_make_one(reading, u, low, width, risk):
    """Below, inside and above add up to 1 and the verdict is the one that is sure enough."""
    found = judge_interval(reading, u, low, low + width, risk)
    assert found.below + found.inside + found.above == pytest.approx(1.0, abs=1e-12)
    if found.verdict == "cannot_tell":
        assert max(found.below, found.inside, found.above) < 1.0 - risk + 1e-9
        assert found.probability == found.inside
    else:
        assert found.probability >= 1.0 - risk - 1e-9


@given(READINGS, READINGS, WIDTHS)
def test_a_perfect_meter_just_compares(reading, low, width):
    """With no uncertainty the verdict is the plain comparison, limits included."""
    high = low + width
    expected = "low" if reading < low else "high" if reading > high else "in"
    assert judge_interval(reading, 0.0, low, high).verdict == expected


@given(READINGS, st.floats(1e-3, 1e3), READINGS, WIDTHS, RISKS)
def test_mirroring_swaps_low_and_high(reading, u, low, width, risk):
    """Turning the number line round turns the verdict round."""
    mirror = {"low": "high", "high": "low", "in": "in", "cannot_tell": "cannot_tell"}
    found = judge_interval(reading, u, low, low + width, risk)
    mirrored = judge_interval(-reading, u, -(low + width), -low, risk)
    assert mirrored.verdict == mirror[found.verdict]


@given(st.floats(1e-3, 1e3), READINGS, st.floats(0.01, 0.49), st.floats(0.01, 0.49))
def test_a_smaller_risk_never_gives_a_verdict_that_a_larger_one_withholds(u, reading, r_1, r_2):
    """Verdicts only disappear as the accepted risk shrinks, they never change sides."""
    small, large = sorted((r_1, r_2))
    strict = judge_interval(reading, u, -100.0, 100.0, small).verdict
    assert strict in ("cannot_tell", judge_interval(reading, u, -100.0, 100.0, large).verdict)


@given(READINGS, st.floats(1e-3, 1e3), st.floats(1e-3, 1e3), READINGS, WIDTHS)
def test_a_worse_meter_is_never_surer_of_a_reading_inside(reading, u_1, u_2, low, width):
    """For a reading within the limits the probability of conformance falls with uncertainty."""
    good, poor = sorted((u_1, u_2))
    high = low + width
    if low <= reading <= high:
        better = conformance_probability(reading, good, low, high)
        assert conformance_probability(reading, poor, low, high) <= better + 1e-12


@given(st.floats(1e-3, 100.0), RISKS)
def test_one_limit_is_guarded_by_the_guard_band(u, risk):
    """A hair inside the guard is accepted, a hair outside it is not."""
    guard = guard_band(u, risk)
    assert judge_interval(guard + 1e-6 * u, u, 0.0, INF, risk).verdict == "in"
    assert judge_interval(guard - 1e-6 * u, u, 0.0, INF, risk).verdict == "cannot_tell"


def test_an_interval_too_narrow_for_the_meter_is_never_in():
    """Two uncertainties of width: the best reading holds 68 %, so none is accepted at 5 %."""
    limits = decision_limits(-1.0, 1.0, lambda _: 1.0, 0.05)
    assert limits.accept_from is None and limits.accept_to is None
    assert judge_interval(0.0, 1.0, -1.0, 1.0).verdict == "cannot_tell"
    assert judge_interval(0.0, 1.0, -1.0, 1.0).inside == pytest.approx(0.6827, abs=1e-4)


@given(
    st.floats(1.0, 1000.0),
    st.floats(0.01, 0.5),
    st.floats(0.0, 3.0),
    st.floats(0.5, 5.0),
    st.floats(0.005, 0.3),
    st.sampled_from(["both", "low", "high"]),
    st.floats(-3.0, 3.0),
)
def test_the_four_readings_give_the_same_verdicts(
    middle, half_share, percent, counts, risk, sides, place
):
    """Comparing with the decision limits is the same as judging by probability."""
    half = middle * half_share
    low = -INF if sides == "high" else middle - half
    high = INF if sides == "low" else middle + half
    meter = MeterAccuracy(percent, counts, middle / 2000.0)
    limits = decision_limits(low, high, meter.standard_uncertainty, risk)
    reading = middle + place * half
    verdict = judge_interval(reading, meter.standard_uncertainty(reading), low, high, risk).verdict
    edges = (limits.surely_low, limits.accept_from, limits.accept_to, limits.surely_high)
    if any(edge is not None and abs(reading - edge) < 1e-6 * middle for edge in edges):
        return
    compared = "cannot_tell"
    if limits.surely_low is not None and reading <= limits.surely_low:
        compared = "low"
    elif limits.surely_high is not None and reading >= limits.surely_high:
        compared = "high"
    elif (
        limits.accept_from is not None
        and limits.accept_to is not None
        and limits.accept_from <= reading <= limits.accept_to
    ):
        compared = "in"
    assert compared == verdict


def test_an_open_side_at_nought_is_still_accepted():
    """A limit whose guarded edge falls on 0 is an edge, not a missing one."""
    limits = decision_limits(-1.0, INF, lambda y: 1.0 if y < 0.0 else 0.1)
    assert limits.accept_from == 0.0
    assert limits.accept_to == INF
    assert limits.surely_high is None


def test_the_tail_keeps_its_digits():
    """Ten standard deviations out the probability is small, not nought (7.62e-24, scipy)."""
    assert normal_below(-10.0) == pytest.approx(7.6198530241605e-24, rel=1e-9, abs=0.0)
    far = conformance_probability(0.0, 1.0, 10.0, 11.0)
    assert far == pytest.approx(7.6198530241605e-24, rel=1e-3, abs=0.0)
    assert conformance_probability(0.0, 1.0, -11.0, -10.0) == pytest.approx(far, rel=1e-9, abs=0.0)


@pytest.mark.parametrize(
    ("call", "name"),
    [
        (lambda: judge_interval(float("nan"), 1.0, 0.0, 1.0), "reading"),
        (lambda: judge_interval(1.0, -1.0, 0.0, 1.0), "uncertainty"),
        (lambda: judge_interval(1.0, float("inf"), 0.0, 1.0), "uncertainty"),
        (lambda: judge_interval(1.0, 1.0, 2.0, 1.0), "high limit"),
        (lambda: judge_interval(1.0, 1.0, 0.0, 1.0, 0.5), "risk"),
        (lambda: judge_interval(1.0, 1.0, 0.0, 1.0, 0.0), "risk"),
        (lambda: guard_band(-1.0), "uncertainty"),
        (lambda: decision_limits(2.0, 1.0, lambda _: 1.0), "high limit"),
        (lambda: decision_limits(-INF, INF, lambda _: 1.0), "closed limits"),
    ],
)
def test_beyond_the_range_is_an_error(call, name):
    """Each quantity out of range raises, and the error names it."""
    with pytest.raises(OutsideRange) as caught:
        call()
    assert caught.value.name == name
