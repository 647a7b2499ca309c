"""Meter readings of waveforms against the tables printed in multimeter manuals."""

from __future__ import annotations

import numpy as np
import pytest
from scipy import signal

from generator.physics.readings import crest_factor, meter_reading
from tests.published.checks import Check, assert_well_founded, table

TURNS = 1
PHASE = (np.arange(200_000) + 0.5) / 200_000 * 2.0 * np.pi * TURNS
SINE = np.sin(PHASE)
# scipy makes the waveforms, so that none is drawn by the code under test.
TRIANGLE = signal.sawtooth(PHASE, width=0.5)
SQUARE = signal.square(PHASE)

BENCH = "printed manual of a bench multimeter: table of waveforms (peak, RMS, average, mean)"
HANDHELD = "printed manual of a handheld multimeter: average against true-RMS sensing"
FORM = "form factor π/(2·√2) times the rectified mean"


def _read(samples: np.ndarray, response: str, coupling: str) -> dict[str, object]:
    return {"samples": samples, "response": response, "coupling": coupling}


HALF = np.maximum(2.0 * SINE, 0.0)
FULL = np.abs(np.sqrt(2.0) * SINE)


def _pulses(duty: float) -> np.ndarray:
    return np.asarray(0.5 * (signal.square(PHASE, duty=duty) + 1.0))


READING = [
    Check(_read(HALF, "true-rms", "dc"), 1.000, 5e-4, "P", BENCH),
    Check(_read(HALF, "true-rms", "ac"), 0.771, 6e-4, "P", BENCH),
    Check(_read(HALF, "mean", "dc"), 0.636, 7e-4, "P", BENCH),
    Check(_read(HALF, "peak", "dc"), 2.000, 5e-4, "P", BENCH),
    Check(_read(FULL, "true-rms", "ac"), 0.435, 6e-4, "P", BENCH),
    Check(_read(FULL, "average", "ac"), 0.421, 6e-4, "P", BENCH),
    Check(_read(FULL, "mean", "dc"), 0.900, 6e-4, "P", BENCH),
    Check(_read(np.sqrt(3.0) * TRIANGLE, "true-rms", "ac"), 1.000, 5e-4, "P", BENCH),
    Check(_read(np.sqrt(3.0) * TRIANGLE, "average", "ac"), 0.960, 0.0025, "P", BENCH),
    Check(_read(SINE, "true-rms", "ac"), 0.707, 6e-4, "P", HANDHELD),
    Check(_read(SINE, "average", "ac"), 0.707, 6e-4, "P", HANDHELD),
    Check(_read(SQUARE, "average", "ac"), 1.11, 0.001, "P", HANDHELD),
    Check(_read(TRIANGLE, "average", "ac"), 0.555, 6e-4, "P", HANDHELD),
    Check(_read(_pulses(0.25), "average", "dc"), 0.278, 6e-4, "P", HANDHELD),
    Check(_read(_pulses(0.01), "average", "dc"), 0.011, 6e-4, "P", HANDHELD),
    Check(_read(_pulses(0.01), "true-rms", "dc"), 0.1, 5e-4, "P", HANDHELD),
    Check(_read(SQUARE, "average", "ac"), np.pi / (2.0 * np.sqrt(2.0)), 1e-4, "C", FORM),
    Check(_read(HALF, "average", "dc"), 1.0 - 0.293, 5e-4, "C", FORM + ", half-rectified sine"),
]

CREST = [
    Check({"samples": SINE}, 1.414, 6e-4, "P", BENCH),
    Check({"samples": TRIANGLE}, 1.732, 6e-4, "P", BENCH),
    Check({"samples": HALF, "coupling": "dc"}, 2.0, 6e-4, "P", BENCH),
    Check({"samples": _pulses(0.01), "coupling": "dc"}, 10.0, 0.01, "P", HANDHELD),
]


@pytest.mark.parametrize(
    ("model", "check"), table(meter_reading, READING) + table(crest_factor, CREST)
)
def test_meters_show_what_their_manuals_say(model, check):
    """Each way of reading gives the figure that meter manuals print for the waveform."""
    check.hold(model)


def test_ac_coupling_turns_a_large_error_into_a_small_one():
    """A half-rectified sine on an AC-coupled average meter reads 1.1 % high (closed form)."""
    ratio = meter_reading(HALF, "average", "ac") / meter_reading(HALF, "true-rms", "ac")
    assert ratio == pytest.approx(1.011, abs=1e-3)


def test_the_tables_are_well_founded():
    """Each model rests on at least three printed values."""
    assert_well_founded(READING)
    assert_well_founded(CREST)
