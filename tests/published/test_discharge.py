"""Standing drain and Peukert's law against printed examples."""

from __future__ import annotations

import pytest

from generator.physics.discharge import drain_days, peukert_hours_one_ampere, peukert_hours_rated
from tests.published.checks import Check, assert_well_founded, table

GRID = "printed manual of a battery monitor: share of 100 Ah (20 h rate) left at each current"
ONE_AMPERE = "printed tutorial: 250 Ah, 20 A, n 1.3"
ELECTRICIAN = "printed note on Peukert's law: 100 Ah, k 1.2, 5 A"
HANDBOOK = "printed radio handbook: 200 Ah gives 20 A for 10 h or 5 A for 40 h"
PARKED = "printed page on parked vehicles: 60 Ah at 20 mA, 3000 h or 125 days"


def _rated(current_a: float, exponent: float, percent: float) -> Check:
    inputs = {
        "rated_ah": 100.0, "rated_hours": 20.0, "current_a": current_a, "exponent": exponent,
    }  # fmt: skip
    return Check(inputs, percent / current_a, 0.6 / current_a, "P", GRID)


def _drain(ah: float, amps: float, start: float = 1.0, end: float = 0.0) -> dict[str, float]:
    return {"capacity_ah": ah, "drain_a": amps, "from_charge": start, "to_charge": end}


RATED = [
    _rated(10.0, 1.2, 87.0),
    _rated(25.0, 1.2, 72.0),
    _rated(50.0, 1.2, 63.0),
    _rated(25.0, 1.25, 67.0),
    _rated(100.0, 1.3, 41.0),
    _rated(10.0, 1.4, 76.0),
    Check(
        {"rated_ah": 100.0, "rated_hours": 20.0, "current_a": 10.0, "exponent": 1.2},
        8.7055,
        5e-5,
        "C",
        "20·(100/200)^1.2",
    ),
]
ONE = [
    Check(
        {"peukert_ah": 250.0, "current_a": 20.0, "exponent": 1.3},
        5.088631644,
        1e-8,
        "P",
        ONE_AMPERE,
    ),
    Check({"peukert_ah": 100.0, "current_a": 5.0, "exponent": 1.2}, 14.5, 0.05, "P", ELECTRICIAN),
    Check(
        {"peukert_ah": 20.0 * 5.0**1.2, "current_a": 10.0, "exponent": 1.2},
        8.7055,
        5e-5,
        "C",
        "the two forms agree where C_p = H·(C/H)^k",
    ),
]
DRAIN = [
    Check(_drain(60.0, 0.02), 125.0, 1e-9, "P", PARKED),
    Check(_drain(200.0, 20.0), 10.0 / 24.0, 1e-9, "P", HANDBOOK),
    Check(_drain(200.0, 5.0), 40.0 / 24.0, 1e-9, "P", HANDBOOK),
    Check(_drain(60.0, 0.05, 1.0, 0.5), 25.0, 1e-9, "C", "30 Ah/50 mA/24"),
]


@pytest.mark.parametrize(
    ("model", "check"),
    table(peukert_hours_rated, RATED)
    + table(peukert_hours_one_ampere, ONE)
    + table(drain_days, DRAIN),
)
def test_discharge_agrees_with_the_world(model, check):
    """Both forms of Peukert's law and the standing drain agree with outside values."""
    check.hold(model)


def test_the_two_definitions_are_not_the_same():
    """The label's capacity put into the one-ampere form is wrong by over a third."""
    rated = peukert_hours_rated(100.0, 20.0, 10.0, 1.2)
    assert peukert_hours_one_ampere(100.0, 10.0, 1.2) < 0.75 * rated


def test_the_tables_are_well_founded():
    """Peukert's law and the drain each rest on at least three printed values."""
    for rows in (RATED, ONE + RATED, DRAIN):
        assert_well_founded(rows)
