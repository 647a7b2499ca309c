"""The 12 V battery."""

from __future__ import annotations

from typing import Any

from tests.published.rows.asking import SPICE, row

REST = "a battery maker's printed table of rest voltages, 26.7 °C"
GLASS_MAT = "printed table of absorbed-glass-mat batteries"
STEPPED = "printed rule: 9.7 V at 80 °F, less 0.1 V for each 10 °F down to 40 °F"
CRANKED = (
    "printed manual of a workshop multimeter: cranking for 15 s, 9.6 V at 70 °F, in steps of 0.2 V "
    "for each 10 °F"
)
FLOAT = "printed recommendation: 2.30 V per cell at 25 °C, 2.27 at 35, 2.33 at 15"
PARKED = "printed page on parked vehicles: 60 Ah at 20 mA, 3000 h or 125 days"
STORE = SPICE + "transient: a capacitor as the store of charge, a current source as the drain"
GRID = "printed manual of a battery monitor: share of 100 Ah (20 h rate) left at each current"

DAY_S, HOUR_S = 86_400.0, 3600.0
BANK = {"name": "battery_load_bank", "cold_cranking": "640 A"}


def _rest(kind: str, percent: float, volts: float, source: str) -> Any:
    at = {"state_of_charge": percent, "temperature": 26.7}
    return row({"name": "battery_rest", "battery": kind}, "nominal", at, volts, 1e-9, "P", source)


def _drain(capacity: str, start: str, end: str) -> dict[str, str]:
    return {
        "name": "standing_drain", "capacity": capacity, "from_charge": start, "to_charge": end,
    }  # fmt: skip


def _left(exponent: float, amps: float, percent: float) -> Any:
    model = {
        "name": "battery_discharge", "capacity": "100 Ah", "rated_time": "20 h",
        "exponent": exponent,
    }  # fmt: skip
    hours, half_a_percent = percent / amps, 0.6 / amps
    return row(
        model, "nominal", {"current": amps}, hours * HOUR_S, half_a_percent * HOUR_S, "P", GRID
    )


ROWS = [
    _rest("flooded", 100.0, 12.65, REST),
    _rest("flooded", 75.0, 12.45, REST),
    _rest("flooded", 0.0, 11.89, REST),
    _rest("agm", 100.0, 12.9, GLASS_MAT),
    _rest("agm", 50.0, 12.3, GLASS_MAT),
    *(row(BANK, "low", {"temperature": c}, volts, 0.005, "P", STEPPED)
      for c, volts in ((4.4, 9.3), (10.0, 9.4), (15.6, 9.5), (21.1, 9.6))),
    # Another practice than ours, which allows 8 V in a hard frost: near it between 50 and 70 °F.
    *(row("battery_cranking", "low", {"temperature": c}, volts, 0.06, "P", CRANKED)
      for c, volts in ((21.1, 9.6), (15.6, 9.4), (10.0, 9.2))),
    row("battery_cranking", "low", {"temperature": -18.0}, 8.0, 1e-9, "practice",
        "8 V in a hard frost"),
    row("battery_charging", "nominal", {"temperature": 35.0}, 6 * 2.27, 1e-9, "P", FLOAT, "13.8 V"),
    row("battery_charging", "nominal", {"temperature": 15.0}, 6 * 2.33, 1e-9, "P", FLOAT, "13.8 V"),
    row("battery_charging", "nominal", {"temperature": 26.0}, 14.4 - 0.018, 1e-9, "P",
        "printed rule: 3 mV per cell less for every degree above 25 °C", "14.4 V"),
    row(_drain("60 Ah", "100 %", "0 %"), "nominal", {"current": 0.02}, 125 * DAY_S, 1.0, "P",
        PARKED),
    row(_drain("60 Ah", "100 %", "50 %"), "nominal", {"current": 0.05}, 2.160e6, 10.0, "L", STORE),
    row(_drain("70 Ah", "100 %", "60 %"), "nominal", {"current": 0.03}, 3.360e6, 10.0, "L", STORE),
    row(_drain("45 Ah", "80 %", "50 %"), "nominal", {"current": 0.2}, 2.430e5, 1.0, "L", STORE),
    _left(1.2, 10.0, 87.0),
    _left(1.2, 25.0, 72.0),
    _left(1.25, 25.0, 67.0),
    _left(1.4, 10.0, 76.0),
]  # fmt: skip
