"""Properties of inductive pickups."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.physics import wheels
from generator.physics.domain import OutsideRange
from generator.physics.pickup import (
    counted_frequency_hz,
    gap_factor,
    load_factor,
    loaded_pickup_volts,
    pickup_band,
    pickup_volts,
    pickup_waveform,
    tooth_frequency_hz,
)

COIL = (860.0, 0.4, 10e3)


def falling_crossings(wave: np.ndarray) -> int:
    """Crossings from above nought to below it, once round the wheel."""
    return int(np.sum((wave > 0.0) & (np.roll(wave, -1) <= 0.0)))


@given(st.floats(0.01, 100.0), st.floats(50.0, 500.0), st.floats(0.0, 5.0))
def test_amplitude_is_proportional_to_speed(ref_v, ref_rpm, ratio):
    """Twice the speed is twice the voltage, and standstill is none."""
    assert pickup_volts(ref_v, ref_rpm, ref_rpm * ratio) == pytest.approx(ref_v * ratio)
    assert pickup_volts(ref_v, ref_rpm, 0.0) == 0.0


@given(st.floats(0.1, 10.0), st.floats(0.0, 0.9), st.floats(150.0, 300.0), st.floats(0.0, 50.0))
def test_the_band_contains_its_nominal_and_its_corners(volts, share, rpm, spread_rpm):
    """Limits contain the nominal and are the extremes over the corners."""
    ends = (volts * (1 - share), volts * (1 + share))
    low, nominal, high = pickup_band(ends[0], volts, ends[1], 200.0, rpm, spread_rpm)
    corners = [
        pickup_volts(end, 200.0, n) for end in ends for n in (rpm - spread_rpm, rpm + spread_rpm)
    ]
    assert low <= nominal <= high
    assert (low, high) == (min(corners), max(corners))


@given(st.floats(0.1e-3, 4e-3), st.floats(0.1e-3, 4e-3), st.floats(2e-3, 20e-3))
def test_a_wider_gap_gives_less(first_m, second_m, pitch_m):
    """The gap factor falls with the gap, is one at the reference, and chains."""
    low_m, high_m = sorted((first_m, second_m))
    assert gap_factor(low_m, 1e-3, pitch_m) >= gap_factor(high_m, 1e-3, pitch_m)
    assert gap_factor(1e-3, 1e-3, pitch_m) == 1.0
    there_and_back = gap_factor(low_m, high_m, pitch_m) * gap_factor(high_m, low_m, pitch_m)
    assert there_and_back == pytest.approx(1.0)


@given(st.floats(0.0, 2e4), st.floats(0.0, 2e4))
def test_the_load_takes_more_at_a_higher_rate(first_hz, second_hz):
    """The load factor falls with frequency and never exceeds the resistive divider."""
    low_hz, high_hz = sorted((first_hz, second_hz))
    low, high = load_factor(low_hz, *COIL), load_factor(high_hz, *COIL)
    assert high <= low <= 10e3 / 10_860.0 + 1e-12


def test_no_load_takes_nothing():
    """An infinite load leaves the induced voltage whole."""
    assert load_factor(5000.0, 860.0, 0.4, float("inf")) == 1.0


@given(st.floats(100.0, 15_000.0), st.floats(100.0, 15_000.0))
def test_a_loaded_pickup_still_rises_but_levels_off(first_rpm, second_rpm):
    """Output rises with speed, never faster than in proportion, and never past its ceiling."""
    low_rpm, high_rpm = sorted((first_rpm, second_rpm))
    low, high = (loaded_pickup_volts(1.0, 100.0, n, 60, *COIL) for n in (low_rpm, high_rpm))
    assert low <= high <= low * high_rpm / low_rpm * (1 + 1e-12)


def test_the_proportional_range_is_as_good_as_its_note_says():
    """At five times 200 rpm, 0.5 H into 10 kΩ has cost about 4 %."""
    loaded = loaded_pickup_volts(1.0, 200.0, 1000.0, 60, 860.0, 0.5, 10e3)
    assert loaded / pickup_volts(1.0, 200.0, 1000.0) == pytest.approx(0.96, abs=0.005)


@settings(max_examples=40)
@given(st.integers(2, 80), st.data())
def test_the_drawn_wave_has_one_swing_a_tooth(positions, data):
    """Falling zero crossings over a turn are the teeth that are there: what a counter sees."""
    missing = data.draw(st.integers(0, min(4, positions - 1)))
    wave = pickup_waveform(positions, missing, positions * 64)
    assert falling_crossings(wave) == positions - missing
    assert counted_frequency_hz(60.0, positions, missing) == positions - missing


def test_away_from_the_gap_the_drawn_wave_is_a_unit_sine():
    """Between undisturbed teeth the shape is a sine of unit amplitude within 1 %."""
    samples = 60 * 64
    wave = pickup_waveform(60, 2, samples)
    angle = (np.arange(samples) + 0.5) / 64.0
    undisturbed = (angle > 4.0) & (angle < 54.0)
    sine = np.sin(2.0 * np.pi * angle)
    assert np.max(np.abs(wave - sine)[undisturbed]) < 0.01


def test_the_gap_is_quiet_between_two_higher_swings():
    """Beside the gap the swing stands above the rest; in the middle it is near nought."""
    wave = pickup_waveform(60, 2, 60 * 64)
    middle_of_gap = slice(int(58.8 * 64), int(59.2 * 64))
    assert np.max(np.abs(wave[middle_of_gap])) < 0.1
    assert 1.1 < np.max(wave) < 1.6 and 1.1 < -np.min(wave) < 1.6
    assert np.mean(wave) == pytest.approx(0.0, abs=1e-9)


def test_names_are_shared_not_copied():
    """The tooth functions are the wheel's own."""
    assert tooth_frequency_hz is wheels.tooth_frequency_hz
    assert counted_frequency_hz is wheels.counted_frequency_hz


@pytest.mark.parametrize(
    ("call", "name"),
    [
        (lambda: pickup_volts(1.0, 200.0, 1001.0), "speed"),
        (lambda: pickup_volts(1.0, 0.0, 0.0), "reference speed"),
        (lambda: pickup_volts(-1.0, 200.0, 200.0), "reference voltage"),
        (lambda: pickup_band(1.0, 0.5, 2.0, 200.0, 200.0), "low limit"),
        (lambda: pickup_band(0.1, 0.5, 0.4, 200.0, 200.0), "high limit"),
        (lambda: pickup_band(0.1, 0.5, 0.6, 200.0, 100.0, 150.0), "speed"),
        (lambda: gap_factor(6e-3, 1e-3, 9e-3), "air gap"),
        (lambda: gap_factor(1e-3, 1e-3, 0.5), "tooth pitch"),
        (lambda: load_factor(-1.0, *COIL), "frequency"),
        (lambda: load_factor(10.0, 860.0, 0.4, 0.0), "load resistance"),
        (lambda: pickup_waveform(60, 2, 100), "samples"),
        (lambda: pickup_waveform(1, 0, 64), "tooth positions"),
    ],
)
def test_beyond_the_range_is_an_error(call, name):
    """Each quantity out of range raises, and the error names it."""
    with pytest.raises(OutsideRange) as caught:
        call()
    assert caught.value.name == name


def test_floats_stay_floats_and_arrays_stay_arrays():
    """One number in gives one Python float out; an array gives an array."""
    assert type(pickup_volts(1, 200, 300)) is float
    assert type(load_factor(60, *COIL)) is float
    assert type(gap_factor(1e-3, 1e-3, 9e-3)) is float
    assert pickup_volts(1.0, 200.0, np.array([200.0, 400.0])).tolist() == [1.0, 2.0]
