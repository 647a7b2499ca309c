"""Every model from the text of a record to a figure that the world gives.

The physics rooms are held to their sources one by one elsewhere; here the grammar, the units, the
parameters and the engine stand in between, and a slip in any of them shows.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from math import pi
from typing import Any

import pytest
from ambiance import Atmosphere
from rtd_sensor.pt100 import celsius_to_resistance
from thermistor_utils import SH_converter

from generator.expected import MODELS, expect
from generator.quantities import Interval
from generator.records.kinds.things import Spec
from tests.expected.samples import TEN_K, WHEEL, spec_of
from tests.hazards.build import manual
from tests.published.checks import Check

SENSOR = spec_of("plain", "2500 ohm", id_="ntc")
HALF_OHM = {"resistance": "0.6 ohm", "inductance": "4 mH"}
TABLE = {"name": "thermistor_table", "points": [
    {"temperature": "-10 °C", "resistance": "8.26 to 10.56 kohm"},
    {"temperature": "20 °C", "resistance": "2.28 to 2.72 kohm"},
    {"temperature": "80 °C", "resistance": "0.29 to 0.364 kohm"},
]}  # fmt: skip
BAND = "printed 2.5 kΩ sensor band"
PT = {"name": "platinum", "at_zero": "200 ohm", "curve": "iec-60751", "tolerance_class": "B",
      "coldest": "-40 °C", "hottest": "600 °C"}  # fmt: skip
MAP = {"name": "transducer", "from_pressure": "15 kPa", "from_share": "4 %",
       "to_pressure": "115 kPa", "to_share": "94 %", "tolerance": "1 Pa"}  # fmt: skip
MAP_SHEET = "printed sheet of a pressure transducer: Vout = Vs·(.009P − .095), its end points"
REST = "a battery maker's printed table of rest voltages, 26.7 °C"
CABLE = {"area": "2.5 mm²", "length": "5 m"}
DROP = "closed form from IEC 60228, class 5: 7.98 Ω/km, 10 A, 5 m"
NTC_10K = "printed 10 kΩ sensor table"
STANDARD = "ambiance 1.3, ISO 2533, geometric height"
EARTH_M = 6356766.0  # ISO 2533: nominal radius of the earth, m
CANTERA = "cantera, equilibrium exhaust at 600 °C (printed figure, ±5 mV)"


@dataclass(frozen=True)
class Asked:
    """A question to a record: the spec, the side asked for and the conditions in base units."""

    spec: Spec
    side: str
    at: dict[str, float]


def answer(asked: Asked) -> float:
    """Give one side of what the engine expects."""
    kb = manual(WHEEL, SENSOR, asked.spec)
    found = expect(kb, asked.spec, {n: Interval.of(x) for n, x in asked.at.items()})
    side: float = getattr(found, asked.side)
    return side


def row(
    model: dict[str, Any] | str, side: str, at: dict[str, float],
    expected: float | Callable[[], float], tolerance: float, mark: Any, source: str,
    value: str | None = None, written_at: dict[str, str] | None = None,
) -> Check:  # fmt: skip
    """Give a check of one model."""
    spec = spec_of(model, value, at=written_at or {})
    return Check({"asked": Asked(spec, side, at)}, expected, tolerance, mark, source)


def standard_pa(height_m: float) -> float:
    """Ask the library at a geopotential height: it takes a geometric one."""
    return float(Atmosphere(EARTH_M * height_m / (EARTH_M - height_m)).pressure[0])


def standard_at(height_m: float) -> Callable[[], float]:
    """Ask the library when the row is held."""
    return lambda: standard_pa(height_m)


def loaded_v() -> float:
    """Work a loaded pickup out with complex impedances: 200 to 1000 rpm, 60 positions."""
    kept = [abs(10_000 / (10_860 + 2j * pi * hz * 0.5)) for hz in (200.0, 1000.0)]
    return 0.9 * 5 * kept[1] / kept[0]


STARTED = {"supply": 12.0}
WARM = {"temperature": 26.7}
SEA = {"sea_level_pressure": 101_325.0}
ROWS = [
    row("plain", "low", {}, 9.0, 1e-9, "C", "10 − 1", "10 ± 1 V"),
    row({"name": "winding", "material": "copper"}, "nominal", {"temperature": 75.0}, 1.93, 0.006,
        "P", "US National Electrical Code, chapter 9, table 8: solid wire, 75 °C", "1.588 ohm",
        {"temperature": "20 °C"}),
    row({"name": "winding", "material": "copper"}, "nominal", {"temperature": 0.0}, 14.86, 0.01,
        "P", "NBS Handbook 100 (1966), factor .92140 at 0 °C", "16.13 ohm",
        {"temperature": "20 °C"}),
    row({"name": "coil_current", "on_time": "3 ms", **HALF_OHM}, "nominal", STARTED, 7.24744, 1e-4,
        "C", "20 A·(1 − exp(−0.45))"),
    row({"name": "coil_dwell", "current": "7 A", **HALF_OHM}, "nominal", {"supply": 14.0}, 2.378e-3,
        1e-6, "C", "−(L/R)·ln(1 − I·R/V): 4 mH, .6 Ω, 14 V, 7 A"),
    row({"name": "coil_flyback", "flyback": "0.7 V"}, "nominal", STARTED, 12.7, 1e-9, "C",
        "12 + 0.7"),
    row({"name": "coil_rise", **HALF_OHM}, "nominal", {}, 6.6667e-3, 1e-6, "C", "4 mH/.6 Ω"),
    row({"name": "injector_duty", "on_time": "3 ms"}, "nominal", {"engine_speed": 6000.0}, 15.0,
        1e-9, "C", "3 ms of the 20 ms between sequential pulses at 6000 rpm"),
    row({"name": "pickup_volts", "slowest": "100 rpm", "fastest": "900 rpm"}, "nominal",
        {"engine_speed": 300.0}, 1.35, 1e-9, "C", "Faraday's law: 1.5 times the speed", "0.9 V",
        {"engine_speed": "200 rpm"}),
    row({"name": "pickup_loaded", "slowest": "100 rpm", "fastest": "2000 rpm", "wheel": "wheel",
         "coil": "860 ohm", "inductance": "0.5 H", "load": "10 kohm"}, "nominal",
        {"engine_speed": 1000.0}, loaded_v, 1e-9, "C", "complex impedances, in this test",
        "0.9 V", {"engine_speed": "200 rpm"}),
    row({"name": "tooth_rate", "wheel": "wheel"}, "low", {"engine_speed": 600.0}, 580.0, 1e-9, "C",
        "58 teeth seen at 600 rpm"),
    row({"name": "pull_up", "pull_up": "5 V", "resistor": "2.49 kohm", "meter": "5.896 kohm"},
        "nominal", {}, 3.515, 1e-3, "C", "divider 5 V·5896/(2490 + 5896)"),
    row({"name": "low_level", "saturation": "0.2 V", "ground_drop": "0.05 V"}, "nominal", {}, 0.25,
        1e-9, "C", "0.2 + 0.05"),
    row({"name": "square_mean", "high": "5 V", "low": "0.3 V", "duty": "10 %"}, "nominal", {}, 0.77,
        1e-9, "C", "mean of a square wave, 5 V and 0.3 V at a tenth"),
    row({"name": "current_sensor", "shunt": "75 ohm", "level": "7 mA"}, "nominal", {}, 0.525, 1e-9,
        "C", "7 mA across 75 Ω"),
    row({"name": "current_sensor", "shunt": "100 ohm", "level": "14 mA"}, "nominal", {}, 1.40, 1e-9,
        "C", "14 mA across 100 Ω"),
    row({"name": "thermistor_points", "points": TEN_K}, "nominal", {"temperature": 25.0}, 10_000.0,
        20.0, "P", NTC_10K),
    row({"name": "thermistor_points", "points": TEN_K}, "nominal", {"temperature": 80.0},
        lambda: SH_converter.from_points([(0.0, 27936.0), (50.0, 4103.0), (100.0, 946.6)])
        .resistance(80.0), 1e-3, "L", "thermistor-utils 0.0.4, SH_converter.from_points"),
    row({"name": "thermistor_beta", "resistance": "10 kohm", "reference": "25 °C", "beta": 3977,
         "coldest": "25 °C", "hottest": "85 °C"}, "nominal", {"temperature": 85.0}, 1070.0, 1.0,
        "P", "printed resistance table of a thermistor material, beta 3977 K"),
    row(TABLE, "low", {"temperature": -10.0}, 8260.0, 1e-6, "P", BAND),
    row(TABLE, "high", {"temperature": 20.0}, 2720.0, 1e-6, "P", BAND),
    row(TABLE, "low", {"temperature": 80.0}, 290.0, 1e-6, "P", BAND),
    row(PT, "nominal", {"temperature": 600.0}, lambda: 2 * celsius_to_resistance(600.0), 1e-3, "L",
        "rtd-sensor 0.8, IEC 60751"),
    row(PT, "nominal", {"temperature": -40.0}, lambda: 2 * celsius_to_resistance(-40.0), 1e-3, "L",
        "rtd-sensor 0.8, IEC 60751"),
    row(PT, "high", {"temperature": 100.0}, lambda: 2 * celsius_to_resistance(100.8), 1e-3, "L",
        "rtd-sensor 0.8 at 100 °C and class B's 0.8 K above it"),
    row({"name": "cold_soak", "within": 5}, "high", {"ambient": 12.0}, 17.0, 1e-9, "C", "12 + 5"),
    row({"name": "divider", "upper": "2490 ohm", "sensor": "ntc"}, "nominal", {"supply": 5.0},
        2.505, 1e-3, "C", "5 V·2500/(2490 + 2500)"),
    row({"name": "potentiometer", "track": "5 kohm", "load": "10 kohm", "tolerance": "0 %"},
        "nominal", {"supply": 5.0, "travel": 50.0}, 2.2222, 1e-4, "C",
        "2.5 kΩ over 2.5 kΩ beside 10 kΩ"),
    row(MAP, "nominal", {"supply": 5.1, "measured_pressure": 15e3}, 0.204, 1e-4, "P", MAP_SHEET),
    row(MAP, "nominal", {"supply": 5.1, "measured_pressure": 115e3}, 4.794, 1e-4, "P", MAP_SHEET),
    row(MAP, "nominal", {"supply": 5.1, "measured_pressure": 100e3}, 4.1055, 1e-4, "P", MAP_SHEET),
    row({"name": "curve", "over": "temperature", "interpolation": "linear", "rows": [
        {"at": "-40 °F", "value": "1 V"}, {"at": "140 °F", "value": "3 V"}]}, "nominal",
        {"temperature": 10.0}, 2.0, 1e-9, "C", "half way from −40 to 60 °C"),
    row({"name": "cable_resistance", "area": "2.5 mm²", "length": "1000 m"}, "high",
        {"temperature": 20.0}, 7.98, 1e-9, "P", "printed table of IEC 60228 class 5, plain copper"),
    row({"name": "cable_resistance", "area": "16 mm²", "length": "1000 m"}, "high",
        {"temperature": 20.0}, 1.21, 1e-9, "P", "printed table of IEC 60228 class 5, plain copper"),
    row({"name": "cable_drop", **CABLE}, "high", {"temperature": 20.0, "current": 10.0}, 0.399,
        5e-4, "C", DROP, written_at={"current": "10 A"}),
    row({"name": "cable_drop", **CABLE}, "high", {"temperature": 80.0, "current": 10.0}, 0.493,
        5e-4, "C", f"{DROP}, times 1.2358", written_at={"current": "10 A"}),
    row({"name": "drop_budget", "pieces": [{"what": "feed", "cable": CABLE},
                                           {"what": "joint", "resistance": "10 mohm"}]},
        "high", {"temperature": 20.0, "current": 10.0}, 0.499, 5e-4, "C", f"{DROP}, and 0.1 V",
        written_at={"current": "10 A"}),
    *(row({"name": "battery_rest", "battery": "flooded"}, "nominal",
          {**WARM, "state_of_charge": percent}, volts, 1e-9, "P", REST)
      for percent, volts in ((100.0, 12.65), (75.0, 12.45), (50.0, 12.24), (0.0, 11.89))),
    row({"name": "battery_load_bank", "cold_cranking": "640 A"}, "low", {"temperature": 21.1}, 9.6,
        1e-9, "practice", "9.6 V at 21 °C after 15 s at half the rating"),
    row("battery_cranking", "low", {"temperature": 21.0}, 9.6, 1e-9, "practice",
        "9.6 V in the warm"),
    row("battery_charging", "nominal", {"temperature": 35.0}, 14.22, 1e-9, "C",
        "14.4 V less 6 cells of 3 mV/K over 10 K", "14.4 V"),
    row({"name": "standing_drain", "capacity": "60 Ah", "from_charge": "100 %",
         "to_charge": "50 %"}, "nominal", {"current": 0.05}, 25.0 * 86_400, 1.0, "C",
        "30 Ah over 50 mA"),
    row({"name": "battery_discharge", "capacity": "100 Ah", "rated_time": "20 h", "exponent": 1.2},
        "nominal", {"current": 10.0}, 8.7055 * 3600, 0.5, "C", "20·(100/(10·20))^1.2"),
    *(row("station_pressure", "nominal", {"altitude": m, **SEA}, standard_at(m), 0.5,
          "L", STANDARD) for m in (500.0, 1000.0, 2000.0)),
    row({"name": "key_on_pressure", "tolerance": "2 kPa"}, "low", {"altitude": 1000.0, **SEA},
        lambda: standard_pa(1000.0) - 2000.0, 0.5, "L", f"{STANDARD}, less 2 kPa"),
    row({"name": "compression", "stated_at": "101.325 kPa"}, "nominal",
        {"altitude": 1500.0, **SEA}, lambda: 12e5 * standard_pa(1500.0) / 101_325, 20.0, "L",
        f"{STANDARD}, in proportion", "12 bar"),
    row({"name": "leak_down", "supply": "600 kPa", "loss": "at most 15 %"}, "low", {}, 510e3, 1e-6,
        "C", "600 kPa·0.85"),
    row({"name": "fuel_pressure", "referenced": True}, "nominal",
        {"manifold_pressure": 40e3, "air_pressure": 101_325.0}, 238_675.0, 1e-6, "C",
        "300 + 40 − 101.325 kPa", "300 kPa"),
    row({"name": "oxygen_cell", "fuel": "iso-octane"}, "low",
        {"air_ratio": 97.0, "temperature": 600.0}, 0.900, 0.01, "L", CANTERA),
    row({"name": "oxygen_cell", "fuel": "iso-octane"}, "high",
        {"air_ratio": 101.0, "temperature": 600.0}, 0.088, 0.005, "L", CANTERA),
    row({"name": "bus_termination", "terminations": 2, "each": "120 ohm"}, "nominal", {}, 60.0,
        1e-9, "P", "printed note on bus termination: two of 120 ohm side by side are 60 ohm"),
    row({"name": "bus_mean", "wire": "low", "dominant": "20 %"}, "nominal", {}, 2.3, 1e-9, "C",
        "2.5 V less a fifth of 1 V"),
    row({"name": "heater_current", "cold": "0.6 ohm"}, "nominal", STARTED, 20.0, 1e-9, "C",
        "12 V/.6 Ω"),
    row({"name": "torque", "diameter": "8 mm", "pitch": "1.25 mm", "strength": "8.8"}, "nominal",
        {}, 25.0, 1e-9, "C", "the written torque itself: the thread never changes it", "25 N·m"),
    row({"name": "wrench_setting", "wrench": "400 mm", "extension": "100 mm"}, "nominal", {}, 20.0,
        1e-9, "C", "25 N·m·400/(400 + 100)", "25 N·m"),
]  # fmt: skip


@pytest.mark.parametrize(
    "check", ROWS, ids=lambda check: check.inputs["asked"].spec.model.name
)  # fmt: skip
def test_a_record_gives_the_figure_of_the_world(check: Check) -> None:
    """Shows that the text of a record comes out as the figure an outside source gives."""
    check.hold(answer)


def test_every_model_is_asked() -> None:
    """Shows that no model a record may name goes without a figure from outside."""
    assert {check.inputs["asked"].spec.model.name for check in ROWS} == set(MODELS)
