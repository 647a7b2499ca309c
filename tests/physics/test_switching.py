"""Properties of switching sensors."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.physics import wheels
from generator.physics.domain import OutsideRange
from generator.physics.switching import (
    current_sensor_levels_v,
    duty_from_mean,
    high_level_v,
    low_level_v,
    mean_level_band,
    mean_level_v,
    revolution_duty,
    square_waveform,
    tooth_frequency_hz,
)

DUTIES = st.floats(0.0, 1.0)


@given(st.floats(1.0, 24.0), st.floats(0.0, 0.9), DUTIES)
def test_the_mean_lies_between_the_levels_and_tells_the_duty(high_v, low_share, duty):
    """The mean lies between the levels, and with them gives the duty back."""
    low_v = high_v * low_share
    mean = mean_level_v(high_v, low_v, duty)
    assert low_v - 1e-9 <= mean <= high_v + 1e-9
    back = duty_from_mean(min(max(mean, low_v), high_v), high_v, low_v)
    assert back == pytest.approx(duty, abs=1e-9)


@given(st.floats(4.0, 6.0), st.floats(0.1, 1.0), st.floats(0.1, 0.9), st.floats(0.0, 0.1))
def test_the_band_contains_its_nominal_and_every_corner(high_v, low_v, duty, spread):
    """Limits of the mean contain the nominal and every corner."""
    highs = (high_v - spread, high_v, high_v + spread)
    lows = (low_v * 0.5, low_v, low_v * 1.5)
    duties = (duty - spread, duty, min(duty + spread, 1.0))
    low, nominal, high = mean_level_band(highs, lows, duties)
    corners = [mean_level_v(h, lo, d) for h in highs for lo in lows for d in duties]
    assert low <= nominal <= high
    assert low == pytest.approx(min(corners)) and high == pytest.approx(max(corners))


@given(st.floats(1.0, 24.0), st.floats(100.0, 1e5), st.floats(100.0, 1e7))
def test_a_load_or_a_leak_lowers_the_high_level(pull_up_v, pull_up_ohm, load_ohm):
    """Nothing that hangs on the line can lift its high level."""
    whole = high_level_v(pull_up_v, pull_up_ohm)
    assert whole == pull_up_v
    assert high_level_v(pull_up_v, pull_up_ohm, load_ohm) < whole
    leak_a = 0.5 * pull_up_v / pull_up_ohm
    assert high_level_v(pull_up_v, pull_up_ohm, leakage_a=leak_a) == pytest.approx(whole / 2)


@given(st.integers(2, 60), DUTIES, st.booleans(), st.data())
def test_the_drawn_wave_has_the_mean_of_the_formula(positions, duty, gap_high, data):
    """The mean of the drawn wave is the formula's over the turn, to one sample a tooth."""
    missing = data.draw(st.integers(0, positions - 1))
    wave = square_waveform(positions, missing, 5.0, 0.3, duty, positions * 200, gap_high)
    expected = mean_level_v(5.0, 0.3, revolution_duty(duty, positions, missing, gap_high))
    assert np.mean(wave) == pytest.approx(expected, abs=4.7 / 200 + 1e-9)
    assert set(np.unique(wave)) <= {0.3, 5.0}


def test_the_drawn_wave_has_an_edge_for_every_tooth_and_a_flat_gap():
    """A 36−1 wheel gives 35 falling edges a turn, and its gap stays at the resting level."""
    wave = square_waveform(36, 1, 5.0, 0.0, 0.5, 36 * 40)
    falling = np.sum((wave > 2.5) & (np.roll(wave, -1) < 2.5))
    assert falling == 35
    assert np.all(wave[35 * 40 :] == 5.0)
    assert np.all(square_waveform(36, 1, 5.0, 0.0, 0.5, 36 * 40, gap_high=False)[35 * 40 :] == 0.0)


def test_the_tooth_function_is_shared_not_copied():
    """The tooth rate is the wheel's own."""
    assert tooth_frequency_hz is wheels.tooth_frequency_hz


def test_a_bad_ground_lifts_the_low_level():
    """The drop of the ground adds to the saturation voltage."""
    assert low_level_v(0.2, 0.4) == pytest.approx(0.6)


def test_a_two_level_sensor_doubles_its_voltage():
    """At any shunt, 14 mA gives twice what 7 mA gives."""
    low, high = current_sensor_levels_v(np.array([75.0, 100.0]))
    np.testing.assert_allclose(high, 2.0 * low)


@pytest.mark.parametrize(
    ("call", "name"),
    [
        (lambda: mean_level_v(5.0, 0.3, 1.1), "duty"),
        (lambda: mean_level_v(0.3, 5.0, 0.5), "high less low level"),
        (lambda: duty_from_mean(6.0, 5.0, 0.3), "mean"),
        (lambda: duty_from_mean(5.0, 5.0, 5.0), "high less low level"),
        (lambda: high_level_v(48.0, 1000.0), "pull-up voltage"),
        (lambda: high_level_v(5.0, 0.0), "pull-up resistance"),
        (lambda: high_level_v(5.0, 1000.0, leakage_a=0.006), "leakage"),
        (lambda: low_level_v(-0.1), "saturation voltage"),
        (lambda: revolution_duty(0.5, 60, 60), "missing teeth"),
        (lambda: square_waveform(60, 2, 5.0, 0.3, 0.5, 100), "samples"),
        (lambda: current_sensor_levels_v(2000.0), "shunt"),
        (lambda: current_sensor_levels_v(75.0, 0.014, 0.007), "low current"),
    ],
)
def test_beyond_the_range_is_an_error(call, name):
    """Each quantity out of range raises, and the error names it."""
    with pytest.raises(OutsideRange) as caught:
        call()
    assert caught.value.name == name


def test_floats_stay_floats():
    """One number in gives one Python float out."""
    values = (
        mean_level_v(5, 0, 0.5),
        high_level_v(5, 1000, 10_000),
        low_level_v(0.2),
        revolution_duty(0.5, 60, 2),
        *current_sensor_levels_v(75),
    )
    assert all(type(value) is float for value in values)
