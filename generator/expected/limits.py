"""Limits as curves that a page can interpolate: the browser calculates from these alone.

A spec's limits are computed at the knots of a grid over its conditions, as fine as the display
needs, and joined by straight lines. How far the lines may lie from the model is measured between
the knots and stated. The data, all figures in base units::

    {
      "schema": 1,
      "spec": "inductive-winding",        the spec's id
      "standing": "vehicle_value",        or "plausibility_band"
      "quantity": "resistance",           what a typed reading must measure
      "places": 0,                        decimals to show, in "unit"
      "unit": {"symbol": "ohm", "factor": 1.0, "offset": 0.0},    shown = base·factor + offset
      "axes": [                           none, one or more conditions, in this order
        {
          "name": "temperature",
          "asks": "temperature of the part itself",               how the page asks for it
          "unit": {"symbol": "°C", "factor": 1.0, "offset": 0.0},
          "usual": [-20.0, 100.0],        taken where nobody states it; nothing holds beyond
          "knots": [-20.0, …, 100.0]      rising; the first and last are those of "usual"
        }
      ],
      "low": [652.9, …],                  one figure a grid point, the last axis fastest; null for
      "nominal": [725.4, …],              a side that is open, or a nominal that is not known
      "high": [797.9, …],
      "max_error": 0.01                   no line lies farther from the model than this
    }

No axis: one figure a side. Two axes, as supply and travel, make a grid and are read with the
shares of both; none is fixed. What a spec follows but never asks for, as the weather's pressure,
is in the limits over its usual range. A model that jumps has no such data: its page keeps to its
table.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache
from itertools import pairwise, product
from typing import Any

from generator.expected.engine import expect, needs
from generator.expected.models import MODELS
from generator.expected.result import CONDITIONS, Expectation
from generator.quantities import Interval, Unit, base_unit, convert, unit_named
from generator.records.kinds.things import Spec
from generator.records.knowledge_base import KnowledgeBase

SHARE_OF_A_DIGIT = 0.25
"""How far a line may lie from the model, as a share of the last digit shown."""

MOST_KNOTS = 1500
"""Knots of one spec, over all its conditions: past this the stated error grows instead."""

# The error is measured at this many places between two knots; what lies between those is covered
# by the margin.
PLACES_BETWEEN = 3
MARGIN = 1.5

SIDES = ("low", "nominal", "high")
Point = tuple[float, ...]


class _Model:
    """The limits of a spec at points of its conditions, each asked for once."""

    def __init__(self, kb: KnowledgeBase, spec: Spec, names: Sequence[str]) -> None:
        self.names = names
        self.at = cache(lambda point: self._at(kb, spec, point))

    def _at(self, kb: KnowledgeBase, spec: Spec, point: Point) -> Expectation:
        given = {n: Interval.of(x) for n, x in zip(self.names, point, strict=True)}
        return expect(kb, spec, given)


def curves(kb: KnowledgeBase, spec: Spec) -> dict[str, Any] | None:
    """Give a spec's limits as plain data to interpolate.

    Parameters
    ----------
    kb : KnowledgeBase
        The manual, checked.
    spec : Spec
        A spec without findings.

    Returns
    -------
    dict or None
        As the text of the module says. None for a model that jumps: a line across the jump would
        be a figure that nobody can vouch for.
    """
    if MODELS[spec.model.name].jumps:
        return None
    usual = needs(kb, spec)
    names = list(usual)
    model = _Model(kb, spec, names)
    breaks = MODELS[spec.model.name].breaks(spec)
    knots = [sorted({span.low, span.high, *breaks.get(n, ())}) for n, span in usual.items()]
    first = model.at(tuple(axis[0] for axis in knots))
    allowed = SHARE_OF_A_DIGIT * _digit(first, spec)
    while _size(knots) < MOST_KNOTS:
        worse = [_split(model, knots, axis, allowed) for axis in range(len(knots))]
        if not any(worse):
            break
        knots = [sorted({*axis, *more}) for axis, more in zip(knots, worse, strict=True)]
    grid = [model.at(point) for point in product(*knots)]
    sides = {
        side: None if getattr(first, side) is None else [getattr(e, side) for e in grid]
        for side in SIDES
    }
    data: dict[str, Any] = {
        "schema": 1,
        "spec": spec.id,
        "standing": spec.standing,
        "quantity": first.unit.quantity,
        "places": spec.places,
        "unit": _unit(first.unit),
        "axes": [
            {
                "name": name,
                "asks": CONDITIONS[name].asks,
                "unit": _unit(_named(CONDITIONS[name].unit)),
                "usual": [axis[0], axis[-1]],
                "knots": axis,
            }
            for name, axis in zip(names, knots, strict=True)
        ],
        **sides,
    }
    data["max_error"] = _error(model, knots, data)
    return data


def interpolate(data: Mapping[str, Any], side: str, at: Sequence[float]) -> float | None:
    """Read one side of :func:`curves` at a point, by the rule that the browser follows.

    Parameters
    ----------
    data : mapping
        What `curves` gave.
    side : {"low", "nominal", "high"}
        Which limit.
    at : sequence of float
        One figure for each axis, in base units, within its knots.

    Returns
    -------
    float or None
        In the base unit; None for an open side.

    Raises
    ------
    ValueError
        Beyond the first or last knot: nothing is extrapolated.
    """
    figures = data[side]
    if figures is None:
        return None
    axes = [axis["knots"] for axis in data["axes"]]
    total = 0.0
    for corner in product(*(_weights(axis, x) for axis, x in zip(axes, at, strict=True))):
        place, weight = 0, 1.0
        for axis, (index, share) in zip(axes, corner, strict=True):
            place = place * len(axis) + index
            weight *= share
        if weight:
            total += weight * figures[place]
    return total


def limits_over(
    data: Mapping[str, Any], spans: Sequence[tuple[float, float]]
) -> dict[str, float | None]:
    """Read the limits over ranges of the conditions, by the rule that the browser follows.

    Parameters
    ----------
    data : mapping
        What `curves` gave.
    spans : sequence of (float, float)
        For each axis what is known of it, in base units: two equal figures, or a range.

    Returns
    -------
    dict
        `low` and `high`: no sound reading lies outside, whatever the conditions are within the
        spans. `sure_low` and `sure_high`: a reading within is in limits whatever they are; the
        low one may lie above the high one. In the base unit; None for an open side.

    Raises
    ------
    ValueError
        Beyond the first or last knot.

    Notes
    -----
    Lines joined at knots have their extremes at the ends of the spans and at the knots between:
    each is looked at, for every axis.
    """
    places = [
        sorted({low, high, *(k for k in axis["knots"] if low < k < high)})
        for axis, (low, high) in zip(data["axes"], spans, strict=True)
    ]
    found: dict[str, float | None] = {}
    for side, outer, inner in (("low", min, max), ("high", max, min)):
        figures = [x for at in product(*places) if (x := interpolate(data, side, at)) is not None]
        found[side] = outer(figures) if figures else None
        found[f"sure_{side}"] = inner(figures) if figures else None
    return found


def _weights(axis: Sequence[float], x: float) -> list[tuple[int, float]]:
    """Give the knots on both sides of a figure and their shares."""
    if not axis[0] <= x <= axis[-1]:
        raise ValueError(f"{x:g} is outside {axis[0]:g} to {axis[-1]:g}")
    if len(axis) == 1:
        return [(0, 1.0)]
    after = next(n for n in range(1, len(axis)) if x <= axis[n])
    share = (x - axis[after - 1]) / (axis[after] - axis[after - 1])
    return [(after - 1, 1.0 - share), (after, share)]


def _split(model: _Model, knots: list[list[float]], axis: int, allowed: float) -> list[float]:
    """Give the middles of the stretches of one axis that bend by more than is allowed."""
    others = [k if n != axis else [0.0] for n, k in enumerate(knots)]

    def at(point: Point, x: float) -> Expectation:
        return model.at((*point[:axis], x, *point[axis + 1 :]))

    # A curve may cross its chord half way: it is looked at in three places.
    return [
        (low + high) / 2
        for low, high in pairwise(knots[axis])
        if any(
            _bend(at(point, low), at(point, high), at(point, low + f * (high - low)), f)
            > allowed / len(knots)
            for point in product(*others)
            for f in (0.25, 0.5, 0.75)
        )
    ]


def _bend(first: Expectation, last: Expectation, here: Expectation, share: float) -> float:
    """Give how far a point lies from the chord, at the side where it is farthest."""
    found = [0.0]
    for side in SIDES:
        start, end, exact = (getattr(e, side) for e in (first, last, here))
        if exact is not None and start is not None and end is not None:
            found.append(abs(start + share * (end - start) - exact))
    return max(found)


def _error(model: _Model, knots: list[list[float]], data: Mapping[str, Any]) -> float:
    """Give how far the lines lie from the model, measured between the knots, with a margin."""
    places = [
        axis if len(axis) == 1 else [
            low + (high - low) * n / (PLACES_BETWEEN + 1)
            for low, high in pairwise(axis)
            for n in range(1, PLACES_BETWEEN + 1)
        ]
        for axis in knots
    ]  # fmt: skip
    worst = 0.0
    for point in product(*places):
        here = model.at(point)
        for side in SIDES:
            exact, line = getattr(here, side), interpolate(data, side, point)
            if exact is not None and line is not None:
                worst = max(worst, abs(exact - line))
    # What adding up the shares of a corner rounds away.
    dust = 1e-12 * max(
        (abs(v) for side in SIDES for v in data[side] or ()), default=0.0
    )
    return MARGIN * worst + dust


def _size(knots: list[list[float]]) -> int:
    size = 1
    for axis in knots:
        size *= len(axis)
    return size


def _digit(one: Expectation, spec: Spec) -> float:
    """Give the last digit shown, in the base unit."""
    base = base_unit(one.unit.quantity)
    step = convert(10.0**-spec.places, one.unit, base) - convert(0.0, one.unit, base)
    return abs(step)


def _named(symbol: str) -> Unit:
    unit = unit_named(symbol)
    assert unit is not None
    return unit


def _unit(unit: Unit) -> dict[str, Any]:
    """Give a unit with the line that turns a figure in the base unit into it."""
    base = base_unit(unit.quantity)
    offset = convert(0.0, base, unit)
    return {"symbol": unit.symbol, "factor": convert(1.0, base, unit) - offset, "offset": offset}
