"""Switching sensors against a circuit simulator, scipy's square wave and printed examples."""

from __future__ import annotations

from typing import Any

import numpy as np
import pint
import pytest
from scipy import signal

from generator.physics.switching import (
    current_sensor_levels_v,
    duty_from_mean,
    high_level_v,
    low_level_v,
    mean_level_v,
    revolution_duty,
    square_waveform,
)
from tests.published.checks import Check, assert_well_founded, table

SPICE = "ngspice 39, operating point, printed figure"
PWM = "printed worked example of pulse-width modulation: 3.3 V logic at 75 % averages 2.475 V"
UNITS: pint.UnitRegistry[Any] = pint.UnitRegistry()


def scipy_mean_v(high_v: float, low_v: float, duty: float) -> float:
    """Mean of scipy's square wave between two levels."""
    phase = (np.arange(100_000) + 0.5) / 100_000 * 2.0 * np.pi
    wave = 0.5 * (signal.square(phase, duty=duty) + 1.0)
    return float(np.mean(low_v + (high_v - low_v) * wave))


def _mean(high_v: float, low_v: float, duty: float) -> Check:
    return Check(
        {"high_v": high_v, "low_v": low_v, "duty": duty},
        lambda: scipy_mean_v(high_v, low_v, duty),
        1e-3,
        "L",
        "mean of scipy.signal.square",
    )


HIGH = [
    Check(
        {"pull_up_v": 5.0, "pull_up_ohm": 2200.0, "load_ohm": 47e3, "leakage_a": 50e-6},
        4.67134146,
        1e-7,
        "L",
        SPICE,
    ),
    Check(
        {"pull_up_v": 12.0, "pull_up_ohm": 1000.0, "load_ohm": 10e6, "leakage_a": 100e-6},
        11.8988101,
        1e-6,
        "L",
        SPICE,
    ),
    Check({"pull_up_v": 12.0, "pull_up_ohm": 10e3, "load_ohm": 30e3}, 9.0, 1e-7, "L", SPICE),
    Check({"pull_up_v": 5.0, "pull_up_ohm": 2200.0}, 5.0, 1e-12, "C", "no load, no drop"),
]
LOW = [Check({"saturation_v": 0.25, "ground_drop_v": 0.05}, 0.30, 1e-12, "C", "Kirchhoff")]

MEAN = [
    Check({"high_v": 3.3, "low_v": 0.0, "duty": 0.75}, 2.475, 1e-9, "P", PWM),
    _mean(5.0, 0.3, 0.1),
    _mean(12.0, 0.8, 0.37),
    _mean(8.0, 0.4, 0.9),
    Check({"high_v": 5.0, "low_v": 0.3, "duty": 0.1}, 0.77, 1e-9, "C", "V_hi·d + V_lo·(1 − d)"),
    Check({"high_v": 5.0, "low_v": 0.3, "duty": 0.5}, 2.65, 1e-9, "C", "V_hi·d + V_lo·(1 − d)"),
]
DUTY = [Check({"mean_v": 2.475, "high_v": 3.3, "low_v": 0.0}, 0.75, 1e-9, "P", PWM)]


def low_current_level_v(shunt_ohm: float) -> float:
    """The lower of the two levels."""
    return float(current_sensor_levels_v(shunt_ohm)[0])


def high_current_level_v(shunt_ohm: float) -> float:
    """The higher of the two levels."""
    return float(current_sensor_levels_v(shunt_ohm)[1])


def _ohms_law(shunt_ohm: float, current_ma: float) -> Check:
    def product() -> float:
        volts = (shunt_ohm * UNITS.ohm * current_ma * UNITS.milliampere).to(UNITS.volt)
        return float(volts.magnitude)

    return Check({"shunt_ohm": shunt_ohm}, product, 1e-9, "L", "pint: ohm times milliampere")


LOW_CURRENT = [
    _ohms_law(75.0, 7.0),
    _ohms_law(100.0, 7.0),
    Check({"shunt_ohm": 75.0}, 0.525, 1e-9, "practice", "7 mA across 75 ohm"),
]
HIGH_CURRENT = [
    _ohms_law(75.0, 14.0),
    _ohms_law(115.0, 14.0),
    Check({"shunt_ohm": 100.0}, 1.40, 1e-9, "practice", "14 mA across 100 ohm"),
]


@pytest.mark.parametrize(
    ("model", "check"),
    table(high_level_v, HIGH)
    + table(low_level_v, LOW)
    + table(mean_level_v, MEAN)
    + table(duty_from_mean, DUTY)
    + table(low_current_level_v, LOW_CURRENT)
    + table(high_current_level_v, HIGH_CURRENT),
)
def test_switching_sensors_agree_with_the_world(model, check):
    """Levels, means and current levels agree with outside values."""
    check.hold(model)


def test_the_drawn_wave_is_scipys_square_wave():
    """On a wheel without a gap the drawn wave is the one scipy draws, sample for sample."""
    samples = 24 * 40
    phase = (np.arange(samples) + 0.5) / samples * 2.0 * np.pi * 24
    theirs = np.where(signal.square(phase, duty=0.3) > 0.0, 5.0, 0.3)
    np.testing.assert_array_equal(square_waveform(24, 0, 5.0, 0.3, 0.3, samples), theirs)


def test_the_duty_of_a_revolution_counts_the_gap():
    """At half duty a 60−2 wheel resting high over its gap is high for 31 pitches (count)."""
    assert revolution_duty(0.5, 60, 2) == pytest.approx(31.0 / 60.0)
    assert revolution_duty(0.5, 60, 2, gap_high=False) == pytest.approx(29.0 / 60.0)


def test_the_tables_are_well_founded():
    """Each model rests on at least three printed or library values."""
    for rows in (HIGH, MEAN, LOW_CURRENT + HIGH_CURRENT):
        assert_well_founded(rows)
