"""Heaters against Ohm's law as an independent units library works it."""

from __future__ import annotations

from typing import Any

import pint
import pytest

from generator.physics.heaters import initial_current_a, settled_current_a, settled_ohm
from tests.published.checks import Check, assert_well_founded, table

UNITS: pint.UnitRegistry[Any] = pint.UnitRegistry()
LIBRARY = "pint: volt over ohm"
SHEET = "printed sheet of a PTC heater: current falls by a factor of about 2.3 (practice)"


def _first(supply_v: float, cold_ohm: float) -> Check:
    def quotient() -> float:
        current = supply_v * UNITS.volt / (cold_ohm * UNITS.ohm)
        return float(current.to(UNITS.ampere).magnitude)

    return Check({"supply_v": supply_v, "cold_ohm": cold_ohm}, quotient, 1e-9, "L", LIBRARY)


FIRST = [
    _first(12.0, 0.6),
    _first(13.5, 4.2),
    _first(27.0, 1.1),
    Check({"supply_v": 12.0, "cold_ohm": 0.6}, 20.0, 1e-9, "C", "Ohm's law"),
]
SETTLED = [Check({"initial_a": 23.0, "ratio": 2.3}, 10.0, 1e-9, "practice", SHEET)]
WARM = [Check({"cold_ohm": 3.0, "ratio": 2.3}, 6.9, 1e-9, "practice", SHEET)]


@pytest.mark.parametrize(
    ("model", "check"),
    table(initial_current_a, FIRST) + table(settled_current_a, SETTLED) + table(settled_ohm, WARM),
)
def test_heaters_agree_with_the_world(model, check):
    """First current, settled current and settled resistance agree with outside values."""
    check.hold(model)


def test_the_tables_are_well_founded():
    """The family rests on at least three library values; the ratio itself is a part's own datum."""
    assert_well_founded(FIRST + SETTLED + WARM)
