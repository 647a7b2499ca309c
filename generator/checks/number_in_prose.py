"""A figure with a unit typed into prose.

Wrong: An instruction or an explanation holds a number with a unit, where a value record should
stand. Settings of a meter, tools, supplies and values themselves may hold figures.

Why: A figure in prose has no conditions, no limits, no source and no trail, and is missed when
the value changes.

Mend: Write the value as a record under `specs`, name it under `spec` of the step, and leave the
figure out of the words. Where it is only a name, spell it out: a five-volt feed.

Fails, in replacements/replace-crank-sensor-hall:

    if_not_cured: Tighten the bolt to 10 N·m and try again.

Passes:

    if_not_cured: Tighten the bolt to its torque and try again.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from generator.checks.fault_page import fault
from generator.checks.places import words_of
from generator.problems import Problem
from generator.quantities.units import spellings
from generator.records.knowledge_base import KnowledgeBase

NUMBER_IN_PROSE = fault("number-in-prose", __doc__)

INSTRUCT = ("tests", "replacements", "procedures", "symptoms", "codes", "components")
"""Kinds whose words a reader works by."""

MAY_HOLD_FIGURES = ("hookups",)
"""Fields of them that are settings of an instrument."""

_WORDS = frozenset({"in", "d", "l", "C", "F", "day", "days", "day’s"})
"""Spellings that are words or names more often than units, as in "pins 1 and 2 in the plug"."""

_LONG_NAMES = r"volts?|ohms?|amps?|millivolts?|degrees?|minutes?|seconds?|hours?|bars?"
_UNITS = "|".join(
    re.escape(s) for s in sorted(set(spellings()) - _WORDS, key=len, reverse=True)
)  # fmt: skip
_FIGURE = re.compile(
    rf"(?<![\w.,/-])[-−]?\d+(?:[.,]\d+)?(?: ?(?:to|and|±|-|–) ?\d+(?:[.,]\d+)?)? ?"
    rf"(?:{_UNITS}|{_LONG_NAMES})(?![\w/])"
)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each figure in words that a reader works by."""
    return [
        kb.problem(
            NUMBER_IN_PROSE, record, path, f"the figure {figure!r} stands in the words",
            "name its record under spec, and leave the figure out",
        )
        for kind in INSTRUCT
        for record in kb.records.get(kind, {}).values()
        for path, text in words_of(record)
        if path[0] not in MAY_HOLD_FIGURES
        for figure in figures_in(text)
    ]  # fmt: skip


def figures_in(text: str) -> Iterator[str]:
    """Give each number with a unit in a text."""
    for match in _FIGURE.finditer(text):
        yield match.group()
