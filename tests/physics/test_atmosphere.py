"""Properties of the air pressure."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.physics.atmosphere import (
    SEA_LEVEL_PA,
    geometric_m,
    geopotential_m,
    key_on_pressure_band_pa,
    pressure_height_m,
    standard_pressure_pa,
    station_pressure_band_pa,
    station_pressure_pa,
)
from generator.physics.domain import OutsideRange

HEIGHTS = st.floats(-2000.0, 11_000.0)
PLACES = st.floats(-400.0, 4000.0)
WEATHER = st.floats(95_000.0, 105_000.0)


@given(HEIGHTS)
def test_heights_and_pressures_are_found_back(height_m):
    """Height to pressure and back, and geopotential to true height and back, are identities."""
    assert pressure_height_m(standard_pressure_pa(height_m)) == pytest.approx(height_m, abs=1e-5)
    if height_m <= 10_999.0 and height_m >= -1999.0:
        assert geopotential_m(geometric_m(height_m)) == pytest.approx(height_m, abs=1e-6)


@given(PLACES, PLACES, WEATHER, WEATHER)
def test_pressure_falls_with_height_and_rises_with_the_weather(h_1, h_2, p_1, p_2):
    """Higher places have less pressure, better weather more."""
    (low_m, high_m), (low_pa, high_pa) = sorted((h_1, h_2)), sorted((p_1, p_2))
    assert station_pressure_pa(high_m, low_pa) <= station_pressure_pa(low_m, low_pa)
    assert station_pressure_pa(low_m, low_pa) <= station_pressure_pa(low_m, high_pa) + 1e-9


@given(WEATHER)
def test_at_sea_level_the_report_is_the_truth(sea_level_pa):
    """At height 0 nothing is taken off."""
    assert station_pressure_pa(0.0, sea_level_pa) == pytest.approx(sea_level_pa)


@given(PLACES, st.floats(98_000.0, 104_000.0), st.floats(-1.0, 1.0))
def test_the_band_takes_in_every_day_and_height(height_m, sea_level_pa, share):
    """Any usual weather at any height within the tolerance lies in the band."""
    low, nominal, high = station_pressure_band_pa(height_m, height_tolerance_m=50.0)
    day_pa = station_pressure_pa(height_m + 50.0 * share, sea_level_pa)
    assert low <= nominal <= high
    assert low - 1e-6 <= day_pa <= high + 1e-6


@given(PLACES, st.floats(0.0, 3000.0))
def test_a_sensor_widens_the_band_by_its_error(height_m, tolerance_pa):
    """Key-on limits are the air's, widened by the sensor's error on both sides."""
    air = station_pressure_band_pa(height_m)
    low, nominal, high = key_on_pressure_band_pa(air, tolerance_pa)
    assert nominal == air[1]
    assert air[0] - low == pytest.approx(tolerance_pa, abs=1e-6)
    assert high - air[2] == pytest.approx(tolerance_pa, abs=1e-6)


def test_floats_stay_floats_and_arrays_stay_arrays():
    """One number in gives one Python float out; an array gives an array."""
    assert type(station_pressure_pa(500)) is float
    assert type(pressure_height_m(90_000)) is float
    assert type(geopotential_m(500)) is float
    assert station_pressure_pa(np.array([0.0, 500.0])).shape == (2,)
    band = key_on_pressure_band_pa(station_pressure_band_pa(np.array([0.0, 500.0])), 1000.0)
    assert all(limit.shape == (2,) for limit in band)
    assert all(type(v) is float for v in key_on_pressure_band_pa((1e5, 1e5, 1e5), 1e3))


@pytest.mark.parametrize(
    ("call", "name"),
    [
        (lambda: standard_pressure_pa(12_000.0), "height"),
        (lambda: geopotential_m(12_000.0), "height"),
        (lambda: geometric_m(-3000.0), "height"),
        (lambda: pressure_height_m(10_000.0), "pressure"),
        (lambda: station_pressure_pa(7000.0), "height"),
        (lambda: station_pressure_pa(0.0, 80_000.0), "sea-level pressure"),
        (lambda: station_pressure_pa(0.0, float("nan")), "sea-level pressure"),
        (lambda: station_pressure_band_pa(0.0, height_tolerance_m=-1.0), "height tolerance"),
        (lambda: key_on_pressure_band_pa((1e5, 1e5, 1e5), -1.0), "sensor tolerance"),
        (lambda: key_on_pressure_band_pa((1e5, 9e4, 1e5), 1.0), "rise from low to nominal"),
        (lambda: key_on_pressure_band_pa((9e4, 1e5, 9e4), 1.0), "rise from nominal to high"),
    ],
)
def test_beyond_the_range_is_an_error(call, name):
    """Each quantity out of range raises, and the error names it."""
    with pytest.raises(OutsideRange) as caught:
        call()
    assert caught.value.name == name


def test_sea_level_is_the_standard():
    """The standard atmosphere starts at 1013.25 hPa (ISO 2533)."""
    assert standard_pressure_pa(0.0) == SEA_LEVEL_PA == 101_325.0
