"""Properties of winding resistance."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.physics.domain import OutsideRange
from generator.physics.windings import (
    CONDUCTORS,
    conductor,
    temperature_coefficient_per_k,
    winding_band,
    winding_ohm,
    winding_temp_c,
)

TEMPS = st.floats(-50.0, 100.0)
METALS = st.sampled_from(["copper", "aluminium", "brass", "bronze"])
MATERIALS = st.sampled_from(sorted(CONDUCTORS))


@given(st.floats(0.01, 1e5), TEMPS, TEMPS, METALS)
def test_pure_metals_rise_with_temperature(ohm, first_c, second_c, material):
    """A metal winding never reads less when it is hotter."""
    low_c, high_c = sorted((first_c, second_c))
    low, high = (winding_ohm(ohm, t, material=material) for t in (low_c, high_c))
    assert low <= high


# Rounding carries the inverse of an end of the range a hair beyond it, where it is refused.
WELL_INSIDE = st.floats(-50.0 + 1e-6, 100.0 - 1e-6)


@given(st.floats(0.01, 1e5), WELL_INSIDE, TEMPS, METALS)
def test_the_inverse_finds_the_temperature_back(ohm, temp_c, ref_c, material):
    """Temperature to resistance and back is the identity."""
    warm = winding_ohm(ohm, temp_c, ref_c, material)
    assert winding_temp_c(warm, ohm, ref_c, material) == pytest.approx(temp_c, abs=1e-6)


@given(st.floats(0.01, 1e5), TEMPS, TEMPS, TEMPS, MATERIALS)
def test_the_reference_does_not_matter(ohm, temp_c, first_c, second_c, material):
    """Going by way of another reference temperature gives the same resistance."""
    between = winding_ohm(ohm, second_c, first_c, material)
    direct = winding_ohm(ohm, temp_c, first_c, material)
    assert winding_ohm(between, temp_c, second_c, material) == pytest.approx(direct, rel=1e-9)


@given(st.floats(1.0, 1e4), st.floats(0.0, 0.5), st.floats(-40.0, 90.0), MATERIALS)
def test_the_band_is_what_its_corners_span(ohm, share, temp_c, material):
    """Limits contain the nominal and every corner, for rising and for falling alloys."""
    ends = (ohm * (1 - share), ohm * (1 + share))
    low, nominal, high = winding_band(ends[0], ohm, ends[1], temp_c, 10.0, material=material)
    corners = [
        winding_ohm(end, t, material=material)
        for end in ends
        for t in (temp_c - 10.0, temp_c, temp_c + 10.0)
    ]
    assert low <= nominal <= high
    assert low == pytest.approx(min(corners)) and high == pytest.approx(max(corners))


def test_a_falling_alloy_has_its_low_limit_at_the_warm_end():
    """Constantan falls with temperature, so warmth gives its low limit."""
    low, _, _ = winding_band(10.0, 10.0, 10.0, 50.0, 20.0, material="constantan")
    assert low == winding_ohm(10.0, 70.0, material="constantan")


def test_floats_stay_floats_and_arrays_stay_arrays():
    """One number in gives one Python float out; an array gives an array."""
    assert type(winding_ohm(860, 80)) is float
    assert winding_ohm(860.0, np.array([20.0, 80.0])).shape == (2,)
    low, nominal, high = winding_band(774.0, 860.0, 946.0, np.array([20.0, 80.0]), 5.0)
    assert low.shape == nominal.shape == high.shape == (2,)
    assert all(type(limit) is float for limit in winding_band(774.0, 860.0, 946.0, 80.0, 5.0))


@pytest.mark.parametrize(
    ("call", "name"),
    [
        (lambda: winding_ohm(1.0, 201.0), "temperature"),
        (lambda: winding_ohm(1.0, -51.0), "temperature"),
        (lambda: winding_ohm(1.0, float("nan")), "temperature"),
        (lambda: winding_ohm(1.0, 20.0, 250.0), "reference temperature"),
        (lambda: winding_ohm(-1.0, 20.0), "resistance"),
        (lambda: winding_ohm(1.0, np.array([20.0, 300.0])), "temperature"),
        (lambda: winding_band(2.0, 1.0, 3.0, 20.0), "low limit"),
        (lambda: winding_band(0.5, 1.0, 0.9, 20.0), "high limit"),
        (lambda: winding_band(1.0, 1.0, 1.0, 195.0, 10.0), "temperature"),
        (lambda: winding_temp_c(3.0, 1.0), "temperature"),
        (lambda: winding_temp_c(1.0, 0.0), "reference resistance"),
        (lambda: temperature_coefficient_per_k(500.0), "reference temperature"),
    ],
)
def test_beyond_the_range_is_an_error(call, name):
    """Each quantity out of range raises, and the error names it."""
    with pytest.raises(OutsideRange) as caught:
        call()
    assert caught.value.name == name


def test_unknown_and_unsuited_materials_are_refused():
    """A material that is not known, or tells no temperature, is an error that says which."""
    with pytest.raises(ValueError, match="unobtainium"):
        conductor("unobtainium")
    with pytest.raises(ValueError, match="manganin"):
        winding_temp_c(1.0, 1.0, material="manganin")
