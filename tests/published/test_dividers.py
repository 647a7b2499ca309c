"""Dividers and loaded readings against a circuit simulator and a linear solver."""

from __future__ import annotations

import numpy as np
import pytest

from generator.physics.dividers import (
    divider_lower_ohm,
    divider_v,
    lead_corrected_ohm,
    lead_drop_v,
    metered_v,
)
from tests.published.checks import Check, assert_well_founded, table

SPICE = "ngspice 39, operating point, printed figure"
NODES = "numpy.linalg.solve of the node equations"
PULL_UP = "V_ref·R/(R_pu + R), 5 V and 2490 ohm"


def solved_v(supply_v: float, upper_ohm: float, lower_ohm: float, load_ohm: float) -> float:
    """Tap voltage by nodal analysis: supply node, tap node and the supply's current."""
    upper, lower, load = 1.0 / upper_ohm, 1.0 / lower_ohm, 1.0 / load_ohm
    matrix = np.array([[upper, -upper, 1.0], [-upper, upper + lower + load, 0.0], [1.0, 0.0, 0.0]])
    return float(np.linalg.solve(matrix, np.array([0.0, 0.0, supply_v]))[1])


def _solved(supply_v: float, upper_ohm: float, lower_ohm: float, load_ohm: float) -> Check:
    inputs = {
        "supply_v": supply_v,
        "upper_ohm": upper_ohm,
        "lower_ohm": lower_ohm,
        "load_ohm": load_ohm,
    }
    return Check(inputs, lambda: solved_v(**inputs), 1e-9, "L", NODES)


def _pull_up(sensor_ohm: float) -> dict[str, float]:
    return {"supply_v": 5.0, "upper_ohm": 2490.0, "lower_ohm": sensor_ohm}


VOLTS = [
    Check({**_pull_up(5896.0), "load_ohm": 10e6}, 3.51476746, 1e-7, "L", SPICE),
    Check(
        {"supply_v": 12.0, "upper_ohm": 4700.0, "lower_ohm": 10e3, "load_ohm": 22e3},
        7.12742981,
        1e-7,
        "L",
        SPICE,
    ),
    Check({"supply_v": 12.0, "upper_ohm": 220.0, "lower_ohm": 6.9}, 0.364918466, 1e-8, "L", SPICE),
    _solved(5.0, 1000.0, 330.0, 1e6),
    _solved(24.0, 82e3, 1.5e6, 10e6),
    Check(_pull_up(5896.0), 3.515, 1e-3, "C", PULL_UP),
    Check(_pull_up(2500.0), 2.505, 1e-3, "C", PULL_UP),
    Check(_pull_up(325.0), 0.577, 1e-3, "C", PULL_UP),
    Check(_pull_up(187.0), 0.349, 1e-3, "C", PULL_UP),
]

LOWER = [
    Check({"out_v": 0.364918466, "supply_v": 12.0, "upper_ohm": 220.0}, 6.9, 1e-6, "L", SPICE),
    Check({"out_v": 9.0, "supply_v": 12.0, "upper_ohm": 10e3}, 30e3, 1e-6, "L", SPICE),
    Check({"out_v": 2.505, "supply_v": 5.0, "upper_ohm": 2490.0}, 2500.0, 1.0, "C", PULL_UP),
]

METERED = [
    Check({"open_v": 12.0, "source_ohm": 1e6, "meter_ohm": 10e6}, 10.9090909, 1e-6, "L", SPICE),
    Check({"open_v": 5.0, "source_ohm": 47e3, "meter_ohm": 1e6}, 4.77554919, 1e-7, "L", SPICE),
    Check({"open_v": 12.0, "source_ohm": 10e3, "meter_ohm": 30e3}, 9.0, 1e-7, "L", SPICE),
    Check({"open_v": 12.6, "source_ohm": 1000.0}, 12.6 * 1e4 / 1.0001e4, 1e-4, "C", "10 MΩ meter"),
]

LEADS = [
    Check({"reading_ohm": 0.9, "leads_ohm": 0.2}, 0.7, 1e-12, "C", "resistances in series"),
]
DROP = [Check({"current_a": 10.0, "lead_ohm": 0.0399}, 0.399, 1e-12, "C", "Ohm's law")]


@pytest.mark.parametrize(
    ("model", "check"),
    table(divider_v, VOLTS)
    + table(divider_lower_ohm, LOWER)
    + table(metered_v, METERED)
    + table(lead_corrected_ohm, LEADS)
    + table(lead_drop_v, DROP),
)
def test_dividers_agree_with_the_world(model, check):
    """Dividers, their inverse and loaded readings agree with outside values."""
    check.hold(model)


def test_the_tables_are_well_founded():
    """Each model rests on at least three library values."""
    assert_well_founded(VOLTS)
    assert_well_founded(METERED)
