"""Written values: text a person writes, intervals a machine trusts, figures a reader sees."""

from generator.quantities.interval import Interval
from generator.quantities.show import figure, show_range
from generator.quantities.units import QUANTITIES, UNITS, Unit, base_unit, convert, unit_named
from generator.quantities.written import Written, WrittenError, parse

__all__ = [
    "QUANTITIES",
    "UNITS",
    "Interval",
    "Unit",
    "Written",
    "WrittenError",
    "base_unit",
    "convert",
    "figure",
    "parse",
    "show_range",
    "unit_named",
]
