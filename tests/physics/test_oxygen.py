"""Properties of the oxygen cell."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.physics.domain import OutsideRange
from generator.physics.oxygen import (
    cell_voltage_v,
    exhaust_cell_band_v,
    exhaust_cell_v,
    oxygen_fraction,
)
from generator.physics.stoichiometry import AIR_OXYGEN

TEMPS = st.floats(500.0, 900.0)
RATIOS = st.one_of(st.floats(0.9, 0.994), st.floats(1.006, 3.0))


@given(st.floats(1e-25, 1.0), st.floats(300.0, 1000.0))
def test_oxygen_to_voltage_and_back(fraction, cell_c):
    """Nernst's law and its inverse undo each other where the voltage is one a cell can have."""
    volts = cell_voltage_v(fraction, cell_c)
    if volts <= 1.3:
        assert oxygen_fraction(volts, cell_c) == pytest.approx(fraction, rel=1e-9)


@given(st.floats(1e-25, 1.0), st.floats(1e-25, 1.0), st.floats(300.0, 1000.0))
def test_less_oxygen_gives_more_voltage(first, second, cell_c):
    """The voltage falls as oxygen rises and is nought against air."""
    low, high = sorted((first, second))
    assert cell_voltage_v(low, cell_c) >= cell_voltage_v(high, cell_c)
    assert cell_voltage_v(AIR_OXYGEN, cell_c) == 0.0


@settings(max_examples=40)
@given(RATIOS, RATIOS, TEMPS)
def test_the_voltage_falls_with_the_air_ratio(first, second, cell_c):
    """A leaner mixture never gives more voltage."""
    rich, lean = sorted((first, second))
    assert exhaust_cell_v(rich, cell_c) >= exhaust_cell_v(lean, cell_c) - 1e-12


@settings(max_examples=40)
@given(RATIOS, TEMPS, TEMPS)
def test_heat_lowers_rich_and_raises_lean(air_ratio, first_c, second_c):
    """Rich voltage falls and lean voltage rises with temperature, so a band needs both ends."""
    low_c, high_c = sorted((first_c, second_c))
    rise = exhaust_cell_v(air_ratio, high_c) - exhaust_cell_v(air_ratio, low_c)
    assert rise >= -1e-9 if air_ratio > 1.0 else rise <= 1e-9


@settings(max_examples=30)
@given(RATIOS, RATIOS, TEMPS, TEMPS, st.floats(0.0, 1.0), st.floats(0.0, 1.0))
def test_the_band_takes_in_what_lies_between(r_1, r_2, t_1, t_2, a, b):
    """Any mixture and temperature within the limits gives a voltage in the band."""
    ratios, temps = sorted((r_1, r_2)), sorted((t_1, t_2))
    low, high = exhaust_cell_band_v((ratios[0], ratios[1]), (temps[0], temps[1]))
    ratio = ratios[0] + a * (ratios[1] - ratios[0])
    if abs(ratio - 1.0) >= 0.005:
        volts = exhaust_cell_v(ratio, temps[0] + b * (temps[1] - temps[0]))
        assert low - 1e-9 <= volts <= high + 1e-9


def test_near_stoichiometry_there_is_only_a_band():
    """At λ = 1 a single value is refused, and the band spans more than half a volt."""
    with pytest.raises(OutsideRange, match="distance of the air ratio from 1"):
        exhaust_cell_v(1.0, 600.0)
    low, high = exhaust_cell_band_v((1.0, 1.0), (600.0, 600.0))
    assert high - low > 0.5


def test_floats_stay_floats_and_arrays_stay_arrays():
    """One number in gives one Python float out; an array gives an array."""
    assert type(cell_voltage_v(0.01, 700)) is float
    assert type(oxygen_fraction(0.45, 700)) is float
    assert type(exhaust_cell_v(0.97, 600.0)) is float
    assert cell_voltage_v(np.array([0.01, 0.02]), 700.0).shape == (2,)


@pytest.mark.parametrize(
    ("call", "name"),
    [
        (lambda: cell_voltage_v(0.0, 600.0), "oxygen fraction"),
        (lambda: cell_voltage_v(0.1, 200.0), "cell temperature"),
        (lambda: cell_voltage_v(0.1, 600.0, 0.0), "reference oxygen fraction"),
        (lambda: oxygen_fraction(2.0, 600.0), "cell voltage"),
        (lambda: oxygen_fraction(0.5, 1200.0), "cell temperature"),
        (lambda: exhaust_cell_v(0.997, 600.0), "distance of the air ratio from 1"),
        (lambda: exhaust_cell_v(0.8, 600.0), "air ratio"),
        (lambda: exhaust_cell_v(1.1, 400.0), "gas temperature"),
        (lambda: exhaust_cell_band_v((1.1, 0.9), (600.0, 700.0)), "high end less low end"),
        (lambda: exhaust_cell_band_v((0.9, 1.1), (700.0, 600.0)), "high end less low end"),
    ],
)
def test_beyond_the_range_is_an_error(call, name):
    """Each quantity out of range raises, and the error names it."""
    with pytest.raises(OutsideRange) as caught:
        call()
    assert caught.value.name == name
