"""What the plotted figures share: a sheet measured in units from its top left, and a graticule."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import ceil, floor
from typing import TYPE_CHECKING

from generator.figures.document import HALO, TEXT, WIDTH, legal
from generator.figures.lettering import wrapped
from generator.figures.scale import tick_text
from generator.figures.style import HATCH_SENTINEL, SENTINELS, Role
from generator.figures.svg import UNITS_PER_INCH

if TYPE_CHECKING:
    from matplotlib.artist import Artist
    from matplotlib.figure import Figure
    from matplotlib.transforms import Transform

LEADING = 14
"""From one line of text to the next, in units."""

_GAP = float("nan")  # lifts the pen between two strokes of one line


@dataclass(frozen=True)
class Sheet:
    """A figure measured in units from its top left corner, as the finished SVG is.

    Parameters
    ----------
    figure : matplotlib Figure
        Where to draw.
    height : float
        Its height, in units.
    """

    figure: Figure
    height: float

    def plot(
        self, left: float, top: float, right: float, bottom: float,
        x_limits: tuple[float, float], y_limits: tuple[float, float],
    ) -> Plot:  # fmt: skip
        """Give an empty plotting area with its scales."""
        return Plot(self, left, top, right, bottom, x_limits, y_limits)

    def text(
        self, x: float, y: float, text: str | Iterable[str], role: Role = Role.INK, *,
        align: str = "left", bold: bool = False, halo: bool = False, size: float = TEXT,
    ) -> None:  # fmt: skip
        """Write lines of text; `y` is the base line of the first."""
        for index, line in enumerate([text] if isinstance(text, str) else text):
            self.figure.text(
                x / WIDTH,
                1 - (y + index * LEADING) / self.height,
                re.sub(r"\s", " ", legal(line)),
                color=SENTINELS[role],
                ha=align,
                va="baseline",
                size=size,
                weight="bold" if bold else "normal",
                gid=HALO if halo else None,
                zorder=self._next(),
            )

    def line(
        self, points: Iterable[tuple[float, float]], role: Role = Role.INK, width: float = 1.0,
        dashes: tuple[float, ...] = (),
    ) -> None:  # fmt: skip
        """Draw one or more strokes; a point of :func:`lift` separates two."""
        from matplotlib.lines import Line2D

        xs, ys = zip(*points, strict=True)
        line = Line2D(xs, ys, color=SENTINELS[role], linewidth=width, transform=self._place())
        if dashes:
            line.set_dashes(dashes)
        self._add(line)

    def shape(
        self, points: Sequence[tuple[float, float]], fill: Role | None, edge: Role | None = None,
        width: float = 1.0, hatched: bool = False,
    ) -> None:  # fmt: skip
        """Draw a closed shape, filled with a role, hatched, or bare."""
        from matplotlib.patches import Polygon

        face = HATCH_SENTINEL if hatched else SENTINELS[fill] if fill else "none"
        made = Polygon(points, closed=True, facecolor=face, linewidth=width if edge else 0)
        made.set(edgecolor=SENTINELS[edge] if edge else "none", transform=self._place())
        self._add(made)

    def _add(self, artist: Artist) -> None:
        artist.set(zorder=self._next(), clip_on=False)
        self.figure.add_artist(artist)

    def _next(self) -> int:
        """Give the level above all that is drawn, so that later strokes cover earlier ones."""
        return len(self.figure.get_children())

    def _place(self) -> Transform:
        """Give the scale of the sheet: units from the top left."""
        from matplotlib.transforms import Affine2D

        units = Affine2D().scale(1 / UNITS_PER_INCH, -1 / UNITS_PER_INCH)
        units = units.translate(0, self.height / UNITS_PER_INCH)
        return units + self.figure.dpi_scale_trans

    def box(
        self, left: float, top: float, right: float, bottom: float, fill: Role | None,
        edge: Role | None = None, *, hatched: bool = False,
    ) -> None:  # fmt: skip
        """Draw a rectangle."""
        corners = [(left, top), (right, top), (right, bottom), (left, bottom)]
        self.shape(corners, fill, edge, 0.8, hatched)

    def dimension(
        self, start: tuple[float, float], end: tuple[float, float], role: Role = Role.INK
    ) -> None:
        """Draw a level or upright dimension line with an arrowhead at either end."""
        (x1, y1), (x2, y2) = start, end
        length = max(abs(x2 - x1), abs(y2 - y1), 1e-9)
        along = ((x2 - x1) / length, (y2 - y1) / length)
        across = (-along[1], along[0])
        size = min(5.5, length / 2)
        self.line([start, end], role, 0.9)
        for (x, y), sign in ((start, 1), (end, -1)):
            back = (x + sign * size * along[0], y + sign * size * along[1])
            self.shape(
                [(x, y), *((back[0] + side * across[0], back[1] + side * across[1])
                           for side in (1.9, -1.9))],
                role,
            )  # fmt: skip


def lift() -> tuple[float, float]:
    """Give the point that lifts the pen between two strokes of one line."""
    return (_GAP, _GAP)


def axis_lines(name: str) -> list[str]:
    """Give the lines of an axis' name."""
    return wrapped(name, WIDTH - 110)


def room_above(y_name: str) -> float:
    """Give the room that the upright axis' name takes above a plot."""
    return 20 + LEADING * max(1, len(axis_lines(y_name)))


def room_below(x_name: str) -> float:
    """Give the room that figures and name of the level axis take below a plot."""
    return 28 + LEADING * max(1, len(axis_lines(x_name)))


@dataclass(frozen=True)
class Plot:
    """A plotting area on a sheet, with linear scales."""

    sheet: Sheet
    left: float
    top: float
    right: float
    bottom: float
    x_limits: tuple[float, float]
    y_limits: tuple[float, float]

    def x(self, value: float) -> float:
        """Give the place of a value along the sheet."""
        low, high = self.x_limits
        return self.left + (value - low) / (high - low) * (self.right - self.left)

    def value_at(self, x: float) -> float:
        """Give the value that stands at a place along the sheet."""
        low, high = self.x_limits
        return low + (x - self.left) / (self.right - self.left) * (high - low)

    def y(self, value: float) -> float:
        """Give the place of a value down the sheet."""
        low, high = self.y_limits
        return self.bottom - (value - low) / (high - low) * (self.bottom - self.top)

    def trace(
        self, xs: Sequence[float], ys: Sequence[float], role: Role, width: float = 1.6,
        dashes: tuple[float, ...] = (),
    ) -> None:  # fmt: skip
        """Draw a curve in the scales of the plot."""
        self.sheet.line(self._through(xs, ys), role, width, dashes)

    def area(self, xs: Sequence[float], low: Sequence[float], high: Sequence[float]) -> None:
        """Fill the band between two curves in the scales of the plot."""
        back = self._through(xs, low)[::-1]
        self.sheet.shape([*self._through(xs, high), *back], Role.BAND)

    def _through(self, xs: Sequence[float], ys: Sequence[float]) -> list[tuple[float, float]]:
        return [(self.x(x), self.y(y)) for x, y in zip(xs, ys, strict=True)]

    def graticule(
        self, x_ticks: Sequence[float], y_ticks: Sequence[float], *,
        x_name: str = "", y_name: str = "", x_texts: bool = True,
    ) -> None:  # fmt: skip
        """Draw the grid, its fine marks along two edges, the figures and the names of the axes.

        The upright axis is named above its top end, level, so that nobody tilts a phone.
        """
        sheet = self.sheet
        across = [self.x(tick) for tick in x_ticks]
        down = [self.y(tick) for tick in y_ticks]
        grid: list[tuple[float, float]] = []
        for x in across:
            grid += [(x, self.top), (x, self.bottom), lift()]
        for y in down:
            grid += [(self.left, y), (self.right, y), lift()]
        if grid:
            sheet.line(grid, Role.GRID, 0.7)
        marks: list[tuple[float, float]] = []
        for x in _subdivided(across, x_ticks, self.left, self.right):
            marks += [(x, self.bottom), (x, self.bottom - 3), lift()]
        for y in _subdivided(down, y_ticks, self.top, self.bottom):
            marks += [(self.left, y), (self.left + 3, y), lift()]
        marks += [(self.left, self.top), (self.left, self.bottom), (self.right, self.bottom)]
        sheet.line(marks, Role.MUTED, 0.8)
        if x_texts:
            for x, tick in zip(across, x_ticks, strict=True):
                sheet.text(x, self.bottom + 15, tick_text(tick), Role.MUTED, align="center")
        for y, tick in zip(down, y_ticks, strict=True):
            sheet.text(self.left - 6, y + 4.3, tick_text(tick), Role.MUTED, align="right")
        self.name_axes(x_name, y_name)

    def name_axes(self, x_name: str, y_name: str) -> None:
        """Write the names of the axes: the level one below its figures, the other above its end."""
        if x_name:
            self.sheet.text(
                self.right, self.bottom + 31, axis_lines(x_name), Role.MUTED, align="right"
            )
        if y_name:
            lines = axis_lines(y_name)
            first = self.top - 8 - LEADING * (len(lines) - 1)
            self.sheet.text(10, first, lines, Role.MUTED)


def _subdivided(
    places: Sequence[float], ticks: Sequence[float], low: float, high: float
) -> list[float]:
    """Give the fine marks: each step of the grid in four or five, on out to both ends."""
    if len(places) < 2:
        return list(places)
    leading = f"{ticks[1] - ticks[0]:e}"[0]
    step = abs(places[1] - places[0]) / (4 if leading == "2" else 5)
    first, last = ceil((low - places[0]) / step - 1e-9), floor((high - places[0]) / step + 1e-9)
    return [places[0] + index * step for index in range(first, last + 1)]
