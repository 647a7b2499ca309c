"""What an expected value is made of."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from generator.quantities import Interval, Unit, base_unit, convert
from generator.records.kinds.things import Spec


@dataclass(frozen=True, slots=True)
class Condition:
    """A condition a reader can state: its quantity, its usual unit and how a page asks for it."""

    name: str
    quantity: str
    unit: str
    asks: str


CONDITIONS: dict[str, Condition] = {
    known.name: known
    for known in (
        Condition("temperature", "temperature", "°C", "temperature of the part itself"),
        Condition("engine_speed", "rotational speed", "rpm", "engine speed"),
        Condition("supply", "voltage", "V", "voltage at the supply pin"),
        Condition("gap", "length", "mm", "air gap"),
        Condition("current", "current", "A", "current in the circuit"),
        Condition("altitude", "length", "m", "height above the sea"),
        Condition("air_pressure", "pressure", "kPa", "air pressure at the place"),
        Condition("sea_level_pressure", "pressure", "hPa", "pressure of the weather report"),
        Condition("manifold_pressure", "pressure", "kPa", "absolute pressure in the manifold"),
        Condition("measured_pressure", "pressure", "kPa", "pressure at the sensor"),
        Condition("ambient", "temperature", "°C", "temperature of the air"),
        Condition("state_of_charge", "ratio", "%", "state of charge"),
        Condition("travel", "ratio", "%", "share of the travel"),
        Condition("air_ratio", "ratio", "%", "air over what the fuel needs"),
    )
}
"""Every condition a spec or a reader may name."""

Conditions = Mapping[str, Interval]
"""Condition names to intervals in base units."""


class BadSpec(ValueError):
    """A record no model can work from.

    Parameters
    ----------
    message, hint : str
        What is wrong, and the smallest mend.
    path : tuple
        The field of the spec it is about.
    """

    def __init__(self, message: str, hint: str, path: tuple[str | int, ...] = ("model",)) -> None:
        self.hint = hint
        self.path = path
        super().__init__(message)


@dataclass(frozen=True, slots=True)
class TrailLine:
    """One step of the working.

    Parameters
    ----------
    what : str
        What this line gives, in words.
    how : str
        The formula with its symbols, or where the figure comes from.
    figures : tuple of float
        The unrounded figures, in `unit`; empty for a line of words.
    unit : str
        Symbol of their unit.
    source : str
        The source record's id, ``common-practice``, or the reference of a formula.
    """

    what: str
    how: str
    figures: tuple[float, ...]
    unit: str
    source: str


@dataclass(frozen=True, slots=True)
class Limits:
    """What a model gives back: limits in the base unit and the working."""

    low: float | None
    nominal: float | None
    high: float | None
    trail: tuple[TrailLine, ...]


@dataclass(frozen=True, slots=True)
class Expectation:
    """The reading to expect.

    Parameters
    ----------
    spec : Spec
        The record it comes from.
    low, nominal, high : float or None
        Unrounded, in the base unit of the quantity; an open side has None.
    unit : Unit
        The unit to show, as the author wrote it.
    conditions : mapping
        The conditions it holds for, stated or assumed.
    assumed : tuple of str
        Names of the conditions nobody stated, so that their usual range was taken.
    trail : tuple of TrailLine
        The working, in order.
    """

    spec: Spec
    low: float | None
    nominal: float | None
    high: float | None
    unit: Unit
    conditions: Conditions
    assumed: tuple[str, ...]
    trail: tuple[TrailLine, ...]

    def shown(self, value: float | None) -> float | None:
        """Convert one of the limits to the unit to show."""
        if value is None:
            return None
        return convert(value, base_unit(self.unit.quantity), self.unit)
