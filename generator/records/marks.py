"""From a parser's marks to stretches of a file, counted in characters from 1."""

from __future__ import annotations

from typing import Any

from generator.problems import Span


class Marks:
    """Reads marks against the lines of one file."""

    def __init__(self, lines: list[str]) -> None:
        self.lines = lines

    def span(self, event: Any) -> Span:
        """Give the stretch of one event, its blank end taken off.

        The end mark of a block of text lies behind its line breaks.
        """
        start, end = event.start_mark, event.end_mark
        first, line, column = start.line + 1, end.line + 1, end.column + 1
        while line > first:
            before = self.lines[line - 1][: column - 1].rstrip()
            if before:
                return Span(first, start.column + 1, line, len(before) + 1)
            line -= 1
            column = len(self.lines[line - 1]) + 1
        return Span(first, start.column + 1, line, column)

    def whole(self, first: Any, start: Span, final: Any, last: Span) -> Span:
        """Give the stretch of a collection: to its bracket, or to the end of its last item."""
        end = self.span(final) if first.flow_style else last
        return Span(start.line, start.column, end.end_line, end.end_column)

    def first_word(self, span: Span) -> Span:
        """Narrow a stretch to the word it begins with."""
        rest = self.lines[span.line - 1][span.column - 1 :]
        end = span.column + max(1, len(rest.split(" ")[0]))
        return Span(span.line, span.column, span.line, end)

    def written(self, span: Span) -> str:
        """Give what is written in a stretch, as far as its first line goes."""
        end = span.end_column if span.end_line == span.line else None
        return self.lines[span.line - 1][span.column - 1 : end and end - 1]
