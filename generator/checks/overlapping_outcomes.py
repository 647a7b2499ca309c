"""Two outcomes that take the same reading.

Wrong: Under some of the usual conditions a reading falls into two outcomes: into one that says
where on the number line it lies and into the limits, or into two that say so. An outcome that
takes a part of "low" or "high" for itself, as a shorted coil does, is no overlap.

Why: One reading would give two answers, and the reader would take the one they hoped for.

Mend: Draw the reading of the outcome back until it meets its neighbour, at every condition that
the table shows.

Fails, in tests/winding-resistance:

    outcomes:
      - finding: in_limits
        label: Within limits
        verdict: neither
        means: The coil is whole.
        next:
          - carry_on: true
      - finding: shorted
        label: Next to nothing
        reading: at most 700 ohm
        verdict: condemns
        means: Shorted through.
        next:
          - replacement: replace-crank-sensor-inductive

Passes:

    outcomes:
      - finding: in_limits
        label: Within limits
        verdict: neither
        means: The coil is whole.
        next:
          - carry_on: true
      - finding: shorted
        label: Next to nothing
        reading: at most 50 ohm
        verdict: condemns
        means: Shorted through.
        next:
          - replacement: replace-crank-sensor-inductive
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from generator.checks.fault_page import fault
from generator.checks.places import second
from generator.checks.readings import Line, Stretch, lines, shown
from generator.problems import Problem
from generator.records.kinds.facts import Finding
from generator.records.kinds.work import Test
from generator.records.knowledge_base import KnowledgeBase

OVERLAPPING_OUTCOMES = fault("overlapping-outcomes", __doc__)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each pair of outcomes that share a reading."""
    found: dict[tuple[str, int, int], Problem] = {}
    for test in kb.all("tests", Test):
        for line in lines(kb, test):
            for one, other in _pairs(line):
                # The same pair may overlap at several temperatures; the first says enough.
                pair = (test.id, one.index, other.index)
                found.setdefault(pair, _finding(kb, test, line, one, other))
    return list(found.values())


def _pairs(line: Line) -> Iterator[tuple[Stretch, Stretch]]:
    """Give the pairs that overlap: the written one, and what it runs into."""
    for number, one in enumerate(line.stretches):
        for other in line.stretches[number + 1 :]:
            limits = Finding.IN_LIMITS in (one.outcome.finding, other.outcome.finding)
            both = one.written and other.written
            if (both or (limits and (one.written or other.written))) and one.overlaps(other):
                yield (one, other) if one.written else (other, one)


def _finding(
    kb: KnowledgeBase, test: Test, line: Line, one: Stretch, other: Stretch
) -> Problem:
    low, high = max(one.low, other.low), min(one.high, other.high)
    at = low if high == float("inf") else high if low == float("-inf") else (low + high) / 2
    made = kb.problem(
        OVERLAPPING_OUTCOMES, test, ("outcomes", one.index, "reading"),
        f"a reading of {shown(line.row, at)} is {one.outcome.label!r} and also "
        f"{other.outcome.label!r}",
        f"let it end where {line.spec.id} begins, at every condition of its table",
    )  # fmt: skip
    path = ("outcomes", other.index, "reading" if other.written else "label")
    return replace(made, second=second(kb, test, path, "this takes it too"))
