"""One value in both systems of units: what is written first, and its counterpart beside it.

The counterpart is computed from the unrounded value, never from the text, and its limits are
rounded inwards in their own unit. Pages mark the two, so that a reader may hide one.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from generator.expected import CONDITIONS
from generator.pages.strings import say
from generator.quantities import (
    Interval,
    Unit,
    Written,
    base_unit,
    convert,
    figure,
    show_range,
    unit_named,
)
from generator.quantities.show import places_for

System = Literal["si", "us"]

TO_US = {
    "°C": "°F", "N·m": "lbf·ft", "mm": "in", "µm": "in", "m": "ft", "kPa": "psi", "MPa": "psi",
    "bar": "psi", "hPa": "inHg", "km/h": "mph",
}  # fmt: skip
TO_SI = {
    "°F": "°C", "lbf·ft": "N·m", "lbf·in": "N·m", "in": "mm", "ft": "m", "psi": "kPa",
    "inHg": "kPa", "mph": "km/h",
}  # fmt: skip
"""Counterparts; a unit in neither, as ohm, is the same for every reader."""

# Air and manifold pressures are read in inches of mercury where others are in psi (practice).
CONDITIONS_TO_US = {"air_pressure": "inHg", "manifold_pressure": "inHg"}


@dataclass(frozen=True, slots=True)
class Both:
    """A text as it is written and, where its unit has a counterpart, the same in that.

    Parameters
    ----------
    first, second : str
        Empty `second`: the text is the same in both systems.
    system : {"si", "us"}
        System of `first`.
    """

    first: str
    second: str = ""
    system: System = "si"

    @property
    def other(self) -> System:
        """System of `second`."""
        return "si" if self.system == "us" else "us"


def counterpart(unit: Unit) -> Unit | None:
    """Give the unit of the other system, or None where readers share one."""
    return unit_named(TO_US.get(unit.symbol) or TO_SI.get(unit.symbol, ""))


def system_of(unit: Unit) -> System:
    """Say which system a unit with a counterpart belongs to."""
    return "us" if unit.symbol in TO_SI else "si"


def places_in(other: Unit, unit: Unit, places: int) -> int:
    """Give the decimals in another unit whose last digit is no coarser than the first unit's.

    Rounding inwards then costs a reader of either system at most the same step.
    """
    factor = abs(convert(1.0, unit, other) - convert(0.0, unit, other))
    return max(0, math.ceil(places - math.log10(factor) - 1e-9))


def limits_in(
    unit: Unit, low: float | None, nominal: float | None, high: float | None, places: int
) -> tuple[str, str, str]:
    """Give limits in a unit, from figures in the base unit: rounded inwards, empty where open."""
    base = base_unit(unit.quantity)
    shown = [None if v is None else convert(v, base, unit) for v in (low, nominal, high)]
    shown_low, shown_high = show_range(shown[0], shown[2], places)
    return shown_low, "" if shown[1] is None else figure(shown[1], places), shown_high


def range_text(low: str, high: str, symbol: str) -> str:
    """Give a band as a reader says it."""
    if not low:
        return f"{say('value.at_most')} {high} {symbol}"
    if not high:
        return f"{say('value.at_least')} {low} {symbol}"
    return f"{low} {symbol}" if low == high else f"{low} to {high} {symbol}"


def written_text(value: Written, places: int) -> Both:
    """Give a written value as it was written, and in the other system.

    Parameters
    ----------
    value : Written
        The value.
    places : int
        Decimals its page shows.
    """
    other = counterpart(value.unit)
    if other is None:
        return Both(value.text)
    low, _, high = limits_in(
        other, value.low, value.nominal, value.high, places_in(other, value.unit, places)
    )
    return Both(value.text, range_text(low, high, other.symbol), system_of(value.unit))


def condition_text(name: str, at: Interval) -> Both:
    """Give a condition in the unit that pages ask it in, and in the other system."""
    known = CONDITIONS[name]
    unit = unit_named(known.unit)
    assert unit is not None
    other = unit_named(CONDITIONS_TO_US.get(name, "")) or counterpart(unit)
    return Both(_span(at, unit), "" if other is None else _span(at, other))


def written_condition(name: str, value: Written) -> Both:
    """Give a written condition as it was written, and in the other system."""
    other = counterpart(value.unit)
    if value.unit.symbol == CONDITIONS[name].unit and name in CONDITIONS_TO_US:
        other = unit_named(CONDITIONS_TO_US[name])
    if other is None:
        return Both(value.text)
    low, high = value.low, value.high
    if low is None or high is None:
        one = high if low is None else low
        assert one is not None
        word = say("value.at_most" if low is None else "value.at_least")
        return Both(value.text, f"{word} {_span(Interval.of(one), other)}", system_of(value.unit))
    return Both(value.text, _span(Interval(low, high), other), system_of(value.unit))


def _span(at: Interval, unit: Unit) -> str:
    base = base_unit(unit.quantity)
    low = _plain(convert(at.low, base, unit))
    if at.single:
        return f"{low} {unit.symbol}"
    return f"{low} to {_plain(convert(at.high, base, unit))} {unit.symbol}"


def _plain(value: float) -> str:
    """Give a condition with the digits a reader would say it with."""
    if float(value).is_integer():
        return figure(value, 0)
    text = figure(value, places_for(value, 3))
    return text.rstrip("0").rstrip(".") if "." in text else text
