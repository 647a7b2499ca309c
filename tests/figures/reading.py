"""Reads a finished figure back: its texts where they stand, its paths as points."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from typing import Any
from xml.etree import ElementTree

SVG = "{http://www.w3.org/2000/svg}"
XLINK_HREF = "{http://www.w3.org/1999/xlink}href"
_INHERITED = ("font-size", "font-weight", "text-anchor", "fill", "font-family")

Point = tuple[float, float]


@dataclass(frozen=True)
class Text:
    """A text of a figure with what it inherits."""

    text: str
    x: float
    y: float
    size: float
    bold: bool
    anchor: str
    fill: str
    mono: bool

    @property
    def box(self) -> tuple[float, float, float, float]:
        """Left, top, right and bottom, set in DejaVu Sans, the widest usual screen face."""
        wide = measured_width(self.text, self.size, self.bold, self.mono)
        left = self.x - wide * {"start": 0.0, "middle": 0.5, "end": 1.0}[self.anchor]
        # Capital height and descent of DejaVu Sans: 0.73 and 0.24 em (its metrics).
        return (left, self.y - 0.73 * self.size, left + wide, self.y + 0.2 * self.size)


def parsed(markup: str) -> ElementTree.Element:
    """Give the root element."""
    return ElementTree.fromstring(markup)


def elements(root: ElementTree.Element, name: str) -> list[ElementTree.Element]:
    """Give all elements of a name."""
    return list(root.iter(SVG + name))


def texts(root: ElementTree.Element) -> list[Text]:
    """Give all texts in the order of the document."""
    return list(_texts(root, {}))


def text_at(root: ElementTree.Element, wanted: str) -> Text:
    """Give the one text that reads as wanted."""
    (found,) = [text for text in texts(root) if text.text == wanted]
    return found


def _texts(element: ElementTree.Element, outer: dict[str, str]) -> Iterator[Text]:
    inner = outer | {key: element.attrib[key] for key in _INHERITED if key in element.attrib}
    if element.tag == f"{SVG}text":
        yield Text(
            element.text or "",
            float(element.attrib["x"]),
            float(element.attrib["y"]),
            float(inner.get("font-size", "12").removesuffix("px")),
            inner.get("font-weight") in {"700", "bold"},
            inner.get("text-anchor", "start"),
            inner.get("fill", ""),
            "mono" in inner.get("font-family", ""),
        )
    for child in element:
        yield from _texts(child, inner)


@lru_cache(maxsize=4096)
def measured_width(text: str, size: float, bold: bool, mono: bool = False) -> float:
    """Give a text's width by the plotting library's own font engine."""
    from matplotlib.font_manager import FontProperties
    from matplotlib.textpath import TextToPath

    family = "DejaVu Sans Mono" if mono else "DejaVu Sans"
    face = FontProperties(family=family, weight="bold" if bold else "normal", size=size)
    # It knows no no-break space by that name; both are as wide.
    plain = text.replace("\u00a0", " ")
    wide: float = TextToPath().get_text_width_height_descent(plain, face, False)[0]
    return wide


def strokes(outline: str) -> list[list[Point]]:
    """Give a path's subpaths as points: M, L, Q, C and Z, m, h, v, their relative kin.

    Of a curve only its end is kept.
    """
    found: list[list[Point]] = []
    x = y = 0.0
    for command, numbers in re.findall(r"([A-Za-z])([^A-Za-z]*)", outline):
        values = [float(value) for value in re.findall(r"-?\d*\.?\d+", numbers)]
        if command in "Zz":
            found[-1].append(found[-1][0])
            x, y = found[-1][0]
            continue
        if command in "hv":
            for value in values:
                x, y = (x + value, y) if command == "h" else (x, y + value)
                found[-1].append((x, y))
            continue
        if command in "HV":
            for value in values:
                x, y = (value, y) if command == "H" else (x, value)
                found[-1].append((x, y))
            continue
        width = {"M": 2, "L": 2, "Q": 4, "C": 6, "A": 7}[command.upper()]
        for index in range(0, len(values), width):
            end = values[index + width - 2 : index + width]
            x, y = (x + end[0], y + end[1]) if command.islower() else (end[0], end[1])
            if command in "Mm" and index == 0:
                found.append([])
            found[-1].append((x, y))
    return found


def drawn_with(root: ElementTree.Element, role: str, **attributes: str) -> list[Any]:
    """Give the paths whose stroke is a role, with further attributes as given."""
    return [
        path
        for path in elements(root, "path")
        if path.attrib.get("stroke", "").startswith(f"var(--fig-{role},")
        and all(path.attrib.get(key.replace("_", "-")) == v for key, v in attributes.items())
    ]


def filled_with(root: ElementTree.Element, role: str) -> list[Any]:
    """Give the paths whose fill is a role."""
    return [
        path
        for path in elements(root, "path")
        if path.attrib.get("fill", "").startswith(f"var(--fig-{role},")
    ]


@dataclass(frozen=True)
class Scale:
    """A linear scale read off two tick labels of a finished figure."""

    place: float
    value: float
    slope: float

    def value_at(self, place: float) -> float:
        """Give the value at a place."""
        return self.value + (place - self.place) * self.slope


def scale_of(ticks: list[Text], upright: bool) -> Scale:
    """Give the scale through the first and the last of some tick labels."""
    first, last = ticks[0], ticks[-1]
    # An upright tick's figure hangs a third of its height below the tick it names.
    places = [t.y - 4.3 if upright else t.x for t in (first, last)]
    values = [float(t.text.replace("\u2212", "-")) for t in (first, last)]
    return Scale(places[0], values[0], (values[1] - values[0]) / (places[1] - places[0]))


def upright_ticks(root: ElementTree.Element) -> list[Text]:
    """Give the tick labels of the upright axis: muted figures set to the right."""
    return [t for t in texts(root) if t.anchor == "end" and _is_figure(t) and "muted" in t.fill]


def level_ticks(root: ElementTree.Element) -> list[Text]:
    """Give the tick labels of the level axis: muted figures set in the middle."""
    return [t for t in texts(root) if t.anchor == "middle" and _is_figure(t) and "muted" in t.fill]


def _is_figure(text: Text) -> bool:
    return re.fullmatch(r"\u2212?\d+(\.\d+)?", text.text) is not None
