"""Tooth rates against printed examples and a count of teeth that the project did not make."""

from __future__ import annotations

import numpy as np
import pytest
from scipy import signal

from generator.physics.wheels import (
    counted_frequency_hz,
    gap_pitches,
    speed_rpm_from_counted,
    tooth_frequency_hz,
)
from tests.published.checks import Check, assert_well_founded, table

ALTERNATOR = "printed table of alternator frequency: pole pairs · rpm / 60, the same count per turn"
RING = "printed note on a variable-reluctance ring: 36 teeth at 600 rpm, period 2.8 ms"
COUNT = "teeth − missing per revolution"


def scipy_count_hz(positions: int, missing: int, speed_rpm: float) -> float:
    """Count, with scipy's peak finder, the pulses of a wheel over sixty seconds."""
    turns = round(speed_rpm)
    tooth = np.array([0.0, 1.0, 0.0, 0.0])
    slot = np.zeros(4)
    turn = np.concatenate([tooth] * (positions - missing) + [slot] * missing)
    peaks, _ = signal.find_peaks(np.tile(turn, turns))
    return len(peaks) / 60.0


TOOTH = [
    Check({"speed_rpm": 3000.0, "positions": 8}, 400.0, 1e-9, "P", ALTERNATOR),
    Check({"speed_rpm": 1500.0, "positions": 8}, 200.0, 1e-9, "P", ALTERNATOR),
    Check({"speed_rpm": 750.0, "positions": 4}, 50.0, 1e-9, "P", ALTERNATOR),
    Check({"speed_rpm": 600.0, "positions": 36}, 1.0 / 2.8e-3, 7.0, "P", RING),
    Check({"speed_rpm": 200.0, "positions": 60}, 200.0, 1e-9, "C", "teeth · rpm / 60"),
    Check({"speed_rpm": 600.0, "positions": 36}, 360.0, 1e-9, "C", "teeth · rpm / 60"),
]


def _counted(positions: int, missing: int, rpm: float) -> Check:
    inputs = {"speed_rpm": rpm, "positions": positions, "missing": missing}
    source = "scipy.signal.find_peaks on sixty seconds of pulses"
    return Check(inputs, lambda: scipy_count_hz(positions, missing, rpm), 1e-9, "L", source)


COUNTED = [
    _counted(60, 2, 600.0),
    _counted(36, 1, 250.0),
    _counted(24, 0, 90.0),
    Check({"speed_rpm": 600.0, "positions": 60, "missing": 2}, 580.0, 1e-9, "C", COUNT),
    Check({"speed_rpm": 600.0, "positions": 36, "missing": 1}, 350.0, 1e-9, "C", COUNT),
]

SPEED = [
    Check({"frequency_hz": 400.0, "positions": 8}, 3000.0, 1e-9, "P", ALTERNATOR),
    Check({"frequency_hz": 580.0, "positions": 60, "missing": 2}, 600.0, 1e-9, "C", COUNT),
]

GAP = [
    Check({"missing": 2}, 3.0, 0.0, "C", "60−2 wheel: from tooth to tooth across the gap"),
    Check({"missing": 1}, 2.0, 0.0, "C", "36−1 wheel: from tooth to tooth across the gap"),
]


@pytest.mark.parametrize(
    ("model", "check"),
    table(tooth_frequency_hz, TOOTH)
    + table(counted_frequency_hz, COUNTED)
    + table(speed_rpm_from_counted, SPEED)
    + table(gap_pitches, GAP),
)
def test_tooth_rates_agree_with_the_world(model, check):
    """Tooth, counted and inverse rates agree with outside values."""
    check.hold(model)


def test_the_tables_are_well_founded():
    """Each rate rests on at least three printed or library values."""
    assert_well_founded(TOOTH)
    assert_well_founded(COUNTED)
