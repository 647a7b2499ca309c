"""Voltage drops against printed exercises and tables."""

from __future__ import annotations

import pytest

from generator.physics.cable import class_5_ohm_per_m
from generator.physics.voltage_drop import Piece, cable_drop_v, circuit_current_a, drop_budget
from generator.physics.voltage_drop import joint_ohm as joint_resistance_ohm
from tests.published.checks import Check, assert_well_founded, table

COPPER_LOOPS = "printed worked examples of a cable dealer: length × mV/A/m × current"
NEC = "printed exercise: 16 AWG, 100 ft there and back, 4.99 ohm per 1000 ft, 4 A"
CLASS_5 = "IEC 60228 class 5, 2.5 mm², 5 m, 10 A; 1 + 0.00393·(t − 20)"


def _drop(current_a: float, ohm_per_m: float, length_m: float) -> dict[str, float]:
    return {"current_a": current_a, "ohm_per_m": ohm_per_m, "length_m": length_m}


def class_5_drop_v(nominal_mm2: float, temp_c: float, length_m: float, current_a: float) -> float:
    """Drop along a class 5 cable, as a plain function for the table."""
    return float(cable_drop_v(current_a, class_5_ohm_per_m(nominal_mm2, temp_c), length_m))


def total_v(ohms: list[float], current_a: float) -> float:
    """Total of a budget, as a plain function for the table."""
    return drop_budget([Piece(f"piece {n}", ohm) for n, ohm in enumerate(ohms)], current_a).total_v


def current_a(ohms: list[float], supply_v: float, load_ohm: float) -> float:
    """Current of a circuit, as a plain function for the table."""
    pieces = [Piece(f"piece {n}", ohm) for n, ohm in enumerate(ohms)]
    return circuit_current_a(pieces, supply_v, load_ohm)


def _class_5(temp_c: float, expected: float) -> Check:
    inputs = {"nominal_mm2": 2.5, "temp_c": temp_c, "length_m": 5.0, "current_a": 10.0}
    return Check(inputs, expected, 5e-4, "C", CLASS_5)


DROP = [
    Check(_drop(30.0, 11e-3, 20.0), 6.6, 1e-9, "P", COPPER_LOOPS),
    Check(_drop(45.0, 7.3e-3, 40.0), 13.14, 1e-9, "P", COPPER_LOOPS),
    Check(_drop(16.0, 29e-3, 10.0), 4.64, 1e-9, "P", COPPER_LOOPS),
    Check(_drop(4.0, 4.99 / 304.8, 2 * 30.48), 4.0, 0.01, "P", NEC),
]
CABLE = [_class_5(20.0, 0.399), _class_5(80.0, 0.493)]
TOTAL = [
    Check({"ohms": [0.02, 0.005, 0.01], "current_a": 8.0}, 0.28, 1e-12, "C", "Ohm: 8·0.035"),
    Check({"ohms": [1e-3, 2e-3], "current_a": 150.0}, 0.45, 1e-12, "C", "Ohm: 150·0.003"),
]
CURRENT = [
    Check({"ohms": [0.1, 0.3], "supply_v": 12.6, "load_ohm": 2.0}, 5.25, 1e-12, "C", "12.6/2.4"),
]
JOINT = [
    Check({"drop_v": 0.25, "current_a": 125.0}, 2e-3, 1e-12, "C", "Ohm: 0.25/125"),
]


@pytest.mark.parametrize(
    ("model", "check"),
    table(cable_drop_v, DROP)
    + table(class_5_drop_v, CABLE)
    + table(total_v, TOTAL)
    + table(current_a, CURRENT)
    + table(joint_resistance_ohm, JOINT),
)
def test_drops_agree_with_the_world(model, check):
    """Drops, budgets, currents and joints agree with outside values."""
    check.hold(model)


def test_the_tables_are_well_founded():
    """The one law behind all of them rests on at least three printed values."""
    assert_well_founded(DROP + CABLE + TOTAL + CURRENT + JOINT)
