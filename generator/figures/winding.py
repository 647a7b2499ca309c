"""The limits of a winding's resistance, or any like reading, against temperature."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import cos, pi, sin
from typing import TYPE_CHECKING

from generator.figures.document import TEXT, WIDTH, Words, finite
from generator.figures.lettering import text_width, wrapped
from generator.figures.plot import LEADING, Plot, Sheet, lift, room_above, room_below
from generator.figures.scale import ascending, nice_ticks, same_length, spread, tick_text
from generator.figures.style import Role
from generator.figures.svg import plotted

if TYPE_CHECKING:
    from matplotlib.figure import Figure

_TALL = 180

Box = tuple[float, float, float, float]
"""Left, top, right and bottom of a stretch of the sheet."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BandWords(Words):
    """Words of :func:`winding_band`.

    Parameters
    ----------
    temp_axis : str
        Name of the temperature axis with its unit.
    value_axis : str
        Name of the other axis; the unit is added.
    low, nominal, high : str
        Names of the three curves, a word or two each.
    """

    temp_axis: str
    value_axis: str
    low: str
    nominal: str
    high: str


@dataclass(frozen=True, slots=True)
class BandRow:
    """A row of the page's table, marked on the band.

    Parameters
    ----------
    temp_c : float
        Temperature, °C.
    low_text, high_text : str
        The row's limits as the table shows them.
    """

    temp_c: float
    low_text: str
    high_text: str


@dataclass(frozen=True, slots=True)
class BandReading:
    """A reading to show on the band.

    Parameters
    ----------
    temp_c : float
        Temperature of the part, °C.
    value : float
        The reading, in the unit of the band.
    text : str
        What to write beside it.
    """

    temp_c: float
    value: float
    text: str


def winding_band(
    figure_id: str,
    words: BandWords,
    temps_c: Sequence[float],
    low: Sequence[float],
    nominal: Sequence[float],
    high: Sequence[float],
    unit: str,
    reading: BandReading | None = None,
    rows: Sequence[BandRow] = (),
) -> str:
    """Draw a band of limits against temperature with its nominal line.

    Parameters
    ----------
    figure_id : str
        Prefix of all ids.
    words : BandWords
        Title, description, axes and names of the curves.
    temps_c : sequence of float
        Temperatures, °C, ascending; at least two.
    low, nominal, high : sequence of float
        Limits and nominal value at each temperature, in `unit`.
    unit : str
        Unit of the values.
    reading : BandReading, optional
        A reading to mark. One far off the band is marked at the edge with an arrow.
    rows : sequence of BandRow, optional
        Rows of the table to mark with their limits.

    Returns
    -------
    str
        The figure as SVG.

    Raises
    ------
    ValueError
        For lengths that differ, values not finite, or limits out of order.
    """
    ascending("temps_c", temps_c)
    same_length("temps_c", len(temps_c), low=low, nominal=nominal, high=high)
    if any(not lo <= mid <= hi for lo, mid, hi in zip(low, nominal, high, strict=True)):
        raise ValueError("low, nominal and high must be in that order at every temperature")
    for row in rows:
        finite("row", row.temp_c)
    if reading:
        finite("reading", reading.temp_c, reading.value)

    y_name = f"{words.value_axis}, {unit}" if unit else words.value_axis
    height = room_above(y_name) + _TALL + room_below(words.temp_axis)

    def draw(figure: Figure) -> None:
        plot = _plot(Sheet(figure, height), words, temps_c, low, high, y_name)
        _curves(plot, temps_c, low, nominal, high)
        _names(plot, words, low[-1], nominal[-1], high[-1])
        taken = _reading(plot, reading) if reading else []
        _rows(plot, temps_c, low, high, rows, taken)

    return plotted(figure_id, "winding-band", words, height, draw)


def _plot(
    sheet: Sheet, words: BandWords, temps_c: Sequence[float], low: Sequence[float],
    high: Sequence[float], y_name: str,
) -> Plot:  # fmt: skip
    tall = (max(high) - min(low)) or abs(max(high)) or 1.0
    y_limits = (min(low) - 0.22 * tall, max(high) + 0.2 * tall)
    if min(low) >= 0:
        y_limits = (max(0.0, y_limits[0]), y_limits[1])
    y_ticks = nice_ticks(*y_limits, 6)
    left = 14 + max(text_width(tick_text(tick)) for tick in y_ticks)
    names = (words.low, words.nominal, words.high)
    room = min(84.0, max(text_width(name, bold=True) for name in names) + 6)
    top = room_above(y_name)
    x_limits = (temps_c[0], temps_c[-1])
    plot = sheet.plot(left, top, WIDTH - room - 8, top + _TALL, x_limits, y_limits)
    plot.graticule(
        nice_ticks(temps_c[0], temps_c[-1], 6), y_ticks,
        x_name=words.temp_axis, y_name=y_name,
    )  # fmt: skip
    return plot


def _curves(
    plot: Plot, temps_c: Sequence[float], low: Sequence[float], nominal: Sequence[float],
    high: Sequence[float],
) -> None:  # fmt: skip
    plot.area(temps_c, low, high)
    for limit in (low, high):
        plot.trace(temps_c, limit, Role.LIMIT, 1.3, (5, 3))
    plot.trace(temps_c, nominal, Role.TRACE, 1.8)


def _names(plot: Plot, words: BandWords, low: float, nominal: float, high: float) -> None:
    """Name each curve at its end, pushed apart where the ends are close."""
    wanted = [
        (words.high, high, Role.LIMIT), (words.nominal, nominal, Role.TRACE),
        (words.low, low, Role.LIMIT),
    ]  # fmt: skip
    room = WIDTH - plot.right - 12
    lines = [wrapped(name, room) for name, _, _ in wanted]
    tallest = max(len(each) for each in lines)
    places = spread(
        [plot.y(value) for _, value, _ in wanted], LEADING * tallest, plot.top, plot.bottom
    )
    for (_, value, role), name, y in zip(wanted, lines, places, strict=True):
        end = plot.y(value)
        plot.sheet.line([(plot.right, end), (plot.right + 5, y)], role, 0.9)
        first = y + 4.3 - LEADING * (len(name) - 1) / 2
        plot.sheet.text(plot.right + 8, first, name, role, bold=role is Role.TRACE)


def _rows(
    plot: Plot, temps_c: Sequence[float], low: Sequence[float], high: Sequence[float],
    rows: Sequence[BandRow], taken: Sequence[Box],
) -> None:  # fmt: skip
    """Mark rows of the table; a row whose figures would touch others is left to the table."""
    boxes = list(taken)
    for row in sorted(rows, key=lambda each: each.temp_c):
        x = plot.x(row.temp_c)
        half = max(text_width(row.low_text), text_width(row.high_text)) / 2
        middle = min(max(x, plot.left + half + 3), plot.right - half - 1)
        if not plot.left - 0.5 <= x <= plot.right + 0.5:
            continue
        top, bottom = plot.y(_at(row.temp_c, temps_c, high)), plot.y(_at(row.temp_c, temps_c, low))
        # The figures stand clear of the sloping limit over their whole width.
        ends_c = [plot.value_at(middle - half), plot.value_at(middle + half)]
        above = min(top, *(plot.y(_at(each, temps_c, high)) for each in ends_c)) - 5
        below = max(bottom, *(plot.y(_at(each, temps_c, low)) for each in ends_c)) + 14
        wanted = [(middle - half - 2, y - TEXT, middle + half + 2, y + 2) for y in (above, below)]
        if any(_touch(one, other) for one in wanted for other in boxes):
            continue
        boxes += wanted
        caps = [(x - 3, top), (x + 3, top), lift(), (x, top), (x, bottom), lift()]
        plot.sheet.line([*caps, (x - 3, bottom), (x + 3, bottom)], Role.INK, 0.9)
        plot.sheet.text(middle, above, row.high_text, align="center", halo=True)
        plot.sheet.text(middle, below, row.low_text, align="center", halo=True)


def _touch(one: Box, other: Box) -> bool:
    across = one[0] < other[2] and other[0] < one[2]
    return across and one[1] < other[3] and other[1] < one[3]


def _at(temp_c: float, temps_c: Sequence[float], values: Sequence[float]) -> float:
    """Give a curve's value between two of its points."""
    after = next((i for i, each in enumerate(temps_c) if each >= temp_c), len(temps_c) - 1)
    before = max(after - 1, 0)
    if after == before:
        return values[after]
    share = (temp_c - temps_c[before]) / (temps_c[after] - temps_c[before])
    return values[before] + share * (values[after] - values[before])


def _reading(plot: Plot, reading: BandReading) -> list[Box]:
    """Mark a reading with a ringed cross and lines to both axes; an arrow if it is off the plot.

    Gives the boxes that the mark and its text take.
    """
    sheet = plot.sheet
    x = min(max(plot.x(reading.temp_c), plot.left), plot.right)
    wanted = plot.y(reading.value)
    y = min(max(wanted, plot.top + 10), plot.bottom - 10)
    sheet.line([(plot.left, y), (x, y), (x, plot.bottom)], Role.ACCENT, 0.9, (1.5, 2.5))
    if abs(wanted - y) > 1:
        up = -1 if wanted < y else 1
        sheet.shape([(x, y + up * 9), (x - 5, y), (x + 5, y)], Role.ACCENT)
    else:
        ring = [(x + 5.5 * cos(k * pi / 8), y + 5.5 * sin(k * pi / 8)) for k in range(16)]
        sheet.shape(ring, Role.PAPER, Role.ACCENT, 1.6)
        cross = [(x - 9, y), (x + 9, y), lift(), (x, y - 9), (x, y + 9)]
        sheet.line(cross, Role.ACCENT, 1.2)
    side = 1 if plot.right - x >= x - plot.left else -1
    lines = wrapped(reading.text, max(plot.right - x, x - plot.left) - 16, bold=True)
    tall = LEADING * (len(lines) - 1)
    first = y - 9 - tall if y - 9 - tall > plot.top + 8 else y + 19
    start = x + side * 12
    sheet.text(
        start, first, lines, Role.ACCENT, bold=True, halo=True,
        align="left" if side > 0 else "right",
    )  # fmt: skip
    far = start + side * max((text_width(line, bold=True) for line in lines), default=0)
    text = (min(start, far), first - TEXT, max(start, far), first + tall + 3)
    return [(x - 10, y - 10, x + 10, y + 10), text]
