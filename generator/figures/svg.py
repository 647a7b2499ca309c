"""A plotting library's figure to a small, clean, themed SVG.

The library writes colours, style attributes, a global style sheet, metadata and ids that mean
nothing to a page. What leaves here has none of those: colours are roles, presentation attributes
stand in the place of styles, coordinates have two decimals, and every id begins with the figure's.
"""

from __future__ import annotations

import re
import warnings
from collections.abc import Callable, Iterator
from functools import lru_cache
from io import StringIO
from threading import Lock
from typing import TYPE_CHECKING, Any
from xml.etree import ElementTree

from generator.figures.document import (
    HALO,
    TEXT,
    WIDTH,
    Words,
    checked_id,
    document,
    escaped,
    hatch,
    number,
)
from generator.figures.style import HATCH_SENTINEL, SENTINELS, Role, paint

if TYPE_CHECKING:
    from matplotlib.figure import Figure

UNITS_PER_INCH = 72

_LOCK = Lock()
_NUMBER = re.compile(r"-?\d+(?:\.\d+)?(?:e[+-]?\d+)?")
_REFERENCE = re.compile(r"url\(#([^)]+)\)")
_NUMERIC = {"d", "x", "y", "width", "height", "transform", "stroke-width", "stroke-dasharray"}
# What SVG assumes anyway, or the root already says.
_DEFAULTS = {
    ("opacity", "1"), ("stroke-width", "1"), ("stroke-linejoin", "round"),
    ("stroke-linecap", "butt"), ("stroke-dashoffset", "0"),
    ("font-size", f"{TEXT}px"), ("fill", paint(Role.INK)),
}  # fmt: skip
_LINK = "{http://www.w3.org/1999/xlink}href"


def plotted(
    figure_id: str, kind: str, words: Words, height: float, draw: Callable[[Figure], None]
) -> str:
    """Give a plotted figure as inline SVG.

    Parameters
    ----------
    figure_id : str
        Prefix of all ids.
    kind : str
        Class of the figure, for the theme.
    words : Words
        Title and description.
    height : float
        Height, in units; the width is always :data:`~generator.figures.document.WIDTH`.
    draw : callable
        Draws on the empty figure it is given, in sentinel colours only.

    Returns
    -------
    str
        The SVG; the same bytes for the same input in every process.

    Raises
    ------
    ValueError
        For an id that cannot be, or a number that is not finite.
    """
    checked_id(figure_id)
    # One Figure serves every chart: making it takes as long as drawing a chart (22 against
    # 36 ms, measured). The lock keeps two threads off the one figure and its settings.
    with _LOCK, _settings(), warnings.catch_warnings():
        # The words are set by the browser; a letter that the plotter's face lacks is no fault.
        warnings.filterwarnings("ignore", message="Glyph .* missing from")
        figure = _figure()
        figure.clear()
        figure.set_size_inches(WIDTH / UNITS_PER_INCH, height / UNITS_PER_INCH)
        figure.patch.set_visible(False)
        draw(figure)
        written = StringIO()
        nothing = dict.fromkeys(("Date", "Creator", "Format", "Type"))
        figure.savefig(written, format="svg", metadata=nothing, facecolor="none")
    return document(figure_id, kind, words, height, _body(written.getvalue(), figure_id))


@lru_cache(maxsize=1)
def _figure() -> Figure:
    from matplotlib.backends.backend_svg import FigureCanvasSVG
    from matplotlib.figure import Figure

    figure = Figure()
    FigureCanvasSVG(figure)
    return figure


def _settings() -> Any:
    """Give the context of settings: the library's own defaults, whatever the user's file says."""
    import matplotlib

    return matplotlib.rc_context(_pinned())  # type: ignore[arg-type]


_SECTIONS = {
    "axes", "figure", "font", "grid", "hatch", "lines", "markers", "patch", "path", "savefig",
    "svg", "text", "xtick", "ytick",
}  # fmt: skip


@lru_cache(maxsize=1)
def _pinned() -> dict[str, Any]:
    import matplotlib

    pinned: dict[str, Any] = {
        str(key): value
        for key, value in matplotlib.rcParamsDefault.items()
        if key.split(".")[0] in _SECTIONS and key != "savefig.directory"
    }
    return pinned | {
        "svg.fonttype": "none",
        "svg.hashsalt": "figures",
        "text.parse_math": False,
        "font.size": TEXT,
        "path.simplify": True,
        "path.simplify_threshold": 0.15,
        "lines.solid_capstyle": "butt",
    }


def _body(markup: str, figure_id: str) -> str:
    root = ElementTree.fromstring(markup)
    names = {old: f"{figure_id}-{index}" for index, old in enumerate(_referenced(root), start=1)}
    return "".join(_written(child, names, figure_id) for child in root)


def _referenced(root: ElementTree.Element) -> list[str]:
    """Give the ids something points to, in the order of the document, each once."""
    found: dict[str, None] = {}
    for element in root.iter():
        for key, value in element.attrib.items():
            if key.endswith("href"):
                found[value.removeprefix("#")] = None
            for name in _REFERENCE.findall(value):
                found[name] = None
    return list(found)


def _written(element: ElementTree.Element, names: dict[str, str], figure_id: str) -> str:
    tag = element.tag.rpartition("}")[2]
    if tag in {"metadata", "style"}:
        return ""
    inside = "".join(_written(child, names, figure_id) for child in element)
    if tag == "text":
        inside = escaped(element.text or "")
    attributes = dict(_attributes(element, names, figure_id))
    if tag in {"defs", "g"} and not inside:
        return ""
    if tag == "g" and not attributes:
        return inside
    listed = "".join(f' {key}="{value}"' for key, value in sorted(attributes.items()))
    return f"<{tag}{listed}>{inside}</{tag}>" if inside else f"<{tag}{listed}/>"


def _attributes(
    element: ElementTree.Element, names: dict[str, str], figure_id: str
) -> Iterator[tuple[str, str]]:
    given = dict(element.attrib)
    styled = given.pop("style", "")
    for part in filter(None, (piece.strip() for piece in styled.split(";"))):
        key, _, value = part.partition(":")
        given[key.strip()] = value.strip()
    given |= _font(given.pop("font", ""))
    if given.get("id", "").startswith(HALO):
        yield "class", HALO
    for key, value in given.items():
        if key == "id":
            if value in names:
                yield "id", names[value]
        elif key == "font-family" or (key, value) in _DEFAULTS:
            continue
        elif key == _LINK:
            yield "xlink:href", f"#{names[value.removeprefix('#')]}"
        else:
            value = _REFERENCE.sub(lambda found: f"url(#{names[found.group(1)]})", value)
            value = _painted(value, figure_id)
            if key in _NUMERIC:
                value = _short(value)
            if (key, value) not in _DEFAULTS and not value.startswith("rotate(0 "):
                yield key, escaped(value)


def _font(shorthand: str) -> dict[str, str]:
    """Give weight and size from the shorthand that older releases (3.9) write."""
    found = re.match(r"(?:(\w+) )?([\d.]+px)", shorthand)
    if not found:
        return {}
    weight = {"font-weight": found.group(1)} if found.group(1) else {}
    return {"font-size": found.group(2)} | weight


def _painted(value: str, figure_id: str) -> str:
    if not value.startswith("#"):
        return value
    if value == HATCH_SENTINEL:
        return hatch(figure_id)
    if value not in _ROLES:
        raise ValueError(f"the colour {value} stands for no role")
    return paint(_ROLES[value])


_ROLES = {colour: role for role, colour in SENTINELS.items()}


def _short(value: str) -> str:
    """Give numbers with two decimals, and path commands without needless blanks."""
    if "nan" in value or "inf" in value:
        raise ValueError("a figure cannot show a number that is not finite")
    rounded = _NUMBER.sub(lambda match: number(float(match.group())), value)
    rounded = re.sub(r"\s+", " ", rounded).strip()
    rounded = re.sub(r" ?([A-Za-z]) ?", r"\1", rounded) if "(" not in rounded else rounded
    # After a move, further pairs are lines without saying so (SVG 2, 9.3.3); not after a curve.
    return rounded if re.search("[ACQ(]", rounded) else re.sub(r"(?<=[\d.])L", " ", rounded)
