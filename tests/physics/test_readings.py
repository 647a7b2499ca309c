"""Properties of meter readings."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra.numpy import arrays

from generator.physics.domain import OutsideRange
from generator.physics.readings import SINE_FORM_FACTOR, crest_factor, meter_reading

WAVES = arrays(np.float64, st.integers(2, 40), elements=st.floats(-50.0, 50.0))


@given(WAVES)
def test_mean_rms_and_peak_stand_in_order(wave):
    """Rectified mean is at most RMS, and RMS at most peak, whatever the wave."""
    for coupling in ("ac", "dc"):
        average = meter_reading(wave, "average", coupling) / SINE_FORM_FACTOR
        rms = meter_reading(wave, "true-rms", coupling)
        assert average <= rms + 1e-9
        assert rms <= meter_reading(wave, "peak", coupling) + 1e-9


@given(WAVES)
def test_coupling_splits_the_rms_squarely(wave):
    """The square of the whole is the mean squared and the AC part squared."""
    whole = meter_reading(wave, "true-rms", "dc")
    mean, part = meter_reading(wave, "mean", "dc"), meter_reading(wave, "true-rms", "ac")
    assert whole**2 == pytest.approx(mean**2 + part**2, rel=1e-9, abs=1e-9)


@given(WAVES, st.floats(-20.0, 20.0))
def test_an_ac_range_is_blind_to_a_steady_voltage(wave, offset):
    """Adding a steady voltage leaves every AC-coupled reading as it was."""
    for response in ("true-rms", "average", "peak"):
        moved = meter_reading(wave + offset, response, "ac")
        assert moved == pytest.approx(meter_reading(wave, response, "ac"), abs=1e-9)


def test_what_cannot_be_read_is_refused():
    """Too few samples, a flat wave's crest, and names that do not exist are errors."""
    with pytest.raises(OutsideRange):
        meter_reading(np.array([1.0]), "peak")
    with pytest.raises(OutsideRange):
        crest_factor(np.ones(8))
    with pytest.raises(ValueError, match="sideways"):
        meter_reading(np.ones(8), "peak", "sideways")  # type: ignore[arg-type]
    with pytest.raises(ValueError, match="guess"):
        meter_reading(np.ones(8), "guess")  # type: ignore[arg-type]
