"""A record file as text that can be spliced: stretches of it by line and column."""

from __future__ import annotations

import json
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property
from itertools import accumulate
from typing import Any

from generator.problems import Problem, Span
from generator.records import strict_yaml
from generator.records.knowledge_base import Path, Place


class Unreadable(ValueError):
    """A file that strict reading finds fault with; nobody can say what a change would do to it.

    Attributes
    ----------
    problems : list of Problem
        The findings.
    text : str
        The file, for excerpts.
    """

    def __init__(self, problems: list[Problem], text: str) -> None:
        self.problems = problems
        self.text = text
        super().__init__(problems[0].message if problems else "the file cannot be read")


@dataclass(frozen=True)
class Source:
    """The text of a file that reads without a finding.

    Parameters
    ----------
    text : str
        As it stands, line ends included.
    data : dict
        What it says.
    places : dict
        Where each field stands.
    """

    text: str
    data: dict[str, Any]
    places: dict[Path, Place]

    @cached_property
    def lines(self) -> list[str]:
        """The lines; in a file with carriage returns each line but the last keeps its own."""
        return self.text.split("\n")

    @cached_property
    def _starts(self) -> list[int]:
        return list(accumulate((len(line) + 1 for line in self.lines), initial=0))

    def at(self, path: Path) -> Any:
        """Give the value of a field."""
        value: Any = self.data
        for segment in path:
            value = value[segment]
        return value

    def edges(self, span: Span) -> tuple[int, int]:
        """Give where a stretch begins and ends, in characters from the start of the text."""
        return (
            self._starts[span.line - 1] + span.column - 1,
            self._starts[span.end_line - 1] + span.end_column - 1,
        )

    def written(self, span: Span) -> str:
        """Give what is written in a stretch."""
        return self.text[slice(*self.edges(span))]

    def spliced(self, changes: Iterable[tuple[Span, str]]) -> str:
        """Give the text with stretches of it replaced.

        Parameters
        ----------
        changes : iterable of tuple of Span and str
            Each stretch and what stands there instead; none may overlap another.
        """
        text = self.text
        for (start, end), new in sorted(
            ((self.edges(span), new) for span, new in changes), reverse=True
        ):
            text = text[:start] + new + text[end:]
        return text


def read(content: bytes, shown: str) -> Source:
    """Read a file for changing it.

    Parameters
    ----------
    content : bytes
        The file.
    shown : str
        Its name for findings.

    Returns
    -------
    Source
        Its text, with what it says and where.

    Raises
    ------
    Unreadable
        If strict reading finds fault with it.
    """
    reading = strict_yaml.read(content, shown)
    if reading.problems or reading.data is None:
        raise Unreadable(reading.problems, reading.text)
    return Source(content.decode("utf-8"), reading.data, reading.places)


def meaning(data: Any) -> str:
    """Give what data says, whatever the order of its keys: equal texts for equal meanings."""
    return json.dumps(data, sort_keys=True, ensure_ascii=False, default=repr)
