"""Figures to show: rounding never widens a limit, and a band never collapses."""

from __future__ import annotations

from decimal import (
    ROUND_CEILING,
    ROUND_FLOOR,
    ROUND_HALF_EVEN,
    Context,
    Decimal,
)

# Enough digits for any float with any count of decimals: 1.8e308 has 309 before the point.
_WIDE = Context(prec=400)
# A float carries between 15 and 17 decimal digits; what differs beyond the twelfth is dust that
# arithmetic left, and must not push a limit to the next figure.
_KEPT = Context(prec=12, rounding=ROUND_HALF_EVEN)
_MOST_PLACES = 330


def figure(value: float, places: int, rounding: str = ROUND_HALF_EVEN) -> str:
    """Give a number with a fixed count of decimals.

    Parameters
    ----------
    value : float
        The unrounded number; it must be finite.
    places : int
        Decimals to show, 0 or more.
    rounding : str
        A rounding mode of :mod:`decimal`.

    Returns
    -------
    str
        With a real minus sign; never "-0".

    Notes
    -----
    The value is taken to twelve significant digits first.
    """
    step = Decimal(1).scaleb(-places, context=_WIDE)
    rounded = _kept(value).quantize(step, rounding=rounding, context=_WIDE)
    if rounded == 0:
        rounded = abs(rounded)
    return f"{rounded:f}".replace("-", "−")


def places_for(value: float, significant: int = 3) -> int:
    """Give the decimals that show `significant` digits of a value (0 at least)."""
    if value == 0:
        return 0
    return max(0, significant - 1 - _kept(value).adjusted())


def show_range(low: float | None, high: float | None, places: int) -> tuple[str, str]:
    """Give the two limits of a band as text, rounded inwards.

    The low limit is rounded up and the high one down, so that a reading which passes the shown
    limits passes the true ones. Where that would make the band empty or a single figure, more
    digits are shown.

    Parameters
    ----------
    low, high : float or None
        Unrounded limits, `low` not above `high`; None leaves a side open and gives an empty text.
    places : int
        Decimals wanted.

    Returns
    -------
    tuple of str
        Low and high. Limits that agree to twelve significant digits give one figure twice.

    Raises
    ------
    ValueError
        If the limits are inverted.
    """
    if low is None or high is None:
        return (
            "" if low is None else figure(low, places, ROUND_CEILING),
            "" if high is None else figure(high, places, ROUND_FLOOR),
        )
    if _kept(low) == _kept(high):
        same = figure(low, places)
        return same, same
    if low > high:
        raise ValueError(f"{low} to {high} is not a band")
    # Two steps between the limits are enough for both to fall on different figures.
    enough = min(_MOST_PLACES, max(0, 1 - (_kept(high) - _kept(low)).adjusted()))
    for more in range(places, max(places, enough) + 1):
        shown_low, shown_high = figure(low, more, ROUND_CEILING), figure(high, more, ROUND_FLOOR)
        if _number(shown_low) < _number(shown_high):
            break
    return shown_low, shown_high


def _kept(value: float) -> Decimal:
    return _KEPT.create_decimal(repr(float(value)))


def _number(text: str) -> Decimal:
    return Decimal(text.replace("−", "-"))
