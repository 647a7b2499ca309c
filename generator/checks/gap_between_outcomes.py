"""Readings that no outcome speaks of.

Wrong: Between zero and the largest reading there is a stretch that belongs to no outcome,
because "low", "high" or "in limits" says itself where it lies and does not reach its neighbour.

Why: A mechanic who gets such a reading would not know what it says.

Mend: Let the stretches meet, or leave `reading` out: then "low" takes everything below the limit
and "high" everything above.

Fails, in tests/speed-on-scan-tool:

    outcomes:
      - finding: in_limits
        label: A plausible speed
        verdict: neither
        means: The control unit sees the wheel.
        next:
          - carry_on: true
      - finding: low
        label: A low speed
        reading: 20 to 100 rpm
        verdict: neither
        means: The engine turns slowly.
        next:
          - test: battery-cranking

Passes:

    outcomes:
      - finding: in_limits
        label: A plausible speed
        verdict: neither
        means: The control unit sees the wheel.
        next:
          - carry_on: true
      - finding: low
        label: A low speed
        reading: 0 to 150 rpm
        verdict: neither
        means: The engine turns slowly.
        next:
          - test: battery-cranking
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from generator.checks.fault_page import fault
from generator.checks.readings import Line, lines, shown
from generator.problems import Problem
from generator.records.kinds.facts import Finding
from generator.records.kinds.work import Test
from generator.records.knowledge_base import KnowledgeBase

GAP_BETWEEN_OUTCOMES = fault("gap-between-outcomes", __doc__)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each stretch of the number line that no outcome takes."""
    found: dict[tuple[str, str, int], Problem] = {}
    for test in kb.all("tests", Test):
        for line in lines(kb, test):
            for number, (low, high) in enumerate(_gaps(line)):
                # The same gap opens at several temperatures; the first says enough.
                found.setdefault(
                    (test.id, line.spec.id, number),
                    kb.problem(
                        GAP_BETWEEN_OUTCOMES, test, ("outcomes",),
                        f"no outcome takes a reading {_between(line, low, high)}",
                        "let the readings of the outcomes meet", of_key=True,
                    ),
                )  # fmt: skip
    return list(found.values())


def _gaps(line: Line) -> Iterator[tuple[float, float]]:
    """Give the gaps, from the least reading to the largest that this test asks about.

    A side with no outcome at all is another fault.
    """
    limits = line.of(Finding.IN_LIMITS)
    if limits is None:
        return
    reached = min(0.0, limits.low) if line.of(Finding.LOW) else limits.low
    end = math.inf if line.of(Finding.HIGH) else limits.high
    for stretch in sorted(line.stretches, key=lambda s: (s.low, s.high)):
        if stretch.low > reached and reached < end:
            yield reached, stretch.low
        reached = max(reached, stretch.high)
    if reached < end:
        yield reached, end


def _between(line: Line, low: float, high: float) -> str:
    if math.isinf(high):
        return f"above {shown(line.row, low)}"
    return f"between {shown(line.row, low)} and {shown(line.row, high)}"
