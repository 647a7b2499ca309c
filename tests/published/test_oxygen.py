"""The oxygen cell against the constants of scipy, a maker's formula and a chemistry library."""

from __future__ import annotations

import math

import pytest
from scipy import constants

from generator.physics.oxygen import (
    SWITCH_THRESHOLD_V,
    cell_voltage_v,
    exhaust_cell_band_v,
    exhaust_cell_v,
    oxygen_fraction,
)
from generator.physics.stoichiometry import (
    ETHANOL,
    ISO_OCTANE,
    METHANE,
    Fuel,
    burnt_oxygen_fraction,
)
from tests.published.checks import Check, assert_well_founded, table

NERNST = "scipy.constants, E = (R·T/4F)·ln(0.2095/p)"
MAKER = "a cell maker's printed formula: E = −0.0496·T·log10(p/0.209) mV"
EQUILIBRIUM = (
    "cantera 3.2.0, gri30, equilibrium at 101 325 Pa in air of 0.2095 oxygen, printed figure"
)
AT_ONE = "the same at λ = 1"
FARADAY_C_MOL = constants.e * constants.N_A


def _nernst(fraction: float, cell_c: float) -> Check:
    def by_constants() -> float:
        kelvin = constants.convert_temperature(cell_c, "C", "K")
        return float(constants.R * kelvin / (4 * FARADAY_C_MOL) * math.log(0.2095 / fraction))

    return Check({"oxygen_fraction": fraction, "cell_c": cell_c}, by_constants, 1e-9, "L", NERNST)


def _printed(fraction: float, cell_c: float, millivolts: float) -> Check:
    inputs = {"oxygen_fraction": fraction, "cell_c": cell_c}
    return Check(inputs, millivolts / 1e3, 5e-5, "L", NERNST + ", printed")


def _maker(fraction: float, cell_c: float) -> Check:
    expected = -0.0496e-3 * (cell_c + 273.15) * math.log10(fraction / 0.209)
    inputs = {"oxygen_fraction": fraction, "cell_c": cell_c, "reference_fraction": 0.209}
    return Check(inputs, expected, 5e-4 * max(abs(expected), 0.1), "P", MAKER)


def _exhaust(fuel: Fuel, air_ratio: float, cell_c: float, millivolts: float) -> Check:
    inputs = {"air_ratio": air_ratio, "cell_c": cell_c, "fuel": fuel}
    return Check(inputs, millivolts / 1e3, 2e-3, "L", EQUILIBRIUM)


CELL = [
    _nernst(0.1, 350.0),
    _nernst(1e-3, 600.0),
    _nernst(1e-15, 800.0),
    _nernst(0.5, 700.0),
    _printed(1e-3, 600.0, 100.54),
    _printed(1e-6, 600.0, 230.48),
    _printed(1e-20, 600.0, 836.86),
    _printed(1e-10, 700.0, 449.97),
    _maker(0.02, 700.0),
    _maker(1e-5, 900.0),
    _maker(1e-18, 650.0),
]
FRACTION = [
    Check({"cell_v": 0.10054, "cell_c": 600.0}, 1e-3, 1e-6, "L", NERNST + ", printed"),
    Check({"cell_v": 0.23048, "cell_c": 600.0}, 1e-6, 1e-9, "L", NERNST + ", printed"),
    Check({"cell_v": 0.0, "cell_c": 500.0}, 0.2095, 1e-12, "C", "no voltage against air"),
    Check(
        {"cell_v": 0.05, "cell_c": 700.0, "reference_fraction": 0.209},
        0.209 * math.exp(-46.421 * 50.0 / 973.15),
        2e-5,
        "P",
        "the same maker: p = 0.209·exp(−46.421·E/T)",
    ),
]
EXHAUST = [
    _exhaust(ISO_OCTANE, 0.97, 600.0, 902.28),
    _exhaust(ISO_OCTANE, 1.01, 600.0, 88.17),
    _exhaust(ISO_OCTANE, 0.90, 600.0, 952.64),
    _exhaust(ISO_OCTANE, 0.99, 700.0, 804.81),
    _exhaust(ISO_OCTANE, 0.95, 800.0, 825.27),
    _exhaust(ISO_OCTANE, 1.1, 500.0, 41.04),
    _exhaust(ISO_OCTANE, 1.5, 900.0, 29.02),
    _exhaust(ETHANOL, 0.97, 600.0, 891.93),
    _exhaust(ETHANOL, 1.03, 800.0, 84.71),
    _exhaust(METHANE, 0.95, 700.0, 867.96),
    _exhaust(METHANE, 0.9, 500.0, 984.80),
    _exhaust(METHANE, 1.005, 900.0, 136.68),
]


def at_one_v(cell_c: float, fuel: Fuel) -> float:
    """Cell voltage at exactly λ = 1, which no page shows as a value."""
    return float(cell_voltage_v(burnt_oxygen_fraction(1.0, cell_c, fuel), cell_c))


ONE = [
    Check({"cell_c": 600.0, "fuel": ISO_OCTANE}, 0.34681, 4e-3, "L", AT_ONE),
    Check({"cell_c": 700.0, "fuel": ISO_OCTANE}, 0.33569, 4e-3, "L", AT_ONE),
    Check({"cell_c": 800.0, "fuel": METHANE}, 0.32259, 4e-3, "L", AT_ONE),
]


@pytest.mark.parametrize(
    ("model", "check"),
    table(cell_voltage_v, CELL)
    + table(oxygen_fraction, FRACTION)
    + table(exhaust_cell_v, EXHAUST)
    + table(at_one_v, ONE),
)
def test_the_cell_agrees_with_the_world(model, check):
    """Nernst's law, its inverse and the cell in exhaust agree with outside values."""
    check.hold(model)


def test_the_threshold_is_not_the_voltage_at_stoichiometry():
    """At exactly λ = 1 the cell gives some 0.34 V, 0.1 V under the customary threshold."""
    assert SWITCH_THRESHOLD_V - at_one_v(600.0, ISO_OCTANE) > 0.09


def test_the_band_over_the_jump_is_the_jump():
    """Over λ = 1 ± 0.002 at 600 °C the band spans what the library gives at λ 0.995 and 1.005."""
    low, high = exhaust_cell_band_v((0.998, 1.002), (600.0, 600.0), ISO_OCTANE)
    assert low == pytest.approx(0.10112, abs=1e-3)
    assert high == pytest.approx(0.83318, abs=1e-3)


def test_the_tables_are_well_founded():
    """Each model rests on at least three printed or library values."""
    for rows in (CELL, FRACTION, EXHAUST, ONE):
        assert_well_founded(rows)
