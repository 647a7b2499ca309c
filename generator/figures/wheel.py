"""A toothed wheel with missing teeth, the sensor that looks at it and the air gap between."""

from __future__ import annotations

from dataclasses import dataclass

from generator.figures.document import WIDTH, Words, checked_id, finite
from generator.figures.drawing import LEADING, Drawing, Point, polar, through
from generator.figures.lettering import wrapped
from generator.figures.style import Role

_ROOT, _TIP = 82.0, 94.0
_FACE, _BACK = 106.0, 150.0
# More than on any pulse wheel on a road vehicle known to this project, and still drawn apart.
_MOST_POSITIONS = 120
_SENSOR, _GAP, _MISSING, _DIRECTION = range(4)


@dataclass(frozen=True, slots=True, kw_only=True)
class WheelWords(Words):
    """Words of :func:`trigger_wheel`, the key below the drawing; an empty one is left out.

    Parameters
    ----------
    sensor : str
        The sensor.
    gap : str
        The air gap with its limits.
    missing : str
        The missing teeth.
    direction : str
        Which way the wheel turns, and seen from where.
    """

    sensor: str
    gap: str
    missing: str
    direction: str


def trigger_wheel(
    figure_id: str,
    words: WheelWords,
    positions: int,
    missing: int,
    sensor_deg: float,
    missing_deg: float,
    clockwise: bool = True,
) -> str:
    """Draw a toothed wheel, its missing teeth, its sensor and the air gap.

    Parameters
    ----------
    figure_id : str
        Prefix of all ids.
    words : WheelWords
        Title, description and key.
    positions : int
        Tooth positions of the full wheel, 4 to 120.
    missing : int
        Neighbouring positions without a tooth.
    sensor_deg : float
        Where the sensor sits, degrees clockwise from the top.
    missing_deg : float
        Middle of the missing teeth, degrees clockwise from the top.
    clockwise : bool, optional
        Whether the wheel turns clockwise as drawn.

    Returns
    -------
    str
        The figure as SVG. The gap is drawn larger than it is.

    Raises
    ------
    ValueError
        For a wheel that cannot be, or angles not finite.
    """
    if not 4 <= positions <= _MOST_POSITIONS or not 0 <= missing < positions:
        raise ValueError(f"{missing} of {positions} positions missing is not a wheel to draw")
    finite("angles", sensor_deg, missing_deg)
    above, below = _extent(sensor_deg), _extent(sensor_deg + 180)
    key = [words.sensor, words.gap, words.missing if missing else "", words.direction]
    wheel = _Wheel(Drawing(checked_id(figure_id)), (WIDTH / 2, above + 14), 360 / positions, key)
    first_missing = missing_deg - missing * wheel.pitch / 2
    wheel.rim(positions - missing, first_missing + missing * wheel.pitch)
    wheel.ghosts(missing, first_missing)
    wheel.hub()
    wheel.direction(clockwise)
    wheel.sensor(sensor_deg)
    wheel.tag(_MISSING, wheel.beside_missing(missing_deg, sensor_deg))
    foot = wheel.write_key(above + below + 44)
    return wheel.drawing.finish("trigger-wheel", words, foot)


def _extent(sensor_deg: float) -> float:
    """Give how far the drawing reaches above its centre."""
    upward, sideways = -polar((0, 0), 1, sensor_deg)[1], abs(polar((0, 0), 1, sensor_deg)[0])
    return max(_TIP + 24, (_BACK + 2) * upward + 42 * sideways)


@dataclass(frozen=True)
class _Wheel:
    """The wheel's place on the sheet, and its parts."""

    drawing: Drawing
    centre: Point
    pitch: float
    key: list[str]

    def tag(self, part: int, place: Point) -> None:
        """Put a part's number beside it, if the key names it."""
        if self.key[part]:
            self.drawing.tag(*place, self.number(part))

    def number(self, part: int) -> str:
        """Give a part's number: its turn among those that the key names."""
        return str(sum(map(bool, self.key[: part + 1])))

    def tooth(self, start_deg: float) -> list[Point]:
        """Give the outline of the tooth in the position that starts at an angle."""
        shares = ((_ROOT, 0.22), (_TIP, 0.28), (_TIP, 0.72), (_ROOT, 0.78))
        return [
            polar(self.centre, radius, start_deg + share * self.pitch) for radius, share in shares
        ]

    def rim(self, teeth: int, first_deg: float) -> None:
        """Draw the teeth that are there, and the bare rim on from the last to the first."""
        outline: list[Point] = []
        for index in range(teeth):
            outline += self.tooth(first_deg + index * self.pitch)
        end_deg, bare_deg = first_deg + teeth * self.pitch, 360 - teeth * self.pitch
        steps = int(bare_deg // 3)
        outline += [
            polar(self.centre, _ROOT, end_deg + bare_deg * k / (steps + 1)) for k in range(steps)
        ]
        self.drawing.path(through(outline, closed=True), fill=Role.METAL, width=1.2)

    def ghosts(self, missing: int, first_deg: float) -> None:
        """Draw the missing teeth dashed."""
        teeth = [through(self.tooth(first_deg + index * self.pitch)) for index in range(missing)]
        if teeth:
            self.drawing.path("".join(teeth), edge=Role.ACCENT, width=1.2, dashes="2 2")

    def hub(self) -> None:
        """Draw the web of the wheel with its bolts and centre lines."""
        self.drawing.circle(*self.centre, 58, fill=Role.PAPER)
        self.drawing.circle(*self.centre, 9)
        for quarter in range(4):
            self.drawing.circle(*polar(self.centre, 24, 45 + 90 * quarter), 3.5, edge=Role.MUTED)
            ends = (polar(self.centre, radius, 90 * quarter) for radius in (0, 15))
            self.drawing.line(ends, Role.MUTED, 0.8, "6 2 1 2")

    def direction(self, clockwise: bool) -> None:
        """Draw the arrow of rotation."""
        start, end = (120.0, 235.0) if clockwise else (240.0, 125.0)
        arc = [polar(self.centre, 44, start + (end - start) * k / 20) for k in range(21)]
        self.drawing.path(through(arc), width=2, round_ends=True)
        tip = polar(self.centre, 44, end + (8 if clockwise else -8))
        self.drawing.arrowhead(tip, (tip[0] - arc[-1][0], tip[1] - arc[-1][1]), Role.INK, 12)
        self.tag(_DIRECTION, polar(self.centre, 44, 180))

    def sensor(self, at_deg: float) -> None:
        """Draw the sensor's nose and body on its radius, and the dimension of the air gap."""

        def corner(radius: float, aside: float) -> Point:
            (x, y), (ax, ay) = polar(self.centre, radius, at_deg), polar((0, 0), 1, at_deg + 90)
            return (x + aside * ax, y + aside * ay)

        def closed(*corners: tuple[float, float]) -> str:
            return through([corner(*each) for each in corners], closed=True)

        base = _FACE + 14
        nose = closed((_FACE, -8), (_FACE, 8), (base, 8), (base, -8))
        body = closed((base, -15), (base, 15), (_BACK, 15), (_BACK, -15))
        self.drawing.path(nose, fill=Role.METAL, width=1.4)
        self.drawing.path(body, fill=Role.BAND, width=1.4)
        self.tag(_SENSOR, corner((base + _BACK) / 2, 0))
        # An outward dimension: arrows from either side to the two faces that bound the gap.
        aside = -31
        for radius in (_FACE, _TIP):
            self.drawing.line([corner(radius, aside - 5), corner(radius, -8)], Role.LIMIT)
        self.drawing.arrow(corner(_FACE + 18, aside), corner(_FACE, aside), Role.LIMIT)
        self.drawing.arrow(corner(_TIP - 18, aside), corner(_TIP, aside), Role.LIMIT)
        self.drawing.line([corner(_FACE, aside), corner(_TIP, aside)], Role.LIMIT)
        self.tag(_GAP, corner(_FACE + 26, aside))

    def beside_missing(self, missing_deg: float, sensor_deg: float) -> Point:
        """Give where the missing teeth's tag stands: outside, or inside where the sensor is."""
        apart = abs((missing_deg - sensor_deg + 180) % 360 - 180)
        return polar(self.centre, _TIP + 14 if apart > 36 else _ROOT - 13, missing_deg)

    def write_key(self, y: float) -> float:
        """Write the key below the wheel and give how far down it reaches."""
        for part, text in enumerate(self.key):
            lines = wrapped(text, WIDTH - 54)
            if not lines:
                continue
            self.drawing.tag(22, y - 4.3, self.number(part))
            self.drawing.text(40, y, lines)
            y += LEADING * len(lines) + 7
        return y - 4
