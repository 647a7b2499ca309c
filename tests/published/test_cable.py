"""Cable resistance against printed wire tables and an independent library."""

from __future__ import annotations

import pytest
from fluids.piping import t_from_gauge

from generator.physics.cable import (
    area_ohm_per_m,
    awg_diameter_m,
    awg_ohm_per_m,
    class_5_ohm_per_m,
)
from tests.published.checks import Check, assert_well_founded, table

FOOT_M = 0.3048
GAUGES = "fluids 1.3.1, piping.t_from_gauge, schedule AWG (rounded to 0.0001 in)"
PRINTED_AWG = "printed table of solid copper wire, ohm per 1000 ft at 20 °C"
B258 = "ASTM B258: d = 0.005 in·92^((36 − n)/39), with 17.241 ohm·mm²/km"
CORD_TABLE = (
    "printed drop table of flexible cords at 60 °C, mV per ampere and metre of two conductors, "
    "tinned (BS 7671, table 4F3B)"
)
CLASS_5 = "printed table of IEC 60228 class 5, plain copper, ohm/km at 20 °C"


def _diameter(gauge: int) -> Check:
    return Check({"gauge": gauge}, lambda: t_from_gauge(gauge, schedule="AWG"), 2.6e-6, "L", GAUGES)


def _printed(gauge: int, ohm_per_1000_ft: float) -> Check:
    expected = ohm_per_1000_ft / (1000.0 * FOOT_M)
    return Check({"gauge": gauge}, expected, 1e-3 * expected, "P", PRINTED_AWG)


def _cord(nominal_mm2: float, mv_per_a_m: float) -> Check:
    inputs = {"nominal_mm2": nominal_mm2, "temp_c": 60.0, "tinned": True}
    return Check(inputs, mv_per_a_m / 2000.0, 0.55 / 2000.0, "P", CORD_TABLE)


def _class_5(nominal_mm2: float, ohm_per_km: float) -> Check:
    return Check({"nominal_mm2": nominal_mm2}, ohm_per_km / 1e3, 1e-9, "P", CLASS_5)


DIAMETER = [
    *(_diameter(gauge) for gauge in (4, 10, 12, 16, 18, 22)),
    Check({"gauge": -3}, 11.6840e-3, 1e-7, "P", "printed table, gauge 0000, 11.6840 mm"),
    Check({"gauge": 36}, 0.1270e-3, 1e-12, "C", "ASTM B258, the gauge that defines the series"),
    Check({"gauge": 10}, 2.5882e-3, 5e-8, "C", B258),
]
AWG_OHM = [
    _printed(0, 0.0983),
    _printed(4, 0.2485),
    _printed(10, 0.9989),
    _printed(12, 1.588),
    _printed(14, 2.525),
    _printed(16, 4.016),
    _printed(18, 6.385),
    _printed(22, 16.14),
    _printed(30, 103.2),
    Check({"gauge": 10}, 3.277e-3, 5e-7, "C", B258),
    Check({"gauge": 18}, 20.95e-3, 5e-6, "C", B258),
    Check(
        {"gauge": 16, "temp_c": 75.0, "lay_factor": 1.02},
        4.99 / (1000.0 * FOOT_M),
        2e-4,
        "P",
        "printed exercise from the US National Electrical Code, table 8: 16 AWG, stranded, 75 °C",
    ),
    Check(
        {"gauge": 12, "temp_c": 75.0, "lay_factor": 1.0},
        1.93 / (1000.0 * FOOT_M),
        2e-5,
        "P",
        "US National Electrical Code, chapter 9, table 8: 12 AWG, solid, 75 °C",
    ),
]
AREA_OHM = [
    Check(
        {"area_mm2": 1.3},
        0.549 / 40.0,
        6e-4,
        "P",
        "printed exercise: 20 m there and back of 1.3 mm² at 1 A drop 0.549 V (with 0.01785)",
    ),
    Check({"area_mm2": 1.0}, 17.241e-3, 1e-9, "C", "IEC 60028"),
    Check({"area_mm2": 2.0, "temp_c": 80.0}, 17.241e-3 / 2 * 1.2358, 1e-8, "C", "IEC 60028"),
]
CLASS_5_OHM = [
    _class_5(0.5, 39.0),
    _class_5(0.75, 26.0),
    _class_5(1.0, 19.5),
    _class_5(2.5, 7.98),
    _class_5(6.0, 3.30),
    _class_5(16.0, 1.21),
    _class_5(25.0, 0.780),
    _class_5(35.0, 0.554),
    _cord(0.5, 93.0),
    _cord(0.75, 62.0),
    _cord(1.0, 46.0),
    _cord(1.5, 32.0),
    _cord(2.5, 19.0),
    _cord(4.0, 12.0),
    Check({"nominal_mm2": 0.5}, 37.1e-3, 2.0e-3, "M", "ISO 6722, from memory: some 5 % less"),
    Check({"nominal_mm2": 2.5}, 7.60e-3, 0.45e-3, "M", "ISO 6722, from memory: some 5 % less"),
]


@pytest.mark.parametrize(
    ("model", "check"),
    table(awg_diameter_m, DIAMETER)
    + table(awg_ohm_per_m, AWG_OHM)
    + table(area_ohm_per_m, AREA_OHM)
    + table(class_5_ohm_per_m, CLASS_5_OHM),
)
def test_cables_agree_with_the_world(model, check):
    """Diameters and resistances agree with outside values."""
    check.hold(model)


def test_the_tables_are_well_founded():
    """Each model rests on at least three printed or library values."""
    for rows in (DIAMETER, AWG_OHM + AREA_OHM, CLASS_5_OHM):
        assert_well_founded(rows)
