"""Strict reading of YAML: plain data, a place for every field, and a finding for every trick.

Both of PyYAML's parsers give the same result. The C one is taken where it is there; the pure one
has the last word on every file that the C one stumbles over.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import yaml

from generator.problems import Problem, Span, code, in_order, problem
from generator.records.faults import FAULTY, YAML_SYNTAX
from generator.records.knowledge_base import Path, Place
from generator.records.source_text import SourceText, decode
from generator.records.tree import Tree

__all__ = ["FAULTY", "PARSER", "PURE_PARSER", "Reading", "bounded", "read"]

MOST_FOUND = 100
"""Findings of one file; after so many, a person starts afresh."""

PURE_PARSER: Any = yaml.SafeLoader
PARSER: Any = getattr(yaml, "CSafeLoader", PURE_PARSER)
"""The parser in use: the C one, four times as fast a reading, where PyYAML has it."""

TOO_MANY = code(
    "too-many-findings",
    "A long list hides the first cause; mending that often mends the rest.",
)


@dataclass(frozen=True, slots=True)
class Reading:
    """What a file says.

    Parameters
    ----------
    data : mapping or None
        Text, numbers, truths, dates, lists and mappings; :data:`FAULTY` where a value was
        refused; None where the file as a whole gives no record.
    places : dict
        The way to each field, and where it stands.
    problems : list of Problem
        Everything wrong with it as YAML.
    text : str
        The file as shown in excerpts.
    """

    data: dict[str, Any] | None
    places: dict[Path, Place]
    problems: list[Problem]
    text: str = ""


def read(source: bytes, path: str, parser: Any = None) -> Reading:
    """Read one file.

    Parameters
    ----------
    source : bytes
        The file.
    path : str
        Its name for findings.
    parser : type, optional
        A loader class of PyYAML; :data:`PARSER` unless given.

    Returns
    -------
    Reading
        Data, places and findings; never an exception for anything a file can hold.
    """
    text = decode(source, path)
    found = list(text.problems)
    data: Any = None
    places: dict[Path, Place] = {}
    if text.clean is not None and text.layout_known and len(found) <= MOST_FOUND:
        tree = Tree(text.clean, path, parser or PARSER)
        data = tree.document()
        if tree.doubtful and tree.parser is not PURE_PARSER:
            tree = Tree(text.clean, path, PURE_PARSER)
            data = tree.document()
        places = {} if data is None else tree.places
        found.extend(_not_derived(tree.found, text))
    return Reading(data, places, bounded(in_order(found), path), text.shown)


def _not_derived(found: list[Problem], text: SourceText) -> list[Problem]:
    """Drop a syntax error that comes from a character already found fault with."""
    touched = {at for fault in text.problems for at in range(fault.line - 1, fault.line + 2)}
    return [fault for fault in found if fault.code != YAML_SYNTAX.name or fault.line not in touched]


def bounded(found: list[Problem], path: str) -> list[Problem]:
    """Give the first findings of a file, and one on the rest where there are too many."""
    if len(found) <= MOST_FOUND:
        return found
    last = found[MOST_FOUND]
    span = Span(last.line, last.column, last.end_line, last.end_column)
    message = "the findings from here on are not shown: there are too many in this file"
    more = problem(TOO_MANY, path, span, message, "mend the first ones and check again")
    return [*found[:MOST_FOUND], more]
