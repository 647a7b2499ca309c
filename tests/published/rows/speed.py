"""Speed and position sensors."""

from __future__ import annotations

from typing import Any

from tests.published.rows.asking import SPICE, row
from tests.published.test_pickup import faraday_peak_v
from tests.published.test_wheels import scipy_count_hz

MAKER = (
    "printed worked example of a magnetic-sensor maker: 386 mV peak at 300 rpm, 200 mV at 155 rpm"
)
FARADAY = "numpy.gradient of a sinusoidal flux linkage of 60 teeth a turn"
AC = SPICE + "AC analysis: R and L in series into a load; its share, printed at both speeds"
ALTERNATOR = "printed table of alternator frequency: pole pairs · rpm / 60, the same count per turn"
PEAKS = "scipy.signal.find_peaks on sixty seconds of pulses"
LOADED = SPICE + "operating point: pull-up to V, a meter's input to ground"
SATURATED = SPICE + (
    "operating point: NPN (IS 1e-14, BF 200, BR 4) as open collector, its ground through a wire "
    "that another load shares; collector to emitter, emitter, and collector to battery negative"
)
PWM = "printed worked example of pulse-width modulation: 3.3 V logic at 75 % averages 2.475 V"
PULSE = SPICE + "transient: mean of PULSE(0.3 5), one tenth high, over ten periods"
WHEEL = SPICE + "transient: mean over five turns of a 36−1 wheel made of two PULSE sources"
SERIES = SPICE + "operating point: a current source into a resistor to ground"

PICKUP = {"name": "pickup_volts", "slowest": "100 rpm", "fastest": "900 rpm"}
FAST = {"name": "pickup_volts", "slowest": "100 rpm", "fastest": "300 rpm"}


def _loaded(coil: str, inductance: str, load: str) -> dict[str, Any]:
    return {
        "name": "pickup_loaded", "slowest": "100 rpm", "fastest": "6000 rpm",
        "wheel": "wheel-60-2", "coil": coil, "inductance": inductance, "load": load,
    }  # fmt: skip


FIRST, SECOND = _loaded("860 ohm", "0.5 H", "10 kohm"), _loaded("1100 ohm", "0.9 H", "15 kohm")


def _rate(id_: str) -> dict[str, str]:
    return {"name": "tooth_rate", "wheel": id_}


def _pulled(pull_up: str, resistor: str, meter: str) -> dict[str, str]:
    return {"name": "pull_up", "pull_up": pull_up, "resistor": resistor, "meter": meter}


def _low(saturation: str, ground: str) -> dict[str, str]:
    return {"name": "low_level", "saturation": saturation, "ground_drop": ground}


def _mean(high: str, low: str, duty: str, **more: str) -> dict[str, str]:
    return {"name": "square_mean", "high": high, "low": low, "duty": duty, **more}


def _current(shunt: str, level: str) -> dict[str, str]:
    return {"name": "current_sensor", "shunt": shunt, "level": level}


ROWS = [
    row(FAST, "nominal", {"engine_speed": 155.0}, 0.200, 0.001, "P", MAKER, "0.386 V",
        {"engine_speed": "300 rpm"}),
    row(PICKUP, "nominal", {"engine_speed": 100.0}, lambda: faraday_peak_v(100.0), 1e-3, "L",
        FARADAY, f"{faraday_peak_v(200.0):.9f} V", {"engine_speed": "200 rpm"}),
    row(PICKUP, "nominal", {"engine_speed": 900.0}, lambda: faraday_peak_v(900.0), 1e-3, "L",
        FARADAY, f"{faraday_peak_v(200.0):.9f} V", {"engine_speed": "200 rpm"}),
    row(PICKUP, "nominal", {"engine_speed": 300.0}, 1.35, 1e-9, "C",
        "Faraday's law: 1.5 times the speed", "0.9 V", {"engine_speed": "200 rpm"}),
    row(FIRST, "nominal", {"engine_speed": 1000.0}, 0.9 * 5 * 0.8845429681 / 0.9192730378, 1e-7,
        "L", AC, "0.9 V", {"engine_speed": "200 rpm"}),
    row(FIRST, "nominal", {"engine_speed": 6000.0}, 0.9 * 30 * 0.4596812805 / 0.9192730378, 1e-6,
        "L", AC, "0.9 V", {"engine_speed": "200 rpm"}),
    row(SECOND, "nominal", {"engine_speed": 1800.0}, 0.4 * 15 * 0.7874941746 / 0.9308505760, 1e-7,
        "L", AC, "0.4 V", {"engine_speed": "120 rpm"}),
    row(_rate("wheel-8"), "nominal", {"engine_speed": 3000.0}, 400.0, 1e-9, "P", ALTERNATOR),
    row(_rate("wheel-8"), "high", {"engine_speed": 1500.0}, 200.0, 1e-9, "P", ALTERNATOR),
    row(_rate("wheel-4"), "nominal", {"engine_speed": 750.0}, 50.0, 1e-9, "P", ALTERNATOR),
    row(_rate("wheel-36"), "nominal", {"engine_speed": 600.0}, 1 / 2.8e-3, 7.0, "P",
        "printed note on a variable-reluctance ring: 36 teeth at 600 rpm, period 2.8 ms"),
    row(_rate("wheel-60-2"), "low", {"engine_speed": 600.0}, lambda: scipy_count_hz(60, 2, 600.0),
        1e-9, "L", PEAKS),
    row(_pulled("5 V", "4.7 kohm", "10 Mohm"), "nominal", {}, 4.997651104, 1e-8, "L", LOADED),
    row(_pulled("12 V", "10 kohm", "1 Mohm"), "nominal", {}, 11.88118812, 1e-7, "L", LOADED),
    row(_pulled("8 V", "2.2 kohm", "47 kohm"), "nominal", {}, 7.642276423, 1e-8, "L", LOADED),
    row(_low("0.04108702 V", "0.06557716 V"), "nominal", {}, 0.1066641777, 1e-7, "L",
        SATURATED + ": 12 V, 1 kΩ"),
    row(_low("0.02509279 V", "0.1526074914 V"), "nominal", {}, 0.1777002815, 1e-7, "L",
        SATURATED + ": 5 V, 2.2 kΩ"),
    row(_low("0.02413461 V", "0.0217862367 V"), "nominal", {}, 0.04592084769, 1e-7, "L",
        SATURATED + ": 14 V, 4.7 kΩ"),
    row(_low("0.2 V", "0.05 V"), "nominal", {}, 0.25, 1e-9, "C", "0.2 + 0.05"),
    row(_mean("3.3 V", "0 V", "75 %"), "nominal", {}, 2.475, 1e-9, "P", PWM),
    row(_mean("5 V", "0.3 V", "10 %"), "nominal", {}, 0.77, 1e-5, "L", PULSE),
    row(_mean("5 V", "0.4 V", "50 %", wheel="wheel-36-1"), "nominal", {}, 2.763889, 1e-5, "L",
        WHEEL + ", half duty, high over the gap"),
    row(_mean("5 V", "0.4 V", "50 %", wheel="wheel-36-1", over_gap="low"), "nominal", {}, 2.636111,
        1e-5, "L", WHEEL + ", half duty, low over the gap"),
    row(_mean("12 V", "0.2 V", "30 %", wheel="wheel-36-1"), "nominal", {}, 3.969444, 1e-5, "L",
        WHEEL + ", three tenths, high over the gap"),
    row(_mean("5 V", "0.3 V", "50 %"), "nominal", {}, 2.65, 1e-9, "C", "half way"),
    row(_current("75 ohm", "7 mA"), "nominal", {}, 0.525, 1e-9, "L", SERIES),
    row(_current("115 ohm", "14 mA"), "nominal", {}, 1.61, 1e-9, "L", SERIES),
    row(_current("100 ohm", "5.9 mA"), "nominal", {}, 0.59, 1e-9, "L", SERIES),
    row(_current("100 ohm", "14 mA"), "nominal", {}, 1.40, 1e-9, "practice",
        "14 mA across 100 Ω"),
]  # fmt: skip
