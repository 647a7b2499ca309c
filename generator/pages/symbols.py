"""Signs beside a caution: our own drawings, picked by the registered number that a rule carries.

The numbers are those of ISO 7010 and are data; the shapes are drawn here from plain lines, none
after the standard's art. A triangle warns, a disc asks for something, a ring with a bar forbids.
Where only things can be damaged the frame is square, because the triangle speaks of injury.
"""

from __future__ import annotations

from math import cos, pi, sin
from typing import NamedTuple

from markupsafe import Markup

from generator.hazards import Word
from generator.pages.prose import drawn

LONGEST = 1000
"""Bytes that one drawing may have; it stands on a page once for each hazard in a box."""


class Glyph(NamedTuple):
    """What stands inside a sign, as path data: strokes, and filled shapes (holes even-odd)."""

    lines: str = ""
    solid: str = ""


def _dot(x: float, y: float, r: float) -> str:
    return f"M{x - r:g} {y:g}a{r:g} {r:g} 0 1 0 {2 * r:g} 0a{r:g} {r:g} 0 1 0 {-2 * r:g} 0z"


def _rays(x: float, y: float, near: float, far: float, count: int) -> str:
    angles = [2 * pi * n / count - pi / 2 for n in range(count)]
    return "".join(
        f"M{x + near * cos(a):.1f} {y + near * sin(a):.1f}"
        f"L{x + far * cos(a):.1f} {y + far * sin(a):.1f}"
        for a in angles
    )


def _burst(x: float, y: float, near: float, far: float, points: int) -> str:
    """Give a spiky star."""
    angles = [pi * n / points - pi / 2 for n in range(2 * points)]
    corners = [
        f"{x + (near if n % 2 else far) * cos(a):.1f} {y + (near if n % 2 else far) * sin(a):.1f}"
        for n, a in enumerate(angles)
    ]
    return f"M{'L'.join(corners)}z"


def _gear(x: float, y: float, root: float, tip: float, teeth: int) -> str:
    """Give a toothed wheel with a hole at its hub."""
    corners = []
    for n in range(4 * teeth):
        radius, angle = (tip if n % 4 in (0, 1) else root), 2 * pi * (n - 0.5) / (4 * teeth)
        corners.append(f"{x + radius * cos(angle):.1f} {y + radius * sin(angle):.1f}")
    return f"M{'L'.join(corners)}z{_dot(x, y, root / 2.4)}"


_FLAME = (
    "M25 13c1 5 8 9 8 16a9 8 0 0 1-18 0c0-4 2-6 3.5-8 .5 2 1 3 2.5 4 1-4 .5-8 4-12z"
    "M24 35.5a3.5 3.5 0 0 0 3.5-3.5c0-2-1.6-3-2.6-5-1.4 2-4.4 3-4.4 5a3.5 3.5 0 0 0 3.5 3.5z"
)
_PERSON = "M18.5 37.5a5.5 4 0 0 1 11 0z"

WARNS: dict[str, Glyph] = {
    # general; explosive; magnet; cold; electricity
    "W001": Glyph(solid="M21.8 14h4.4l-.8 15h-2.8z" + _dot(24, 34, 2.2)),
    "W002": Glyph(solid=_burst(24, 28, 4.5, 9.5, 9)),
    "W006": Glyph("M18 27v3a6 6 0 0 0 12 0v-3", "M16.2 21.5h3.8v4h-3.8zM28 21.5h3.8v4H28z"),
    "W010": Glyph(_rays(24, 28.5, 0, 8.5, 6) + "M21.5 21.5 24 24l2.5-2.5M21.5 35.5 24 33l2.5 2.5"),
    "W012": Glyph(solid="M26 13l-8 14.5h5L20 38l10-14.5h-5.5L28 13z"),
    # overhead load; toxic; hot surface; automatic start; crushing
    "W015": Glyph("M24 13v6", "M18 19.5h12v7H18z" + _dot(24, 31, 2.2) + _PERSON),
    "W016": Glyph(
        "M14 36.5h20",
        "M24 15c-5 0-8 3.6-8 8 0 3 1.4 5 3.2 6.2V33h9.6v-3.8c1.8-1.2 3.2-3.2 3.2-6.2"
        " 0-4.4-3-8-8-8z" + _dot(20.8, 23.5, 1.9) + _dot(27.2, 23.5, 1.9),
    ),
    "W017": Glyph(
        "M17.5 31c-2-3 2-4 0-7M24 31c-2.4-4.5 2.4-6 0-11M30.5 31c-2-3 2-4 0-7M12 36.5h24"
    ),
    "W018": Glyph("M31.7 26a8 8 0 1 1-3.7-4.9", "M26 16.5l7 4.2-6.6 4.5z"
                  "M21.8 24.2l6.4 3.9-6.4 3.9z"),
    "W019": Glyph(
        "M18 23.5v6m-2.4-2.5 2.4 2.7 2.4-2.7M30 23.5v6m-2.4-2.5 2.4 2.7 2.4-2.7",
        "M19 16h10v5H19zM12 34.5h24v3H12z" + _dot(24, 30, 2.8),
    ),
    # flammable; sharp; corrosive; fingers; battery; cylinder
    "W021": Glyph(solid=_FLAME),
    "W022": Glyph("M12 37h9l3-3.5 3 3.5h9", "M14 31l19-8v8z"),
    "W023": Glyph(
        "M12 32h6.5l2 4.5 3-2.5 3 3 2.5-5H36",
        "M20.5 18c1.5 2.5 2.6 3.7 2.6 5.3a2.6 2.6 0 0 1-5.2 0c0-1.6 1.1-2.8 2.6-5.3z"
        "M28.5 21c1.5 2.5 2.6 3.7 2.6 5.3a2.6 2.6 0 0 1-5.2 0c0-1.6 1.1-2.8 2.6-5.3z",
    ),
    "W024": Glyph(
        "M24 23.5v3.5",
        "M17.5 17.5h13v5h-13zM36 37.5H19.5a1.9 1.9 0 0 1 0-3.8h-3a1.9 1.9 0 0 1 0-3.8"
        "H29l7 3.5z",
    ),
    "W026": Glyph(
        "M14 24h20v12.5H14zM17 30h4.5M26.5 30H31M28.75 27.75v4.5",
        "M17 19.5h4v3.5h-4zM27 19.5h4v3.5h-4z",
    ),
    "W029": Glyph(
        "M24 22v-4M21 17.5h6M31 29l3.5-1.5M31.5 34l4 1M17 29l-3.5-1.5M16.5 34l-4 1",
        "M20 37.5V26a4 4 0 0 1 8 0v11.5z",
    ),
    # falling objects; foul air; arc; health; environment; hot contents; gears
    "W035": Glyph(
        "M19 20l-1.5-3M26 25l-1.5-3",
        "M20 19.5l5 1.5-1.5 5-5-1.5zM28 25l5 1.5-1.5 5-5-1.5z" + _dot(20, 30.5, 2.6)
        + "M14.5 37.5a5.5 4.5 0 0 1 11 0z",
    ),
    "W041": Glyph(
        "M16 31a3.6 3.6 0 0 1 .5-6.5 6 6 0 0 1 11-3 5 5 0 0 1 5 9.5",
        _dot(24, 30, 2.8) + _PERSON,
    ),
    "W042": Glyph(
        "M24 33v-4M24 25v-9M20.5 30l-3-5M27.5 30l3-5", "M11 33h9v4.5h-9zM28 33h9v4.5h-9z"
    ),
    "W071": Glyph(
        solid=_dot(24, 17.5, 3.2) + "M14 37.5v-5c0-6 4-9 10-9s10 3 10 9v5z"
        "M23 26.5v8.5h-5.5c0-4.5 1.5-8 5.5-8.5zM25 26.5c4 .5 5.5 4 5.5 8.5H25z"
    ),
    "W072": Glyph(
        "M11 35.5c3-3 5 3 8.5 0s5.5 3 9 0 5.5 3 8.5 0",
        "M24 14c3 5 5 7.5 5 10.5a5 5 0 0 1-10 0c0-3 2-5.5 5-10.5z",
    ),
    "W079": Glyph(
        "M20 24c-1.7-2.4 1.7-3.1 0-5.5M24 22c-1.7-2.4 1.7-3.1 0-5.5M28 24c-1.7-2.4 1.7-3.1 0-5.5",
        "M13.5 27.5h21l-2.5 10H16z",
    ),
    "W089": Glyph(solid=_gear(17.5, 31, 4.8, 6.8, 8) + _gear(30.5, 31, 4.8, 6.8, 8)),
}  # fmt: skip
"""Registered number to what stands in the triangle."""

ASKS: dict[str, Glyph] = {
    "M001": Glyph(solid="M21.8 9h4.4l-.8 17h-2.8z" + _dot(24, 32, 2.4)),
    # read the instructions; ears; eyes; unplug
    "M002": Glyph(
        "M24 14c-3-2.5-7-2.5-11-2v18c4-.5 8-.5 11 2 3-2.5 7-2.5 11-2V12c-4-.5-8-.5-11 2zM24 14v18"
    ),
    "M003": Glyph("M16 23v-3a8 8 0 0 1 16 0v3", "M13 22.5h6v10h-6zM29 22.5h6v10h-6z"),
    "M004": Glyph(_dot(17.3, 22, 5) + _dot(30.7, 22, 5) + "M12.5 20.5L10 18M35.5 20.5L38 18"),
    "M021": Glyph(
        "M8 22h6M23.5 19h4M23.5 25h4M34 22h6", "M14 15.5h5a5 6.5 0 0 1 0 13h-5zM31 15.5h3v13h-3z"
    ),
}
"""Registered number to what stands on the disc."""

FORBIDS: dict[str, Glyph] = {
    # flame; watch and ring
    "P003": Glyph(solid=_FLAME),
    "P008": Glyph(
        _dot(24, 24.5, 5.5) + "M24 21.5v3l2 1.5M20.5 19.5l1-6h5l1 6M20.5 29.5l1 6h5l1-6"
    ),
}
"""Registered number to what the ring with the bar forbids."""

TRIANGLE = "M24 3 46 41H2z"
SQUARE = "M4 3h40v38H4z"


def sign(number: str | None, word: Word) -> Markup:
    """Draw the sign of a hazard; nothing where its rule names none.

    Parameters
    ----------
    number : str or None
        Registered number; one without a drawing of its own gets the general one of its kind.
    word : Word
        The hazard's own signal word.
    """
    if number is None:
        return Markup()
    if number.startswith("P"):
        body = _forbids(FORBIDS.get(number, Glyph()))
    elif number.startswith("M"):
        body = _asks(ASKS.get(number, ASKS["M001"]))
    else:
        frame = SQUARE if word is Word.NOTICE else TRIANGLE
        body = _stroke(frame, 3) + _glyph(WARNS.get(number, WARNS["W001"]))
    return drawn(
        f'<svg class="sign" viewBox="0 0 48 44" data-symbol="{number}" aria-hidden="true">'
        f"{body}</svg>"
    )


def _forbids(glyph: Glyph) -> str:
    ring = _stroke(_dot(24, 22, 19) + "M10.6 8.6 37.4 35.4", 3.5)
    return f'<g transform="translate(5.3 2.9) scale(.78)">{_glyph(glyph)}</g>{ring}'


def _asks(glyph: Glyph) -> str:
    disc = f'<path d="{_dot(24, 22, 20)}" fill="currentColor"/>'
    return f'{disc}<g class="sign-cut">{_glyph(glyph)}</g>'


def _glyph(glyph: Glyph) -> str:
    solid = (
        f'<path d="{glyph.solid}" fill="currentColor" fill-rule="evenodd"/>' if glyph.solid else ""
    )
    return solid + (_stroke(glyph.lines, 2.4) if glyph.lines else "")


def _stroke(path: str, width: float) -> str:
    return (
        f'<path d="{path}" fill="none" stroke="currentColor" stroke-width="{width:g}"'
        ' stroke-linecap="round" stroke-linejoin="round"/>'
    )
