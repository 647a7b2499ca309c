"""The grammar of written values as one regular expression, for editors.

It never refuses a value that :func:`generator.quantities.parse` takes. It cannot compare two
figures, so a range that runs backwards and a value no part can have pass it.
"""

from __future__ import annotations

import re
from functools import cache

from generator.quantities import UNITS
from generator.quantities.written import LONGEST

_UNSIGNED = r"[0-9]{1,12}(\.[0-9]{1,12})?"
_NUMBER = rf"[-−]?{_UNSIGNED}"
_PERCENT = r"[0-9]{1,3}(\.[0-9]{1,6})?\s*%"
_GAP = r"\s+"

# A percentage of one of these can be read in two ways, so the grammar has no such form.
_NO_PERCENT = frozenset({"temperature", "ratio"})

LONGEST_VALUE = LONGEST
"""Characters of the longest written value."""


@cache
def pattern(quantity: str | None = None, *, spread: bool = True) -> str:
    """Give the expression that a written value fits as a whole.

    Parameters
    ----------
    quantity : str, optional
        The quantity it must have; any without it.
    spread : bool
        Whether it may be a range, have a spread or a limit on one side only.

    Returns
    -------
    str
        In the part of the syntax that ECMA-262 and Python share.
    """
    unit = _units(quantity)
    forms = [rf"{_NUMBER}\s*{unit}"]
    if spread:
        forms += [
            rf"{_NUMBER}{_GAP}(to{_GAP}{_NUMBER}|±{_GAP}{_UNSIGNED}){_GAP}{unit}",
            rf"at{_GAP}(least|most){_GAP}{_NUMBER}{_GAP}{unit}",
        ]
        if quantity not in _NO_PERCENT:
            forms.append(rf"{_NUMBER}{_GAP}{_units(quantity, _NO_PERCENT)}{_GAP}±{_GAP}{_PERCENT}")
    return rf"^\s*({'|'.join(forms)})\s*$"


def _units(quantity: str | None, leave_out: frozenset[str] = frozenset()) -> str:
    spellings = {
        spelling
        for unit in UNITS
        for spelling in (unit.symbol, *unit.spellings)
        if quantity in (None, unit.quantity) and unit.quantity not in leave_out
        # The grammar takes a digit for part of the number.
        and not spelling[0].isdigit()
    }
    # The longest first, so that mm² is not taken for mm.
    ordered = sorted(spellings, key=lambda spelling: (-len(spelling), spelling))
    return f"({'|'.join(map(_literally, ordered))})"


def _literally(spelling: str) -> str:
    """Escape what has a meaning, and nothing else: ECMA-262 forbids needless escapes."""
    return re.sub(r"[\\^$.*+?()\[\]{}|]", r"\\\g<0>", spelling).replace(" ", _GAP)
