"""Units: the closed list is sound, and its conversions are those of the published tables."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.quantities import QUANTITIES, UNITS, base_unit, convert, unit_named
from generator.quantities.units import NEVER_NEGATIVE, NOT_BELOW, Unit, meant_by
from tests.quantities import pint_scales


def unit(symbol: str) -> Unit:
    """Give a unit of the list."""
    found = unit_named(symbol)
    assert found is not None
    return found


# NIST Special Publication 811 (2008), Guide for the Use of the SI: appendix B.8 for factors (seven
# figures, those marked "exact" there exact), table 6 for minute, hour and day, B.8 "degree
# Fahrenheit" for the temperature scale; SI prefixes by table 5.
NIST = [
    (1, "in", "m", 2.54e-2, 0),  # exact
    (1, "in", "mm", 25.4, 0),  # exact
    (1, "ft", "m", 0.3048, 0),  # exact
    (1, "mph", "km/h", 1.609344, 0),  # exact
    (1, "bar", "Pa", 1.0e5, 0),  # exact
    (1, "hPa", "Pa", 1.0e2, 0),  # exact; the millibar
    (1, "psi", "Pa", 6.894757e3, 5e-7),
    (1, "inHg", "Pa", 3.386389e3, 5e-7),  # conventional inch of mercury
    (1, "lbf·ft", "N·m", 1.355818, 5e-7),
    (1, "lbf·in", "N·m", 1.129848e-1, 5e-7),
    (1, "min", "s", 60, 0),  # exact
    (1, "h", "s", 3600, 0),  # exact
    (1, "days", "s", 86400, 0),  # exact
    (32, "°F", "°C", 0, 0),  # exact
    (212, "°F", "°C", 100, 0),  # exact
    (-40, "°F", "°C", -40, 0),  # exact
    (194, "°F", "°C", 90, 0),  # exact
    (20, "°C", "°F", 68, 0),  # exact
    (1, "mV", "V", 1e-3, 0),
    (1, "µs", "s", 1e-6, 0),
    (1, "kohm", "ohm", 1e3, 0),
    (1, "Mohm", "ohm", 1e6, 0),
    (1, "MPa", "kPa", 1e3, 0),
    (1, "mL", "L", 1e-3, 0),
    (1, "g", "kg", 1e-3, 0),
    (1, "mH", "H", 1e-3, 0),
    (1, "kN", "N", 1e3, 0),
    (1, "kHz", "Hz", 1e3, 0),
    (1, "kW", "W", 1e3, 0),
]


def test_the_table_is_what_pint_defines() -> None:
    """Every unit of the list, and no other, exactly as it would be written today."""
    assert pint_scales.FILE.read_text("utf-8") == pint_scales.text()


@pytest.mark.parametrize(("value", "source", "target", "expected", "relative"), NIST)
def test_published_conversions(
    value: float, source: str, target: str, expected: float, relative: float
) -> None:
    """Each conversion agrees with the published table to its last figure, or exactly."""
    found = convert(value, unit(source), unit(target))
    assert math.isclose(found, expected, rel_tol=relative, abs_tol=0)


def test_every_unit_that_is_not_its_base_is_held_to_the_table() -> None:
    """No conversion of the list goes unchecked."""
    checked = {row[1] for row in NIST} | {row[2] for row in NIST}
    unchecked = {one.symbol for one in UNITS if one is not base_unit(one.quantity)} - checked
    # A thousandth or a thousand of a unit whose prefix is checked on others.
    assert unchecked <= {"mohm", "kV", "mA", "µm", "mm", "kPa", "ms"}


@pytest.mark.parametrize(
    ("small", "times", "large"),
    [("mohm", 1000, "ohm"), ("V", 1000, "kV"), ("mA", 1000, "A"), ("µm", 1000, "mm"),
     ("mm", 1000, "m"), ("Pa", 1000, "kPa"), ("µs", 1000, "ms")],
)  # fmt: skip
def test_prefixes(small: str, times: float, large: str) -> None:
    """A thousand of the smaller unit is one of the larger, exactly, both ways."""
    assert convert(times, unit(small), unit(large)) == 1
    assert convert(1, unit(large), unit(small)) == times


def test_the_list_is_sound() -> None:
    """Symbols and spellings name one unit each, and each quantity has one base unit of its own."""
    named = [spelling for one in UNITS for spelling in {one.symbol, *one.spellings}]
    assert len(named) == len(set(named))
    assert {one.quantity for one in UNITS} == set(QUANTITIES)
    for quantity in QUANTITIES:
        assert base_unit(quantity).quantity == quantity
    assert set(NOT_BELOW) | NEVER_NEGATIVE <= set(QUANTITIES)


def test_unlike_units_do_not_convert() -> None:
    """A conversion between quantities is a programming error."""
    with pytest.raises(ValueError, match="resistance"):
        convert(1, unit("ohm"), unit("V"))


def test_open_ends_stay_open() -> None:
    """An infinite limit stays infinite."""
    assert convert(math.inf, unit("mm"), unit("m")) == math.inf
    assert convert(-math.inf, unit("°F"), unit("°C")) == -math.inf


@given(st.sampled_from(UNITS), st.decimals(-(10**6), 10**6, places=4))
def test_there_and_back(one: Unit, value: object) -> None:
    """A figure comes back from the base unit as it went, to the last digit or two."""
    figure = float(str(value))
    base = base_unit(one.quantity)
    back = convert(convert(figure, one, base), base, one)
    assert math.isclose(back, figure, rel_tol=1e-14, abs_tol=1e-12)


@given(st.sampled_from([one for one in UNITS if one.quantity != "temperature"]),
       st.decimals(0, 10**6, places=3))  # fmt: skip
def test_decimal_units_come_back_exactly(one: Unit, value: object) -> None:
    """Between a unit and a decimal multiple of it nothing is lost at all."""
    if one.symbol in (
        "in", "ft", "lbf·ft", "lbf·in", "psi", "inHg", "min", "h", "days", "mph"
    ):  # fmt: skip
        return
    figure = float(str(value))
    base = base_unit(one.quantity)
    assert convert(convert(figure, one, base), base, one) == figure


@pytest.mark.parametrize(
    ("text", "symbols"),
    [("volt", ["V"]), ("Volts", ["V"]), ("KOHM", ["kohm"]), ("MOHM", ["mohm", "Mohm"]),
     ("ampere", ["A"]), ("bars", ["bar"]), ("PSI", ["psi"]), ("furlong", [])],
)  # fmt: skip
def test_near_spellings(text: str, symbols: list[str]) -> None:
    """A unit's name, plural or other capitals lead to its symbol; doubt gives both."""
    assert meant_by(text) == symbols
