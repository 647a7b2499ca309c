"""A spec of every model, as a person would write it; its figures are anybody's."""

from __future__ import annotations

from typing import Any

from generator.records.kinds.things import Component, Spec
from tests.hazards.build import made

WHEEL = made(
    Component, "components", "wheel", fitted_to=["petrol-car"], does="Is read.",
    energies=["rotating"], wheel={"positions": 60, "missing": 2},
    location={"zone": "flywheel_end", "words": "on the flywheel", "side": "below"},
)  # fmt: skip


def spec_of(model: dict[str, Any] | str, value: str | None = None, **fields: Any) -> Spec:
    """Give a spec with a model; its id is the model's name."""
    written = {"name": model} if isinstance(model, str) else model
    name = written["name"].replace("_", "-")
    given = {
        "quantity": "as the model says", "standing": "vehicle_value", "at": {}, "value": value,
        "applies_to": ["petrol-car"], "component": "sensor", "method": "At the plug.",
        "source": "common-practice", "model": written, **fields,
    }  # fmt: skip
    spec: Spec = made(Spec, "specs", fields.pop("id_", name), **{
        k: v for k, v in given.items() if k != "id_"
    })  # fmt: skip
    return spec


TEN_K = [
    {"temperature": "0 °C", "resistance": "27936 ohm"},
    {"temperature": "50 °C", "resistance": "4103 ohm"},
    {"temperature": "100 °C", "resistance": "946.6 ohm"},
]
COIL = {"resistance": "0.6 ohm ± 5 %", "inductance": "4 mH ± 5 %"}

SAMPLES: tuple[Spec, ...] = (
    spec_of("plain", "10 ± 1 V"),
    spec_of({"name": "winding", "material": "copper", "suppressor": "100 ohm"}, "860 ohm ± 10 %",
            at={"temperature": "20 °C"}),
    spec_of({"name": "coil_current", "on_time": "3 ms", "limit": "12 A", **COIL}),
    spec_of({"name": "coil_dwell", "current": "7 ± 0.5 A", **COIL}),
    spec_of({"name": "coil_flyback", "flyback": "40 to 60 V"}),
    spec_of({"name": "coil_rise", **COIL}),
    spec_of({"name": "injector_duty", "on_time": "2.5 to 3.5 ms"}),
    spec_of({"name": "pickup_volts", "slowest": "100 rpm", "fastest": "900 rpm"}, "0.9 V ± 30 %",
            at={"engine_speed": "200 rpm"}),
    spec_of({"name": "pickup_loaded", "slowest": "100 rpm", "fastest": "6000 rpm", "wheel": "wheel",
             "coil": "860 ohm", "inductance": "0.5 H", "load": "10 kohm"}, "0.9 V ± 30 %",
            at={"engine_speed": "200 rpm"}),
    spec_of({"name": "tooth_rate", "wheel": "wheel"}),
    spec_of({"name": "pull_up", "pull_up": "5 ± 0.25 V", "resistor": "4.7 kohm ± 5 %",
             "meter": "10 Mohm"}),
    spec_of({"name": "low_level", "saturation": "0.1 to 0.4 V", "ground_drop": "0 to 0.05 V"}),
    spec_of({"name": "square_mean", "high": "5 ± 0.25 V", "low": "0 to 0.5 V",
             "duty": "45 to 55 %", "wheel": "wheel"}),
    spec_of({"name": "current_sensor", "shunt": "100 ohm ± 1 %", "level": "14 ± 2 mA"}),
    spec_of({"name": "thermistor_points", "points": TEN_K, "tolerance": "3 %"}),
    spec_of({"name": "thermistor_beta", "resistance": "10 kohm ± 5 %", "reference": "25 °C",
             "beta": 3977, "coldest": "25 °C", "hottest": "85 °C"}),
    spec_of({"name": "thermistor_table", "points": [
        {"temperature": "-10 °C", "resistance": "8.26 to 10.56 kohm"},
        {"temperature": "20 °C", "resistance": "2.28 to 2.72 kohm"},
        {"temperature": "80 °C", "resistance": "0.29 to 0.364 kohm"},
    ]}),
    spec_of({"name": "platinum", "at_zero": "200 ohm", "curve": "iec-60751", "tolerance_class": "B",
             "coldest": "-40 °C", "hottest": "600 °C"}),
    spec_of({"name": "cold_soak", "within": 5}),
    spec_of({"name": "divider", "upper": "2490 ohm ± 1 %", "sensor": "thermistor-points"}),
    spec_of({"name": "potentiometer", "track": "5 kohm ± 20 %", "load": "100 kohm",
             "tolerance": "2 %"}),
    spec_of({"name": "transducer", "from_pressure": "15 kPa", "from_share": "4 %",
             "to_pressure": "115 kPa", "to_share": "94 %", "tolerance": "2 kPa"}),
    spec_of({"name": "curve", "over": "temperature", "interpolation": "linear", "rows": [
        {"at": "-20 °C", "value": "10 ± 1 V"}, {"at": "20 °C", "value": "12 ± 1 V"},
        {"at": "80 °C", "value": "11 ± 1 V"},
    ]}),
    spec_of({"name": "cable_resistance", "area": "2.5 mm²", "length": "5 m"}),
    spec_of({"name": "cable_drop", "gauge": 12, "length": "5 m"}, at={"current": "8 to 10 A"}),
    spec_of({"name": "drop_budget", "pieces": [
        {"what": "feed", "cable": {"area": "2.5 mm²", "length": "5 m"}},
        {"what": "relay contact", "resistance": "10 mohm"},
    ]}, at={"current": "10 A"}),
    spec_of({"name": "battery_rest", "battery": "agm"}),
    spec_of({"name": "battery_load_bank", "cold_cranking": "640 A"}),
    spec_of("battery_cranking"),
    spec_of("battery_charging", "14.4 ± 0.3 V"),
    spec_of({"name": "standing_drain", "capacity": "60 Ah", "from_charge": "100 %",
             "to_charge": "50 %"}),
    spec_of({"name": "battery_discharge", "capacity": "95 to 100 Ah", "rated_time": "20 h",
             "exponent": 1.2}),
    spec_of("station_pressure"),
    spec_of({"name": "key_on_pressure", "tolerance": "2 kPa"}),
    spec_of({"name": "compression", "stated_at": "101.325 kPa"}, "10 to 13 bar"),
    spec_of({"name": "leak_down", "supply": "600 kPa", "loss": "at most 15 %"}),
    spec_of({"name": "fuel_pressure", "referenced": True}, "300 ± 20 kPa"),
    spec_of({"name": "oxygen_cell", "fuel": "petrol", "aged": "0.1 V"}),
    spec_of({"name": "bus_termination", "terminations": 2, "each": "100 to 130 ohm"}),
    spec_of({"name": "bus_mean", "wire": "low", "dominant": "5 to 40 %"}),
    spec_of({"name": "heater_current", "cold": "0.6 ohm ± 20 %", "settled_ratio": [1.8, 2.3, 2.8]}),
    spec_of({"name": "torque", "diameter": "8 mm", "pitch": "1.25 mm", "strength": "8.8"},
            "25 ± 2 N·m"),
    spec_of({"name": "wrench_setting", "wrench": "400 mm", "extension": "100 mm", "angle": 90.0},
            "25 ± 2 N·m"),
)  # fmt: skip
"""One spec a model, every optional part of it used somewhere."""
