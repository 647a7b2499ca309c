"""Findings for a person at a terminal: place, fault, the line itself with its stretch marked."""

from __future__ import annotations

import unicodedata
from collections.abc import Mapping, Sequence

from generator.problems.finding import Problem, Severity, Span

WIDTH = 100
"""Columns of an excerpt; a longer line is shown through a window around its fault."""

_BOLD, _DIM, _RED, _YELLOW, _CYAN, _PLAIN = (
    "\x1b[1m", "\x1b[2m", "\x1b[31m", "\x1b[33m", "\x1b[36m", "\x1b[0m",
)  # fmt: skip
_SEVERITY_COLOUR = {Severity.ERROR: _RED, Severity.WARNING: _YELLOW}
_LEAD = 30
"""Columns kept before a fault when a long line is shown through a window."""

# Control characters, format characters (among them those that reverse the reading direction or
# are invisible), line separators, surrogates and private use.
_HIDDEN = frozenset({"Cc", "Cf", "Zl", "Zp", "Cs", "Co", "Cn"})
_COMBINING = frozenset({"Mn", "Me"})


def as_text(problems: Sequence[Problem], sources: Mapping[str, str], colour: bool) -> str:
    """Give the findings as text for a terminal.

    Parameters
    ----------
    problems : sequence of Problem
        The findings, in the order to print them.
    sources : mapping
        Text of each file by the path that findings name; a file that is not there has no excerpt.
    colour : bool
        Whether the terminal shows colour.

    Returns
    -------
    str
        One block a finding, a blank line between; "" where there is none.
    """
    lines: dict[str, list[str]] = {}
    blocks = []
    for found in problems:
        if found.path not in lines:
            lines[found.path] = sources.get(found.path, "").split("\n")
        blocks.append("\n".join(_block(found, lines[found.path], colour)))
    return "\n\n".join(blocks)


def visible(text: str) -> str:
    """Give a text of as many characters in which nothing is hidden and nothing acts."""
    if text.isascii() and text.isprintable():
        return text
    return "".join(_shown(character) for character in text)


def width_of(text: str) -> int:
    """Give the columns a visible text takes on a terminal."""
    return sum(_columns(character) for character in text)


def _block(found: Problem, lines: list[str], colour: bool) -> list[str]:
    def paint(style: str, text: str) -> str:
        return f"{style}{text}{_PLAIN}" if colour else text

    place = paint(_BOLD, f"{visible(found.path)}:{found.line}:{found.column}")
    severity = paint(_SEVERITY_COLOUR[found.severity], found.severity.value)
    block = [f"{place}: {severity} {paint(_BOLD, found.code)}: {visible(found.message)}"]
    excerpt = _excerpt(found, lines)
    if excerpt is not None:
        line, mark = excerpt
        number = f"{found.line:>5} | "
        block.append(paint(_DIM, number) + line)
        blank = " " * (len(number) - 2) + "| "
        block.append(paint(_DIM, blank) + paint(_SEVERITY_COLOUR[found.severity], mark))
    if found.second is not None:
        also = found.second
        at = f"{visible(also.path)}:{also.line}:{also.column}"
        block.append(f"  {paint(_DIM, 'see:')}  {at}: {visible(also.says)}")
    block.append(f"  {paint(_DIM, 'why:')}  {visible(found.why)}")
    block.append(f"  {paint(_CYAN, 'hint:')} {visible(found.hint)}")
    return block


def _excerpt(found: Problem, lines: list[str]) -> tuple[str, str] | None:
    """Give the line of a finding and the marks under it, or None for a file as a whole."""
    span = (found.line, found.column, found.end_line, found.end_column)
    if span == (1, 1, 1, 1) or not 1 <= found.line <= len(lines):
        return None
    raw = lines[found.line - 1]
    return window(raw, Span(*span))


def window(raw: str, span: Span) -> tuple[str, str]:
    """Give the part of a line around a stretch, and the marks that go under it.

    Parameters
    ----------
    raw : str
        The line as it stands in the file.
    span : Span
        The stretch; what goes on in further lines is marked to the end of this one.

    Returns
    -------
    tuple of str
        The excerpt, nothing in it hidden, and carets under the stretch.
    """
    line = visible(raw)
    start = min(span.column - 1, len(line))
    end = span.end_column - 1 if span.end_line == span.line else len(line.rstrip())
    end = max(start + 1, min(end, max(len(line), start + 1)))
    first, before = 0, ""
    if width_of(line) > WIDTH and width_of(line[:end]) > WIDTH - 1:
        first, before = max(0, start - _LEAD), "…"
    shown, after = _cut(line[first:], WIDTH - len(before) - 1)
    marked = line[start : min(end, first + len(shown))]
    indent = " " * (len(before) + width_of(line[first:start]))
    return before + shown + after, indent + "^" * max(1, width_of(marked))


def _cut(text: str, columns: int) -> tuple[str, str]:
    """Give as much of a text as fits, and a mark where some was left out."""
    if width_of(text) <= columns + 1:
        return text, ""
    used = 0
    for index, character in enumerate(text):
        used += _columns(character)
        if used > columns:
            return text[:index], "…"
    return text, ""


def _columns(character: str) -> int:
    if character.isascii():
        return 1
    if unicodedata.category(character) in _COMBINING:
        return 0
    return 2 if unicodedata.east_asian_width(character) in "WF" else 1


def _shown(character: str) -> str:
    if character == "\t":
        return "→"
    if character < " ":
        return chr(0x2400 + ord(character))  # the block of pictures for control characters
    if character == "\x7f":
        return "\u2421"
    if unicodedata.category(character) == "Zs" and character != " ":
        return "\u2423"  # an open box: a space, but not the usual one
    return "\ufffd" if unicodedata.category(character) in _HIDDEN else character
