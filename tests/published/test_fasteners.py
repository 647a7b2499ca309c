"""Stress areas, proof loads, torques and wrench settings against printed tables."""

from __future__ import annotations

import pytest

from generator.physics.fasteners import (
    COARSE_PITCH_MM,
    plausible_torque_band_nm,
    proof_load_n,
    stress_area_m2,
    torque_from_tension_nm,
    wrench_setting_nm,
)
from tests.published.checks import Check, assert_well_founded, table

ISO_898 = "ISO 898-1, printed table of stress areas, coarse thread, to three figures"
FINE = "ISO 898-1, fine thread, from memory"
PROOF = "ISO 898-1, printed proof loads of class 8.8"
TENSION = "printed worked example: M12 8.8 at 70 % of proof, K 0.2, about 34 kN and 82 N·m"
BENCH = "printed worked example: M10 at 50 N·m and K 0.20 is 25 kN"
ADAPTER = "printed manual of a torque wrench: 50 ft·lb, 16 in and 2 in, set 44.44"
INLINE = "printed worked example: 80 N·m, 40 cm and 5 cm, set 71.1"
ACROSS = "the same example: square across the setting stays"
LONG_ADAPTER = "printed worked example: 30 lb·ft, 12 in and 6 in, set 20"
SHORTENED = "printed formula of a shortened arm: Y = T·L/(L − E)"


def _area(diameter_mm: float, mm2: float, tolerance: float) -> Check:
    inputs = {"diameter_mm": diameter_mm, "pitch_mm": COARSE_PITCH_MM[diameter_mm]}
    return Check(inputs, mm2 * 1e-6, tolerance * 1e-6, "P", ISO_898)


def _fine(diameter_mm: float, pitch_mm: float, mm2: float) -> Check:
    inputs = {"diameter_mm": diameter_mm, "pitch_mm": pitch_mm}
    return Check(inputs, mm2 * 1e-6, 0.06e-6, "M", FINE)


def _proof(diameter_mm: float, kilonewtons: float) -> Check:
    inputs = {
        "diameter_mm": diameter_mm, "pitch_mm": COARSE_PITCH_MM[diameter_mm],
        "property_class": "8.8",
    }  # fmt: skip
    return Check(inputs, kilonewtons * 1e3, 75.0, "P", PROOF)


def _set(
    target_nm: float, wrench_m: float, extension_m: float, angle_deg: float
) -> dict[str, float]:
    return {
        "target_nm": target_nm, "wrench_m": wrench_m, "extension_m": extension_m,
        "angle_deg": angle_deg,
    }  # fmt: skip


AREA = [
    _area(3.0, 5.03, 0.006),
    _area(5.0, 14.2, 0.06),
    _area(6.0, 20.1, 0.06),
    _area(8.0, 36.6, 0.06),
    _area(10.0, 58.0, 0.06),
    _area(12.0, 84.3, 0.06),
    _area(14.0, 115.0, 0.6),
    _area(16.0, 157.0, 0.6),
    _area(20.0, 245.0, 0.6),
    _area(24.0, 353.0, 0.6),
    _area(30.0, 561.0, 0.6),
    _area(39.0, 976.0, 0.6),
    _fine(8.0, 1.0, 39.2),
    _fine(10.0, 1.25, 61.2),
    _fine(12.0, 1.25, 92.1),
]
LOAD = [
    _proof(6.0, 11.6),
    _proof(8.0, 21.2),
    _proof(12.0, 48.9),
    Check(
        {"diameter_mm": 10.0, "pitch_mm": 1.5, "property_class": "10.9"},
        48.1e3,
        75.0,
        "M",
        "ISO 898-1, M10 10.9, from memory",
    ),
    Check(
        {"diameter_mm": 20.0, "pitch_mm": 2.5, "property_class": "8.8"},
        147e3,
        300.0,
        "M",
        "ISO 898-1, M20 8.8 (600 MPa above M16), from memory",
    ),
]
TORQUE = [
    Check({"tension_n": 0.7 * 84.3 * 580.0, "diameter_mm": 12.0}, 82.0, 0.5, "P", TENSION),
    Check({"tension_n": 25e3, "diameter_mm": 10.0, "k": 0.2}, 50.0, 1e-9, "P", BENCH),
    Check(
        {"tension_n": 45e3, "diameter_mm": 12.0, "k": 0.15},
        82.0,
        1.5,
        "P",
        "the same M12 example, lubricated: 82 N·m is about 45 kN",
    ),
    Check({"tension_n": 0.75 * 36.609 * 580.0, "diameter_mm": 8.0}, 25.5, 0.05, "C", "from A·S_p"),
    Check({"tension_n": 0.75 * 21.2e3, "diameter_mm": 8.0}, 25.4, 0.05, "C", "from the load"),
]
WRENCH = [
    Check(_set(50.0, 16.0, 2.0, 0.0), 44.44, 0.005, "P", ADAPTER),
    Check(_set(80.0, 0.40, 0.05, 0.0), 71.1, 0.05, "P", INLINE),
    Check(_set(80.0, 0.40, 0.05, 90.0), 80.0, 1e-9, "P", ACROSS),
    Check(_set(30.0, 12.0, 6.0, 0.0), 20.0, 1e-9, "P", LONG_ADAPTER),
    Check(_set(30.0, 12.0, 2.0, 180.0), 36.0, 1e-9, "P", SHORTENED),
    Check(_set(50.0, 16.0, 2.0, 60.0), 50.0 * 16.0 / 17.0, 1e-9, "C", "cos 60° = ½"),
]


@pytest.mark.parametrize(
    ("model", "check"),
    table(stress_area_m2, AREA)
    + table(proof_load_n, LOAD)
    + table(torque_from_tension_nm, TORQUE)
    + table(wrench_setting_nm, WRENCH),
)
def test_fasteners_agree_with_the_world(model, check):
    """Areas, loads, torques and settings agree with outside values."""
    check.hold(model)


@pytest.mark.parametrize(
    ("diameter_mm", "torque_nm", "source"),
    [
        (10.0, 52.0, "printed rule of thumb, M10 8.8 at 75 % dry"),
        (10.0, 34.0, "the same, lubricated"),
        (12.0, 82.0, "printed worked example, M12 8.8"),
        (6.0, 10.0, "common practice, M6 8.8 on a cover"),
    ],
)
def test_sound_torques_are_plausible_and_slips_of_unit_are_not(diameter_mm, torque_nm, source):
    """Printed torques lie in the plausible span; twelve times one and a 25th do not."""
    low, _, high = plausible_torque_band_nm(diameter_mm, COARSE_PITCH_MM[diameter_mm], "8.8")
    assert low < torque_nm < high, source
    assert torque_nm * 12.0 > high
    assert torque_nm / 25.0 < low


def test_a_gentle_torque_on_a_soft_gasket_is_plausible():
    """2 N·m on M6 (common practice on soft gaskets) is low, but no misprint."""
    assert plausible_torque_band_nm(6.0, 1.0, "8.8")[0] < 2.0


def test_the_tables_are_well_founded():
    """Each model rests on at least three printed values."""
    for rows in (AREA, LOAD, TORQUE, WRENCH):
        assert_well_founded(rows)
