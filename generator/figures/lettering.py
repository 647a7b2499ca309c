"""How wide a text will be, and where to break it, when no browser is there to ask."""

from __future__ import annotations

import re
import unicodedata

# Advance widths in ems, normal and bold, each rounded up to its class, from the metrics of DejaVu
# Sans 2.37, about the widest face that screens use: what fits in it fits in the others.
_CLASSES = (
    (0.280, 0.345, "ijl'"),
    (0.345, 0.410, "IJf.,:;·/\\| \u00a0"),
    (0.405, 0.495, "rt()[]-!²³"),
    (0.505, 0.525, '"`°–*_'),
    (0.555, 0.600, "csz?"),
    (0.605, 0.735, "kvxyFLPT"),
    (0.640, 0.740, "abdeghnopquß0123456789ESY$€{}µ"),
    (0.715, 0.780, "ABCKRVXZ"),
    (0.790, 0.875, "DGHNOQU&Ω"),
    (0.840, 0.840, "#+<=>^~±×÷−≤≥←↑→↓"),
    (0.840, 0.930, "w"),
    (1.000, 1.110, "mMW%@—…"),
)
_WIDTH_EM = {letter: wide[:2] for wide in _CLASSES for letter in wide[2]}
_OTHER_EM = (0.80, 0.90)
# An ideograph takes a square em (Unicode annex 11), and some faces a little more.
_WIDE_EM = (1.05, 1.05)
# A figure and its unit stay on one line.
_BEFORE_UNIT = re.compile(r"(?<=\d) (?=[^\W\d]{1,3}(?:\W|$)|[°%])")


def text_width(text: str, size: float = 12.0, bold: bool = False) -> float:
    """Give an upper estimate of a text's width.

    Parameters
    ----------
    text : str
        One line.
    size : float, optional
        Type size, in the units of the drawing.
    bold : bool, optional
        Whether it is set bold.

    Returns
    -------
    float
        Width in the units of the drawing.
    """
    return size * sum(_letter_em(letter)[bold] for letter in text)


def _letter_em(letter: str) -> tuple[float, float]:
    """Give a letter's widths, normal and bold; an accent takes no room of its own."""
    known = _WIDTH_EM.get(letter) or _WIDTH_EM.get(unicodedata.normalize("NFD", letter)[0])
    if known:
        return known
    if unicodedata.combining(letter):
        return (0.0, 0.0)
    return _WIDE_EM if unicodedata.east_asian_width(letter) in "WF" else _OTHER_EM


def wrapped(text: str, width: float, size: float = 12.0, bold: bool = False) -> list[str]:
    """Break a text into lines; nothing is cut off, a word too long is broken.

    Parameters
    ----------
    text : str
        Any text; runs of white space count as one blank. A no-break space does not break, nor
        does the blank between a figure and its unit.
    width : float
        Room for a line, in the units of the drawing.
    size, bold
        As for :func:`text_width`.

    Returns
    -------
    list of str
        The lines; none for an empty text.
    """
    lines: list[str] = []
    line = ""
    for word in re.split(r"[ \t\r\n]+", _BEFORE_UNIT.sub("\u00a0", text.strip())):
        joined = f"{line} {word}" if line else word
        if text_width(joined, size, bold) <= width:
            line = joined
            continue
        if line:
            lines.append(line)
        while text_width(word, size, bold) > width and len(word) > 1:
            head = _head_that_fits(word, width, size, bold)
            lines.append(word[:head])
            word = word[head:]
        line = word
    return [*lines, line] if line else lines


def _head_that_fits(word: str, width: float, size: float, bold: bool) -> int:
    head = 1
    while head < len(word) and text_width(word[: head + 1], size, bold) <= width:
        head += 1
    return head
