"""Ignition coils and injectors against a circuit simulator and wire-table arithmetic."""

from __future__ import annotations

from typing import Any

import pint
import pytest

from generator.physics.actuators import ignition_band, injector_duty, injector_peak_a
from tests.published.checks import Check, assert_well_founded, table

SPICE = "ngspice 39, transient analysis, printed figure"
IEC_60028 = "IEC 60028, copper: 1 + 0.00393·(t − 20)"
NEC_8 = "US National Electrical Code, chapter 9, table 8: 14 AWG, 2.525 at 20 °C and 3.07 at 75 °C"
UNITS: pint.UnitRegistry[Any] = pint.UnitRegistry()
INJECTOR = {"supply_v": 13.5, "coil_ohm": 14.5, "coil_h": 12e-3}

PEAK = [
    Check({"on_time_s": 0.5e-3, **INJECTOR}, 0.4221966, 1e-5, "L", SPICE),
    Check({"on_time_s": 2.5e-3, **INJECTOR}, 0.8856368, 1e-5, "L", SPICE),
    Check(
        {"on_time_s": 1e-3, "supply_v": 14.0, "coil_ohm": 0.6, "coil_h": 4e-3},
        3.250147,
        1e-4,
        "L",
        SPICE,
    ),
    Check({"on_time_s": 2.5e-3, **INJECTOR, "limit_a": 0.5}, 0.5, 0.0, "C", "the driver holds"),
]


def _duty(on_time_ms: float, speed_rpm: float) -> Check:
    def fraction() -> float:
        pulse = on_time_ms * UNITS.millisecond
        period = 2.0 / (speed_rpm / UNITS.minute)
        return float((pulse / period).to("dimensionless").magnitude)

    inputs = {"on_time_s": on_time_ms * 1e-3, "speed_rpm": speed_rpm}
    return Check(inputs, fraction, 1e-12, "L", "pint: pulse over two revolutions")


DUTY = [
    _duty(2.5, 800.0),
    _duty(3.1, 2500.0),
    _duty(12.0, 6000.0),
    Check(
        {"on_time_s": 10e-3, "speed_rpm": 6000.0},
        0.5,
        1e-12,
        "M",
        "rule of thumb, from memory: duty in percent is milliseconds times rpm over 1200",
    ),
]


def ignition_nominal_ohm(nominal_ohm: float, temp_c: float, suppressor_ohm: float = 0.0) -> float:
    """Nominal resistance of the band, as a plain function for the table."""
    band = ignition_band(
        nominal_ohm, nominal_ohm, nominal_ohm, temp_c, suppressor_ohm=suppressor_ohm
    )
    return float(band[1])


IGNITION = [
    Check({"nominal_ohm": 2.525, "temp_c": 75.0}, 3.07, 0.006, "P", NEC_8),
    Check({"nominal_ohm": 0.75, "temp_c": 80.0}, 0.927, 5e-4, "C", IEC_60028),
    Check(
        {"nominal_ohm": 12_000.0, "temp_c": 80.0, "suppressor_ohm": 5000.0},
        7000.0 * 1.23580 + 5000.0,
        1e-6,
        "C",
        IEC_60028 + ", the built-in resistor apart",
    ),
]


@pytest.mark.parametrize(
    ("model", "check"),
    table(injector_peak_a, PEAK)
    + table(injector_duty, DUTY)
    + table(ignition_nominal_ohm, IGNITION),
)
def test_actuators_agree_with_the_world(model, check):
    """Peak current, duty and warm resistance agree with outside values."""
    check.hold(model)


def test_the_tables_are_well_founded():
    """Each model rests on outside values; an ignition winding is a winding, held to those."""
    assert_well_founded(PEAK)
    assert_well_founded(DUTY)
    assert_well_founded(IGNITION, independent=1)
