"""Properties of ignition coils and injectors."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.physics.actuators import ignition_band, injector_duty, injector_peak_a
from generator.physics.domain import OutsideRange
from generator.physics.windings import winding_band

INJECTOR = (13.5, 14.5, 12e-3)


@given(st.floats(-30.0, 110.0), st.floats(0.0, 10.0))
def test_without_a_suppressor_it_is_a_copper_winding(temp_c, spread_k):
    """A coil without a built-in resistor has the band of its copper."""
    limits = (0.7, 0.75, 0.8)
    assert ignition_band(*limits, temp_c, spread_k) == winding_band(*limits, temp_c, spread_k)


@given(st.floats(21.0, 110.0), st.floats(0.0, 5000.0))
def test_a_suppressor_flattens_the_rise_with_temperature(temp_c, suppressor_ohm):
    """The more of the resistance is a resistor, the less it rises when warm."""
    limits = (9000.0, 10_000.0, 11_000.0)
    plain = ignition_band(*limits, temp_c)
    with_resistor = ignition_band(*limits, temp_c, suppressor_ohm=suppressor_ohm)
    low, nominal, high = with_resistor
    assert low <= nominal <= high
    assert all(a <= b + 1e-9 for a, b in zip(with_resistor, plain, strict=True))


def test_the_suppressor_is_apart_at_every_limit():
    """Low, nominal and high each warm by their copper alone: 1.2358 at 80 °C (IEC 60028)."""
    band = ignition_band(9000.0, 10_000.0, 11_000.0, 80.0, suppressor_ohm=5000.0)
    expected = [copper * 1.23580 + 5000.0 for copper in (4000.0, 5000.0, 6000.0)]
    assert band == pytest.approx(expected)


@given(st.floats(0.0, 0.02), st.floats(0.1, 2.0))
def test_a_driver_holds_the_peak(on_time_s, limit_a):
    """The peak never passes the driver's limit or the coil's own current."""
    held = injector_peak_a(on_time_s, *INJECTOR, limit_a)
    assert held <= limit_a
    assert held <= injector_peak_a(on_time_s, *INJECTOR)


@given(st.floats(1e-3, 10e-3), st.floats(500.0, 6000.0))
def test_firing_every_turn_doubles_the_duty(on_time_s, speed_rpm):
    """The same pulse once a revolution is on twice as long as once every two."""
    duty = injector_duty(on_time_s, speed_rpm)
    if 2.0 * duty <= 1.0:
        assert injector_duty(on_time_s, speed_rpm, 1.0) == pytest.approx(2.0 * duty)
    else:
        with pytest.raises(OutsideRange):
            injector_duty(on_time_s, speed_rpm, 1.0)


@pytest.mark.parametrize(
    ("call", "name"),
    [
        (lambda: ignition_band(1.0, 2.0, 3.0, 20.0, suppressor_ohm=1.5), "suppressor"),
        (lambda: ignition_band(1.0, 2.0, 3.0, 250.0), "temperature"),
        (lambda: injector_duty(30e-3, 6000.0), "duty"),
        (lambda: injector_duty(3e-3, 0.0), "speed"),
        (lambda: injector_peak_a(-1.0, *INJECTOR), "time"),
        (lambda: injector_peak_a(1e-3, *INJECTOR, -1.0), "current limit"),
    ],
)
def test_beyond_the_range_is_an_error(call, name):
    """Each quantity out of range raises, and the error names it."""
    with pytest.raises(OutsideRange) as caught:
        call()
    assert caught.value.name == name


def test_floats_stay_floats_and_arrays_stay_arrays():
    """One number in gives one Python float out; an array gives an array."""
    assert type(injector_peak_a(1e-3, *INJECTOR)) is float
    assert type(injector_duty(3e-3, 2000)) is float
    assert injector_peak_a(np.array([1e-3, 2e-3]), *INJECTOR).shape == (2,)
