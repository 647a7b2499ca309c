"""Temperature sensors."""

from __future__ import annotations

from typing import Any

from rtd_sensor.pt100 import celsius_to_resistance
from thermistor_utils import Beta_converter, SH_converter

from tests.expected.samples import TEN_K
from tests.published.rows.asking import row

NTC_10K = "printed 10 kΩ sensor table"
MATERIAL = "printed resistance table of a thermistor material, beta 3977 K between 25 and 85 °C"
BAND = "printed 2.5 kΩ sensor band"
LASER = "printed thermistor table in a laser-diode driver's manual"
POINTS = "thermistor-utils 0.0.4, SH_converter.from_points"
BETA = "thermistor-utils 0.0.4, Beta_converter.from_beta"
PLATINUM = "rtd-sensor 0.8, IEC 60751"
SOAKED = "40 CFR 86.1335-90 (e)(1): oil and water between 20 °C and 30 °C (68 and 86 °F) after rest"
FUEL = "40 CFR 86.232-94 (a)(3): fuel brought to 20 °F ± 10 °F, printed as −7 °C ± 5.6 °C"

THEIRS = SH_converter.from_points([(0.0, 27936.0), (50.0, 4103.0), (100.0, 946.6)])
THEIR_BETA = Beta_converter.from_beta(3977.0, 10_000.0)
FIT = {"name": "thermistor_points", "points": TEN_K}
TABLE = {"name": "thermistor_table", "points": [
    {"temperature": "-10 °C", "resistance": "8.26 to 10.56 kohm"},
    {"temperature": "20 °C", "resistance": "2.28 to 2.72 kohm"},
    {"temperature": "80 °C", "resistance": "0.29 to 0.364 kohm"},
]}  # fmt: skip
PT = {"name": "platinum", "at_zero": "200 ohm", "curve": "iec-60751", "tolerance_class": "B",
      "coldest": "-40 °C", "hottest": "600 °C"}  # fmt: skip


def _points(*rows: tuple[float, float]) -> list[dict[str, str]]:
    return [{"temperature": f"{c:g} °C", "resistance": f"{ohm:.10g} ohm"} for c, ohm in rows]


RATIOS: dict[str, Any] = {
    "name": "thermistor_points",
    "points": _points((0.0, 32640.0), (50.0, 3601.0), (100.0, 678.1)),
}
EVERY_TEN: dict[str, Any] = {
    "name": "thermistor_table", "points": _points((10.0, 19549.0), (20.0, 12262.0), (30.0, 7908.0)),
}  # fmt: skip


def _beta(beta: int, hottest: str) -> dict[str, Any]:
    return {
        "name": "thermistor_beta", "resistance": "10 kohm", "reference": "25 °C", "beta": beta,
        "coldest": "25 °C", "hottest": hottest,
    }  # fmt: skip


def _rested(within: float) -> dict[str, Any]:
    return {"name": "cold_soak", "within": within}


COLD_C = (20.0 - 32.0) / 1.8

ROWS = [
    # 0.05 K at 4.4 % a kelvin.
    row(FIT, "nominal", {"temperature": 25.0}, 10_000.0, 20.0, "P", NTC_10K),
    row(RATIOS, "nominal", {"temperature": 25.0}, 10_000.0, 22.0, "P", MATERIAL),
    row(RATIOS, "nominal", {"temperature": 75.0}, 1480.0, 2.7, "P", MATERIAL),
    row(RATIOS, "nominal", {"temperature": 85.0}, 1070.0, 1.9, "P", MATERIAL),
    row(FIT, "nominal", {"temperature": 80.0}, lambda: THEIRS.resistance(80.0), 1e-3, "L", POINTS),
    row(FIT, "nominal", {"temperature": 12.5}, lambda: THEIRS.resistance(12.5), 1e-2, "L", POINTS),
    row(_beta(3977, "85 °C"), "nominal", {"temperature": 85.0}, 1070.0, 1.0, "P", MATERIAL),
    row(_beta(3937, "50 °C"), "nominal", {"temperature": 50.0}, 3601.0, 2.0, "P", MATERIAL),
    row(_beta(3992, "100 °C"), "nominal", {"temperature": 100.0}, 678.1, 0.5, "P", MATERIAL),
    row(_beta(3977, "85 °C"), "nominal", {"temperature": 60.0},
        lambda: THEIR_BETA.resistance(60.0), 1e-5, "L", BETA),
    row(TABLE, "low", {"temperature": -10.0}, 8260.0, 1e-6, "P", BAND),
    row(TABLE, "high", {"temperature": 20.0}, 2720.0, 1e-6, "P", BAND),
    row(TABLE, "low", {"temperature": 80.0}, 290.0, 1e-6, "P", BAND),
    # A printed row that the record leaves out: the bend between rows 10 K apart is 0.35 % of it.
    row(EVERY_TEN, "nominal", {"temperature": 25.0}, 9814.0, 0.0035 * 9814.0, "P", LASER),
    row(PT, "nominal", {"temperature": 600.0}, lambda: 2 * celsius_to_resistance(600.0), 1e-3, "L",
        PLATINUM),
    row(PT, "nominal", {"temperature": -40.0}, lambda: 2 * celsius_to_resistance(-40.0), 1e-3, "L",
        PLATINUM),
    row(PT, "high", {"temperature": 100.0}, lambda: 2 * celsius_to_resistance(100.8), 1e-3, "L",
        PLATINUM + ", at 100 °C and class B's 0.8 K above it"),
    row(_rested(5.0), "low", {"ambient": 25.0}, 20.0, 1e-9, "P", SOAKED),
    row(_rested(5.0), "high", {"ambient": 25.0}, 30.0, 1e-9, "P", SOAKED),
    row(_rested(10 / 1.8), "low", {"ambient": COLD_C}, (10.0 - 32.0) / 1.8, 1e-9, "P", FUEL),
    row(_rested(5.6), "high", {"ambient": -7.0}, (30.0 - 32.0) / 1.8, 0.3, "P",
        FUEL + ", both roundings"),
    row(_rested(5.0), "high", {"ambient": 12.0}, 17.0, 1e-9, "C", "12 + 5"),
]  # fmt: skip
