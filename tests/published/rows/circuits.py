"""Dividers, transducers, curves, cables, the data bus and heaters."""

from __future__ import annotations

from functools import partial
from math import exp, log
from typing import Any

from scipy.interpolate import make_interp_spline

from tests.expected.samples import spec_of
from tests.published.rows.asking import SPICE, row

TAP = SPICE + "operating point: two resistors, the tap loaded where a meter is named"
TRACK = SPICE + "operating point: a track in two parts, its wiper loaded"
LOADED = "printed answer on loading a 10 kΩ track at its middle with 5 kΩ"
MAP_SHEET = "printed sheet of a pressure transducer: Vout = Vs·(.009P − .095), its end points"
DISTRIBUTOR = "printed note of a distributor: 0.5 to 4.5 V over 0 to 100 psi at 5 V"
SPLINE = "scipy.interpolate.make_interp_spline, k = 1"
CLASS_5 = "printed table of IEC 60228 class 5, plain copper, ohm/km at 20 °C"
CORDS = (
    "printed drop table of flexible cords at 60 °C, mV per ampere and metre of two conductors "
    "(BS 7671, table 4F3B): tinned, up to 3 % more than plain copper, in whole millivolts"
)
CHAIN = SPICE + "operating point: a current through the pieces in series"
SIDE = SPICE + "operating point: an ampere into the terminations side by side"
BUS_NOTE = "printed note on bus termination: two of 120 ohm side by side are 60 ohm"
WIKI = "printed wiki of an engine-control project: 120 ohm at both ends reads 60 ohm"
EDGES = SPICE + "transient: mean of a wire that rests at 2.5 V and moves by 1 V while dominant"
AMPS = SPICE + "operating point: current of the supply into a resistor"
BULB = "printed article on vehicle wiring: 3 ohm in a 12 V system take 4 A"

NTC = spec_of("plain", "2500 ohm", id_="ntc")
WARM = spec_of("plain", "325 ohm", id_="warm")
HOT = spec_of("plain", "187 ohm", id_="hot")
MAP = {"name": "transducer", "from_pressure": "15 kPa", "from_share": "4 %",
       "to_pressure": "115 kPa", "to_share": "94 %", "tolerance": "1 Pa"}  # fmt: skip
RAIL = {"name": "transducer", "from_pressure": "0 psi", "from_share": "10 %",
        "to_pressure": "100 psi", "to_share": "90 %", "tolerance": "1 Pa"}  # fmt: skip
COOL = {"temperature": 20.0}


def _divider(upper: str, sensor: str, meter: str | None = None) -> dict[str, Any]:
    return {"name": "divider", "upper": upper, "sensor": sensor, "meter": meter}


def _track(track: str, load: str) -> dict[str, str]:
    return {"name": "potentiometer", "track": track, "load": load, "tolerance": "0 %"}


TEMPS_C, OHMS, VOLTS = (0.0, 25.0, 50.0, 100.0), (27936, 10000, 4103, 946.6), (0.4, 1.9, 1.1, 4.5)


def _curve(interpolation: str, values: tuple[float, ...], unit: str) -> dict[str, Any]:
    return {"name": "curve", "over": "temperature", "interpolation": interpolation, "rows": [
        {"at": f"{c:g} °C", "value": f"{v:g} {unit}"}
        for c, v in zip(TEMPS_C, values, strict=True)
    ]}  # fmt: skip


def _cable(area: str, length: str) -> dict[str, str]:
    return {"name": "cable_resistance", "area": area, "length": length}


def _drop(area: str, length: str) -> dict[str, str]:
    return {"name": "cable_drop", "area": area, "length": length}


def _budget(*pieces: tuple[str, str] | str) -> dict[str, Any]:
    return {"name": "drop_budget", "pieces": [
        {"what": "piece", "resistance": p} if isinstance(p, str)
        else {"what": "cable", "cable": {"area": p[0], "length": p[1]}}
        for p in pieces
    ]}  # fmt: skip


def _bus(wire: str, share: str) -> dict[str, str]:
    return {"name": "bus_mean", "wire": wire, "dominant": share}


def _ends(number: int, each: str) -> dict[str, Any]:
    return {"name": "bus_termination", "terminations": number, "each": each}


def _linear(temp_c: float) -> float:
    return float(make_interp_spline(TEMPS_C, VOLTS, k=1)(temp_c))


def _logarithmic(temp_c: float) -> float:
    return exp(float(make_interp_spline(TEMPS_C, [log(v) for v in OHMS], k=1)(temp_c)))


AT_10_A, AT_1_A = {"current": "10 A"}, {"current": "1 A"}
CORD_C = {"temperature": 60.0, "current": 1.0}

ROWS = [
    row(_divider("2490 ohm", "ntc"), "nominal", {"supply": 5.0}, 2.505010020, 1e-8, "L", TAP,
        others=(NTC,)),
    row(_divider("2490 ohm", "warm"), "nominal", {"supply": 5.0}, 0.5772646536, 1e-9, "L", TAP,
        others=(WARM,)),
    row(_divider("1 kohm", "hot", "10 Mohm"), "nominal", {"supply": 5.1}, 0.8034414285, 1e-9, "L",
        TAP, others=(HOT,)),
    row(_track("5 kohm", "10 kohm"), "nominal", {"supply": 5.0, "travel": 25.0}, 1.142857143, 1e-8,
        "L", TRACK),
    row(_track("5 kohm", "22 kohm"), "nominal", {"supply": 5.0, "travel": 90.0}, 4.409799555, 1e-8,
        "L", TRACK),
    row(_track("1 kohm", "4.7 kohm"), "nominal", {"supply": 12.0, "travel": 40.0}, 4.566801619,
        1e-8, "L", TRACK),
    row(_track("10 kohm", "5 kohm"), "nominal", {"supply": 10.0, "travel": 50.0}, 3.333, 5e-4, "P",
        LOADED),
    row(MAP, "nominal", {"supply": 5.1, "measured_pressure": 15e3}, 0.204, 1e-4, "P", MAP_SHEET),
    row(MAP, "nominal", {"supply": 5.1, "measured_pressure": 115e3}, 4.794, 1e-4, "P", MAP_SHEET),
    row(RAIL, "nominal", {"supply": 5.0, "measured_pressure": 50 * 6894.757}, 2.5, 1e-6, "P",
        DISTRIBUTOR),
    row(RAIL, "nominal", {"supply": 5.0, "measured_pressure": 100 * 6894.757}, 4.5, 1e-6, "P",
        DISTRIBUTOR),
    *(row(_curve("linear", VOLTS, "V"), "nominal", {"temperature": c}, partial(_linear, c),
          1e-9, "L", SPLINE) for c in (7.0, 33.3, 90.0)),
    *(row(_curve("log-linear", OHMS, "ohm"), "nominal", {"temperature": c},
          partial(_logarithmic, c), 1e-6, "L", SPLINE + ", on the logarithms")
      for c in (12.5, 77.0)),
    row(_cable("0.5 mm²", "1000 m"), "high", COOL, 39.0, 1e-9, "P", CLASS_5),
    row(_cable("2.5 mm²", "1000 m"), "high", COOL, 7.98, 1e-9, "P", CLASS_5),
    row(_cable("16 mm²", "1000 m"), "high", COOL, 1.21, 1e-9, "P", CLASS_5),
    row(_drop("0.75 mm²", "2 m"), "high", CORD_C, 62e-3, 0.032 * 62e-3, "P", CORDS, None, AT_1_A),
    row(_drop("1 mm²", "2 m"), "high", CORD_C, 46e-3, 0.032 * 46e-3, "P", CORDS, None, AT_1_A),
    row(_drop("2.5 mm²", "2 m"), "high", CORD_C, 19e-3, 0.032 * 19e-3, "P", CORDS, None, AT_1_A),
    row(_drop("2.5 mm²", "5 m"), "high", {**COOL, "current": 10.0}, 0.399, 5e-4, "C",
        "7.98 Ω/km, 10 A, 5 m", None, AT_10_A),
    row(_budget(("2.5 mm²", "5 m"), "10 mohm", "5 mohm"), "high", {**COOL, "current": 10.0}, 0.549,
        1e-9, "L", CHAIN, None, AT_10_A),
    row(_budget(("35 mm²", "1.5 m"), "0.4 mohm"), "high", {**COOL, "current": 120.0}, 0.14772,
        1e-9, "L", CHAIN, None, {"current": "120 A"}),
    row(_budget(("0.75 mm²", "4.5 m"), "20 mohm", "15 mohm"), "high", {**COOL, "current": 5.0},
        0.76, 1e-9, "L", CHAIN, None, {"current": "5 A"}),
    row(_ends(2, "120 ohm"), "nominal", {}, 60.0, 1e-9, "P", BUS_NOTE),
    row(_ends(2, "120 ohm ± 1 %"), "low", {}, 59.4, 1e-9, "L", SIDE + ": 118.8 ohm twice"),
    row(_ends(3, "120 ohm"), "nominal", {}, 40.0, 1e-9, "L", SIDE + ": 120 ohm three times"),
    row(_ends(2, "120 ohm"), "nominal", {}, 60.0, 1e-9, "P", WIKI),
    # The edges of the simulated wave, 1 ns of 2 µs each, shift its mean by half a millivolt.
    row(_bus("high", "20 %"), "nominal", {}, 2.700499, 6e-4, "L", EDGES),
    row(_bus("low", "20 %"), "nominal", {}, 2.299500, 6e-4, "L", EDGES),
    row(_bus("high", "35 %"), "nominal", {}, 2.850499, 6e-4, "L", EDGES),
    row({"name": "heater_current", "cold": "0.6 ohm"}, "nominal", {"supply": 12.6}, 21.0, 1e-9,
        "L", AMPS),
    row({"name": "heater_current", "cold": "4.2 ohm"}, "nominal", {"supply": 13.8}, 3.28571429,
        1e-8, "L", AMPS),
    row({"name": "heater_current", "cold": "0.35 ohm"}, "nominal", {"supply": 11.0}, 31.4285714,
        1e-7, "L", AMPS),
    row({"name": "heater_current", "cold": "3 ohm"}, "nominal", {"supply": 12.0}, 4.0, 1e-9, "P",
        BULB),
]  # fmt: skip
