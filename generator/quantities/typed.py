"""A reading as a person types it off a meter: looser than a record, but never a guess.

The rule, which the page's script follows to the letter:

1. Blanks at both ends go. `OL`, `O.L`, `.OL`, `0L`, `0.L` and `∞`, in any case, with a sign or a
   unit or without, say that the reading is beyond the range.
2. Else it is a sign or none, a number, and a unit or none; blanks may stand between the three.
3. A number has at most twelve digits on each side of its mark; `.5` and `5.` are numbers.
4. A point is the decimal mark. A comma is one too, except where it may as well mark thousands:
   after one to three digits that do not begin with 0, and before exactly three. `1,2` is 1.2 and
   `0,850` is 0.85, but `1,200` is refused. Two marks, and a blank inside the digits, are refused.
5. No unit: the one the page shows. Else one of :func:`suffixes`, blanks taken out, first as its
   first letter is written and the rest in small letters, then all in small letters. Milli and
   mega are told apart by that first letter and by nothing else.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from generator.quantities.units import (
    NEVER_NEGATIVE,
    NOT_BELOW,
    UNITS,
    Unit,
    base_unit,
    convert,
    unit_named,
)
from generator.quantities.written import LONGEST, WrittenError

OVER_RANGE = ("ol", "o.l", ".ol", "0l", "0.l", ".0l", "o.l.", "∞")
"""What meters show, and people type, where a reading is beyond the range; in small letters."""

SHORT: dict[str, dict[str, str]] = {
    "resistance": {"k": "kohm", "M": "Mohm", "meg": "Mohm"},
    "voltage": {"k": "kV", "m": "mV"},
    "current": {"m": "mA"},
    "frequency": {"k": "kHz"},
    "inductance": {"m": "mH"},
}
"""What a lone prefix stands for. A lone m for milliohm is left out: it is as likely a mega."""

WORDS: dict[str, tuple[str, ...]] = {
    "ohm": ("ohms",), "kohm": ("kohms",), "Mohm": ("Mohms", "megohm", "megohms"),
    "mohm": ("mohms",), "V": ("volt", "volts"), "A": ("amp", "amps"), "°C": ("deg c",),
    "°F": ("deg f",), "rpm": ("r/min",),
}  # fmt: skip
"""Spellings that no record may use."""

_SIGN = r"(?P<sign>[-+−–]?)"
_MARKED = re.compile(
    rf"{_SIGN}\s*(?P<whole>[0-9]*)(?:(?P<mark>[.,])(?P<part>[0-9]*))?\s*(?P<unit>[^0-9\s.,].*)?"
)
_THOUSANDS = re.compile(r"[1-9][0-9]{0,2},[0-9]{3}")
_SPREAD = re.compile(r"±|\+/?-|[0-9]\s*(?:to|[-–—…])\s*[0-9]|^[<>≤≥~≈]")


@dataclass(frozen=True, slots=True)
class Typed:
    """What somebody typed.

    Parameters
    ----------
    value : float or None
        In the base unit of the quantity; None where the meter showed that it is over its range.
    unit : Unit
        The unit it was typed in.
    over_range : bool
        Whether the meter showed no figure.
    """

    value: float | None
    unit: Unit
    over_range: bool = False


def read_typed(text: str, unit: Unit) -> Typed:
    """Read `850`, `0.85k`, `1,2 kohm`, `-12 mV` or `OL`.

    Parameters
    ----------
    text : str
        As it was typed.
    unit : Unit
        The unit the page shows; a bare number is in it.

    Returns
    -------
    Typed
        The figure in the base unit of the unit's quantity.

    Raises
    ------
    WrittenError
        Its `fault` is ``form``, ``comma``, ``unit``, ``quantity`` or ``impossible``.

    Notes
    -----
    The rule is in the text of the module.
    """
    tidy = text.strip()
    if len(tidy) > LONGEST:
        raise WrittenError("form", "this is too long for a reading", "write one figure and a unit")
    if _over_range(tidy, unit):
        return Typed(None, unit, over_range=True)
    match = _MARKED.fullmatch(tidy)
    if match is None or not (match["whole"] or match["part"]):
        raise _why_not(tidy)
    whole, mark, part = match["whole"], match["mark"] or "", match["part"] or ""
    if _SPREAD.search(tidy) or max(len(whole), len(part)) > 12:
        raise _why_not(tidy)
    if mark == "," and _THOUSANDS.fullmatch(f"{whole},{part}"):
        raise WrittenError(
            "comma", f"{whole},{part} may be {whole}{part} or {whole}.{part}",
            f"write {whole}{part} or {whole}.{part}",
        )  # fmt: skip
    taken = unit if match["unit"] is None else _unit(match["unit"], unit)
    number = float(f"{whole or '0'}.{part or '0'}")
    value = convert(
        -number if match["sign"] in ("-", "−", "–") else number, taken, base_unit(unit.quantity)
    )
    least = _least(unit.quantity)
    if least is not None and value < least:
        raise WrittenError(
            "impossible", f"{tidy}: no {unit.quantity} can be that low",
            "check the sign, the unit and the leads",
        )  # fmt: skip
    return Typed(value, taken)


@cache
def suffixes(quantity: str) -> Mapping[str, Unit]:
    """Give every spelling of a unit that a reading of a quantity may end in.

    Returns
    -------
    mapping of str to Unit
        Keys without blanks and in small letters, but for a first letter that tells milli from
        mega: mohm and Mohm, mV, MPa.
    """
    units = [unit for unit in UNITS if unit.quantity == quantity]
    symbols = {unit.symbol for unit in units}
    found: dict[str, Unit] = {}
    for unit in units:
        prefixed = unit.symbol[0] in "mM" and unit.symbol[1:] in symbols
        for spelling in (unit.symbol, *unit.spellings, *WORDS.get(unit.symbol, ())):
            bare = "".join(spelling.split())
            first = bare[0] if prefixed else bare[0].lower()
            found[first + bare[1:].lower()] = unit
    for letter, symbol in SHORT.get(quantity, {}).items():
        meant = unit_named(symbol)
        assert meant is not None
        found[letter] = meant
    return found


def as_data(quantity: str) -> dict[str, object]:
    """Give what a page's script needs to read a quantity by the same rule, as plain data.

    Returns
    -------
    dict
        `over_range`: the words; `suffixes`: each spelling with the factor and the offset that
        turn a typed figure into the base unit; `told_apart`: spellings, in small letters, whose
        first letter must be as it is written; `least`: least possible figure, or None.
    """
    base = base_unit(quantity)

    def line(unit: Unit) -> list[float]:
        offset = convert(0.0, unit, base)
        return [convert(1.0, unit, base) - offset, offset]

    return {
        "over_range": list(OVER_RANGE),
        "suffixes": {key: line(unit) for key, unit in suffixes(quantity).items()},
        "told_apart": sorted(_told_apart(quantity)),
        "least": _least(quantity),
    }


def _least(quantity: str) -> float | None:
    return NOT_BELOW.get(quantity, 0.0 if quantity in NEVER_NEGATIVE else None)


def _find(written: str, quantity: str) -> Unit | None:
    bare = "".join(written.split())
    known = suffixes(quantity)
    found = known.get(bare[:1] + bare[1:].lower())
    if found is not None:
        return found
    # A capital that tells milli from mega must not be lost by the way.
    small = bare.lower()
    return None if small[:1] == "m" and small in _told_apart(quantity) else known.get(small)


@cache
def _told_apart(quantity: str) -> frozenset[str]:
    """Give the spellings, in small letters, whose first letter has to be written as it is."""
    known = suffixes(quantity)
    symbols = {unit.symbol for unit in known.values()}
    return frozenset(
        key.lower() for key, unit in known.items()
        if key[0] in "mM" and unit.symbol[0] in "mM" and unit.symbol[1:] in symbols
    )  # fmt: skip


def _unit(written: str, shown: Unit) -> Unit:
    found = _find(written, shown.quantity)
    if found is not None:
        return found
    bare = "".join(written.split())
    if bare.lower() in _told_apart(shown.quantity) or (bare == "m" and shown.symbol != "m"):
        raise WrittenError(
            "unit", f"`{bare}` may be milli or mega", "write the small m or the capital M in full"
        )
    other = next((u for u in UNITS if _find(bare, u.quantity) is u), None)
    if other is not None and all(bare not in short for short in SHORT.values()):
        raise WrittenError(
            "quantity",
            f"{other.symbol} is a unit of {other.quantity}, but {shown.quantity} is needed here",
            f"write it in {shown.symbol}",
        )
    raise WrittenError("unit", f"the unit `{bare}` is not known", f"write it in {shown.symbol}")


def _over_range(tidy: str, unit: Unit) -> bool:
    small = "".join(tidy.split()).lower().lstrip("-−–+")
    for word in OVER_RANGE:
        if small == word:
            return True
        # The unit's own case is lost here, and nothing hangs on it.
        if small.startswith(word) and any(
            small[len(word) :] == key.lower() for key in suffixes(unit.quantity)
        ):
            return True
    return False


def _why_not(tidy: str) -> WrittenError:
    if _SPREAD.search(tidy):
        return WrittenError("form", f"{tidy} is not one reading", "write one figure, or OL")
    if re.search(r"[0-9][.,][0-9]*[.,]", tidy):
        return WrittenError("form", f"{tidy} has two marks", "write the digits and one mark")
    if re.search(r"[0-9]\s+[0-9]", tidy):
        return WrittenError("form", f"{tidy} has a blank in it", "write the digits together")
    return WrittenError("form", f"{tidy} is no reading", "write one figure, or OL")
