"""The number line of a test: which reading each outcome speaks of, row by row of its value."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from generator.checks.implausible_value import implausible
from generator.expected import CannotExpect, Expectation, table
from generator.expected.engine import unit_of
from generator.quantities import Written
from generator.records.kinds.facts import Finding
from generator.records.kinds.things import Spec
from generator.records.kinds.work import Outcome, Test
from generator.records.knowledge_base import KnowledgeBase


@dataclass(frozen=True, slots=True)
class Stretch:
    """The readings an outcome speaks of.

    Parameters
    ----------
    index : int
        The outcome's place in its test.
    outcome : Outcome
        The outcome.
    low, high : float
        In the base unit of the quantity; an open side is infinite.
    written : bool
        Whether the outcome writes it itself; else it follows from the value's limits.
    """

    index: int
    outcome: Outcome
    low: float
    high: float
    written: bool

    def overlaps(self, other: Stretch) -> bool:
        """Say whether some reading belongs to both; a shared end does not count."""
        return max(self.low, other.low) < min(self.high, other.high)


@dataclass(frozen=True, slots=True)
class Line:
    """The number line of a test for one value under one set of conditions."""

    spec: Spec
    row: Expectation
    stretches: tuple[Stretch, ...]

    def of(self, finding: Finding) -> Stretch | None:
        """Give the stretch of a finding, or None where the test has no such outcome."""
        return next((s for s in self.stretches if s.outcome.finding is finding), None)


def lines(kb: KnowledgeBase, test: Test) -> Iterator[Line]:
    """Give every number line on which a test's outcomes can be held against each other.

    A reading in volts says nothing of ohms, so each value has a line of its own. Where two values
    of one quantity hold for one vehicle, nobody can say which of them an outcome means, and there
    is no line; nor is there one for a value that no vehicle has, which is found already.
    """
    for spec in _clear_ones(kb, test):
        try:
            rows = table(kb, spec)
        except CannotExpect:
            continue  # a value nobody can work from has a finding of its own
        for row in rows:
            quantity = row.unit.quantity
            yield Line(spec, row, tuple(_stretches(test, quantity, row.low, row.high)))


def _clear_ones(kb: KnowledgeBase, test: Test) -> Iterator[Spec]:
    specs = [kb.get("specs", id_, Spec) for id_ in test.specs]
    own = [s for s in specs if s.standing == "vehicle_value"] or specs
    for spec in own:
        rivals = [
            other for other in own
            if quantity_of(other) == quantity_of(spec)
            and set(other.applies_to) & set(spec.applies_to) & set(test.applies_to)
        ]  # fmt: skip
        if rivals == [spec] and not any(implausible(spec)):
            yield spec


def quantity_of(spec: Spec) -> str:
    """Give the quantity that a spec's unit measures; "" where it has none."""
    try:
        return unit_of(spec).quantity
    except CannotExpect:
        return ""


def _stretches(
    test: Test, quantity: str, low: float | None, high: float | None
) -> Iterator[Stretch]:
    least, most = -math.inf if low is None else low, math.inf if high is None else high
    by_limits = {
        Finding.IN_LIMITS: (least, most),
        Finding.LOW: (-math.inf, least),
        Finding.HIGH: (most, math.inf),
    }
    for index, outcome in enumerate(test.outcomes):
        reading: Written | None = outcome.reading
        if reading is not None and reading.quantity == quantity:
            yield Stretch(
                index, outcome,
                -math.inf if reading.low is None else reading.low,
                math.inf if reading.high is None else reading.high, True,
            )  # fmt: skip
        elif reading is None and outcome.finding in by_limits:
            yield Stretch(index, outcome, *by_limits[outcome.finding], False)


def shown(row: Expectation, value: float) -> str:
    """Give a reading as a person would write it, in the unit of the value."""
    converted = row.shown(value)
    return f"{converted:g} {row.unit.symbol}"
