"""Where on an engine to look for a sensor."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from enum import StrEnum

from generator.figures.document import WIDTH, Words, checked_id
from generator.figures.drawing import LEADING, Drawing, through
from generator.figures.lettering import wrapped
from generator.figures.style import Role


class Zone(StrEnum):
    """Where a crankshaft or camshaft sensor may sit."""

    CRANK_PULLEY = "crank_pulley"
    TIMING_DRIVE = "timing_drive"
    BESIDE_BLOCK = "beside_block"
    FLYWHEEL_END = "flywheel_end"


class Seen(StrEnum):
    """From where the engine is drawn."""

    SIDE = "side"
    ABOVE = "above"


class Reach(StrEnum):
    """From where a hand gets there."""

    ABOVE = "above"
    BELOW = "below"


@dataclass(frozen=True, slots=True, kw_only=True)
class PlaceWords(Words):
    """Words of :func:`where_to_look`.

    Parameters
    ----------
    crank_pulley, timing_drive, beside_block, flywheel_end : str
        Names of the zones, each up to three lines of a dozen letters.
    reach : str
        How to get there, such as "from below, wheel off".
    view : str
        From where the engine is drawn, and which end is the front.
    """

    crank_pulley: str
    timing_drive: str
    beside_block: str
    flywheel_end: str
    reach: str
    view: str


@dataclass(frozen=True, slots=True)
class _Patch:
    """A zone on the drawing: its rectangle, and where its pointer lands."""

    x: float
    y: float
    width: float
    height: float
    point: tuple[float, float]


_TOP = 96.0
_SHAFT = {Seen.SIDE: _TOP + 124, Seen.ABOVE: _TOP + 71}
_FOOT = {Seen.SIDE: _TOP + 178, Seen.ABOVE: _TOP + 162}
# In the order of the names above the drawing, left to right.
_ZONES = {
    Seen.SIDE: {
        Zone.CRANK_PULLEY: _Patch(50, _TOP + 100, 22, 48, (60, _TOP + 106)),
        Zone.TIMING_DRIVE: _Patch(75, _TOP + 5, 24, 132, (88, _TOP + 14)),
        Zone.BESIDE_BLOCK: _Patch(158, _TOP + 74, 74, 44, (206, _TOP + 82)),
        Zone.FLYWHEEL_END: _Patch(264, _TOP + 74, 20, 100, (274, _TOP + 82)),
    },
    Seen.ABOVE: {
        Zone.CRANK_PULLEY: _Patch(50, _TOP + 46, 22, 50, (60, _TOP + 52)),
        Zone.TIMING_DRIVE: _Patch(75, _TOP + 5, 24, 132, (88, _TOP + 14)),
        Zone.BESIDE_BLOCK: _Patch(158, _TOP + 134, 74, 24, (206, _TOP + 142)),
        Zone.FLYWHEEL_END: _Patch(264, _TOP + 14, 20, 114, (274, _TOP + 22)),
    },
}
_NAME_WIDE = 82.0


def where_to_look(figure_id: str, words: PlaceWords, zone: Zone, seen: Seen, reach: Reach) -> str:
    """Draw an engine with its zones named, and one of them hatched and pointed to.

    Parameters
    ----------
    figure_id : str
        Prefix of all ids.
    words : PlaceWords
        Title, description, names of the zones, the way there, the view.
    zone : Zone
        The zone to look at.
    seen : Seen
        From where the engine is drawn: its front is always at the left.
    reach : Reach
        From where a hand gets there.

    Returns
    -------
    str
        The figure as SVG. The engine is a scheme, not a certain one.
    """
    drawing = Drawing(checked_id(figure_id))
    patches = _ZONES[seen]
    (_engine_from_side if seen is Seen.SIDE else _engine_from_above)(drawing)
    _shaft(drawing, seen)
    for each, patch in patches.items():
        _zone(drawing, patch, each is zone)
    for index, (each, patch) in enumerate(patches.items()):
        _name(drawing, getattr(words, each.value), 52 + 85.5 * index, patch, each is zone)
    foot = _FOOT[seen]
    if seen is Seen.SIDE and reach is Reach.BELOW:
        patch = patches[zone]
        _block_arrow(drawing, patch.x + patch.width / 2, foot + 28, patch.y + patch.height + 3)
        foot += 28
    foot = _line(drawing, lambda y: _way_in(drawing, y, reach), words.reach, foot + 28, True)
    foot = _line(drawing, lambda y: drawing.eye(14, y), words.view, foot + 4, False)
    return drawing.finish("where-to-look", words, foot - 6)


def _engine_from_side(drawing: Drawing) -> None:
    """Bell housing, cam cover, head, block with its sump, timing cover, pulley."""
    y = _TOP
    bell = [(262, 60), (290, 60), (322, 92), (322, 158), (290, 178), (262, 178)]
    drawing.path(through([(x, y + down) for x, down in bell], closed=True), edge=Role.MUTED)
    drawing.box(106, y, 148, 20, edge=Role.MUTED, corner=4)
    drawing.box(98, y + 20, 164, 26, edge=Role.MUTED)
    drawing.box(98, y + 46, 164, 90, edge=Role.MUTED)
    sump = [(106, 136), (254, 136), (248, 174), (156, 174), (140, 158), (112, 158)]
    drawing.path(through([(x, y + down) for x, down in sump], closed=True), edge=Role.MUTED)
    for x in (118, 238):
        drawing.circle(x, y + 92, 5, edge=Role.GRID)


def _engine_from_above(drawing: Drawing) -> None:
    """Bell housing, block, cam cover with its plug wells."""
    y = _TOP
    bell = [(262, 6), (290, 6), (322, 34), (322, 108), (290, 136), (262, 136)]
    drawing.path(through([(x, y + down) for x, down in bell], closed=True), edge=Role.MUTED)
    drawing.box(98, y + 8, 164, 126, edge=Role.MUTED)
    drawing.box(108, y + 24, 144, 94, edge=Role.MUTED, corner=10)
    for index in range(4):
        drawing.circle(129 + 34 * index, y + 71, 9, edge=Role.MUTED)


def _shaft(drawing: Drawing, seen: Seen) -> None:
    y = _SHAFT[seen]
    drawing.line([(40, y), (332, y)], Role.MUTED, 0.8, "10 3 2 3")


def _zone(drawing: Drawing, patch: _Patch, active: bool) -> None:
    place = (patch.x, patch.y, patch.width, patch.height)
    drawing.box(*place, edge=None, fill=Role.PAPER, corner=3)
    if active:
        drawing.box(*place, edge=None, fill=Role.BAND, corner=3)
        drawing.box(*place, edge=Role.ACCENT, stroke=2.4, corner=3, hatched=True)
    else:
        drawing.box(*place, corner=3)


def _name(drawing: Drawing, name: str, middle: float, patch: _Patch, active: bool) -> None:
    """Write a zone's name above the drawing and point from it to the zone."""
    role = Role.ACCENT if active else Role.MUTED
    lines = wrapped(name, _NAME_WIDE, bold=active)
    drawing.text(middle, 24, lines, role, align="middle", bold=active)
    start = (middle, 30 + LEADING * (len(lines) - 1))
    drawing.line([start, patch.point], role, 2 if active else 0.9)
    drawing.circle(*patch.point, 4 if active else 2.2, edge=None, fill=role)


def _block_arrow(drawing: Drawing, x: float, tail: float, tip: float) -> None:
    """A broad arrow straight up or down to a tip."""
    way = 1 if tip > tail else -1
    neck = tip - way * 11
    outline = [(x - 4, tail), (x - 4, neck), (x - 10, neck), (x, tip), (x + 10, neck),
               (x + 4, neck), (x + 4, tail)]  # fmt: skip
    drawing.path(through(outline, closed=True), edge=Role.ACCENT, fill=Role.PAPER, width=1.6)


def _way_in(drawing: Drawing, y: float, reach: Reach) -> None:
    """A small engine over the ground, with an arrow from the side a hand comes from."""
    lift = -6 if reach is Reach.BELOW else 4
    drawing.box(14, y - 5 + lift, 20, 9, fill=Role.METAL, corner=1.5)
    drawing.line([(12, y + 13), (36, y + 13)], Role.MUTED, 1.4)
    tail, tip = (y + 11, y - 1) if reach is Reach.BELOW else (y - 14, y - 2)
    drawing.arrow((24, tail), (24, tip), Role.ACCENT, 2, 8)


def _line(
    drawing: Drawing, glyph: Callable[[float], None], text: str, y: float, bold: bool
) -> float:
    """Write a line behind a small glyph and give how far down it reaches."""
    lines = wrapped(text, WIDTH - 58, bold=bold)
    glyph(y - 4.3)
    role = Role.ACCENT if bold else Role.MUTED
    drawing.text(44, y, lines, role, bold=bold)
    return y + max(LEADING * len(lines), 20) + 4
