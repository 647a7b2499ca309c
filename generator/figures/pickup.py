"""The voltage of an inductive pickup along a toothed wheel with missing teeth."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, floor
from typing import TYPE_CHECKING

from generator.figures.document import WIDTH, Words, finite
from generator.figures.lettering import text_width, wrapped
from generator.figures.plot import LEADING, Plot, Sheet, axis_lines, lift
from generator.figures.scale import ascending, nice_ticks, same_length, tick_text
from generator.figures.style import Role
from generator.figures.svg import plotted

if TYPE_CHECKING:
    from matplotlib.figure import Figure

_TALL = 144
_WHEEL_TALL = 18


@dataclass(frozen=True, slots=True, kw_only=True)
class PickupWords(Words):
    """Words of :func:`pickup_wave`.

    Parameters
    ----------
    angle_axis, volt_axis : str
        Names of the axes with their units.
    gap : str
        What the missing teeth look like, such as "2 teeth missing".
    peak_to_peak : str
        The dimension's text: value, unit, what it is; words of up to seven letters.
    """

    angle_axis: str
    volt_axis: str
    gap: str
    peak_to_peak: str


def pickup_wave(
    figure_id: str,
    words: PickupWords,
    angle_deg: Sequence[float],
    volts: Sequence[float],
    missing_span: tuple[float, float] | None,
    tooth_count: int,
    peak_span_v: tuple[float, float] | None = None,
) -> str:
    """Draw a pickup's waveform over the teeth that make it.

    Parameters
    ----------
    figure_id : str
        Prefix of all ids.
    words : PickupWords
        Title, description, axes and dimensions.
    angle_deg : sequence of float
        Crank angle, degrees, ascending; a window of ten to twenty teeth reads best.
    volts : sequence of float
        Voltage at each angle, V.
    missing_span : tuple of float or None
        Where the teeth are missing, from and to, degrees, within the window; None for a wheel
        that has them all, as a wheel speed sensor's.
    tooth_count : int
        Tooth positions of the full wheel. Position k reaches from k to k + 1 pitches, and its
        tooth stands in the middle of it.
    peak_span_v : tuple of float, optional
        From where to where the peak-to-peak dimension goes, V; by default the whole wave. The
        swing beside a gap stands above the rest, so say which one the text gives.

    Returns
    -------
    str
        The figure as SVG.

    Raises
    ------
    ValueError
        For lengths that differ, values not finite, a span outside the window, no teeth.
    """
    ascending("angle_deg", angle_deg)
    same_length("angle_deg", len(angle_deg), volts=volts)
    checked_span(missing_span, angle_deg)
    if tooth_count < 1:
        raise ValueError(f"tooth_count: {tooth_count} is not a wheel")
    span_v = peak_span_v or (min(volts), max(volts))
    finite("peak_span_v", *span_v)
    peak = max(map(abs, (*volts, *span_v))) or 1.0
    top = plot_top(words.gap, words.volt_axis)
    bottom = top + _TALL
    foot = bottom + 8 + _WHEEL_TALL
    height = foot + rim_room(words.angle_axis)

    def draw(figure: Figure) -> None:
        sheet = Sheet(figure, height)
        y_ticks = nice_ticks(-1.12 * peak, 1.12 * peak, 6)
        left = 14 + max(text_width(tick_text(tick)) for tick in y_ticks)
        limits = (angle_deg[0], angle_deg[-1])
        plot = sheet.plot(left, top, WIDTH - 76, bottom, limits, (-1.12 * peak, 1.12 * peak))
        plot.graticule(nice_ticks(*limits, 6), y_ticks, x_texts=False)
        gap(plot, missing_span, words.gap, words.volt_axis)
        sheet.line([(plot.left, plot.y(0)), (plot.right, plot.y(0))], Role.MUTED, 0.9)
        _peak_to_peak(plot, *span_v, words.peak_to_peak)
        plot.trace(angle_deg, volts, Role.TRACE, 1.7)
        teeth(plot, foot - _WHEEL_TALL, foot, missing_span, tooth_count, (0.3, 0.7))
        angle_texts(plot, foot, words.angle_axis)

    return plotted(figure_id, "pickup-wave", words, height, draw)


def checked_span(span: tuple[float, float] | None, angle_deg: Sequence[float]) -> None:
    """Raise ValueError unless a span of missing teeth, if any, lies within the window drawn."""
    if span is not None and not angle_deg[0] <= span[0] < span[1] <= angle_deg[-1]:
        raise ValueError(f"missing_span {span} is not within the angles drawn")


def plot_top(gap_text: str, beside: str) -> float:
    """Give the top of a plot that leaves room for the text over its gap.

    `beside` is the name of the upright axis: it shares the last line if it fits there.
    """
    lines = len(_gap_lines(gap_text))
    if _shared(gap_text, beside):
        return 22 + LEADING * max(1, lines)
    return 26 + LEADING * (lines + len(axis_lines(beside)))


def _gap_lines(text: str) -> list[str]:
    return wrapped(text, WIDTH / 2, bold=True)


def _half_wide(text: str) -> float:
    return max((text_width(line, bold=True) for line in _gap_lines(text)), default=0.0) / 2


def _shared(gap_text: str, beside: str) -> bool:
    return text_width(beside) + 2 * _half_wide(gap_text) <= WIDTH - 40


def gap(plot: Plot, span: tuple[float, float] | None, text: str, beside: str) -> None:
    """Hatch where teeth are missing and put a dimension with its text above.

    Writes the upright axis' name too: beside that text where it fits, else above it. Without a
    gap the name is all there is to write.
    """
    if span is None:
        plot.sheet.text(10, plot.top - 8, axis_lines(beside), Role.MUTED)
        return
    start, end = plot.x(span[0]), plot.x(span[1])
    sheet, lines, half = plot.sheet, _gap_lines(text), _half_wide(text)
    sheet.box(start, plot.top, end, plot.bottom, None, hatched=True)
    ends = [(start, plot.top - 9), (start, plot.bottom), lift(), (end, plot.top - 9)]
    sheet.line([*ends, (end, plot.bottom)], Role.ACCENT, 0.9)
    sheet.dimension((start, plot.top - 5), (end, plot.top - 5), Role.ACCENT)
    first = plot.top - 14 - LEADING * (len(lines) - 1)
    if _shared(text, beside):
        least, beside_y = 26 + text_width(beside) + half, plot.top - 8
    else:
        least, beside_y = 10 + half, first - 2 - LEADING * len(axis_lines(beside))
    middle = min(max((start + end) / 2, least), WIDTH - 10 - half)
    sheet.text(middle, first, lines, Role.ACCENT, align="center", bold=True)
    sheet.text(10, beside_y, axis_lines(beside), Role.MUTED)


def teeth(
    plot: Plot, top: float, foot: float, span: tuple[float, float] | None, tooth_count: int,
    tooth_share: tuple[float, float],
) -> None:  # fmt: skip
    """Draw the rim of the wheel below a plot, its missing teeth dashed.

    `tooth_share` says from where to where in its pitch a tooth stands, as shares of the pitch.
    """
    pitch = 360 / tooth_count
    low, high = plot.x_limits
    start, end = tooth_share
    slant = 0.1 * (end - start)
    rim = [(plot.left, foot)]
    ghosts: list[tuple[float, float]] = []
    for position in range(floor(low / pitch) - 1, ceil(high / pitch) + 1):
        if not low <= (position + start) * pitch < (position + end) * pitch <= high:
            continue  # cut off by the edge of the window
        corners = [
            plot.x((position + share) * pitch) for share in (start, start + slant, end - slant, end)
        ]
        tooth = list(zip(corners, (foot, top, top, foot), strict=True))
        middle = (position + (start + end) / 2) * pitch
        if span is not None and span[0] < middle < span[1]:
            ghosts += [*tooth, lift()]
        else:
            rim += tooth
    rim += [(plot.right, foot), (plot.right, foot + 5), (plot.left, foot + 5)]
    plot.sheet.shape(rim, Role.METAL, Role.INK, 0.9)
    if ghosts:
        plot.sheet.line(ghosts, Role.ACCENT, 1.0, (2, 2))


def rim_room(angle_axis: str) -> float:
    """Give the room that the angles and their axis' name take below the rim of the wheel."""
    return 34 + LEADING * max(1, len(axis_lines(angle_axis)))


def angle_texts(plot: Plot, foot: float, name: str) -> None:
    """Write the angles and their axis' name below the rim of the wheel."""
    for tick in nice_ticks(*plot.x_limits, 6):
        plot.sheet.text(plot.x(tick), foot + 20, tick_text(tick), Role.MUTED, align="center")
    plot.sheet.text(plot.right, foot + 36, axis_lines(name), Role.MUTED, align="right")


def _peak_to_peak(plot: Plot, low_v: float, high_v: float, text: str) -> None:
    if low_v == high_v:
        return
    x, sheet = plot.right + 10, plot.sheet
    top, bottom = plot.y(high_v), plot.y(low_v)
    ends = [(plot.left, top), (x + 4, top), lift(), (plot.left, bottom), (x + 4, bottom)]
    sheet.line(ends, Role.INK, 0.8, (1.5, 2.5))
    sheet.dimension((x, top), (x, bottom))
    lines = wrapped(text, WIDTH - x - 14, bold=True)
    first = (top + bottom) / 2 + 4.3 - LEADING * (len(lines) - 1) / 2
    sheet.text(x + 8, first, lines, bold=True)
