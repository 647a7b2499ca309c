"""Properties of potentiometers and ratiometric transducers."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.physics.domain import OutsideRange
from generator.physics.transducers import RatiometricTransducer, potentiometer_v

RISING = RatiometricTransducer(0.009, -0.095, 15.0, 115.0, "kPa")
FALLING = RatiometricTransducer(-0.008, 0.9, 0.0, 100.0, "%")
KINDS = st.sampled_from([RISING, FALLING])
SHARES = st.floats(0.0, 1.0)


def inside(transducer: RatiometricTransducer, share: float) -> float:
    """A value at a share of the transducer's range, ends included."""
    return transducer.low + share * (transducer.high - transducer.low)


@given(SHARES, SHARES, st.floats(100.0, 1e7))
def test_the_wiper_rises_with_travel_and_sinks_under_load(first, second, load_ohm):
    """Voltage rises with travel, and a load never lifts it."""
    low_x, high_x = sorted((first, second))
    low, high = (potentiometer_v(5.0, 1000.0, x, load_ohm) for x in (low_x, high_x))
    assert low <= high
    assert high <= potentiometer_v(5.0, 1000.0, high_x) == pytest.approx(5.0 * high_x)


def test_a_light_load_errs_most_at_two_thirds_of_the_travel():
    """The loading error of a light load is greatest near two thirds (closed form)."""
    travel = np.linspace(0.0, 1.0, 3001)
    error = 5.0 * travel - potentiometer_v(5.0, 1000.0, travel, 1e6)
    assert travel[np.argmax(error)] == pytest.approx(2.0 / 3.0, abs=1e-3)


@given(KINDS, SHARES, st.floats(4.5, 5.5))
def test_the_inverse_finds_the_value_back(transducer, share, supply_v):
    """Value to voltage and back is the identity, for rising and falling outputs."""
    value = inside(transducer, share)
    volts = transducer.volts(value, supply_v)
    assert transducer.value(volts, supply_v) == pytest.approx(value, abs=1e-6)


@given(KINDS, SHARES, st.floats(0.0, 10.0))
def test_the_band_contains_its_nominal_and_stays_within_the_supply(transducer, share, tolerance):
    """Limits contain the nominal and never leave 0 V to the highest supply."""
    low, nominal, high = transducer.band(inside(transducer, share), (4.9, 5.0, 5.1), tolerance)
    assert 0.0 <= low <= nominal <= high <= 5.1


def test_the_output_follows_its_supply():
    """A ratiometric output is a share of the supply, not a voltage."""
    assert RISING.volts(100.0, 5.1) / RISING.volts(100.0, 5.0) == pytest.approx(5.1 / 5.0)
    low, _, high = RISING.band(100.0, (4.9, 5.0, 5.1), 1.0)
    assert low == pytest.approx(4.9 * (0.009 * 99.0 - 0.095))
    assert high == pytest.approx(5.1 * (0.009 * 101.0 - 0.095))


@pytest.mark.parametrize(
    "call",
    [
        lambda: potentiometer_v(5.0, 1000.0, 1.01),
        lambda: potentiometer_v(5.0, 0.0, 0.5),
        lambda: potentiometer_v(61.0, 1000.0, 0.5),
        lambda: potentiometer_v(5.0, 1000.0, 0.5, 0.0),
        lambda: RISING.volts(116.0, 5.0),
        lambda: RISING.value(4.99, 5.0),
        lambda: RISING.value(1.0, 0.0),
        lambda: RISING.band(50.0, (4.9, 5.0, 5.1), -1.0),
        lambda: RatiometricTransducer(0.0, 0.1, 0.0, 1.0),
        lambda: RatiometricTransducer(0.01, 0.0, 10.0, 0.0),
        lambda: RatiometricTransducer(0.01, 0.5, 0.0, 100.0),
    ],
)
def test_beyond_the_range_is_an_error(call):
    """Each quantity out of range, and each impossible transducer, raises."""
    with pytest.raises(OutsideRange):
        call()


def test_floats_stay_floats_and_arrays_stay_arrays():
    """One number in gives one Python float out; an array gives an array."""
    assert type(potentiometer_v(5, 1000, 0.5)) is float
    assert type(RISING.volts(100, 5)) is float and type(RISING.value(2.5, 5)) is float
    assert all(type(limit) is float for limit in RISING.band(100.0, (4.9, 5.0, 5.1), 1.0))
    assert RISING.volts(np.array([20.0, 100.0]), 5.0).shape == (2,)
