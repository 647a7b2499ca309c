"""Compression, leak-down and fuel pressure against printed examples."""

from __future__ import annotations

import pytest
from fluids.atmosphere import ATMOSPHERE_1976

from generator.physics.atmosphere import standard_pressure_pa
from generator.physics.engine_pressures import (
    compression_at_pa,
    injector_difference_pa,
    leak_down_share,
    rail_gauge_pa,
)
from tests.published.checks import Check, assert_well_founded, table

PSI_PA = 6894.757
INHG_PA = 3386.389
AIR = "fluids 1.3.1, US Standard Atmosphere 1976; compression proportional to it"
LETTER = "printed letter on compression at altitude: 120 psi at sea level is about 100 at 5000 ft"
RULE = "the same letter's rule: about 1 % for each 250 ft"
ENCYCLOPEDIA = "printed note: air pressure falls by about 3.6 % for each 1000 ft"
BULLETIN = "printed bulletin on referenced regulators: 12 inHg of vacuum takes 6 psi off the rail"
DIFFERENCE = "printed definition: difference = rail less manifold pressure, constant if referenced"
REGULATION = "from memory: 60 of 80 psi is a leakage of 25 % (aircraft practice)"


def compression_at_height_psi(sea_level_psi: float, height_m: float) -> float:
    """Compression at a height in the standard atmosphere, psi, for the table."""
    at_pa = compression_at_pa(sea_level_psi * PSI_PA, standard_pressure_pa(height_m))
    return float(at_pa) / PSI_PA


def _height(sea_level_psi: float, height_m: float) -> Check:
    def by_library() -> float:
        # 0.2 m of difference between the two heights at 1200 m: 2e-5 of the pressure.
        air_pa = ATMOSPHERE_1976(height_m).P
        return float(sea_level_psi * air_pa / ATMOSPHERE_1976(0.0).P)

    inputs = {"sea_level_psi": sea_level_psi, "height_m": height_m}
    return Check(inputs, by_library, 2e-4 * sea_level_psi, "L", AIR)


def _rail(manifold_pa: float, referenced: bool) -> dict[str, object]:
    return {
        "regulator_pa": 40.0 * PSI_PA, "manifold_pa": manifold_pa, "station_pa": 101_325.0,
        "referenced": referenced,
    }  # fmt: skip


COMPRESSION = [
    _height(160.0, 600.0),
    _height(175.0, 1200.0),
    _height(400.0, 2400.0),
    Check({"sea_level_psi": 120.0, "height_m": 1524.0}, 100.0, 1.0, "P", LETTER),
    Check({"sea_level_psi": 100.0, "height_m": 304.8}, 96.0, 0.6, "P", RULE),
    Check({"sea_level_psi": 100.0, "height_m": 304.8}, 96.4, 0.1, "P", ENCYCLOPEDIA),
]
LEAK_DOWN = [
    Check({"supply_pa": 80.0, "cylinder_pa": 60.0}, 0.25, 1e-12, "M", REGULATION),
    Check({"supply_pa": 100.0, "cylinder_pa": 90.0}, 0.10, 1e-12, "C", "(100 − 90)/100"),
    Check({"supply_pa": 100.0, "cylinder_pa": 100.0}, 0.0, 1e-12, "C", "no drop, no leakage"),
]
RAIL = [
    Check(_rail(101_325.0 - 12.0 * INHG_PA, True), 34.0 * PSI_PA, 0.12 * PSI_PA, "P", BULLETIN),
    Check(
        _rail(101_325.0 + 10.0 * PSI_PA, True),
        50.0 * PSI_PA,
        1.0,
        "P",
        "the same bulletin: boost raises the rail pressure by as much, 1 to 1",
    ),
    Check(_rail(101_325.0, True), 40.0 * PSI_PA, 1e-6, "P", "hose off: the regulator's own figure"),
    Check(_rail(35_000.0, False), 40.0 * PSI_PA, 1e-6, "C", "no reference, no change"),
]
INJECTOR = [
    Check(
        {"rail_gauge": 3e5, "manifold_pa": 35e3, "station_pa": 100e3},
        3.65e5,
        1e-6,
        "C",
        DIFFERENCE,
    ),
    Check(
        {"rail_gauge": 2.35e5, "manifold_pa": 35e3, "station_pa": 100e3},
        3e5,
        1e-6,
        "C",
        DIFFERENCE,
    ),
]


@pytest.mark.parametrize(
    ("model", "check"),
    table(compression_at_height_psi, COMPRESSION)
    + table(leak_down_share, LEAK_DOWN)
    + table(rail_gauge_pa, RAIL)
    + table(injector_difference_pa, INJECTOR),
)
def test_engine_pressures_agree_with_the_world(model, check):
    """Compression, leak-down, rail and injector pressures agree with outside values."""
    check.hold(model)


def test_the_tables_are_well_founded():
    """Compression and fuel pressure each rest on at least three printed or library values."""
    assert_well_founded(COMPRESSION)
    assert_well_founded(RAIL + INJECTOR)
