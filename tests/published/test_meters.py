"""Meter accuracy, loading and leads against printed examples and an uncertainty calculator."""

from __future__ import annotations

import pytest
from GTC import result, type_b, uncertainty, ureal

from generator.physics.deciding import judge_interval
from generator.physics.meters import (
    MeterAccuracy,
    combined_u,
    nulled_ohm,
    rectangular_u,
    un_nulled_ohm,
    unloaded_v,
)
from tests.published.checks import Check, assert_well_founded, table

CALCULATOR = "GTC 1.5.1, type_b.uniform and its own propagation"
MAKER_NOTE = "printed note of a meter maker: 2.000 V at ±(0.08 % + 2 digits) is ±0.0036 V"
COLLEGE = "printed college tutorial: ±(2.5 % + 3 digits) of 0.01 V"
HUNDRED = "printed note: 100.0 V at ±(0.8 % + 2 digits) is ±1.0 V"
BUDGET = "printed uncertainty budget of a meter calibration"
LOADING = "printed exercise: 5 V behind 0.1 Mohm on a 10 Mohm meter reads 4.950 V"
MOVING_COIL = "printed exercise: half of 30 V behind 200 kohm on a 400 kohm meter reads 10 V"
OHMS = MeterAccuracy(0.9, 2.0, 0.1)


def half_width(accuracy: MeterAccuracy, reading: float) -> float:
    """Half-width of a reading, as a plain function for the table."""
    return accuracy.half_width(reading)


def combined_of(parts: list[float]) -> float:
    """Combined uncertainty, as a plain function for the table."""
    return combined_u(*parts)


def nulled_u(reading_ohm: float, leads_reading_ohm: float) -> float:
    """Uncertainty of a nulled resistance, as a plain function for the table."""
    return nulled_ohm(reading_ohm, leads_reading_ohm, OHMS)[1]


def un_nulled_u(reading_ohm: float, leads_ohm: tuple[float, float]) -> float:
    """Uncertainty of an un-nulled resistance, as a plain function for the table."""
    return un_nulled_ohm(reading_ohm, leads_ohm, OHMS)[1]


def _half(accuracy: tuple[float, float, float], reading: float, a: float, source: str) -> Check:
    inputs = {"accuracy": MeterAccuracy(*accuracy), "reading": reading}
    return Check(inputs, a, 1e-9, "P", source)


def _uniform(a: float) -> Check:
    return Check({"half_width": a}, lambda: type_b.uniform(a), 1e-12, "L", CALCULATOR)


def _combined(*parts: float) -> Check:
    def by_calculator() -> float:
        total = sum((ureal(0.0, part) for part in parts), ureal(0.0, 0.0))
        return float(uncertainty(total))

    return Check({"parts": list(parts)}, by_calculator, 1e-12, "L", CALCULATOR)


def _nulled(reading: float, leads: float) -> Check:
    def by_calculator() -> float:
        # One factor common to both readings, and an error of counts in each.
        factor = ureal(1.0, type_b.uniform(0.009))
        first, second = (ureal(value, type_b.uniform(0.2)) for value in (reading, leads))
        return float(uncertainty(result(factor * (first - second))))

    inputs = {"reading_ohm": reading, "leads_reading_ohm": leads}
    return Check(inputs, by_calculator, 1e-9, "L", CALCULATOR)


def _un_nulled(reading: float, low: float, high: float) -> Check:
    def by_calculator() -> float:
        shown = ureal(reading, type_b.uniform(0.009 * reading + 0.2))
        leads = ureal((low + high) / 2.0, type_b.uniform((high - low) / 2.0))
        return float(uncertainty(result(shown - leads)))

    inputs = {"reading_ohm": reading, "leads_ohm": (low, high)}
    return Check(inputs, by_calculator, 1e-9, "L", CALCULATOR)


HALF = [
    _half((0.08, 2.0, 0.001), 2.0, 0.0036, MAKER_NOTE),
    _half((2.5, 3.0, 0.01), 32.0, 0.83, COLLEGE),
    _half((2.5, 3.0, 0.01), 0.09, 0.03225, COLLEGE),
    _half((0.8, 2.0, 0.1), 100.0, 1.0, HUNDRED),
    Check(
        {"accuracy": MeterAccuracy(0.5, 2.0, 0.01), "reading": 12.60},
        0.083,
        1e-9,
        "C",
        "0.063 V + 0.02 V",
    ),
    Check({"accuracy": OHMS, "reading": 0.5}, 0.2045, 1e-9, "C", "0.0045 + 0.2 ohm"),
]
RECTANGULAR = [
    _uniform(0.083),
    _uniform(0.2045),
    Check({"half_width": 0.004}, 0.002309, 5e-7, "P", BUDGET),
    Check({"half_width": 0.0005}, 0.000289, 5e-7, "P", BUDGET),
]
COMBINED = [_combined(3.0, 4.0), _combined(0.05, 0.02, 0.11), _combined(0.002309, 0.0012, 0.000289)]
LOAD = [
    Check({"reading_v": 4.950495, "source_ohm": 1e5, "meter_ohm": 1e7}, 5.0, 1e-5, "P", LOADING),
    Check({"reading_v": 10.0, "source_ohm": 2e5, "meter_ohm": 4e5}, 15.0, 1e-9, "P", MOVING_COIL),
    Check({"reading_v": 12.0, "source_ohm": 0.0, "meter_ohm": 1e7}, 12.0, 0.0, "C", "no source R"),
]
NULLED = [_nulled(0.9, 0.3), _nulled(12.4, 0.2), _nulled(0.4, 0.4)]
UN_NULLED = [_un_nulled(0.7, 0.1, 0.5), _un_nulled(15.0, 0.0, 0.5), _un_nulled(0.3, 0.2, 0.2)]


@pytest.mark.parametrize(
    ("model", "check"),
    table(half_width, HALF)
    + table(rectangular_u, RECTANGULAR)
    + table(combined_of, COMBINED)
    + table(unloaded_v, LOAD)
    + table(nulled_u, NULLED)
    + table(un_nulled_u, UN_NULLED),
)
def test_meters_agree_with_the_world(model, check):
    """Accuracy, uncertainty, loading and leads agree with outside values."""
    check.hold(model)


def test_a_low_ohm_reading_with_such_a_meter_decides_nothing():
    """Half an ohm ± 10 % on a last digit of 0.1 ohm is beyond that meter, whatever it shows."""
    for tenths in range(2, 10):
        reading = tenths / 10.0
        ohm, u = un_nulled_ohm(reading, (0.1, 0.3), OHMS)
        assert judge_interval(ohm, u, 0.45, 0.55).verdict != "in"


def test_the_tables_are_well_founded():
    """Each model rests on at least three printed or library values, loading on its two in print."""
    for rows in (HALF, RECTANGULAR, COMBINED, NULLED, UN_NULLED):
        assert_well_founded(rows)
    assert_well_founded(LOAD, independent=2)
