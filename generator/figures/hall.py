"""The square wave of a Hall sensor, and what its two commonest faults look like."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from generator.figures.document import WIDTH, Words, finite
from generator.figures.lettering import text_width, wrapped
from generator.figures.pickup import angle_texts, checked_span, gap, plot_top, rim_room, teeth
from generator.figures.plot import LEADING, Plot, Sheet
from generator.figures.scale import ascending, nice_ticks, same_length, spread, tick_text
from generator.figures.style import Role
from generator.figures.svg import plotted

if TYPE_CHECKING:
    from matplotlib.figure import Figure

_TALL = 112
_WHEEL_TALL = 16
_PANEL_TALL = 58


@dataclass(frozen=True, slots=True, kw_only=True)
class SquareWords(Words):
    """Words of :func:`square_wave`.

    Parameters
    ----------
    angle_axis, volt_axis : str
        Names of the axes with their units.
    high, low : str
        The two levels with their limits, such as "high: 4.5 V or more"; up to three lines of a
        dozen letters each.
    threshold : str
        What a voltage between the two means, as short.
    gap : str
        The missing teeth.
    flat_high, flat_low : str
        What a line stuck high, and one stuck low, points to.
    """

    angle_axis: str
    volt_axis: str
    high: str
    low: str
    threshold: str
    gap: str
    flat_high: str
    flat_low: str


@dataclass(frozen=True, slots=True)
class SquareLevels:
    """The levels of a two-state signal.

    Parameters
    ----------
    low_v, high_v : float
        The two levels it rests at, V.
    low_max_v, high_min_v : float
        Highest voltage that counts as low and lowest that counts as high, V; between them lies
        the threshold region.
    """

    low_v: float
    low_max_v: float
    high_min_v: float
    high_v: float


def square_wave(
    figure_id: str,
    words: SquareWords,
    angle_deg: Sequence[float],
    volts: Sequence[float],
    levels: SquareLevels,
    missing_span: tuple[float, float] | None,
    tooth_count: int,
    tooth_share: tuple[float, float] = (0.5, 1.0),
) -> str:
    """Draw a Hall sensor's square wave, with two panels of what stuck lines look like.

    Parameters
    ----------
    figure_id : str
        Prefix of all ids.
    words : SquareWords
        Title, description, axes, levels and faults.
    angle_deg : sequence of float
        Crank angle, degrees, ascending.
    volts : sequence of float
        Voltage at each angle, V.
    levels : SquareLevels
        Levels and thresholds, V.
    missing_span : tuple of float or None
        Where teeth are missing, from and to, degrees, within the window; None for none.
    tooth_count : int
        Tooth positions of the full wheel; position k reaches from k to k + 1 pitches.
    tooth_share : tuple of float, optional
        From where to where in its pitch a tooth stands, as shares of the pitch: by default the
        second half, as where the signal is high first and a tooth pulls it low.

    Returns
    -------
    str
        The figure as SVG.

    Raises
    ------
    ValueError
        For lengths that differ, values not finite, levels out of order, a span outside the
        window, no teeth.
    """
    ascending("angle_deg", angle_deg)
    same_length("angle_deg", len(angle_deg), volts=volts)
    checked_span(missing_span, angle_deg)
    finite("levels", levels.low_v, levels.low_max_v, levels.high_min_v, levels.high_v)
    if not levels.low_v <= levels.low_max_v < levels.high_min_v <= levels.high_v:
        raise ValueError("levels: low_v, low_max_v, high_min_v and high_v must ascend")
    if tooth_count < 1:
        raise ValueError(f"tooth_count: {tooth_count} is not a wheel")
    if not 0 <= tooth_share[0] < tooth_share[1] <= 1:
        raise ValueError(f"tooth_share: {tooth_share} is not a part of a pitch")
    captions = [wrapped(text, 162) for text in (words.flat_high, words.flat_low)]
    panels_top = plot_top(words.gap, words.volt_axis) + _TALL + _WHEEL_TALL + 16
    panels_top += rim_room(words.angle_axis)
    height = panels_top + _PANEL_TALL + 12 + LEADING * max(map(len, captions))

    def draw(figure: Figure) -> None:
        sheet = Sheet(figure, height)
        plot = _wave(sheet, words, angle_deg, volts, levels, missing_span)
        foot = plot.bottom + 8 + _WHEEL_TALL
        teeth(plot, foot - _WHEEL_TALL, foot, missing_span, tooth_count, tooth_share)
        angle_texts(plot, foot, words.angle_axis)
        for left, level_v, caption in zip(
            (10, 186), (levels.high_v, levels.low_v), captions, strict=True
        ):
            _panel(sheet, left, panels_top, levels, level_v, caption)

    return plotted(figure_id, "square-wave", words, height, draw)


def _scale(levels: SquareLevels) -> tuple[float, float]:
    tall = levels.high_v - levels.low_v
    return (levels.low_v - 0.12 * tall, levels.high_v + 0.12 * tall)


def _wave(
    sheet: Sheet, words: SquareWords, angle_deg: Sequence[float], volts: Sequence[float],
    levels: SquareLevels, span: tuple[float, float] | None,
) -> Plot:  # fmt: skip
    y_ticks = nice_ticks(*_scale(levels), 5)
    left = 14 + max(text_width(tick_text(tick)) for tick in y_ticks)
    limits = (angle_deg[0], angle_deg[-1])
    top = plot_top(words.gap, words.volt_axis)
    plot = sheet.plot(left, top, WIDTH - 92, top + _TALL, limits, _scale(levels))
    _threshold(plot, levels)
    plot.graticule(nice_ticks(*limits, 6), y_ticks, x_texts=False)
    gap(plot, span, words.gap, words.volt_axis)
    _limits(plot, levels)
    plot.trace(*_upright(angle_deg, volts), Role.TRACE, 1.8)
    _level_names(plot, words, levels)
    return plot


def _upright(angle_deg: Sequence[float], volts: Sequence[float]) -> tuple[list[float], list[float]]:
    """Give the wave with its edges upright, and only the corners of what lies level."""
    angles, levels = [angle_deg[0]], [volts[0]]
    for angle, before, after in zip(angle_deg[1:], volts, volts[1:], strict=False):
        if after != before:
            angles += [angle, angle]
            levels += [before, after]
    return [*angles, angle_deg[-1]], [*levels, volts[-1]]


def _threshold(plot: Plot, levels: SquareLevels) -> None:
    top, bottom = plot.y(levels.high_min_v), plot.y(levels.low_max_v)
    plot.sheet.box(plot.left, top, plot.right, bottom, Role.BAND)


def _limits(plot: Plot, levels: SquareLevels) -> None:
    for level_v in (levels.high_min_v, levels.low_max_v):
        y = plot.y(level_v)
        plot.sheet.line([(plot.left, y), (plot.right, y)], Role.LIMIT, 1.1, (5, 3))


def _level_names(plot: Plot, words: SquareWords, levels: SquareLevels) -> None:
    """Name the levels and the region between them beside the plot, pushed apart if need be."""
    room = WIDTH - plot.right - 20
    between = (levels.low_max_v + levels.high_min_v) / 2
    wanted = [
        (words.high, levels.high_v, Role.INK), (words.threshold, between, Role.LIMIT),
        (words.low, levels.low_v, Role.INK),
    ]  # fmt: skip
    lines = [wrapped(text, room) for text, _, _ in wanted]
    tallest = max(max(map(len, lines)), 1)
    places = spread(
        [plot.y(value) for _, value, _ in wanted], LEADING * tallest + 2,
        plot.top - 20 + 7 * tallest, plot.bottom + 30,
    )  # fmt: skip
    for (_, value, role), text, y in zip(wanted, lines, places, strict=True):
        at = [(plot.right, plot.y(value)), (plot.right + 8, y)]
        plot.sheet.line(at, role, 0.9)
        plot.sheet.text(plot.right + 12, y + 4.3 - LEADING * (len(text) - 1) / 2, text, role)


def _panel(
    sheet: Sheet, left: float, top: float, levels: SquareLevels, level_v: float,
    caption: list[str],
) -> None:  # fmt: skip
    """Draw a small plot of a line that rests at one level, with what it points to."""
    right, bottom = left + 164, top + _PANEL_TALL
    plot = sheet.plot(left, top, right, bottom, (0, 1), _scale(levels))
    _threshold(plot, levels)
    _limits(plot, levels)
    sheet.box(left, top, right, bottom, None, Role.MUTED)
    y = plot.y(level_v)
    sheet.line([(left, y), (right, y)], Role.TRACE, 2.2)
    sheet.text(left, bottom + 16, caption)
