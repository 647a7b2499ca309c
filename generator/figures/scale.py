"""Round ticks for an axis, room between labels, and what a series of numbers must be."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from math import ceil, floor, log10

from generator.figures.document import finite


def nice_ticks(low: float, high: float, most: int) -> list[float]:
    """Give round positions within a range: steps of 1, 2 or 5 times a power of ten.

    Parameters
    ----------
    low, high : float
        The range; low is below high.
    most : int
        Most positions wanted, at least 2.

    Returns
    -------
    list of float
        Ascending, all within the range.
    """
    raw = (high - low) / most
    power = 10.0 ** floor(log10(raw))
    step = next(power * factor for factor in (1, 2, 5, 10) if power * factor >= raw * 0.999999)
    first, last = ceil(low / step - 1e-9), floor(high / step + 1e-9)
    return [round(index * step, 12) for index in range(first, last + 1)]


def tick_text(value: float) -> str:
    """Give a tick's figure: no needless noughts, a real minus sign."""
    return f"{value:.10g}".replace("-", "−")


def ascending(name: str, values: Sequence[float], fewest: int = 2) -> None:
    """Raise ValueError unless values are finite, enough and strictly ascending."""
    finite(name, *values)
    if len(values) < fewest:
        raise ValueError(f"{name}: at least {fewest} values are needed")
    if any(later <= earlier for earlier, later in pairwise(values)):
        raise ValueError(f"{name}: the values must ascend")


def same_length(first: str, wanted: int, **others: Sequence[float]) -> None:
    """Raise ValueError unless every sequence is as long as the first and finite."""
    for name, values in others.items():
        if len(values) != wanted:
            raise ValueError(f"{name} has {len(values)} values, {first} has {wanted}")
        finite(name, *values)


def spread(places: Sequence[float], apart: float, low: float, high: float) -> list[float]:
    """Give places near the ones wanted, in the same order, no two closer than `apart`.

    Parameters
    ----------
    places : sequence of float
        Wanted places, ascending.
    apart : float
        Least distance.
    low, high : float
        Bounds, kept as long as there is room for all.

    Returns
    -------
    list of float
        The places to use.
    """
    given: list[float] = []
    for place in places:
        given.append(max(place, low, given[-1] + apart if given else low))
    for index in range(len(given) - 1, -1, -1):
        most = high if index == len(given) - 1 else given[index + 1] - apart
        given[index] = min(given[index], most)
    return given
