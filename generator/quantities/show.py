"""Figures to show: rounding never widens a limit, and a band never collapses."""

from __future__ import annotations

from decimal import ROUND_CEILING, ROUND_FLOOR, ROUND_HALF_EVEN, Decimal


def figure(value: float, places: int, rounding: str = ROUND_HALF_EVEN) -> str:
    """Give a number with a fixed count of decimals.

    Parameters
    ----------
    value : float
        The unrounded number.
    places : int
        Decimals to show, from 0 to 9.
    rounding : str
        A rounding mode of :mod:`decimal`.

    Returns
    -------
    str
        With a real minus sign; never "-0".
    """
    step = Decimal(1).scaleb(-places)
    rounded = Decimal(repr(float(value))).quantize(step, rounding=rounding)
    if rounded == 0:
        rounded = abs(rounded)
    return f"{rounded:f}".replace("-", "−")


def places_for(value: float, significant: int = 3) -> int:
    """Give the decimals that show `significant` digits of a value (0 at least)."""
    if value == 0:
        return 0
    magnitude = Decimal(repr(abs(float(value)))).adjusted()
    return max(0, significant - 1 - magnitude)


def show_range(low: float | None, high: float | None, places: int) -> tuple[str, str]:
    """Give the two limits of a band as text, rounded inwards.

    The low limit is rounded up and the high one down, so that a reading which passes the shown
    limits passes the true ones. Where that would make the band empty or a single figure, more
    digits are shown.

    Parameters
    ----------
    low, high : float or None
        Unrounded limits; None leaves a side open and gives an empty text.
    places : int
        Decimals wanted.

    Returns
    -------
    tuple of str
        Low and high.
    """
    for more in range(places, places + 7):
        shown_low = "" if low is None else figure(low, more, ROUND_CEILING)
        shown_high = "" if high is None else figure(high, more, ROUND_FLOOR)
        if low is None or high is None or low == high:
            break
        if _number(shown_low) < _number(shown_high):
            break
    if low is not None and low == high:
        same = figure(low, places)
        return same, same
    return shown_low, shown_high


def _number(text: str) -> Decimal:
    return Decimal(text.replace("−", "-"))
