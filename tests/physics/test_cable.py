"""Properties of cable resistance."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.physics.cable import (
    CLASS_5_PLAIN_OHM_PER_KM,
    CLASS_5_TINNED_OHM_PER_KM,
    area_ohm_per_m,
    awg_diameter_m,
    awg_ohm_per_m,
    class_5_ohm_per_m,
)
from generator.physics.domain import OutsideRange

SIZES = sorted(CLASS_5_PLAIN_OHM_PER_KM)
TEMPS = st.floats(-50.0, 200.0)


@given(st.floats(-3.0, 34.0), TEMPS)
def test_six_gauges_halve_the_diameter(gauge, temp_c):
    """Six gauges up, the diameter is very nearly half and the resistance four times."""
    assert awg_diameter_m(gauge + 6) / awg_diameter_m(gauge) == pytest.approx(0.5, abs=2e-3)
    ratio = awg_ohm_per_m(gauge + 6, temp_c) / awg_ohm_per_m(gauge, temp_c)
    assert ratio == pytest.approx(4.02, abs=0.01)


@given(st.floats(0.1, 120.0), TEMPS, TEMPS)
def test_resistance_rises_with_temperature_and_falls_with_area(area_mm2, first_c, second_c):
    """Hotter copper resists more; twice the copper resists half as much."""
    low_c, high_c = sorted((first_c, second_c))
    assert area_ohm_per_m(area_mm2, low_c) <= area_ohm_per_m(area_mm2, high_c)
    twice = area_ohm_per_m(2.0 * area_mm2, low_c)
    assert twice == pytest.approx(area_ohm_per_m(area_mm2, low_c) / 2.0)


@pytest.mark.parametrize("size", SIZES)
def test_the_limit_of_a_size_lies_above_its_copper(size):
    """Each limit exceeds ρ/A by a tenth to a sixth, and tin adds one to three per cent."""
    limit = class_5_ohm_per_m(size)
    assert 1.10 < limit / area_ohm_per_m(size) < 1.17
    assert 1.01 < class_5_ohm_per_m(size, tinned=True) / limit < 1.035


def test_limits_fall_with_size():
    """In both tables a thicker cable has a lower limit."""
    for limits in (CLASS_5_PLAIN_OHM_PER_KM, CLASS_5_TINNED_OHM_PER_KM):
        assert (np.diff([limits[size] for size in SIZES]) < 0.0).all()
    assert sorted(CLASS_5_TINNED_OHM_PER_KM) == SIZES


def test_floats_stay_floats_and_arrays_stay_arrays():
    """One number in gives one Python float out; an array gives an array."""
    assert type(awg_ohm_per_m(18)) is float
    assert type(class_5_ohm_per_m(2.5, 80)) is float
    assert class_5_ohm_per_m(2.5, np.array([20.0, 80.0])).shape == (2,)


@pytest.mark.parametrize(
    ("call", "name"),
    [
        (lambda: awg_diameter_m(41), "gauge"),
        (lambda: awg_diameter_m(-4), "gauge"),
        (lambda: awg_ohm_per_m(18, 250.0), "temperature"),
        (lambda: awg_ohm_per_m(18, 20.0, 0.9), "lay factor"),
        (lambda: area_ohm_per_m(0.0), "cross-section"),
        (lambda: class_5_ohm_per_m(2.5, float("nan")), "temperature"),
    ],
)
def test_beyond_the_range_is_an_error(call, name):
    """Each quantity out of range raises, and the error names it."""
    with pytest.raises(OutsideRange) as caught:
        call()
    assert caught.value.name == name


def test_a_size_between_two_is_refused():
    """A size that is not in the table is an error that names the sizes, not a guess."""
    with pytest.raises(ValueError, match=r"no class 5 cable of 3 mm².*2\.5"):
        class_5_ohm_per_m(3.0)
