"""A hand-drawn figure: a few strokes and words in roles, written straight as SVG."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import cos, hypot, pi, sin

from generator.figures.document import HALO, TEXT, Words, document, escaped, hatch, number
from generator.figures.style import Role, paint

Point = tuple[float, float]

LEADING = 15
"""From one line of text to the next, in units."""


class Drawing:
    """SVG elements in the order they cover one another.

    Parameters
    ----------
    figure_id : str
        Prefix of all ids.
    """

    def __init__(self, figure_id: str) -> None:
        self._figure_id = figure_id
        self._parts: list[str] = []

    def path(
        self, outline: str, *, edge: Role | None = Role.INK, fill: Role | None = None,
        width: float = 1.0, dashes: str = "", hatched: bool = False, round_ends: bool = False,
    ) -> None:  # fmt: skip
        """Add a path, drawn, filled, or hatched."""
        face = hatch(self._figure_id) if hatched else paint(fill) if fill else "none"
        attributes = f' fill="{face}"'
        if edge:
            attributes += f' stroke="{paint(edge)}"'
            attributes += f' stroke-width="{number(width)}"' if width != 1 else ""
            attributes += f' stroke-dasharray="{dashes}"' if dashes else ""
            attributes += ' stroke-linecap="round"' if round_ends else ""
        self._parts.append(f'<path d="{outline}"{attributes}/>')

    def line(self, points: Iterable[Point], role: Role = Role.INK, width: float = 1.0,
             dashes: str = "") -> None:  # fmt: skip
        """Add a line through points."""
        self.path(through(points), edge=role, width=width, dashes=dashes)

    def box(
        self, x: float, y: float, width: float, height: float, *, edge: Role | None = Role.INK,
        fill: Role | None = None, stroke: float = 1.0, corner: float = 0, hatched: bool = False,
    ) -> None:  # fmt: skip
        """Add a rectangle with its corners rounded."""
        face = hatch(self._figure_id) if hatched else paint(fill) if fill else "none"
        places = zip(("x", "y", "width", "height"), (x, y, width, height), strict=True)
        attributes = "".join(f' {name}="{number(value)}"' for name, value in places)
        attributes += f' rx="{number(corner)}"' if corner else ""
        attributes += f' fill="{face}"'
        attributes += f' stroke="{paint(edge)}" stroke-width="{number(stroke)}"' if edge else ""
        self._parts.append(f"<rect{attributes}/>")

    def circle(
        self, x: float, y: float, radius: float, *, edge: Role | None = Role.INK,
        fill: Role | None = None, stroke: float = 1.0,
    ) -> None:  # fmt: skip
        """Add a circle."""
        attributes = f' fill="{paint(fill) if fill else "none"}"'
        attributes += f' stroke="{paint(edge)}" stroke-width="{number(stroke)}"' if edge else ""
        self._parts.append(
            f'<circle cx="{number(x)}" cy="{number(y)}" r="{number(radius)}"{attributes}/>'
        )

    def text(
        self, x: float, y: float, text: str | Sequence[str], role: Role = Role.INK, *,
        align: str = "start", bold: bool = False, size: float = TEXT, halo: bool = False,
        mono: bool = False,
    ) -> None:  # fmt: skip
        """Add lines of text; `y` is the base line of the first, `align` an SVG text-anchor."""
        lines = [text] if isinstance(text, str) else text
        placed = [(x, y + index * LEADING, line) for index, line in enumerate(lines)]
        self.texts(placed, role, align=align, bold=bold, size=size, halo=halo, mono=mono)

    def texts(
        self, placed: Sequence[tuple[float, float, str]], role: Role = Role.INK, *,
        align: str = "start", bold: bool = False, size: float = TEXT, halo: bool = False,
        mono: bool = False,
    ) -> None:  # fmt: skip
        """Add texts that look alike, each at its own place."""
        attributes = f' fill="{paint(role)}"' if role is not Role.INK else ""
        attributes += f' text-anchor="{align}"' if align != "start" else ""
        attributes += ' font-weight="700"' if bold else ""
        attributes += f' font-size="{number(size)}"' if size != TEXT else ""
        if mono:
            attributes += ' font-family="var(--fig-mono, ui-monospace, monospace)"'
        if halo:
            attributes += f' class="{HALO}"'
        alone = attributes if len(placed) == 1 else ""
        inside = "".join(
            f'<text x="{number(x)}" y="{number(y)}"{alone}>{escaped(text)}</text>'
            for x, y, text in placed
        )
        self._parts.append(inside if alone or not attributes else f"<g{attributes}>{inside}</g>")

    def arrow(
        self, start: Point, end: Point, role: Role = Role.INK, width: float = 1.0,
        head: float = 6.0,
    ) -> None:  # fmt: skip
        """Add a line with an arrowhead at its end."""
        self.line([start, end], role, width)
        self.arrowhead(end, (end[0] - start[0], end[1] - start[1]), role, head)

    def arrowhead(self, tip: Point, towards: Point, role: Role, size: float = 6.0) -> None:
        """Add an arrowhead that points along a direction."""
        length = hypot(*towards) or 1.0
        along = (towards[0] / length * size, towards[1] / length * size)
        across = (-along[1] * 0.42, along[0] * 0.42)
        back = (tip[0] - along[0], tip[1] - along[1])
        wings = [
            (back[0] + across[0], back[1] + across[1]), (back[0] - across[0], back[1] - across[1])
        ]  # fmt: skip
        self.path(through([tip, *wings], closed=True), edge=None, fill=role)

    def tag(self, x: float, y: float, text: str) -> None:
        """Add a ringed number or letter, to point from a drawing to its key."""
        self.circle(x, y, 9, fill=Role.PAPER, stroke=1.2)
        self.text(x, y + 4.3, text, align="middle", bold=True)

    def eye(self, x: float, y: float) -> None:
        """Add an eye, 20 units wide, for a line that says from where one looks."""
        lids = f"M{number(x)} {number(y)}q10 -11 20 0q-10 11 -20 0z"
        self.path(lids, edge=Role.MUTED, width=1.2)
        self.circle(x + 10, y, 3, edge=None, fill=Role.MUTED)

    def finish(self, kind: str, words: Words, height: float) -> str:
        """Give the finished figure."""
        return document(self._figure_id, kind, words, height, "".join(self._parts))


def through(points: Iterable[Point], closed: bool = False) -> str:
    """Give the path of straight lines through points."""
    pairs = [f"{number(x)} {number(y)}" for x, y in points]
    return f"M{' '.join(pairs)}{'z' if closed else ''}"


def boxes(corners: Iterable[Point], width: float, height: float) -> str:
    """Give the path of like rectangles by their upper left corners."""
    side = f"h{number(width)}v{number(height)}h{number(-width)}z"
    outline, last = "", (0.0, 0.0)
    for x, y in corners:  # each is reached from the one before, where closing left the pen
        outline += f"m{_pair((x - last[0], y - last[1]))}{side}"
        last = (x, y)
    return outline


def rounded(points: Sequence[Point], radius: float) -> str:
    """Give the path through points with its corners rounded."""
    outline = f"M{number(points[0][0])} {number(points[0][1])}"
    for before, corner, after in zip(points, points[1:], points[2:], strict=False):
        cut_in, cut_out = (_towards(corner, other, radius) for other in (before, after))
        outline += f"L{_pair(cut_in)}Q{_pair(corner)} {_pair(cut_out)}"
    return f"{outline}L{_pair(points[-1])}"


def _towards(start: Point, end: Point, distance: float) -> Point:
    length = hypot(end[0] - start[0], end[1] - start[1])
    share = min(distance / length, 0.5) if length else 0.0
    return (start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1]))


def _pair(point: Point) -> str:
    return f"{number(point[0])} {number(point[1])}"


def polar(centre: Point, radius: float, clock_deg: float) -> Point:
    """Give a point by its angle clockwise from the top, as on a clock."""
    angle = clock_deg * pi / 180
    return (centre[0] + radius * sin(angle), centre[1] - radius * cos(angle))
