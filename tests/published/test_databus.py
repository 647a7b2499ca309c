"""Terminations and levels of the two-wire bus against printed sheets."""

from __future__ import annotations

import pytest

from generator.physics.databus import (
    DOMINANT,
    RECESSIVE,
    mean_pair_v,
    pair_resistance_band_ohm,
    pair_state,
    parallel_ohm,
    terminations_found,
)
from tests.published.checks import Check, assert_well_founded, table

MODULE_WIKI = "printed wiki of an engine-control project: 120 ohm at both ends reads 60 ohm"
BUS_NOTE = "printed note on bus termination: two of 120 ohm side by side are 60 ohm"
LOADED = "printed exercises on meter loading: 100 kohm beside 10 Mohm is 99.01 kohm"
HALVES = "the same kind of exercise: 400 kohm beside 400 kohm is 200 kohm"
SHEET = "printed transceiver sheets: at most 0.5 V recessive, at least 0.9 V dominant"


def parallel_of(ohms: list[float]) -> float:
    """Resistance side by side, as a plain function for the table."""
    return float(parallel_ohm(*ohms))


def nominal_pair_ohm(terminations: int) -> float:
    """Nominal resistance of the pair, as a plain function for the table."""
    return pair_resistance_band_ohm(terminations)[1]


PARALLEL = [
    Check({"ohms": [120.0, 120.0]}, 60.0, 1e-9, "P", BUS_NOTE),
    Check({"ohms": [100e3, 10e6]}, 99.01e3, 5.0, "P", LOADED),
    Check({"ohms": [400e3, 400e3]}, 200e3, 1e-6, "P", HALVES),
    Check({"ohms": [120.0, 120.0, 120.0]}, 40.0, 1e-9, "C", "120/3"),
    Check({"ohms": [120.0, 0.0]}, 0.0, 0.0, "C", "a short circuit wins"),
]
PAIR = [
    Check({"terminations": 2}, 60.0, 1e-9, "P", MODULE_WIKI),
    Check({"terminations": 1}, 120.0, 1e-9, "M", "one end missing reads 120 ohm"),
    Check({"terminations": 3}, 40.0, 1e-9, "C", "120/3"),
]


@pytest.mark.parametrize(
    ("model", "check"), table(parallel_of, PARALLEL) + table(nominal_pair_ohm, PAIR)
)
def test_terminations_agree_with_the_world(model, check):
    """Resistors side by side and the pair as a whole agree with outside values."""
    check.hold(model)


@pytest.mark.parametrize(
    ("high_v", "low_v", "state"),
    [
        (2.5, 2.5, "recessive"),
        (3.5, 1.5, "dominant"),
        (2.75, 2.25, "recessive"),
        (2.95, 2.05, "dominant"),
        (2.85, 2.15, "undefined"),
        (2.5, 3.5, "recessive"),
        (3.0, 1.5, "dominant"),
    ],
)
def test_states_follow_the_printed_thresholds(high_v, low_v, state):
    """A receiver's decision follows the thresholds printed in transceiver sheets."""
    assert pair_state(high_v, low_v) == state, SHEET


def test_the_dominant_limits_span_the_printed_difference():
    """Printed sheets: dominant is 1.5 to 3 V of difference, nominal 2 V; recessive none."""
    assert DOMINANT.high_v[1] - DOMINANT.low_v[1] == 2.0
    assert 1.5 <= DOMINANT.high_v[1] - DOMINANT.low_v[1] <= 3.0
    assert RECESSIVE.high_v == RECESSIVE.low_v
    assert DOMINANT.high_v[0] - DOMINANT.low_v[2] >= 0.5


@pytest.mark.parametrize(
    ("ohm", "count"),
    [(60.0, 2), (120.0, 1), (40.0, 3), (30.0, 4), (20_000.0, 0), (2.0, None), (85.0, None)],
)
def test_a_resistance_tells_the_number_of_terminations(ohm, count):
    """60 ohm is two, 120 one, 40 three; a short and a value between fit none (C, 120/n)."""
    assert terminations_found(ohm) == count


def test_a_slow_meter_sees_the_means():
    """A fifth of the time dominant: 2.5 V moves to 2.7 and 2.3 V (C, mean of a square wave)."""
    assert mean_pair_v(0.2) == pytest.approx((2.7, 2.3))


def test_the_tables_are_well_founded():
    """Resistors side by side rest on at least three printed values."""
    assert_well_founded(PARALLEL + PAIR)
