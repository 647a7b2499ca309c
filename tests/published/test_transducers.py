"""Potentiometers and ratiometric transducers against a simulator and printed sheets."""

from __future__ import annotations

import pytest

from generator.physics.transducers import RatiometricTransducer, potentiometer_v
from tests.published.checks import Check, assert_well_founded, table

SPICE = "ngspice 39, operating point, printed figure"
SHEET = "printed sheet of an absolute-pressure sensor, V_s·(0.009·P − 0.095), end points at 5.1 V"
MANIFOLD = RatiometricTransducer(gain=0.009, offset=-0.095, low=15.0, high=115.0, unit="kPa")
GAUGE_NOTE = "printed note of a distributor: 0.5 to 4.5 V over 0 to 100 psi at 5 V"
GAUGE = RatiometricTransducer(gain=0.008, offset=0.1, low=0.0, high=100.0, unit="psi")


def transducer_v(transducer: RatiometricTransducer, value: float, supply_v: float) -> float:
    """Output of a transducer, as a plain function for the table."""
    return float(transducer.volts(value, supply_v))


def transducer_value(transducer: RatiometricTransducer, out_v: float, supply_v: float) -> float:
    """What a transducer measures, as a plain function for the table."""
    return float(transducer.value(out_v, supply_v))


POTENTIOMETER = [
    Check(
        {"supply_v": 5.0, "total_ohm": 5e3, "travel": 0.25, "load_ohm": 10e3},
        1.14285714,
        1e-7,
        "L",
        SPICE,
    ),
    Check(
        {"supply_v": 5.0, "total_ohm": 5e3, "travel": 0.75, "load_ohm": 10e3},
        3.42857143,
        1e-7,
        "L",
        SPICE,
    ),
    Check(
        {"supply_v": 5.0, "total_ohm": 1e3, "travel": 0.9, "load_ohm": 2200.0},
        4.32314410,
        1e-7,
        "L",
        SPICE,
    ),
    Check(
        {"supply_v": 10.0, "total_ohm": 10e3, "travel": 0.5, "load_ohm": 5e3},
        3.333,
        5e-4,
        "P",
        "printed answer on loading a 10 kΩ track at its middle with 5 kΩ",
    ),
    Check(
        {"supply_v": 5.0, "total_ohm": 5e3, "travel": 0.5, "load_ohm": 10e3},
        2.2222,
        1e-4,
        "C",
        "Thévenin: 2.5 V behind 1.25 kΩ into 10 kΩ",
    ),
]

OUTPUT = [
    Check({"transducer": MANIFOLD, "value": 15.0, "supply_v": 5.1}, 0.204, 1e-9, "P", SHEET),
    Check({"transducer": MANIFOLD, "value": 115.0, "supply_v": 5.1}, 4.794, 1e-9, "P", SHEET),
    Check({"transducer": MANIFOLD, "value": 100.0, "supply_v": 5.1}, 4.1055, 1e-9, "C", SHEET),
    Check({"transducer": GAUGE, "value": 0.0, "supply_v": 5.0}, 0.5, 1e-9, "P", GAUGE_NOTE),
    Check({"transducer": GAUGE, "value": 50.0, "supply_v": 5.0}, 2.5, 1e-9, "P", GAUGE_NOTE),
    Check({"transducer": GAUGE, "value": 100.0, "supply_v": 5.0}, 4.5, 1e-9, "P", GAUGE_NOTE),
]
VALUE = [
    Check({"transducer": MANIFOLD, "out_v": 0.204, "supply_v": 5.1}, 15.0, 1e-6, "P", SHEET),
    Check({"transducer": MANIFOLD, "out_v": 4.794, "supply_v": 5.1}, 115.0, 1e-6, "P", SHEET),
    Check({"transducer": GAUGE, "out_v": 2.5, "supply_v": 5.0}, 50.0, 1e-6, "P", GAUGE_NOTE),
]


@pytest.mark.parametrize(
    ("model", "check"),
    table(potentiometer_v, POTENTIOMETER)
    + table(transducer_v, OUTPUT)
    + table(transducer_value, VALUE),
)
def test_transducers_agree_with_the_world(model, check):
    """Wiper voltage, output and inverse agree with outside values."""
    check.hold(model)


def test_the_tables_are_well_founded():
    """Each model rests on at least three printed or library values."""
    for rows in (POTENTIOMETER, OUTPUT, VALUE):
        assert_well_founded(rows)
