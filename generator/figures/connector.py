"""A connector seen from one side: its cavities with pin numbers and wires, its keyway."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from enum import StrEnum
from math import floor

from generator.figures.document import WIDTH, number
from generator.figures.drawing import Drawing, Point, boxes
from generator.figures.lettering import text_width
from generator.figures.style import Role

_WIDEST = 276.0
_PAD = 9.0
_KEY = 8.0


class Keyway(StrEnum):
    """On which side of the connector, as drawn, its keyway or latch is."""

    TOP = "top"
    BOTTOM = "bottom"
    LEFT = "left"
    RIGHT = "right"
    NONE = "none"


@dataclass(frozen=True, slots=True)
class Cavity:
    """One place for a terminal.

    Parameters
    ----------
    pin : str
        Its number, as moulded.
    wire : str
        Colour of its wire, short.
    filled : bool
        Whether a terminal is in it.
    """

    pin: str
    wire: str = ""
    filled: bool = True


@dataclass(frozen=True, slots=True)
class Connector:
    """A connector as seen from the side looked at.

    Parameters
    ----------
    rows : tuple of tuple of Cavity
        Cavities from top to bottom and left to right *as seen*; who looks from the other side
        mirrors them first.
    keyway : Keyway
        Side of its keyway, as seen.
    plugged : bool
        True for the wire side of a plugged connector, probed from behind; false for the open
        face of an unplugged one, terminals in sight.
    """

    rows: tuple[tuple[Cavity, ...], ...]
    keyway: Keyway = Keyway.NONE
    plugged: bool = False

    def cavities(self) -> Iterator[Cavity]:
        """Give all cavities in reading order."""
        for row in self.rows:
            yield from row


Cell = tuple[Cavity, float, float, bool]
"""A cavity, its upper left corner, and whether its probe comes from above."""


@dataclass(frozen=True, slots=True)
class Probed:
    """Where a probe meets a cavity.

    Parameters
    ----------
    tip : tuple of float
        Where its tip rests.
    lane : float
        Where it passes the rows before, along the sheet: between two columns.
    from_above : bool
        Whether it comes from above the connector or from below.
    """

    tip: Point
    lane: float
    from_above: bool


@dataclass(frozen=True, slots=True)
class Placed:
    """A connector's place on the sheet."""

    connector: Connector
    top: float
    cell_wide: float
    cell_tall: float
    wires_shown: bool

    @property
    def left(self) -> float:
        """Left side of the housing."""
        return WIDTH / 2 - self._wide / 2

    @property
    def right(self) -> float:
        """Right side of the housing."""
        return WIDTH / 2 + self._wide / 2

    @property
    def bottom(self) -> float:
        """Lower side of the housing."""
        return self.top + len(self.connector.rows) * self.cell_tall + 2 * _PAD

    @property
    def _wide(self) -> float:
        return max(map(len, self.connector.rows)) * self.cell_wide + 2 * _PAD

    def cell(self, row: int, column: int) -> Point:
        """Give a cavity's upper left corner; a shorter row stands in the middle."""
        wide = len(self.connector.rows[row]) * self.cell_wide
        return (
            WIDTH / 2 - wide / 2 + column * self.cell_wide,
            self.top + _PAD + row * self.cell_tall,
        )

    def probed(self, pin: str) -> Probed:
        """Give where a probe meets a pin's cavity: from the side its row is nearer to."""
        for row, cavities in enumerate(self.connector.rows):
            for column, cavity in enumerate(cavities):
                if cavity.pin == pin:
                    x, y = self.cell(row, column)
                    above = self._from_above(row)
                    tip = (x + self.cell_wide / 2, y + 10 if above else y + self.cell_tall - 10)
                    outermost = row in (0, len(self.connector.rows) - 1)
                    return Probed(tip, tip[0] if outermost else x, above)
        raise ValueError(f"no pin {pin!r} in the connector")

    def _from_above(self, row: int) -> bool:
        return row < (len(self.connector.rows) + 1) // 2

    def draw(self, drawing: Drawing, probed: set[str]) -> None:
        """Draw the housing and every cavity, those probed outlined boldly."""
        _keyway(drawing, self)
        drawing.box(
            self.left, self.top, self.right - self.left, self.bottom - self.top,
            fill=Role.METAL, stroke=1.4, corner=7,
        )  # fmt: skip
        cells = [
            (cavity, *self.cell(row, column), self._from_above(row))
            for row, cavities in enumerate(self.connector.rows)
            for column, cavity in enumerate(cavities)
        ]
        self._cavities(drawing, cells, probed)
        self._terminals(drawing, cells)
        self._letters(drawing, cells, probed)

    def _cavities(self, drawing: Drawing, cells: list[Cell], probed: set[str]) -> None:
        def outline(wanted: Callable[[Cavity], bool]) -> str:
            corners = [(x + 1.5, y + 1.5) for cavity, x, y, _ in cells if wanted(cavity)]
            return boxes(corners, self.cell_wide - 3, self.cell_tall - 3)

        drawing.path(outline(lambda cavity: True), fill=Role.PAPER, width=0.9)
        empty = outline(lambda cavity: not cavity.filled)
        if empty:
            drawing.path(empty, edge=Role.MUTED, width=0.9, hatched=True)
        chosen = outline(lambda cavity: cavity.pin in probed)
        if chosen:
            drawing.path(chosen, edge=Role.ACCENT, width=2.4)

    def _terminals(self, drawing: Drawing, cells: list[Cell]) -> None:
        """Draw open terminals as slots; from behind, wires in their seals."""
        tops = [
            (x + self.cell_wide / 2, y if above else y + self.cell_tall - 20)
            for cavity, x, y, above in cells
            if cavity.filled
        ]
        if self.connector.plugged:
            for radius, edge, fill in ((5.5, Role.MUTED, None), (3.0, None, Role.INK)):
                arc = f"a{radius} {radius} 0 1 0"
                ring = f"{arc} {2 * radius} 0{arc} {-2 * radius} 0"
                rings = [f"M{number(x - radius)} {number(y + 10)}{ring}" for x, y in tops]
                drawing.path("".join(rings), edge=edge, fill=fill)
        else:
            half = min(6.0, self.cell_wide / 2 - 3)
            slots = boxes([(x - half, y + 7) for x, y in tops], 2 * half, 6)
            drawing.path(slots, edge=None, fill=Role.INK)

    def _letters(self, drawing: Drawing, cells: list[Cell], probed: set[str]) -> None:
        middle = self.cell_wide / 2
        pins = [
            (x + middle, y + (30 if above else 15), cavity.pin)
            for cavity, x, y, above in cells
            if cavity.pin in probed or text_width(cavity.pin) <= self.cell_wide - 2
        ]
        for bold in (False, True):
            same = [each for each in pins if (each[2] in probed) is bold]
            if same:
                drawing.texts(same, align="middle", bold=bold, halo=True)
        wires = [
            (x + middle, y + (44 if above else 29), cavity.wire)
            for cavity, x, y, above in cells
            if self.wires_shown and cavity.wire
        ]
        if wires:
            drawing.texts(wires, Role.MUTED, align="middle")


def placed(connector: Connector, top: float) -> Placed:
    """Give a connector its place, its cells as wide as the sheet allows.

    Raises
    ------
    ValueError
        For a connector without cavities, with a pin twice, or too wide to letter.
    """
    pins = [cavity.pin for cavity in connector.cavities()]
    if not pins or not all(connector.rows):
        raise ValueError("a connector has at least one cavity in each row")
    if len(set(pins)) != len(pins):
        raise ValueError("a pin stands twice in the connector")
    # Below nine units not even a slot can be told from its neighbour.
    cell_wide = min(60.0, floor(2 * _WIDEST / max(map(len, connector.rows))) / 2)
    if cell_wide < 9:
        raise ValueError("a row of more than 30 cavities cannot be read on a phone")
    wires = [cavity.wire for cavity in connector.cavities()]
    shown = any(wires) and all(text_width(wire) <= cell_wide - 5 for wire in wires)
    return Placed(connector, top, cell_wide, 50.0 if shown else 36.0, shown)


def _keyway(drawing: Drawing, at: Placed) -> None:
    middle = (at.top + at.bottom) / 2
    tabs = {
        Keyway.TOP: (WIDTH / 2 - 20, at.top - _KEY, 40, _KEY + 4),
        Keyway.BOTTOM: (WIDTH / 2 - 20, at.bottom - 4, 40, _KEY + 4),
        Keyway.LEFT: (at.left - _KEY, middle - 13, _KEY + 4, 26),
        Keyway.RIGHT: (at.right - 4, middle - 13, _KEY + 4, 26),
    }
    if at.connector.keyway in tabs:
        drawing.box(*tabs[at.connector.keyway], fill=Role.METAL, stroke=1.4, corner=2)
