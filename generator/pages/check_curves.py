"""The limits of a value as few lines as a page can do with, and how far they lie from the model.

:func:`generator.expected.limits.curves` is as fine as the display at every temperature; a
thermistor needs hundreds of knots for that. A page that judges a reading needs its lines good
against the meter's error alone. So a value over one condition is joined by straight lines, or by
lines that are straight in the logarithm of the figure, whichever take fewer knots.

Where the meter's own input resistance moves the limits, it is one more axis, in siemens.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cache
from itertools import pairwise, product

from generator.expected import MODELS, expect, needs
from generator.expected.engine import unit_of
from generator.expected.limits import curves
from generator.quantities import Interval, base_unit, convert, parse
from generator.records.kinds.models import DividerModel, PullUpModel
from generator.records.kinds.things import Spec
from generator.records.knowledge_base import KnowledgeBase

SHARE_OF_A_DIGIT = 0.25
"""How far straight lines may lie from the model, as a share of the last digit shown."""

# How far lines in the logarithm may lie from it, as a share of the figure: a twentieth of the
# 0.8 % that a hand-held meter may be off on resistance (practice).
SHARE_OF_A_FIGURE = 4e-4
# Straight lines are given up for lines in the logarithm past this many knots.
MOST_STRAIGHT = 16
MOST_BENT = 160
MARGIN = 1.5

# Input resistances at which the limits are worked out where they hang on it: an ideal meter, the
# usual hand-held one, and down to the least that is of any use on such a wire (practice).
IDEAL_MOHM = 10_000.0
INPUTS_MOHM = (IDEAL_MOHM, 20.0, 10.0, 5.0, 3.0, 2.0, 1.4, 1.0)
METER = "meter"

Point = tuple[float, ...]
Sides = tuple[float | None, float | None]
At = Callable[[Point], Sides]


@dataclass(frozen=True, slots=True)
class Axis:
    """A condition, or the meter's conductance, and where the lines have their knots."""

    name: str
    knots: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Lines:
    """Limits over their axes, in base units, the last axis fastest.

    Parameters
    ----------
    axes : tuple of Axis
        None, one or more.
    low, high : tuple of float, or None
        One figure a grid point; None for an open side.
    bent : bool
        Whether the lines are straight in the logarithm.
    error : float
        No line lies farther from the model: in the base unit, or as a share where `bent`.
    """

    axes: tuple[Axis, ...]
    low: tuple[float, ...] | None
    high: tuple[float, ...] | None
    bent: bool
    error: float


def lines(kb: KnowledgeBase, spec: Spec) -> Lines | None:
    """Give the limits of a spec as lines, or None for a model that jumps."""
    if MODELS[spec.model.name].jumps:
        return None
    usual = needs(kb, spec)
    at = _model(kb, spec, tuple(usual))
    loaded, bent = isinstance(spec.model, (PullUpModel, DividerModel)), False
    if len(usual) == 1:
        (name, span), = usual.items()
        breaks = MODELS[spec.model.name].breaks(spec).get(name, ())
        ends = sorted({span.low, span.high, *(b for b in breaks if span.low < b < span.high)})
        knots, bent = _fewest(at, ends, _digit(spec), straight=loaded)
        axes = [Axis(name, knots)]
    else:
        found = curves(kb, spec)
        assert found is not None
        axes = [Axis(axis["name"], tuple(axis["knots"])) for axis in found["axes"]]
    if loaded:
        axes.append(Axis(METER, tuple(sorted(1e-6 / mohm for mohm in INPUTS_MOHM))))
    return _drawn(at, tuple(axes), bent, _digit(spec))


def _model(kb: KnowledgeBase, spec: Spec, names: Sequence[str]) -> At:
    @cache
    def at(point: Point) -> Sides:
        given = {n: Interval.of(x) for n, x in zip(names, point, strict=False)}
        asked = spec if len(point) == len(names) else read_by(spec, 1e-6 / point[-1])
        found = expect(kb, asked, given)
        return found.low, found.high

    return at


def read_by(spec: Spec, mohm: float) -> Spec:
    """Give a spec whose model takes a meter of this input resistance into account."""
    ideal = isinstance(spec.model, DividerModel) and mohm > 0.999 * IDEAL_MOHM
    meter = None if ideal else parse(f"{mohm:.9f} Mohm", "resistance")
    other = spec.model_copy(update={"model": spec.model.model_copy(update={"meter": meter})})
    other.named(spec.kind, spec.id)
    return other


def _fewest(
    at: At, ends: Sequence[float], digit: float, straight: bool
) -> tuple[tuple[float, ...], bool]:
    """Give knots for straight lines, or for bent ones where straight ones take too many.

    Beside the axis of a meter, and where a limit is not above nought, lines are `straight`.
    """
    few = _split(at, ends, _off, SHARE_OF_A_DIGIT * digit, MOST_STRAIGHT)
    if len(few) <= MOST_STRAIGHT:
        return few, False
    if straight or not _positive(at, few):
        return _split(at, ends, _off, SHARE_OF_A_DIGIT * digit, MOST_BENT), False
    return _split(at, ends, _off_in_share, SHARE_OF_A_FIGURE, MOST_BENT), True


Off = Callable[[float, float, float, float], float]


def _split(
    at: At, ends: Sequence[float], off: Off, allowed: float, most: int
) -> tuple[float, ...]:
    """Halve the stretches that bend by more than is allowed, until none does or `most` is past."""
    knots = list(ends)
    while len(knots) <= most:
        halves = [
            _rounded((low + high) / 2, high - low)
            for low, high in pairwise(knots)
            if _bend(at, low, high, off) * MARGIN > allowed
        ]
        if not halves:
            break
        knots = sorted({*knots, *halves})
    return tuple(knots)


def _rounded(value: float, span: float) -> float:
    """Give a knot in few digits; where it lies matters little."""
    return round(value, max(0, 2 - math.floor(math.log10(span))))


def _bend(at: At, low: float, high: float, off: Off) -> float:
    worst = 0.0
    for share in (0.25, 0.5, 0.75):
        here = at((low + share * (high - low),))
        for start, end, exact in zip(at((low,)), at((high,)), here, strict=True):
            if start is not None and end is not None and exact is not None:
                worst = max(worst, off(start, end, share, exact))
    return worst


def _off(start: float, end: float, share: float, exact: float) -> float:
    return abs(start + share * (end - start) - exact)


def _off_in_share(start: float, end: float, share: float, exact: float) -> float:
    return abs(math.log(start) + share * (math.log(end) - math.log(start)) - math.log(exact))


def _positive(at: At, knots: Sequence[float]) -> bool:
    return all(x is None or x > 0 for knot in knots for x in at((knot,)))


def _digit(spec: Spec) -> float:
    """Give the last digit shown, in the base unit."""
    unit = unit_of(spec)
    base = base_unit(unit.quantity)
    return abs(convert(10.0**-spec.places, unit, base) - convert(0.0, unit, base))


def _drawn(at: At, axes: tuple[Axis, ...], bent: bool, digit: float) -> Lines:
    """Give the figures at the knots, rounded within what is allowed, and the error measured."""
    grid = [at(point) for point in product(*(axis.knots for axis in axes))]
    low, high = (
        None if grid[0][side] is None else tuple(_short(sides[side], bent, digit) for sides in grid)
        for side in (0, 1)
    )
    drawn = Lines(axes, low, high, bent, 0.0)
    places = [
        sorted({*axis.knots, *(a + (b - a) * f for a, b in pairwise(axis.knots)
                               for f in (0.25, 0.5, 0.75))})
        for axis in axes
    ]  # fmt: skip
    worst = 0.0
    for point in product(*places):
        for figures, exact in zip((low, high), at(point), strict=True):
            if figures is not None and exact is not None:
                line = read(drawn, figures, point)
                worst = max(worst, abs(line / exact - 1) if bent else abs(line - exact))
    dust = 1e-12 if bent else 1e-12 * max(
        (abs(x) for figures in (low, high) for x in figures or ()), default=0.0
    )
    return Lines(axes, low, high, bent, float(f"{MARGIN * worst + dust:.2g}"))


def _short(value: float | None, bent: bool, digit: float) -> float:
    """Give a figure with no more digits than its error is worth."""
    assert value is not None
    if bent:
        return float(f"{value:.5g}")
    return round(value, 3 - math.floor(math.log10(digit)))


def read(lines_: Lines, figures: Sequence[float], point: Point) -> float:
    """Read one side at a point within the knots, as the page's script does."""
    total = 0.0
    for corner in product(
        *(_weights(axis.knots, x) for axis, x in zip(lines_.axes, point, strict=True))
    ):
        place, weight = 0, 1.0
        for axis, (index, share) in zip(lines_.axes, corner, strict=True):
            place = place * len(axis.knots) + index
            weight *= share
        if weight:
            total += weight * (math.log(figures[place]) if lines_.bent else figures[place])
    return math.exp(total) if lines_.bent else total


def _weights(knots: Sequence[float], x: float) -> list[tuple[int, float]]:
    if len(knots) == 1:
        return [(0, 1.0)]
    after = next((n for n in range(1, len(knots)) if x <= knots[n]), len(knots) - 1)
    share = (x - knots[after - 1]) / (knots[after] - knots[after - 1])
    return [(after - 1, 1.0 - share), (after, share)]
