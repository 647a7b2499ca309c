"""Properties of the two-wire bus."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.physics.databus import (
    mean_pair_v,
    pair_resistance_band_ohm,
    pair_state,
    parallel_ohm,
    terminations_found,
)
from generator.physics.domain import OutsideRange

OHMS = st.floats(0.1, 1e6)


@given(st.lists(OHMS, min_size=1, max_size=6))
def test_side_by_side_is_less_than_the_least(ohms):
    """Parallel resistance never exceeds the least, nor falls below its share of their number."""
    total = parallel_ohm(*ohms)
    assert min(ohms) / len(ohms) * (1 - 1e-12) <= total <= min(ohms) * (1 + 1e-12)
    assert parallel_ohm(*ohms, float("inf")) == pytest.approx(total)
    assert parallel_ohm(*ohms, 0.0) == 0.0


@given(st.integers(1, 4), st.floats(0.0, 1.0))
def test_equal_terminations_are_counted_back(count, share):
    """A bus of like terminations within their limits is counted by its resistance."""
    low, nominal, high = pair_resistance_band_ohm(count, (114.0, 120.0, 126.0))
    assert low <= nominal <= high
    reading = low + share * (high - low)
    assert terminations_found(reading, (114.0, 120.0, 126.0)) == count


@given(st.integers(1, 3), st.floats(5e3, 1e6))
def test_other_units_only_lower_the_resistance(count, others_ohm):
    """What else hangs on the pair lowers every limit a little."""
    alone = pair_resistance_band_ohm(count)
    loaded = pair_resistance_band_ohm(count, others_ohm=others_ohm)
    assert all(b < a for a, b in zip(alone, loaded, strict=True))


def test_no_termination_leaves_the_units_alone():
    """Without terminations only the units' own inputs are left, or nothing at all."""
    assert pair_resistance_band_ohm(0, others_ohm=9e3) == (9e3, 9e3, 9e3)
    assert pair_resistance_band_ohm(0) == (float("inf"),) * 3
    assert terminations_found(float("inf")) == 0


@given(st.floats(0.0, 1.0), st.floats(2.0, 3.0), st.floats(0.0, 2.0))
def test_the_means_are_mirror_images(share, rest_v, swing_v):
    """At any traffic the two means add up to twice the recessive voltage."""
    high_v, low_v = mean_pair_v(share, rest_v, swing_v)
    assert high_v + low_v == pytest.approx(2.0 * rest_v)
    assert high_v >= low_v


@given(st.floats(-2.0, 7.0), st.floats(-2.0, 7.0), st.floats(-2.0, 2.0))
def test_only_the_difference_counts(high_v, low_v, shift_v):
    """Shifting both wires alike leaves the state, but for a rounding at a threshold."""
    difference_v = high_v - low_v
    if min(abs(difference_v - 0.5), abs(difference_v - 0.9)) > 1e-9:
        assert pair_state(high_v, low_v) == pair_state(high_v + shift_v, low_v + shift_v)


def test_floats_stay_floats_and_arrays_stay_arrays():
    """One number in gives one Python float out; an array gives an array."""
    assert type(parallel_ohm(120, 120)) is float
    assert parallel_ohm(np.array([60.0, 120.0]), 120.0).shape == (2,)
    assert all(type(v) is float for v in mean_pair_v(0.5))


@pytest.mark.parametrize(
    ("call", "name"),
    [
        (lambda: parallel_ohm(), "resistors"),
        (lambda: parallel_ohm(120.0, -1.0), "resistance"),
        (lambda: pair_resistance_band_ohm(-1), "terminations"),
        (lambda: terminations_found(-1.0), "resistance"),
        (lambda: pair_state(50.0, 0.0), "voltage"),
        (lambda: mean_pair_v(1.5), "dominant share"),
        (lambda: mean_pair_v(0.5, 5.0), "recessive voltage"),
        (lambda: mean_pair_v(0.5, 2.5, 3.0), "swing"),
    ],
)
def test_beyond_the_range_is_an_error(call, name):
    """Each quantity out of range raises, and the error names it."""
    with pytest.raises(OutsideRange) as caught:
        call()
    assert caught.value.name == name
