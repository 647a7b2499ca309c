"""The outside of every figure: root element, accessible name, paper, shared hatching."""

from __future__ import annotations

import re
from dataclasses import dataclass
from math import isfinite
from xml.sax.saxutils import escape

from generator.figures.style import Role, paint

WIDTH = 360
"""Width of every figure in units, near the width of a phone's column: a unit is about a pixel."""

TEXT = 12
"""Smallest type, in units."""

HALO = "halo"
"""Marks letters that stand on lines; the theme puts a rim of paper round them."""

_ID = re.compile(r"[a-z][a-z0-9-]*\Z")
# XML 1.0 (fifth edition), production 2: the characters that no document may hold.
_ILLEGAL = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")


@dataclass(frozen=True, slots=True, kw_only=True)
class Words:
    """The words every figure needs; a figure's own words extend them.

    Parameters
    ----------
    title : str
        Accessible name: what the figure is.
    desc : str
        Accessible description: what a reader learns from it. Whoever cannot see the figure has
        only this, so it carries the figures themselves.
    """

    title: str
    desc: str


def legal(text: str) -> str:
    """Give a text with the characters that XML cannot hold replaced."""
    return _ILLEGAL.sub("\ufffd", text)


def escaped(text: str) -> str:
    """Give a text fit for XML content and double-quoted attributes."""
    return escape(legal(text), {'"': "&quot;"})


def number(value: float) -> str:
    """Give a coordinate with at most two decimals.

    Raises
    ------
    ValueError
        For infinity or "not a number".
    """
    if not isfinite(value):
        raise ValueError(f"a figure cannot show {value}")
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def finite(name: str, *values: float) -> None:
    """Raise ValueError unless every value is a finite number."""
    for value in values:
        if not isfinite(value):
            raise ValueError(f"{name}: {value} is not a finite number")


def checked_id(figure_id: str) -> str:
    """Give a figure's id back.

    Raises
    ------
    ValueError
        Unless it is small letters, digits and hyphens, led by a letter: it prefixes every id in
        the figure and stands inside ``url(#…)``.
    """
    if not _ID.match(figure_id):
        raise ValueError(f"figure id {figure_id!r}: use small letters, digits and hyphens")
    return figure_id


def hatch(figure_id: str) -> str:
    """Give the paint of the shared hatching, which :func:`document` defines where it is used."""
    return f"url(#{figure_id}-hatch)"


def document(figure_id: str, kind: str, words: Words, height: float, body: str) -> str:
    """Wrap a figure's body into one inline SVG.

    Parameters
    ----------
    figure_id : str
        Prefix of all ids.
    kind : str
        Class of this figure, ``fig-<kind>``, for the theme.
    words : Words
        Title and description.
    height : float
        Height in units; the width is :data:`WIDTH`.
    body : str
        SVG elements.

    Returns
    -------
    str
        The figure. It has a viewBox but neither width nor height, and takes the room it is given.
    """
    checked_id(figure_id)
    hatching = ""
    if hatch(figure_id) in body:
        hatching = (
            f'<defs><pattern id="{figure_id}-hatch" width="6" height="6" '
            'patternUnits="userSpaceOnUse" patternTransform="rotate(45)">'
            f'<path d="M0 0V6" stroke="{paint(Role.MUTED)}" stroke-width="1.4"/></pattern></defs>'
        )
    xlink = ' xmlns:xlink="http://www.w3.org/1999/xlink"' if "xlink:" in body else ""
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg"{xlink} class="fig fig-{kind}" '
        f'viewBox="0 0 {WIDTH} {number(height)}" role="img" '
        f'aria-labelledby="{figure_id}-title {figure_id}-desc" '
        f'font-family="var(--fig-font, system-ui, sans-serif)" font-size="{TEXT}" '
        f'fill="{paint(Role.INK)}" stroke-linejoin="round">'
        f'<title id="{figure_id}-title">{escaped(words.title)}</title>'
        f'<desc id="{figure_id}-desc">{escaped(words.desc)}</desc>'
        f'{hatching}<rect x=".5" y=".5" width="{WIDTH - 1}" height="{number(height - 1)}" rx="5" '
        f'fill="{paint(Role.PAPER)}" stroke="{paint(Role.GRID)}"/>{body}</svg>'
    )
