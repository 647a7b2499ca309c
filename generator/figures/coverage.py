"""What is there and what is missing, as strips of small marks: one strip a question."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from itertools import groupby

from generator.figures.document import WIDTH, Words, number
from generator.figures.drawing import Drawing
from generator.figures.lettering import text_width
from generator.figures.style import Role

_LEFT = 14.0
_ACROSS = WIDTH - 2 * _LEFT
_HIGH = 18.0
_WIDEST = 16.0
_GAP_FROM = 4.0
"""From this width of a mark on, marks stand apart; narrower ones run together."""


class Mark(StrEnum):
    """How far one thing is covered; each has a height and a role of its own."""

    FULL = "full"
    PART = "part"
    NONE = "none"


_LOOK = {
    Mark.FULL: (1.0, Role.TRACE), Mark.PART: (0.55, Role.TRACE2), Mark.NONE: (0.22, Role.LIMIT)
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Strip:
    """One question asked of many things.

    Parameters
    ----------
    label : str
        The question, in a few words.
    count : str
        The answer in figures.
    marks : tuple of Mark
        One for each thing, in the order in which they stand.
    """

    label: str
    count: str
    marks: tuple[Mark, ...]


@dataclass(frozen=True, slots=True)
class Block:
    """Strips under one heading."""

    heading: str
    strips: tuple[Strip, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class CoverageWords(Words):
    """The words of the key."""

    full: str
    part: str
    none: str


def coverage_strips(figure_id: str, words: CoverageWords, blocks: Sequence[Block]) -> str:
    """Draw what is covered.

    Parameters
    ----------
    figure_id : str
        Prefix of all ids.
    words : CoverageWords
        Title, description and key.
    blocks : sequence of Block
        From top to bottom. A strip of any length fits: marks become narrower, then run together.

    Returns
    -------
    str
        Inline SVG.
    """
    drawing = Drawing(figure_id)
    y = _key(drawing, words, 22)
    for block in blocks:
        drawing.text(_LEFT, y + 14, block.heading, bold=True, size=14)
        y += 24
        for strip in block.strips:
            y = _strip(drawing, strip, y)
        y += 10
    return drawing.finish("coverage", words, y)


def _key(drawing: Drawing, words: CoverageWords, base: float) -> float:
    """Draw the key on as many lines as it takes, and give where the strips begin."""
    x = _LEFT
    for mark, text in ((Mark.FULL, words.full), (Mark.PART, words.part), (Mark.NONE, words.none)):
        wide = 16 + text_width(text)
        if x > _LEFT and x + wide > WIDTH - _LEFT:
            x, base = _LEFT, base + 20
        _run(drawing, mark, x, base + 2, 10)
        drawing.text(x + 16, base, text, Role.MUTED)
        x += wide + 16
    return base + 14


def _strip(drawing: Drawing, strip: Strip, y: float) -> float:
    drawing.text(_LEFT, y + 11, strip.label)
    drawing.text(WIDTH - _LEFT, y + 11, strip.count, bold=True, align="end")
    foot = y + 17 + _HIGH
    if strip.marks:
        wide = min(_WIDEST, _ACROSS / len(strip.marks))
        at = 0
        for mark, run in groupby(strip.marks):
            many = len(list(run))
            if wide < _GAP_FROM:
                _run(drawing, mark, _LEFT + at * wide, foot, many * wide)
            else:
                for place in range(at, at + many):
                    _run(drawing, mark, _LEFT + place * wide, foot, wide - 1.4)
            at += many
    return foot + 12


def _run(drawing: Drawing, mark: Mark, x: float, foot: float, wide: float) -> None:
    """Draw a mark, or several that run together, on its foot line."""
    share, role = _LOOK[mark]
    high = number(_HIGH * share)
    outline = f"M{number(x)} {number(foot)}v-{high}h{number(wide)}v{high}z"
    drawing.path(outline, edge=None, fill=role)
