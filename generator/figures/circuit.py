"""One circuit from its feed to ground, top to bottom, one stop a row."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from enum import StrEnum

from generator.figures.document import WIDTH, Words, checked_id, number
from generator.figures.drawing import LEADING, Drawing, through
from generator.figures.lettering import wrapped
from generator.figures.style import Role

_TRUNK = 40
_LABEL = 76
_ROOM = WIDTH - _LABEL - 12


class Stop(StrEnum):
    """What stands at a stop of a circuit."""

    SUPPLY = "supply"
    FUSE = "fuse"
    RELAY = "relay"
    SPLICE = "splice"
    CONNECTOR = "connector"
    PART = "part"
    GROUND = "ground"


@dataclass(frozen=True, slots=True)
class CircuitStop:
    """One stop of a circuit.

    Parameters
    ----------
    kind : Stop
        Which symbol to draw.
    label : str
        What it is called.
    detail : str
        More about it, such as a rating, a place or a pin.
    wire : str
        The wire to the next stop: colour, cross-section.
    also_feeds : tuple of str
        What else hangs on this stop.
    mark : str
        What to do or to suspect here; it is set off with a flag.
    """

    kind: Stop
    label: str
    detail: str = ""
    wire: str = ""
    also_feeds: tuple[str, ...] = ()
    mark: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class CircuitWords(Words):
    """Words of :func:`circuit_strip`.

    Parameters
    ----------
    also_feeds : str
        Heads what else a stop feeds.
    """

    also_feeds: str


def circuit_strip(figure_id: str, words: CircuitWords, stops: Sequence[CircuitStop]) -> str:
    """Draw a circuit as an upright strip with its shared feeds branching off.

    Parameters
    ----------
    figure_id : str
        Prefix of all ids.
    words : CircuitWords
        Title, description and the heading of branches.
    stops : sequence of CircuitStop
        From the feed to ground; at least two.

    Returns
    -------
    str
        The figure as SVG.

    Raises
    ------
    ValueError
        For fewer than two stops.
    """
    if len(stops) < 2:
        raise ValueError("a circuit has at least two stops")
    drawing = Drawing(checked_id(figure_id))
    places, feet = _places(stops, words.also_feeds)
    # Wires and branches first, so that the symbols cover their ends.
    for stop, y, next_y, foot in zip(stops, places, places[1:], feet, strict=False):
        drawing.line([(_TRUNK, y), (_TRUNK, next_y)], width=1.6)
        wire = wrapped(stop.wire, _ROOM)
        drawing.text(_TRUNK + 10, max(foot, y + 14) + 20, wire, Role.MUTED)
    for stop, y in zip(stops, places, strict=True):
        _words(drawing, stop, y, words.also_feeds)
        _SYMBOLS[stop.kind](drawing, y)
    return drawing.finish("circuit-strip", words, max(feet[-1], places[-1] + 22) + 10)


def _places(stops: Sequence[CircuitStop], heading: str) -> tuple[list[float], list[float]]:
    """Give where each stop's symbol stands, and how far down its words reach."""
    places, feet = [26.0], []
    for stop in stops:
        y = places[-1]
        foot = y + 4.3 + LEADING * (_count(stop, heading) - 1)
        feet.append(foot)
        wire = LEADING * len(wrapped(stop.wire, _ROOM))
        places.append(max(foot, y + 14) + wire + 30)
    return places[:-1], feet


def _count(stop: CircuitStop, heading: str) -> int:
    lines = [*_labelled(stop), *wrapped(stop.detail, _ROOM), *_marked(stop)]
    return len(lines) + sum(map(len, _branches(stop, heading)))


def _labelled(stop: CircuitStop) -> list[str]:
    return wrapped(stop.label, _ROOM, bold=True)


def _marked(stop: CircuitStop) -> list[str]:
    return wrapped(stop.mark, _ROOM - 14, bold=True)


def _branches(stop: CircuitStop, heading: str) -> list[list[str]]:
    """Give the heading's lines, then each branch's; nothing where nothing branches off."""
    if not stop.also_feeds:
        return []
    return [wrapped(heading, _ROOM), *(wrapped(each, _ROOM - 22) for each in stop.also_feeds)]


def _words(drawing: Drawing, stop: CircuitStop, y: float, heading: str) -> None:
    label, detail, mark = _labelled(stop), wrapped(stop.detail, _ROOM), _marked(stop)
    line = y + 4.3
    drawing.text(_LABEL, line, label, bold=True)
    line += LEADING * len(label)
    drawing.text(_LABEL, line, detail, Role.MUTED)
    line += LEADING * len(detail)
    if mark:
        _flag(drawing, y, line)
        drawing.text(_LABEL + 14, line, mark, Role.ACCENT, bold=True)
        line += LEADING * len(mark)
    branches = _branches(stop, heading)
    if not branches:
        return
    drawing.text(_LABEL, line, branches[0], Role.MUTED)
    line += LEADING * len(branches[0])
    rail = _LABEL - 12
    for branch in branches[1:]:
        at = line - 4.3
        drawing.arrow((rail, at), (_LABEL + 14, at), Role.TRACE2, 1.3)
        drawing.text(_LABEL + 22, line, branch)
        foot = at
        line += LEADING * len(branch)
    drawing.path(
        through([(_TRUNK, y), (rail, y), (rail, foot)]), edge=Role.TRACE2, width=1.3, dashes="4 2"
    )


def _flag(drawing: Drawing, y: float, line: float) -> None:
    """Ring the symbol and put a flag before the words of its mark."""
    drawing.circle(_TRUNK, y, 21, edge=Role.ACCENT, stroke=1.6)
    at = line - 4.3
    drawing.arrowhead((_LABEL, at), (-1, 0), Role.ACCENT, 9)


def _supply(drawing: Drawing, y: float) -> None:
    drawing.box(_TRUNK - 16, y - 12, 32, 24, fill=Role.PAPER, stroke=1.4, corner=2)
    for side, height in ((-8, 4), (8, 4)):
        drawing.box(_TRUNK + side - 3, y - 12 - height, 6, height, fill=Role.METAL)
    drawing.line([(_TRUNK - 12, y), (_TRUNK - 4, y)], width=1.4)
    drawing.line([(_TRUNK + 4, y), (_TRUNK + 12, y)], width=1.4)
    drawing.line([(_TRUNK + 8, y - 4), (_TRUNK + 8, y + 4)], width=1.4)


def _fuse(drawing: Drawing, y: float) -> None:
    drawing.box(_TRUNK - 7, y - 14, 14, 28, fill=Role.PAPER, stroke=1.4)
    drawing.line([(_TRUNK, y - 14), (_TRUNK, y + 14)], width=1.4)


def _relay(drawing: Drawing, y: float) -> None:
    """The contact in the line, and the coil that pulls it."""
    drawing.box(_TRUNK - 18, y - 15, 36, 30, fill=Role.PAPER, stroke=1.4, corner=2)
    drawing.line([(_TRUNK, y - 15), (_TRUNK, y - 9)], width=1.4)
    drawing.line([(_TRUNK, y + 15), (_TRUNK, y + 7), (_TRUNK + 9, y - 8)], width=1.4)
    drawing.box(_TRUNK - 14, y - 6, 9, 12, stroke=1.2)
    drawing.line([(_TRUNK - 14, y + 4), (_TRUNK - 5, y - 4)], width=1)
    drawing.line([(_TRUNK - 5, y), (_TRUNK + 3, y)], Role.MUTED, 1, "2 1.5")


def _splice(drawing: Drawing, y: float) -> None:
    drawing.circle(_TRUNK, y, 4.5, fill=Role.INK)


def _connector(drawing: Drawing, y: float) -> None:
    """A socket's cup over a pin."""
    drawing.box(_TRUNK - 9, y - 10, 18, 20, edge=None, fill=Role.PAPER)
    cup = f"M{_TRUNK - 8} {number(y + 3)}a8 8 0 0 1 16 0"
    drawing.path(cup, width=1.6)
    drawing.line([(_TRUNK, y - 10), (_TRUNK, y - 5)], width=1.6)
    drawing.circle(_TRUNK, y + 3, 3, fill=Role.INK)
    drawing.line([(_TRUNK, y + 3), (_TRUNK, y + 10)], width=1.6)


def _part(drawing: Drawing, y: float) -> None:
    drawing.box(_TRUNK - 16, y - 13, 32, 26, fill=Role.BAND, stroke=1.6, corner=5)


def _ground(drawing: Drawing, y: float) -> None:
    for index, half in enumerate((13, 8.5, 4)):
        level = y + 5 * index
        drawing.line([(_TRUNK - half, level), (_TRUNK + half, level)], width=1.8)


_SYMBOLS: dict[Stop, Callable[[Drawing, float], None]] = {
    Stop.SUPPLY: _supply,
    Stop.FUSE: _fuse,
    Stop.RELAY: _relay,
    Stop.SPLICE: _splice,
    Stop.CONNECTOR: _connector,
    Stop.PART: _part,
    Stop.GROUND: _ground,
}
