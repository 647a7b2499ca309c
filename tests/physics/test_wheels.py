"""Properties of the toothed wheel."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.physics.domain import OutsideRange
from generator.physics.wheels import (
    counted_frequency_hz,
    sample_positions,
    speed_rpm_from_counted,
    tooth_frequency_hz,
)

WHEELS = st.integers(2, 120).flatmap(lambda n: st.tuples(st.just(n), st.integers(0, n - 1)))
SPEEDS = st.floats(0.0, 8000.0)


@given(SPEEDS, WHEELS)
def test_a_counter_never_shows_more_than_the_tooth_rate(rpm, wheel):
    """Missing teeth lower the counted rate, and no missing teeth leave it as it is."""
    positions, missing = wheel
    counted = counted_frequency_hz(rpm, positions, missing)
    assert counted <= tooth_frequency_hz(rpm, positions)
    assert counted_frequency_hz(rpm, positions, 0) == tooth_frequency_hz(rpm, positions)


@given(SPEEDS, WHEELS)
def test_the_counted_rate_gives_the_speed_back(rpm, wheel):
    """Speed to counted rate and back is the identity."""
    counted = counted_frequency_hz(rpm, *wheel)
    assert speed_rpm_from_counted(counted, *wheel) == pytest.approx(rpm, rel=1e-12)


@given(st.integers(1, 60))
def test_samples_are_even_and_stay_on_the_wheel(positions):
    """Samples are equally spaced, half a step from either end of the revolution."""
    angle = sample_positions(positions, 0, positions * 16)
    np.testing.assert_allclose(np.diff(angle), 1.0 / 16.0)
    assert angle[0] == pytest.approx(1.0 / 32.0)
    assert angle[-1] == pytest.approx(positions - 1.0 / 32.0)


def test_floats_stay_floats_and_arrays_stay_arrays():
    """One number in gives one Python float out; an array gives an array."""
    assert type(tooth_frequency_hz(600, 60)) is float
    assert type(counted_frequency_hz(600, 60, 2)) is float
    assert tooth_frequency_hz(np.array([200.0, 600.0]), 60).tolist() == [200.0, 600.0]


@pytest.mark.parametrize(
    ("call", "name"),
    [
        (lambda: tooth_frequency_hz(-1.0, 60), "speed"),
        (lambda: tooth_frequency_hz(31_000.0, 60), "speed"),
        (lambda: tooth_frequency_hz(600.0, 0), "tooth positions"),
        (lambda: counted_frequency_hz(600.0, 60, 60), "missing teeth"),
        (lambda: counted_frequency_hz(600.0, 60, -1), "missing teeth"),
        (lambda: speed_rpm_from_counted(1e9, 60, 2), "speed"),
        (lambda: sample_positions(60, 2, 900), "samples"),
    ],
)
def test_beyond_the_range_is_an_error(call, name):
    """Each quantity out of range raises, and the error names it."""
    with pytest.raises(OutsideRange) as caught:
        call()
    assert caught.value.name == name
