"""Air needed by fuels against a chemistry library and printed tables."""

from __future__ import annotations

import pytest

from generator.physics.stoichiometry import (
    Fuel,
    blend_ratio,
    mass_fraction_of_volume,
    stoichiometric_ratio,
    stoichiometric_ratio_by_mass,
)
from tests.published.checks import Check, assert_well_founded, table

LIBRARY = (
    "cantera 3.2.0, stoich_air_fuel_ratio with air O2 0.2095, N2 0.7808, Ar 0.0097, printed figure"
)
FUELS = "printed list of stoichiometric ratios by mass, to two or three figures"
BLENDS = "printed table of ethanol blends: w·9.0078 + (1 − w)·14.64"
METHANOL = "printed table of methanol as a fuel: 6.47 by weight"


def _library(carbon: float, hydrogen: float, oxygen: float, ratio: float) -> Check:
    return Check({"fuel": Fuel(carbon, hydrogen, oxygen)}, ratio, 0.005, "L", LIBRARY)


def _listed(carbon: float, hydrogen: float, oxygen: float, ratio: float, tolerance: float) -> Check:
    return Check({"fuel": Fuel(carbon, hydrogen, oxygen)}, ratio, tolerance, "P", FUELS)


RATIO = [
    _library(8, 18, 0, 15.12875),
    _library(2, 6, 1, 9.00313),
    _library(1, 4, 0, 17.23556),
    _library(3, 8, 0, 15.67624),
    _library(1, 4, 1, 6.47221),
    _library(0, 2, 0, 34.28944),
    _listed(1, 4, 0, 17.2, 0.06),
    _listed(2, 6, 1, 9.0, 0.06),
    _listed(0, 2, 0, 34.0, 0.5),
    Check({"fuel": Fuel(1, 4, 1)}, 6.47, 0.006, "P", METHANOL),
    Check({"fuel": Fuel(1, 1.87)}, 14.7, 0.15, "M", "petrol by convention"),
]
BY_MASS = [
    Check(
        {"carbon": 0.84117, "hydrogen": 0.15883}, 15.13, 0.02, "L", LIBRARY + ", iso-octane by mass"
    ),
    Check(
        {"carbon": 0.5214, "hydrogen": 0.1313, "oxygen": 0.3473},
        9.00,
        0.02,
        "L",
        LIBRARY + ", ethanol by mass",
    ),
    Check({"carbon": 0.7487, "hydrogen": 0.2513}, 17.24, 0.02, "L", LIBRARY + ", methane by mass"),
    Check({"carbon": 0.86, "hydrogen": 0.14}, 14.7, 0.15, "M", "diesel fuel and petrol, 86 : 14"),
]
BLEND = [
    Check({"mass_fractions": [0.10, 0.90], "ratios": [9.0078, 14.64]}, 14.08, 0.005, "P", BLENDS),
    Check({"mass_fractions": [0.85, 0.15], "ratios": [9.0078, 14.64]}, 9.8526, 5e-5, "P", BLENDS),
    Check({"mass_fractions": [0.70, 0.30], "ratios": [9.0078, 14.64]}, 10.6975, 5e-5, "P", BLENDS),
    Check(
        {"mass_fractions": [0.10, 0.90], "ratios": [9.0, 14.7]},
        14.13,
        5e-3,
        "P",
        "printed forum note on E10: 14.13",
    ),
]
MASS = [
    Check(
        {"volume_fraction": 0.1, "kg_m3": 789.0, "other_kg_m3": 745.0},
        78.9 / (78.9 + 670.5),
        1e-12,
        "C",
        "masses of 0.1 m³ and 0.9 m³",
    ),
    Check({"volume_fraction": 1.0, "kg_m3": 789.0, "other_kg_m3": 745.0}, 1.0, 0.0, "C", "all"),
]


@pytest.mark.parametrize(
    ("model", "check"),
    table(stoichiometric_ratio, RATIO)
    + table(stoichiometric_ratio_by_mass, BY_MASS)
    + table(blend_ratio, BLEND)
    + table(mass_fraction_of_volume, MASS),
)
def test_air_needed_agrees_with_the_world(model, check):
    """Ratios of pure fuels, of compositions by mass and of blends agree with outside values."""
    check.hold(model)


def test_the_tables_are_well_founded():
    """Each model rests on at least three printed or library values."""
    for rows in (RATIO, BY_MASS, BLEND + MASS):
        assert_well_founded(rows)
