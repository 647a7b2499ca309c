"""How much doubt is left as the tests of an order are done."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import product
from math import cos, hypot, pi, sin
from typing import TYPE_CHECKING

from generator.figures.document import WIDTH, Words
from generator.figures.lettering import text_width
from generator.figures.plot import Plot, Sheet, room_above, room_below
from generator.figures.scale import ascending, nice_ticks, same_length, tick_text
from generator.figures.style import Role
from generator.figures.svg import plotted

if TYPE_CHECKING:
    from matplotlib.figure import Figure

_TALL = 148
_RADIUS = 8.5


@dataclass(frozen=True, slots=True, kw_only=True)
class DoubtWords(Words):
    """Words of :func:`doubt_curve`.

    Parameters
    ----------
    minutes_axis, doubt_axis : str
        Names of the axes with their units.
    """

    minutes_axis: str
    doubt_axis: str


def doubt_curve(
    figure_id: str, words: DoubtWords, minutes: Sequence[float], doubt: Sequence[float]
) -> str:
    """Draw the doubt left against minutes as a step line, each test numbered.

    Parameters
    ----------
    figure_id : str
        Prefix of all ids.
    words : DoubtWords
        Title, description and axes.
    minutes : sequence of float
        Minutes spent: first 0, before any test, then after each test, ascending.
    doubt : sequence of float
        Doubt left at those minutes, in the unit of the axis, never below nought.

    Returns
    -------
    str
        The figure as SVG. Point *n* is the state after test *n*.

    Raises
    ------
    ValueError
        For lengths that differ, values not finite, minutes that do not ascend, doubt below 0.
    """
    ascending("minutes", minutes)
    same_length("minutes", len(minutes), doubt=doubt)
    if min(doubt) < 0:
        raise ValueError("doubt: the values must not be below nought")
    top = room_above(words.doubt_axis)
    bottom = top + _TALL
    height = bottom + room_below(words.minutes_axis)

    def draw(figure: Figure) -> None:
        sheet = Sheet(figure, height)
        y_limits = (0.0, (max(doubt) or 1.0) * 1.08)
        y_ticks = nice_ticks(*y_limits, 5)
        left = 14 + max(text_width(tick_text(tick)) for tick in y_ticks)
        x_limits = (minutes[0], minutes[0] + (minutes[-1] - minutes[0]) * 1.07)
        plot = sheet.plot(left, top, WIDTH - 16, bottom, x_limits, y_limits)
        steps = _steps([plot.x(each) for each in minutes], [plot.y(each) for each in doubt])
        under = [*steps, (steps[-1][0], bottom), (plot.left, bottom)]
        sheet.shape(under, Role.BAND)
        plot.graticule(
            nice_ticks(*x_limits, 6), y_ticks,
            x_name=words.minutes_axis, y_name=words.doubt_axis,
        )  # fmt: skip
        sheet.line(steps, Role.TRACE, 1.8)
        _numbers(plot, steps[2::2])

    return plotted(figure_id, "doubt-curve", words, height, draw)


def _steps(xs: Sequence[float], ys: Sequence[float]) -> list[tuple[float, float]]:
    """Give the corners: level while a test runs, then straight to what it leaves."""
    corners = [(xs[0], ys[0])]
    for x, before, after in zip(xs[1:], ys, ys[1:], strict=False):
        corners += [(x, before), (x, after)]
    return corners


def _numbers(plot: Plot, points: Sequence[tuple[float, float]]) -> None:
    """Ring each point's number beside its corner, clear of the others."""
    taken: list[tuple[float, float]] = []
    for index, point in enumerate(points, start=1):
        place = _clear_place(plot, point, taken)
        taken.append(place)
        sheet = plot.sheet
        sheet.line([point, place], Role.INK, 0.8)
        ring = [
            (place[0] + _RADIUS * cos(k * pi / 10), place[1] + _RADIUS * sin(k * pi / 10))
            for k in range(20)
        ]
        sheet.shape(ring, Role.PAPER, Role.INK, 1.2)
        sheet.text(place[0], place[1] + 4.3, str(index), align="center", bold=True)


def _clear_place(
    plot: Plot, point: tuple[float, float], taken: Sequence[tuple[float, float]]
) -> tuple[float, float]:
    """Give the nearest place up and right of a corner where a ring touches no other.

    The doubt falls, so the line never runs up there.
    """
    tries = sorted(
        product(range(11, 100, 3), range(-100, -10, 3)),
        key=lambda shift: (round(hypot(*shift)), shift),
    )  # fmt: skip
    for dx, dy in tries:
        place = (point[0] + dx, point[1] + dy)
        inside = place[0] <= WIDTH - 12 and plot.top + 2 <= place[1] <= plot.bottom - _RADIUS - 1
        if inside and all(hypot(place[0] - x, place[1] - y) >= 2 * _RADIUS + 2 for x, y in taken):
            return place
    return (min(point[0] + 12, WIDTH - 12), max(point[1] - 12, plot.top + 2))
