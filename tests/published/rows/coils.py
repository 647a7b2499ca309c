"""Plain values, windings and coils."""

from __future__ import annotations

from typing import Any

from tests.published.rows.asking import SPICE, row

NIST = "NIST SP 811 (2008), appendix B.8"
NEC = "US National Electrical Code, chapter 9, table 8: solid wire at 20 and 75 °C"
NEC_AL = f"{NEC}, aluminium; from the copper row times 28.264/17.241, IEC 60889 and 60028"
NBS = "NBS Handbook 100 (1966), factor .92140 at 0 °C"
RISE = SPICE + "transient: V step, R and L in series; current of the source at a time"
REACH = SPICE + "transient: V step, R and L in series; time when the current is reached"
TAU = SPICE + "transient: V step, R and L in series; time to (1 − 1/e)·V/R"
CLAMP = SPICE + "operating point: the coil's current as a source, a clamp of diode and V across"
LESSON = "printed lesson on RL circuits: 5 V, 100 ohm, 100 mH"
ARTICLE = "printed magazine answer on a solenoid: 200 mA, 10 mJ, 8.3 ms with a diode, 2 ms clamped"
TEXTBOOK = "printed textbook solution: 50 mH and 180 ohm, 0.28 ms"
DUTY = "printed article on injector duty: 15 ms at 3000 rpm is 37.5 %, at 6000 rpm 75 %"
CALCULATOR = "printed calculator's note: duty = pulse·rpm/1200, and /600 where it fires each turn"
PULSES = SPICE + "transient: mean over 1.2 s of unit pulses of that width and period"

COPPER = {"name": "winding", "material": "copper"}
AT_20 = {"temperature": "20 °C"}
IGNITION = {"resistance": "0.6 ohm", "inductance": "4 mH"}
PRIMARY = {"resistance": "1.5 ohm", "inductance": "6.5 mH"}
INJECTOR = {"resistance": "15.2 ohm", "inductance": "14 mH"}


def _coil(name: str, coil: dict[str, str], **more: str) -> dict[str, Any]:
    return {"name": name, **coil, **more}


def _duty(on_time: str, turns: int = 2) -> dict[str, Any]:
    return {"name": "injector_duty", "on_time": on_time, "turns_per_pulse": turns}


ROWS = [
    row("plain", "nominal", {}, 135.5818, 5e-5, "P", NIST + ", pound-force foot", "100 lbf·ft"),
    row("plain", "high", {}, 32 * 6894.757, 0.05, "P", NIST + ", psi", "28 to 32 psi"),
    row("plain", "low", {}, 90.0, 1e-9, "P", NIST + ", t/°F = 1.8·t/°C + 32: 194 °F is 90 °C",
        "at least 194 °F"),
    row("plain", "low", {}, 9.0, 1e-9, "C", "10 − 1", "10 ± 1 V"),
    row(COPPER, "nominal", {"temperature": 75.0}, 1.93, 0.006, "P", NEC, "1.588 ohm", AT_20),
    row(COPPER, "nominal", {"temperature": 75.0}, 7.77, 0.006, "P", NEC, "6.385 ohm", AT_20),
    row(COPPER, "nominal", {"temperature": 0.0}, 14.86, 0.01, "P", NBS, "16.13 ohm", AT_20),
    row({"name": "winding", "material": "aluminium"}, "nominal", {"temperature": 75.0}, 3.18, 0.006,
        "P", NEC_AL, "2.6033 ohm", AT_20),
    row(_coil("coil_current", IGNITION, on_time="3 ms"), "nominal", {"supply": 14.0}, 8.455342,
        1e-4, "L", RISE),
    row(_coil("coil_current", PRIMARY, on_time="5 ms"), "nominal", {"supply": 12.6}, 5.750461,
        1e-4, "L", RISE),
    row(_coil("coil_current", INJECTOR, on_time="1.5 ms"), "nominal", {"supply": 13.8}, 0.7297569,
        1e-5, "L", RISE),
    row(_coil("coil_current", IGNITION, on_time="3 ms"), "nominal", {"supply": 12.0}, 7.24744,
        1e-4, "C", "20 A·(1 − exp(−0.45))"),
    row(_coil("coil_dwell", IGNITION, current="7 A"), "nominal", {"supply": 14.0}, 2.377833e-3,
        1e-7, "L", REACH),
    row(_coil("coil_dwell", PRIMARY, current="6.5 A"), "nominal", {"supply": 12.6}, 6.440971e-3,
        1e-7, "L", REACH),
    row(_coil("coil_dwell", INJECTOR, current="0.75 A"), "nominal", {"supply": 13.8}, 1.611105e-3,
        1e-7, "L", REACH),
    row({"name": "coil_flyback", "flyback": "37.1736669 V"}, "nominal", {"supply": 12.6},
        49.7736669, 1e-6, "L", CLAMP + ": 6 A, 36 V"),
    row({"name": "coil_flyback", "flyback": "1.00491982 V"}, "nominal", {"supply": 14.2},
        15.2049198, 1e-6, "L", CLAMP + ": 1 A, diode alone"),
    row({"name": "coil_flyback", "flyback": "0.870897199 V"}, "nominal", {"supply": 27.0},
        27.8708972, 1e-6, "L", CLAMP + ": 120 mA, diode alone"),
    row({"name": "coil_flyback", "flyback": "0.7 V"}, "nominal", {"supply": 12.0}, 12.7, 1e-9, "C",
        "12 + 0.7"),
    row(_coil("coil_rise", {"resistance": "100 ohm", "inductance": "100 mH"}), "nominal", {}, 1e-3,
        1e-12, "P", LESSON),
    # The article's coil from its own figures: L = 2·10 mJ/(200 mA)², R = L/8.3 ms.
    row(_coil("coil_rise", {"resistance": "60 ohm", "inductance": "0.5 H"}), "nominal", {}, 8.3e-3,
        5e-5, "P", ARTICLE),
    row(_coil("coil_rise", {"resistance": "180 ohm", "inductance": "50 mH"}), "nominal", {},
        0.28e-3, 5e-6, "P", TEXTBOOK),
    row(_coil("coil_rise", IGNITION), "nominal", {}, 6.666667e-3, 1e-8, "L", TAU),
    row(_coil("coil_rise", PRIMARY), "nominal", {}, 4.333334e-3, 1e-8, "L", TAU),
    row(_coil("coil_rise", INJECTOR), "nominal", {}, 9.210530e-4, 1e-8, "L", TAU),
    row(_duty("15 ms"), "nominal", {"engine_speed": 3000.0}, 37.5, 1e-9, "P", DUTY),
    row(_duty("15 ms"), "nominal", {"engine_speed": 6000.0}, 75.0, 1e-9, "P", DUTY),
    row(_duty("4 ms", 1), "nominal", {"engine_speed": 3000.0}, 20.0, 1e-9, "C",
        CALCULATOR),
    row(_duty("2.5 ms"), "nominal", {"engine_speed": 800.0}, 1.666667, 1e-5, "L", PULSES),
    row(_duty("3.1 ms"), "nominal", {"engine_speed": 2500.0}, 6.458333, 1e-5, "L", PULSES),
]  # fmt: skip
