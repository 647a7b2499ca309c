"""Air pressure against two independent libraries and printed weather formulae."""

from __future__ import annotations

import pytest
from ambiance import Atmosphere
from fluids.atmosphere import ATMOSPHERE_1976

from generator.physics.atmosphere import (
    WEATHER_USUAL_PA,
    geometric_m,
    geopotential_m,
    key_on_pressure_band_pa,
    pressure_height_m,
    standard_pressure_pa,
    station_pressure_pa,
)
from tests.published.checks import Check, assert_well_founded, table

ICAO_LIBRARY = "ambiance 1.3.1, ICAO standard atmosphere"
US_LIBRARY = "fluids 1.3.1, US Standard Atmosphere 1976 (alike below 32 km)"
PRINTED_FIGURES = "ambiance and fluids, printed figures at geopotential heights"
QNH_RULE = (
    "printed aviation rule: h_ISA = 44330.77 − 11880.32·QFE^0.190263 and "
    "QNH = 1013.25·(1 − 0.0065·(h_ISA − H)/288.15)^5.25588, in hPa and metres"
)
EARTH_M = 6_356_766.0


def _true_height(height_m: float) -> float:
    """What the libraries take: the geometric height (ISO 2533, closed form)."""
    return EARTH_M * height_m / (EARTH_M - height_m)


def _icao(height_m: float) -> Check:
    return Check(
        {"height_m": height_m},
        lambda: Atmosphere(_true_height(height_m)).pressure[0],
        0.5,
        "L",
        ICAO_LIBRARY,
    )


def _us(height_m: float) -> Check:
    return Check(
        {"height_m": height_m},
        lambda: ATMOSPHERE_1976(_true_height(height_m)).P,
        1.0,
        "L",
        US_LIBRARY,
    )


def _printed(height_m: float, pressure_pa: float) -> Check:
    return Check({"height_m": height_m}, pressure_pa, 0.06, "L", PRINTED_FIGURES)


def _geopotential(geometric: float) -> Check:
    return Check(
        {"geometric_m": geometric}, lambda: Atmosphere(geometric).H[0], 1e-3, "L", ICAO_LIBRARY
    )


def _geometric(height_m: float) -> Check:
    def of_library() -> float:
        return float(Atmosphere.from_pressure(Atmosphere(_true_height(height_m)).pressure).h[0])

    return Check({"height_m": height_m}, of_library, 0.05, "L", ICAO_LIBRARY)


def qnh_of(station_hpa: float, height_m: float) -> float:
    """The printed rule, apart from our own code."""
    in_standard_m = 44330.77 - 11880.32 * station_hpa**0.190263
    return float(1013.25 * (1.0 - 0.0065 * (in_standard_m - height_m) / 288.15) ** 5.25588)


def _station(station_hpa: float, height_m: float) -> Check:
    inputs = {"height_m": height_m, "sea_level_pa": 100.0 * qnh_of(station_hpa, height_m)}
    return Check(inputs, 100.0 * station_hpa, 8.0, "P", QNH_RULE)


PRESSURE = [
    *(_icao(h) for h in (-400.0, 0.0, 250.0, 1500.0, 3000.0, 10_000.0)),
    *(_us(h) for h in (150.0, 800.0, 2500.0, 6000.0)),
    _printed(-500.0, 107477.5),
    _printed(500.0, 95460.8),
    _printed(1000.0, 89874.6),
    _printed(2000.0, 79495.2),
    _printed(5000.0, 54019.9),
    Check(
        {"height_m": 4600 * 0.3048},
        12.4 * 6894.757,
        0.05 * 6894.757,
        "P",
        "printed letter on compression at altitude: 12.4 psi at 4600 ft",
    ),
    Check({"height_m": 3000.0}, 70e3, 500.0, "P", "printed climate notes: about 700 hPa at 3 km"),
]
HEIGHTS = [*(_geopotential(z) for z in (0.0, 500.0, 2000.0, 9000.0))]
TRUE_HEIGHTS = [*(_geometric(h) for h in (0.0, 1000.0, 5000.0))]
PRESSURE_HEIGHT = [
    Check({"pressure_pa": 107477.5}, -500.0, 0.01, "L", PRINTED_FIGURES),
    Check({"pressure_pa": 89874.6}, 1000.0, 0.01, "L", PRINTED_FIGURES),
    Check({"pressure_pa": 54019.9}, 5000.0, 0.01, "L", PRINTED_FIGURES),
]
STATION = [
    _station(980.0, 150.0),
    _station(905.0, 1000.0),
    _station(1018.0, 30.0),
    _station(790.0, 2100.0),
    Check({"height_m": 1000.0}, 89874.6, 0.1, "L", PRINTED_FIGURES),
]


@pytest.mark.parametrize(
    ("model", "check"),
    table(standard_pressure_pa, PRESSURE)
    + table(geopotential_m, HEIGHTS)
    + table(geometric_m, TRUE_HEIGHTS)
    + table(pressure_height_m, PRESSURE_HEIGHT)
    + table(station_pressure_pa, STATION),
)
def test_the_air_agrees_with_the_world(model, check):
    """Pressures and heights agree with libraries and printed rules."""
    check.hold(model)


def test_the_usual_weather_takes_in_what_is_printed():
    """982 to 1033 hPa, a printed span of sea-level pressures, lies within ours; records do not."""
    low, _, high = WEATHER_USUAL_PA
    assert low <= 98_200.0 and high >= 103_300.0
    assert low > 87_000.0 and high < 108_380.0


def test_a_sensor_is_held_to_the_station_not_to_the_weather_report():
    """At 1600 m a sensor that shows the report's sea-level 101 kPa is far out of its band."""
    day_pa = station_pressure_pa(1600.0, 101_325.0)
    _, _, high = key_on_pressure_band_pa((day_pa, day_pa, day_pa), 2000.0)
    assert high < 86_000.0


def test_the_tables_are_well_founded():
    """Each model rests on at least three printed or library values."""
    for rows in (PRESSURE, HEIGHTS, TRUE_HEIGHTS, PRESSURE_HEIGHT, STATION):
        assert_well_founded(rows)
