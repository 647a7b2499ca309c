"""The closed list of units a record may use; their definitions are pint's, kept in scales.py.

Each quantity has one *base* unit in which the engines work. It is the SI unit, except where the
trade and the physics rooms name another: temperature in °C and engine speed in rev/min.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction
from functools import cache

from generator.quantities.scales import SCALES


@dataclass(frozen=True, slots=True)
class Unit:
    """One unit: how it is shown, what it measures, pint's name for it and other spellings."""

    symbol: str
    quantity: str
    pint_name: str
    spellings: tuple[str, ...] = ()


UNITS: tuple[Unit, ...] = (
    Unit("mohm", "resistance", "milliohm", ("mΩ",)),
    Unit("ohm", "resistance", "ohm", ("Ω", "Ω")),
    Unit("kohm", "resistance", "kiloohm", ("kΩ", "kΩ")),
    Unit("Mohm", "resistance", "megaohm", ("MΩ", "MΩ")),
    Unit("mV", "voltage", "millivolt"),
    Unit("V", "voltage", "volt"),
    Unit("kV", "voltage", "kilovolt"),
    Unit("mA", "current", "milliampere"),
    Unit("A", "current", "ampere"),
    Unit("Hz", "frequency", "hertz"),
    Unit("kHz", "frequency", "kilohertz"),
    Unit("rpm", "rotational speed", "revolution / minute", ("rev/min",)),
    Unit("°C", "temperature", "degree_Celsius", ("degC", "C", "℃")),
    Unit("°F", "temperature", "degree_Fahrenheit", ("degF", "F", "℉")),
    Unit("µm", "length", "micrometer", ("um", "μm")),
    Unit("mm", "length", "millimeter"),
    Unit("m", "length", "meter"),
    Unit("in", "length", "inch"),
    Unit("ft", "length", "foot"),
    Unit("mm²", "area", "millimeter ** 2", ("mm2",)),
    Unit("N·m", "torque", "newton * meter", ("Nm", "N m", "N⋅m")),
    Unit("lbf·ft", "torque", "pound_force * foot", ("lbf ft", "lb-ft", "lbf⋅ft")),
    Unit("lbf·in", "torque", "pound_force * inch", ("lbf in", "lb-in")),
    Unit("N", "force", "newton"),
    Unit("kN", "force", "kilonewton"),
    Unit("Pa", "pressure", "pascal"),
    Unit("hPa", "pressure", "hectopascal", ("mbar",)),
    Unit("kPa", "pressure", "kilopascal"),
    Unit("MPa", "pressure", "megapascal"),
    Unit("bar", "pressure", "bar"),
    Unit("psi", "pressure", "pound_force_per_square_inch"),
    Unit("inHg", "pressure", "inch_Hg"),
    Unit("µs", "time", "microsecond", ("us", "μs")),
    Unit("ms", "time", "millisecond"),
    Unit("s", "time", "second"),
    Unit("min", "time", "minute"),
    Unit("h", "time", "hour"),
    Unit("days", "time", "day", ("day", "d")),
    Unit("°", "angle", "degree", ("deg",)),
    Unit("%", "ratio", "percent"),
    Unit("Ah", "charge", "ampere * hour", ("A·h",)),
    Unit("mH", "inductance", "millihenry"),
    Unit("H", "inductance", "henry"),
    Unit("W", "power", "watt"),
    Unit("kW", "power", "kilowatt"),
    Unit("mL", "volume", "milliliter", ("ml",)),
    Unit("L", "volume", "liter", ("l",)),
    Unit("g", "mass", "gram"),
    Unit("kg", "mass", "kilogram"),
    Unit("km/h", "road speed", "kilometer / hour"),
    Unit("mph", "road speed", "mile / hour"),
)

BASE: dict[str, str] = {
    "resistance": "ohm",
    "voltage": "V",
    "current": "A",
    "frequency": "Hz",
    "rotational speed": "rpm",
    "temperature": "°C",
    "length": "m",
    "area": "mm²",
    "torque": "N·m",
    "force": "N",
    "pressure": "Pa",
    "time": "s",
    "angle": "°",
    "ratio": "%",
    "charge": "Ah",
    "inductance": "H",
    "power": "W",
    "volume": "L",
    "mass": "kg",
    "road speed": "km/h",
}
"""The unit in which the engines hold each quantity."""

QUANTITIES: tuple[str, ...] = tuple(BASE)

_BY_SPELLING: dict[str, Unit] = {
    spelling: unit for unit in UNITS for spelling in (unit.symbol, *unit.spellings)
}

NOT_BELOW: dict[str, float] = {"temperature": -273.15}
"""Least possible value of a quantity in its base unit, where it is not zero or unbounded."""

NEVER_NEGATIVE: frozenset[str] = frozenset(
    {
        "resistance", "frequency", "rotational speed", "length", "area", "time", "charge",
        "inductance", "volume", "mass",
    }
)  # fmt: skip
"""Quantities that cannot be negative, whatever the record says."""


def unit_named(text: str) -> Unit | None:
    """Give the unit of a spelling, or None where the closed list has none."""
    return _BY_SPELLING.get(text.strip())


def spellings() -> tuple[str, ...]:
    """Give every spelling the closed list knows."""
    return tuple(_BY_SPELLING)


def meant_by(text: str) -> list[str]:
    """Give the symbols that a spelling outside the closed list stands for: Volts, KOHM."""
    word = text.lower().replace(" ", "")
    names = {word, word.removesuffix("s"), word.removesuffix("es"), word.replace("metre", "meter")}
    return [
        unit.symbol
        for unit in UNITS
        if names & {unit.symbol.lower(), unit.pint_name, *(s.lower() for s in unit.spellings)}
    ]


def base_unit(quantity: str) -> Unit:
    """Give the unit in which the engines hold a quantity."""
    return _BY_SPELLING[BASE[quantity]]


@cache
def _scale(symbol: str) -> tuple[Fraction, Fraction]:
    """Give factor and offset of the linear map from a unit to its base unit."""
    factor, offset = SCALES[symbol]
    return Fraction(factor), Fraction(offset)


def convert(value: float, source: Unit, target: Unit) -> float:
    """Convert a value between two units of one quantity.

    Parameters
    ----------
    value : float
        Value in `source`; an infinite one stays infinite.
    source, target : Unit
        Units of the same quantity.

    Returns
    -------
    float
        Value in `target`; definitions are pint's (NIST SP 811).

    Raises
    ------
    ValueError
        If the units measure different quantities.

    Notes
    -----
    The shortest decimal figure of `value` is converted by exact fractions and rounded once, so
    that 0.7 mm is 0.0007 m and comes back as 0.7 mm: binary dust would push a limit that is
    rounded inwards to the next figure.
    """
    if source.quantity != target.quantity:
        raise ValueError(f"{source.symbol} is {source.quantity}, {target.symbol} is not")
    if source is target or not math.isfinite(value):
        return value
    factor, offset = _scale(source.symbol)
    target_factor, target_offset = _scale(target.symbol)
    in_base = Fraction(repr(float(value))) * factor + offset
    return float((in_base - target_offset) / target_factor)
