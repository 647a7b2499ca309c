"""The grammar of a written value.

    860 ohm            a value, with no spread of its own
    860 ohm ± 10 %     a value and a spread in percent of it
    10 ± 1 N·m         a value and a spread in its unit
    0.2 to 2 V         a range
    at least 9.6 V     one-sided limits
    at most 0.3 V

A number has a decimal point or none, no exponent, no thousands mark and at most twelve digits.
What was written is kept and shown as it was written.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from decimal import Decimal
from difflib import get_close_matches

from generator.quantities import units
from generator.quantities.units import Unit, convert

LONGEST = 60
"""Characters of the longest value anybody needs; a longer one is a sentence or an attack."""

# Plain digits only: \d would take the digits of every script.
_UNSIGNED = r"[0-9]{1,12}(?:\.[0-9]{1,12})?"
_NUMBER = rf"[-−]?{_UNSIGNED}"
_FORMS = (
    ("range", re.compile(rf"({_NUMBER}) to ({_NUMBER}) ([^\d\s].*)")),
    ("spread", re.compile(rf"({_NUMBER}) ± ({_UNSIGNED}) ([^\d\s].*)")),
    ("percent", re.compile(rf"({_NUMBER}) ([^\d\s±][^±]*) ± ([0-9]{{1,3}}(?:\.[0-9]{{1,6}})?) ?%")),
    ("at least", re.compile(rf"at least ({_NUMBER}) ([^\d\s].*)")),
    ("at most", re.compile(rf"at most ({_NUMBER}) ([^\d\s].*)")),
    ("exact", re.compile(rf"({_NUMBER}) ?([^\d\s±].*)")),
)


_UNIT_LIKE = re.compile(r"[^\d*^+±,.]+[2²]?")


class WrittenError(ValueError):
    """A value that is not of the grammar, with its mend.

    Attributes
    ----------
    fault : str
        ``form``, ``unit``, ``quantity``, ``limits`` or ``impossible``.
    hint : str
        The smallest mend.
    """

    def __init__(self, fault: str, message: str, hint: str) -> None:
        self.fault = fault
        self.hint = hint
        super().__init__(message)


@dataclass(frozen=True, slots=True)
class Written:
    """A written value as an interval in the base unit of its quantity.

    Parameters
    ----------
    text : str
        As the author wrote it.
    form : str
        ``exact``, ``range``, ``spread``, ``percent``, ``at least`` or ``at most``.
    low, nominal, high : float or None
        In the base unit; an open side has None, a range has no nominal.
    unit : Unit
        The unit it was written in.
    """

    text: str
    form: str
    low: float | None
    nominal: float | None
    high: float | None
    unit: Unit

    @property
    def quantity(self) -> str:
        """What it measures."""
        return self.unit.quantity

    @property
    def only(self) -> float:
        """The single value, in the base unit; for fields that take no spread.

        Raises
        ------
        ValueError
            If the value is a range or one-sided.
        """
        if self.form != "exact" or self.nominal is None:
            raise ValueError(f"{self.text} is not a single value")
        return self.nominal

    def in_unit(self, value: float) -> float:
        """Convert a figure in the base unit back to the unit it was written in."""
        return convert(value, units.base_unit(self.quantity), self.unit)


def parse(text: str, quantity: str | None = None) -> Written:
    """Read a written value.

    Parameters
    ----------
    text : str
        One of the forms in the module's text.
    quantity : str, optional
        The quantity it must have.

    Returns
    -------
    Written
        The interval in the base unit of its quantity.

    Raises
    ------
    WrittenError
        If it is not of the grammar, its unit is not in the closed list or of another quantity,
        its limits are inverted, or no vehicle can have the value.
    """
    if len(text) > LONGEST:
        raise WrittenError("form", "this is too long for a value", "write one value and its unit")
    tidy = " ".join(text.split())
    for form, pattern in _FORMS:
        match = pattern.fullmatch(tidy)
        if match:
            return _build(text, form, match.groups(), quantity)
    raise _why_not(tidy)


def _build(text: str, form: str, parts: tuple[str, ...], quantity: str | None) -> Written:
    unit_text = parts[1] if form in ("percent", "at least", "at most", "exact") else parts[2]
    if not _UNIT_LIKE.fullmatch(unit_text) or re.match(r"[eE][-+]?\d", unit_text):
        raise _why_not(" ".join(text.split()))
    unit = _unit(unit_text, quantity)
    base = units.base_unit(unit.quantity)

    def to_base(number: Decimal) -> float:
        return convert(float(number), unit, base)

    first = _number(parts[0])
    low: float | None
    high: float | None
    nominal: float | None = None
    if form == "range":
        low, high = to_base(first), to_base(_number(parts[1]))
        if first > _number(parts[1]):
            raise WrittenError(
                "limits", f"the range {text} runs backwards", "write the smaller value first"
            )
    elif form == "spread":
        spread = _number(parts[1])
        if unit.symbol == "%" and first > 100:
            raise WrittenError(
                "form", f"{text} has a percentage and no unit", "add it, as in 860 ohm ± 10 %"
            )
        low, nominal, high = to_base(first - spread), to_base(first), to_base(first + spread)
    elif form == "percent":
        if unit.quantity in ("temperature", "ratio"):
            raise WrittenError(
                "form",
                f"a percentage of a {unit.quantity} can be read in two ways",
                f"write the spread in its unit, as in 20 ± 5 {unit.symbol}",
            )
        share = abs(first) * _number(parts[2]) / 100
        low, nominal, high = to_base(first - share), to_base(first), to_base(first + share)
    elif form == "at least":
        low, high = to_base(first), None
    elif form == "at most":
        low, high = None, to_base(first)
    else:
        low = nominal = high = to_base(first)
    _refuse_impossible(text, unit.quantity, low, high)
    return Written(text, form, low, nominal, high, unit)


def _number(text: str) -> Decimal:
    """Give a figure exactly: 10.1 ± 0.2 ends at 10.3, not a hair below it."""
    return Decimal(text.replace("−", "-"))


def _unit(text: str, quantity: str | None) -> Unit:
    unit = units.unit_named(text)
    if unit is None:
        near = units.meant_by(text) or get_close_matches(text, units.spellings(), 1, cutoff=0.5)
        hint = "use a unit of the list in the guide"
        if near:
            hint = f"did you mean {' or '.join(near)}?"
        raise WrittenError("unit", f"the unit `{text}` is not known", hint)
    if quantity is not None and unit.quantity != quantity:
        fitting = ", ".join(known.symbol for known in units.UNITS if known.quantity == quantity)
        raise WrittenError(
            "quantity",
            f"{unit.symbol} is a unit of {unit.quantity}, but {quantity} is needed here",
            f"use one of {fitting}",
        )
    return unit


def _refuse_impossible(text: str, quantity: str, low: float | None, high: float | None) -> None:
    least = units.NOT_BELOW.get(quantity, 0.0 if quantity in units.NEVER_NEGATIVE else None)
    lowest = low if low is not None else high
    if least is not None and lowest is not None and lowest < least:
        raise WrittenError(
            "impossible", f"{text}: no {quantity} can be that low", "check the sign and the unit"
        )


def _why_not(tidy: str) -> WrittenError:
    """Tell the commonest slips apart, so that the mend is the right one."""
    if re.fullmatch(rf"{_NUMBER}(?: (?:to|±) {_NUMBER})?|at (?:least|most) {_NUMBER}", tidy):
        return WrittenError("unit", f"{tidy} has no unit", "add its unit, as in 860 ohm")
    for pattern, says, hint in _SLIPS:
        if re.search(pattern, tidy, re.IGNORECASE):
            return WrittenError("form", f"`{tidy}` {says}", hint)
    return WrittenError("form", f"`{tidy}` is not a value", _EXAMPLES)


_EXAMPLES = "write 860 ohm ± 10 %, 10 ± 1 N·m, 0.2 to 2 V, at least 9.6 V or at most 0.3 V"
_SLIPS = (
    (r"\d,\d", "has a comma in a number", "write a decimal point, and no mark for thousands"),
    (r"\d \d{3}\b", "has a space in a number", "write the digits without a space"),
    (r"\d[eE][-+]?\d", "has an exponent", "write the number out"),
    (r"\d ?\*\*? ?\d|\d ?\^ ?\d", "has a sum in it", "write the number out"),
    (r"\+ ?/? ?-|\+ ?/? ?−", "spells the spread +/-", "write ±"),
    (r"^(>|≥|=>|min\b|over\b|above\b|more than)", "is a lower limit", "write at least 9.6 V"),
    (r"^(<|≤|=<|max\b|under\b|below\b|less than|up to)", "is an upper limit",
     "write at most 0.3 V"),
    (r"^(~|≈|about\b|approx|around\b|circa\b)", "does not say how far off it may be",
     "write a range or a spread, as in 0.2 to 2 V or 860 ohm ± 10 %"),
    (r"\d ?[-–—…] ?\d|\d ?\.\.+ ?\d", "is not a value", "write a range as 0.2 to 2 V"),
    (r"\d ?[^\d\s.−-]+ to [-−]?\d", "has a unit before the word to",
     "write the unit once, at the end, as in 0.2 to 2 V"),
    (r"\d ?[^\d\s.−-]+ ± [\d.]+( ?[^\d\s%].*)?$", "has a unit before the sign ±",
     "write the unit once, at the end, as in 10 ± 1 N·m"),
    (r"\d[kKmMµ]\d|\d ?R\d", "has a letter for a decimal point", "write 4.7 kohm"),
    (r"^[-+−]?\.\d|\d\.(\D|$)", "has a loose decimal point", "write 0.5 V"),
    (r"^\+\d", "has a plus sign", "leave the plus out"),
)  # fmt: skip
