"""A meter, its two leads, and where they go."""

from __future__ import annotations

from dataclasses import dataclass
from textwrap import wrap

from generator.figures.connector import Connector, Placed, placed
from generator.figures.document import TEXT, WIDTH, Words, checked_id
from generator.figures.drawing import LEADING, Drawing, Point, polar, through
from generator.figures.leads import PROBE, cable, lead_to
from generator.figures.lettering import wrapped
from generator.figures.style import Role

_METER = (14.0, 14.0, 138.0, 182.0)
_DIAL = (83.0, 106.0)
_SOCKET_Y = 176.0
_METER_FOOT = _METER[1] + _METER[3]
_COLUMN = 174.0
_COLUMN_WIDE = WIDTH - _COLUMN - 12


@dataclass(frozen=True, slots=True, kw_only=True)
class HookupWords(Words):
    """Words of :func:`meter_hookup`.

    Parameters
    ----------
    dial : str
        Heads the meter's setting.
    red, black : str
        Names of the leads.
    keyway : str
        Where the keyway is, or what to orient the connector by; may be empty.
    state : str
        Whether the connector is unplugged, or plugged and probed from behind.
    view : str
        From which side it is seen.
    """

    dial: str
    red: str
    black: str
    keyway: str
    state: str
    view: str


@dataclass(frozen=True, slots=True)
class Meter:
    """A multimeter.

    Parameters
    ----------
    display : str
        What it shows: up to about 25 characters; more is cut off.
    setting : str
        What its dial is set to.
    sockets : tuple of str
        Its sockets, left to right.
    """

    display: str
    setting: str
    sockets: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Lead:
    """Where one lead goes.

    Parameters
    ----------
    socket : str
        Socket of the meter.
    text : str
        What its probe touches, in words.
    pin : str
        Pin of the connector that it touches; empty where it touches something else, which is
        then drawn as a stud named `text`.
    """

    socket: str
    text: str
    pin: str = ""


def meter_hookup(
    figure_id: str,
    words: HookupWords,
    meter: Meter,
    connector: Connector | None,
    red: Lead,
    black: Lead,
) -> str:
    """Draw a meter with its leads on the pins of a connector, or on studs.

    Parameters
    ----------
    figure_id : str
        Prefix of all ids.
    words : HookupWords
        Title, description, headings, state and view.
    meter : Meter
        Display, setting and sockets.
    connector : Connector or None
        The connector as seen; None where both leads go to studs.
    red, black : Lead
        Where the leads go.

    Returns
    -------
    str
        The figure as SVG.

    Raises
    ------
    ValueError
        For a socket the meter lacks, both leads in one socket or on one pin, or a pin that the
        connector lacks or leaves empty.
    """
    drawing = Drawing(checked_id(figure_id))
    leads = [(red, Role.RED_LEAD), (black, Role.BLACK_LEAD)]
    _check(meter, connector, red, black)
    _meter(drawing, meter)
    foot = max(_column(drawing, words, meter, red, black), _METER_FOOT) + 16
    studs: dict[str, Point] = {}
    for lead, _ in leads:
        if not lead.pin:
            studs[lead.text], foot = _stud(drawing, lead.text, foot)
    lanes = foot + 4
    at = placed(connector, lanes + 24 + PROBE) if connector else None
    if at:
        at.draw(drawing, {red.pin, black.pin} - {""})
        foot = _captions(drawing, words, at, _room_below(at, red, black))
    upper_first = sorted(leads, key=lambda each: -_socket_x(meter, each[0].socket))
    for index, (lead, role) in enumerate(upper_first):
        start = (_socket_x(meter, lead.socket), _SOCKET_Y)
        if at and lead.pin:
            route, needle = _to_pin(at, lead.pin, start, lanes + 11 * index, index)
        else:
            route, needle = _to_stud(studs[lead.text], start)
        lead_to(drawing, route, needle, role)
    return drawing.finish("meter-hookup", words, foot)


def _check(meter: Meter, connector: Connector | None, red: Lead, black: Lead) -> None:
    for lead in (red, black):
        if lead.socket not in meter.sockets:
            raise ValueError(f"the meter has no socket {lead.socket!r}")
        found = [c for c in connector.cavities() if c.pin == lead.pin] if connector else []
        if lead.pin and not any(cavity.filled for cavity in found):
            raise ValueError(f"the connector has no terminal at pin {lead.pin!r}")
        if not lead.pin and not lead.text:
            raise ValueError("a lead that goes to no pin needs the text of its stud")
    if red.socket == black.socket:
        raise ValueError("both leads are in one socket")
    if (red.pin, red.pin or red.text) == (black.pin, black.pin or black.text):
        raise ValueError("both leads touch the same place")


def _socket_x(meter: Meter, socket: str) -> float:
    step = _METER[2] / len(meter.sockets)
    return _METER[0] + step * (meter.sockets.index(socket) + 0.5)


def _meter(drawing: Drawing, meter: Meter) -> None:
    left, top, wide, tall = _METER
    drawing.box(left, top, wide, tall, fill=Role.GRID, stroke=1.6, corner=12)
    drawing.box(left + 10, top + 10, wide - 20, 40, fill=Role.PAPER, stroke=1.2, corner=3)
    _display(drawing, meter.display, left + wide - 17, top + 30)
    for tick in range(9):
        ends = (polar(_DIAL, radius, -135 + 30 * tick) for radius in (32, 36))
        drawing.line(ends, Role.INK, 1.2)
    drawing.circle(*_DIAL, 28, fill=Role.METAL, stroke=1.2)
    knob = [polar(_DIAL, 24, angle) for angle in (75, 91, 239, 271, 419)]
    drawing.path(through([*knob], closed=True), fill=Role.PAPER, width=1.2)
    drawing.line([polar(_DIAL, 10, 75), polar(_DIAL, 23, 75)], Role.ACCENT, 2.4)
    for socket in meter.sockets:
        x = _socket_x(meter, socket)
        drawing.circle(x, _SOCKET_Y, 7.5, fill=Role.PAPER, stroke=1.4)
        drawing.circle(x, _SOCKET_Y, 3, edge=None, fill=Role.INK)
        drawing.text(x, _SOCKET_Y - 13, socket, align="middle", bold=True)


def _display(drawing: Drawing, shown: str, right: float, middle: float) -> None:
    """Write the display as large as it fits: one line, or two small ones and no more."""
    room = _METER[2] - 34
    # A monospaced face is at most 0.62 em wide.
    size = min(25.0, room / (0.62 * max(1, len(shown))))
    lines = [shown]
    if size < TEXT:
        size = TEXT
        lines = wrap(shown, int(room / (0.62 * TEXT)), max_lines=2, placeholder="…")
    first = middle + size * 0.35 - LEADING / 2 * (len(lines) - 1)
    drawing.text(right, first, lines, align="end", bold=True, size=size, mono=True)


def _column(drawing: Drawing, words: HookupWords, meter: Meter, red: Lead, black: Lead) -> float:
    """Write the setting and both leads at the right of the meter; give how far down it goes."""
    pointer = polar(_DIAL, 38, 75)
    across = (_COLUMN - 11, pointer[1])
    drawing.line([pointer, across, (across[0], 36), (_COLUMN - 4, 36)], Role.ACCENT, 1.2)
    y = 26.0
    heading = wrapped(words.dial, _COLUMN_WIDE)
    drawing.text(_COLUMN, y, heading, Role.MUTED)
    y += LEADING * len(heading)
    setting = wrapped(meter.setting, _COLUMN_WIDE, 14, bold=True)
    drawing.text(_COLUMN, y, setting, bold=True, size=14)
    y += LEADING * len(setting) + 13
    for lead, name, role in (
        (red, words.red, Role.RED_LEAD), (black, words.black, Role.BLACK_LEAD)
    ):  # fmt: skip
        cable(drawing, through([(_COLUMN + 2, y - 4), (_COLUMN + 22, y - 4)]), role)
        named = wrapped(f"{name}: {lead.socket}", _COLUMN_WIDE - 30, bold=True)
        drawing.text(_COLUMN + 30, y, named, bold=True)
        y += LEADING * len(named)
        touched = wrapped(lead.text, _COLUMN_WIDE - 30)
        drawing.text(_COLUMN + 30, y, touched)
        y += LEADING * len(touched) + 9
    return y - 14


def _stud(drawing: Drawing, text: str, top: float) -> tuple[Point, float]:
    """Draw a stud with its name at the right; give where a clip grips it and the foot."""
    lines = wrapped(text, _COLUMN_WIDE - 34, bold=True)
    tall = LEADING * len(lines) + 11
    drawing.box(_COLUMN + 12, top, _COLUMN_WIDE - 8, tall, edge=Role.ACCENT, stroke=1.4, corner=4)
    drawing.circle(_COLUMN + 12, top + tall / 2, 8, fill=Role.METAL, stroke=1.4)
    drawing.circle(_COLUMN + 12, top + tall / 2, 3.5, fill=Role.PAPER)
    drawing.text(_COLUMN + 27, top + 17, lines, bold=True)
    return (_COLUMN + 4, top + tall / 2), top + tall + 12


def _to_stud(stud: Point, start: Point) -> tuple[list[Point], list[Point]]:
    end = (stud[0] - PROBE, stud[1])
    return [start, (start[0], stud[1]), end], [stud]


def _to_pin(
    at: Placed, pin: str, start: Point, lane: float, index: int
) -> tuple[list[Point], list[Point]]:
    """Give a lead's way to a pin, along a lane above it or round the side to come from below.

    The second list is the way of the probe's needle: past the rows before, then aside to the pin.
    """
    probe = at.probed(pin)
    x = probe.lane
    needle = [probe.tip] if x == probe.tip[0] else [(x, probe.tip[1]), probe.tip]
    if probe.from_above:
        end = (x, at.top + 8 - PROBE)
        return [start, (start[0], lane), (x, lane), end], needle
    left = start[0] < x or x < WIDTH / 2
    side = at.left - 16 - 6 * index if left else at.right + 16 + 6 * index
    under = at.bottom + PROBE + 8 + 11 * index
    around = [(start[0], lane), (side, lane), (side, under), (x, under)]
    return [start, *around, (x, at.bottom - 8 + PROBE)], needle


def _room_below(at: Placed, red: Lead, black: Lead) -> float:
    below = any(lead.pin and not at.probed(lead.pin).from_above for lead in (red, black))
    return PROBE + 30 if below else 16.0


def _captions(drawing: Drawing, words: HookupWords, at: Placed, room: float) -> float:
    """Write state, view and keyway below the connector, each behind its glyph."""
    y = at.bottom + room + 18
    _halves(drawing, y - 4.3, at.connector.plugged)
    y = _caption(drawing, words.state, y, True) + 4
    drawing.eye(20, y - 4.3)
    y = _caption(drawing, words.view, y, False)
    if words.keyway:
        y += 4
        drawing.box(20, y - 9, 20, 9, edge=Role.MUTED, corner=1.5)
        drawing.box(26, y - 13, 8, 5, edge=Role.MUTED, fill=Role.METAL)
        y = _caption(drawing, words.keyway, y, False)
    return y + 1


def _caption(drawing: Drawing, text: str, y: float, bold: bool) -> float:
    lines = wrapped(text, WIDTH - 66, bold=bold)
    drawing.text(54, y, lines, Role.INK if bold else Role.MUTED, bold=bold)
    return y + LEADING * max(1, len(lines))


def _halves(drawing: Drawing, y: float, plugged: bool) -> None:
    """The two halves of a connector from the side: apart, or joined."""
    left, right = (19, 30) if plugged else (16, 34)
    for x in (left, right):
        drawing.box(x, y - 6, 11, 12, fill=Role.METAL, corner=1.5)
    outer = [((left - 5, y), (left, y)), ((right + 11, y), (right + 16, y))]
    inner = [] if plugged else [((left + 11, y), (left + 15, y))]
    for ends in (*outer, *inner):
        drawing.line(ends, width=1.6)
