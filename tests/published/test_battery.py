"""Rest voltage, load limits and charging voltage against printed tables."""

from __future__ import annotations

import pytest

from generator.physics.battery import (
    cranking_minimum_v,
    load_bank_current_a,
    load_bank_limit_v,
    rest_voltage_band_v,
    state_of_charge_band,
)
from generator.physics.charging import charging_voltage_v
from tests.published.checks import Check, assert_well_founded, table

MAKER = "a battery maker's published table at 26.7 °C, 12.65 V taken as full"
ROUNDED = "printed rule of thumb for flooded cells, to a tenth of a volt"
SLI = "a battery industry page: 12.6 V full, 12.4 V three quarters, 12.2 V half, 12.0 V a quarter"
GLASS_MAT = "printed table of absorbed-glass-mat batteries"
GLASS_MAT_FULL = "another printed table: 12.85 to 13.00 V when full"
GLASS_MAT_LOW = "a third printed table, for travellers: lower throughout"
STEPPED = "printed rule: 9.7 V at 80 °F, less 0.1 V for each 10 °F down to 40 °F"
STUDY = "printed study guide for mechanics: half the cold-cranking rating, 9.6 V at 70 °F"
LONG_TABLE = "load-test table in steps of 10 °F, from memory"
FLOAT = "printed recommendation: 2.30 V per cell at 25 °C, 2.27 at 35, 2.33 at 15"


def rest_v(charge: float, kind: str = "flooded", temp_c: float = 26.7) -> float:
    """Nominal rest voltage, as a plain function for the table."""
    return float(rest_voltage_band_v(charge, kind, temp_c)[1])


def charge_of(rest_v: float, kind: str = "flooded", temp_c: float = 26.7) -> float:
    """Nominal state of charge, as a plain function for the table."""
    return float(state_of_charge_band(rest_v, kind, temp_c)[1])


def _flooded(charge: float, volts: float, source: str, tolerance: float) -> Check:
    return Check({"charge": charge}, volts, tolerance, "P", source)


def _agm(charge: float, volts: float, source: str, tolerance: float) -> Check:
    return Check({"charge": charge, "kind": "agm"}, volts, tolerance, "P", source)


REST = [
    _flooded(1.0, 12.65, MAKER, 1e-9),
    _flooded(0.75, 12.45, MAKER, 1e-9),
    _flooded(0.5, 12.24, MAKER, 1e-9),
    _flooded(0.25, 12.06, MAKER, 1e-9),
    _flooded(0.0, 11.89, MAKER, 1e-9),
    _flooded(1.0, 12.6, ROUNDED, 0.06),
    _flooded(0.75, 12.4, ROUNDED, 0.06),
    _flooded(0.5, 12.2, ROUNDED, 0.06),
    _flooded(0.25, 12.0, SLI, 0.07),
    _agm(1.0, 12.9, GLASS_MAT, 1e-9),
    _agm(0.75, 12.6, GLASS_MAT, 1e-9),
    _agm(0.5, 12.3, GLASS_MAT, 1e-9),
    _agm(0.25, 12.0, GLASS_MAT, 1e-9),
    _agm(0.0, 11.8, GLASS_MAT, 1e-9),
    Check(
        {"charge": 1.0, "temp_c": 10.0},
        12.622,
        0.011,
        "M",
        "a temperature-corrected table of rest voltages, from memory",
    ),
    Check(
        {"charge": 0.5, "temp_c": 40.0},
        12.24 + 6 * 0.2e-3 * 13.3,
        1e-9,
        "C",
        "0.2 mV/K per cell (Bode, from memory)",
    ),
]
CHARGE = [
    Check({"rest_v": 12.45}, 0.75, 1e-9, "P", MAKER),
    Check({"rest_v": 12.06}, 0.25, 1e-9, "P", MAKER),
    Check({"rest_v": 12.4}, 0.75, 0.1, "P", SLI),
    Check({"rest_v": 12.2}, 0.5, 0.1, "P", SLI),
    Check({"rest_v": 12.6, "kind": "agm"}, 0.75, 1e-9, "P", GLASS_MAT),
]
LOAD_BANK = [
    Check({"temp_c": 4.4}, 9.3, 0.005, "P", STEPPED),
    Check({"temp_c": 10.0}, 9.4, 0.005, "P", STEPPED),
    Check({"temp_c": 15.6}, 9.5, 0.005, "P", STEPPED),
    Check({"temp_c": 21.1}, 9.6, 0.005, "P", STEPPED),
    Check({"temp_c": 21.1}, 9.6, 0.005, "P", STUDY),
    Check({"temp_c": -1.1}, 9.1, 0.005, "M", LONG_TABLE),
    Check({"temp_c": -17.8}, 8.5, 0.005, "M", LONG_TABLE),
]
LOAD = [
    Check({"cold_cranking_a": 640.0}, 320.0, 1e-9, "practice", "half the cold-cranking rating"),
]
CRANKING = [
    Check({"temp_c": 21.0}, 9.6, 1e-9, "practice", "common workshop figure"),
    Check({"temp_c": -18.0}, 8.0, 1e-9, "practice", "common workshop figure for hard frost"),
]
CHARGING = [
    Check({"set_v": 6 * 2.30, "temp_c": 35.0}, 6 * 2.27, 1e-9, "P", FLOAT),
    Check({"set_v": 6 * 2.30, "temp_c": 15.0}, 6 * 2.33, 1e-9, "P", FLOAT),
    Check(
        {"set_v": 14.4, "temp_c": 26.0},
        14.4 - 0.018,
        1e-9,
        "P",
        "printed rule: 3 mV per cell less for every degree above 25 °C",
    ),
    Check({"set_v": 14.4, "temp_c": -10.0}, 14.4 + 35 * 0.018, 1e-9, "C", "6·3 mV·35 K"),
]


@pytest.mark.parametrize(
    ("model", "check"),
    table(rest_v, REST)
    + table(charge_of, CHARGE)
    + table(load_bank_limit_v, LOAD_BANK)
    + table(load_bank_current_a, LOAD)
    + table(cranking_minimum_v, CRANKING)
    + table(charging_voltage_v, CHARGING),
)
def test_batteries_agree_with_the_world(model, check):
    """Rest, load, cranking and charging voltages agree with outside values."""
    check.hold(model)


@pytest.mark.parametrize(
    ("charge", "volts", "source"),
    [
        (1.0, 12.85, GLASS_MAT_FULL),
        (1.0, 13.00, GLASS_MAT_FULL),
        (0.7, 12.43, "between printed tables, from memory"),
    ],
)
def test_the_spread_takes_in_other_printed_tables(charge, volts, source):
    """The spread of glass-mat batteries is as wide as the tables in print differ."""
    low, _, high = rest_voltage_band_v(charge, "agm")
    assert low <= volts <= high, source


def test_the_tables_are_well_founded():
    """Each model but the two of pure practice rests on at least three printed values."""
    for rows in (REST, CHARGE, LOAD_BANK, CHARGING):
        assert_well_founded(rows)
