"""Moving the fields of an indented group: each takes its comments and blank lines along.

Between two fields, comments indented deeper than the keys belong to the field above, as a list
item that was commented out does; the rest belongs to the field below.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from generator.edit.source import Source
from generator.records.knowledge_base import Path

_DASHES = re.compile(r" *(?:- +)+")
_FOR_EDITORS = re.compile(r"#\s*yaml-language-server:")


@dataclass(frozen=True, slots=True)
class Chunk:
    """A field as a run of lines, counted from 0: from its comments to behind its value."""

    lead: int
    key: int
    end: int


@dataclass(frozen=True, slots=True)
class Move:
    """Another order for the fields of one group.

    Parameters
    ----------
    chunks : tuple of Chunk
        The fields as written; one begins where the one before ends.
    order : tuple of int
        Which of them comes first, second ...
    column : int
        Characters before each key.
    behind_dash : bool
        Whether the first key stands on the line of its list item's dash.
    """

    chunks: tuple[Chunk, ...]
    order: tuple[int, ...]
    column: int
    behind_dash: bool

    def apply(self, lines: list[str]) -> None:
        """Move the fields; no line is gained or lost, so the stretches around stay true."""
        leads = [lines[chunk.lead : chunk.key] for chunk in self.chunks]
        bodies = [lines[chunk.key : chunk.end] for chunk in self.chunks]
        first = self.order[0]
        if first != 0:
            self._change_first(leads, bodies, first)
        whole = [line for number in self.order for line in (*leads[number], *bodies[number])]
        lines[self.chunks[0].lead : self.chunks[-1].end] = whole

    def _change_first(self, leads: list[list[str]], bodies: list[list[str]], first: int) -> None:
        """Make the group begin as it did: without a blank line, and with its dash."""
        blank = next((n for n, line in enumerate(leads[first]) if line.strip()), len(leads[first]))
        leads[0] = leads[first][:blank] + leads[0]
        leads[first] = leads[first][blank:]
        if self.behind_dash:
            start = bodies[0][0][: self.column]
            bodies[0][0] = " " * self.column + bodies[0][0][self.column :]
            bodies[first][0] = start + bodies[first][0][self.column :]
            margin = start[: start.index("-")]
            leads[first] = [_at_margin(line, margin) for line in leads[first]]


def _at_margin(line: str, margin: str) -> str:
    return margin + line.lstrip(" ") if line.strip() else line


def move(source: Source, path: Path, written: Sequence[str], wanted: Sequence[str]) -> Move | None:
    """Give the move that puts a group's fields in order, or None where it is written unusually.

    Parameters
    ----------
    source : Source
        The record.
    path : tuple
        The way to the group.
    written, wanted : sequence of str
        Its keys as they stand and as they are to stand.
    """
    lines = source.lines
    spans = [source.places[(*path, key)] for key in written]
    keys = [place.key for place in spans if place.key is not None]
    column = keys[0].column - 1
    before = [lines[key.line - 1][:column] for key in keys]
    behind_dash = bool(_DASHES.fullmatch(before[0]))
    if any(part.strip() for part in before[behind_dash:]) or len({k.column for k in keys}) > 1:
        return None
    starts = [key.line - 1 for key in keys]
    ends = [_end(lines, place.value.end_line, column) for place in spans]
    leads = [starts[0] if behind_dash else _lead(lines, starts[0], column), *ends[:-1]]
    chunks = tuple(Chunk(*edges) for edges in zip(leads, starts, ends, strict=True))
    return Move(chunks, tuple(written.index(key) for key in wanted), column, behind_dash)


def _end(lines: list[str], after: int, column: int) -> int:
    """Give the first line that no longer belongs to a field whose value ends before `after`."""
    end = after
    for number in range(after, len(lines)):
        line = lines[number].strip()
        if line.startswith("#") and _indent(lines[number]) > column:
            end = number + 1
        elif line:
            break
    return end


def _lead(lines: list[str], key: int, column: int) -> int:
    """Give the first of the comment lines that touch the first key of a group.

    It is none that is indented deeper: behind a block of text it would become part of it.
    """
    lead = number = key
    while number > 0:
        number -= 1
        line = lines[number].strip()
        if not line.startswith("#") or _FOR_EDITORS.match(line):
            break
        if _indent(lines[number]) <= column:
            lead = number
    return lead


def _indent(line: str) -> int:
    return len(line) - len(line.lstrip(" "))
