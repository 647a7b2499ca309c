"""Properties of threads, bolts and wrenches."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.physics import fasteners
from generator.physics.domain import OutsideRange
from generator.physics.fasteners import (
    CLASSES,
    COARSE_PITCH_MM,
    plausible_torque_band_nm,
    proof_load_n,
    stress_area_m2,
    torque_from_tension_nm,
    torque_plausibility,
    wrench_setting_nm,
)

SIZES = st.sampled_from(sorted(COARSE_PITCH_MM))
GRADES = st.sampled_from(sorted(CLASSES))


@given(SIZES, st.floats(0.3, 1.0))
def test_a_finer_thread_has_more_area_and_never_the_whole_shank(size, share):
    """Stress area rises as the pitch falls and stays below the shank's cross-section."""
    coarse = stress_area_m2(size, COARSE_PITCH_MM[size])
    finer = stress_area_m2(size, share * COARSE_PITCH_MM[size])
    assert coarse <= finer < math.pi / 4.0 * (size * 1e-3) ** 2


@given(SIZES, GRADES)
def test_the_plausible_band_contains_the_usual_torque(size, grade):
    """Limits contain the usual torque, and a torque inside is called no more than plausible."""
    low, usual, high = plausible_torque_band_nm(size, COARSE_PITCH_MM[size], grade)
    assert low < usual < high
    pitch = COARSE_PITCH_MM[size]
    assert torque_plausibility(usual, size, pitch, grade) == "not implausible"
    assert torque_plausibility(low * 0.99, size, pitch, grade) == "too low"
    assert torque_plausibility(high * 1.01, size, pitch, grade) == "too high"


def test_a_stronger_class_bears_more():
    """Proof load rises with the strength number of the class."""
    grades = ("4.6", "6.8", "8.8", "9.8", "10.9", "12.9")
    loads = [proof_load_n(10.0, 1.5, grade) for grade in grades]
    assert loads == sorted(loads)


@pytest.mark.parametrize(
    "text",
    [
        fasteners.__doc__,
        torque_from_tension_nm.__doc__,
        plausible_torque_band_nm.__doc__,
        torque_plausibility.__doc__,
    ],
)
def test_every_place_that_yields_a_torque_warns(text):
    """Whoever reads the help of a torque function is told loudly not to use it as one."""
    assert text is not None and text.count("**") >= 2


@given(st.floats(1.0, 500.0), st.floats(0.2, 1.0), st.floats(0.0, 0.15), st.floats(0.0, 89.0))
def test_an_extension_forward_lowers_the_setting(target_nm, wrench_m, extension_m, angle_deg):
    """Forward the setting is at most the target, backward at least; across it is the same."""
    ahead = wrench_setting_nm(target_nm, wrench_m, extension_m, angle_deg)
    behind = wrench_setting_nm(target_nm, wrench_m, extension_m, 180.0 - angle_deg)
    across = wrench_setting_nm(target_nm, wrench_m, extension_m, 90.0)
    assert ahead <= target_nm * (1 + 1e-12) and behind >= target_nm * (1 - 1e-12)
    assert across == pytest.approx(target_nm)
    mirrored = wrench_setting_nm(target_nm, wrench_m, extension_m, -angle_deg)
    assert mirrored == pytest.approx(ahead)


@given(st.floats(1.0, 500.0), st.floats(0.2, 1.0), st.floats(0.0, 0.15), st.floats(0.0, 180.0))
def test_the_hand_and_the_fastener_balance(target_nm, wrench_m, extension_m, angle_deg):
    """The hand's force times its reach is the torque at the fastener (moments)."""
    force_n = wrench_setting_nm(target_nm, wrench_m, extension_m, angle_deg) / wrench_m
    reach_m = wrench_m + extension_m * math.cos(math.radians(angle_deg))
    assert force_n * reach_m == pytest.approx(target_nm)


def test_floats_stay_floats_and_arrays_stay_arrays():
    """One number in gives one Python float out; an array gives an array."""
    assert type(stress_area_m2(8, 1.25)) is float
    assert type(wrench_setting_nm(50, 0.4, 0.05)) is float
    assert stress_area_m2(np.array([8.0, 10.0]), 1.0).shape == (2,)


@pytest.mark.parametrize(
    ("call", "name"),
    [
        (lambda: stress_area_m2(1.0, 0.2), "diameter"),
        (lambda: stress_area_m2(48.0, 5.0), "diameter"),
        (lambda: stress_area_m2(8.0, 4.0), "pitch over diameter"),
        (lambda: torque_from_tension_nm(-1.0, 8.0), "tension"),
        (lambda: torque_from_tension_nm(1e4, 8.0, 0.9), "torque coefficient"),
        (lambda: torque_plausibility(0.0, 8.0, 1.25, "8.8"), "torque"),
        (lambda: wrench_setting_nm(-1.0, 0.4, 0.1), "torque"),
        (lambda: wrench_setting_nm(50.0, 0.0, 0.1), "wrench length"),
        (lambda: wrench_setting_nm(50.0, 0.4, -0.1), "extension"),
        (lambda: wrench_setting_nm(50.0, 0.4, 0.1, 200.0), "angle"),
        (lambda: wrench_setting_nm(50.0, 0.1, 0.2, 180.0), "reach from fastener to hand"),
    ],
)
def test_beyond_the_range_is_an_error(call, name):
    """Each quantity out of range raises, and the error names it."""
    with pytest.raises(OutsideRange) as caught:
        call()
    assert caught.value.name == name


def test_an_unknown_class_is_refused():
    """A class that is not in the standard's table is an error that lists those that are."""
    with pytest.raises(ValueError, match=r"7\.7"):
        proof_load_n(8.0, 1.25, "7.7")
