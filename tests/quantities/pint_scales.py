"""Pint's definitions of the closed list of units, which generator/quantities/scales.py is made of.

``python -m tests.quantities.pint_scales`` writes that file anew, after a unit has joined the list.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pint

from generator.quantities import units
from generator.quantities.units import UNITS, base_unit
from tests.demonstration import ROOT

FILE = ROOT / "generator" / "quantities" / "scales.py"

HEAD = '''\
"""What one of each unit is in the base unit of its quantity: factor and offset, as exact fractions.

Written from pint's definitions (NIST SP 811) by ``python -m tests.quantities.pint_scales``, and
held to them by a test: to load pint takes half as long as everything else that a command loads.
"""

SCALES: dict[str, tuple[str, str]] = {
'''


def scales() -> dict[str, tuple[str, str]]:
    """Give factor and offset of every unit, by its symbol, as pint has them."""
    registry: pint.UnitRegistry[Any] = pint.UnitRegistry(non_int_type=Fraction)
    found = {}
    for unit in UNITS:
        base = base_unit(unit.quantity).pint_name
        offset, one = (
            Fraction(registry.Quantity(Fraction(value), unit.pint_name).to(base).magnitude)
            for value in (0, 1)
        )
        found[unit.symbol] = (str(one - offset), str(offset))
    return found


def text() -> str:
    """Give the file."""
    rows = (f'    "{symbol}": ("{factor}", "{offset}"),\n' for symbol, (factor, offset)
            in scales().items())  # fmt: skip
    return f"{HEAD}{''.join(rows)}}}\n"


if __name__ == "__main__":
    FILE.write_text(text(), encoding="utf-8")
    print(f"{FILE}: {len(units.UNITS)} units")
