"""A test without an outcome for a reading that the mechanic can get.

Wrong: Every test can end in "cannot tell". One that holds a reading against a value needs what
lies within and beyond its limits, and a reading that jumps. Wiring adds what changes as it is
moved and what is good only while the fault sleeps; a winding adds open and shorted; a level adds
a dead wire.

Why: A mechanic who gets that reading would not know what it says.

Mend: Add the outcome, with what it means and where it leads.

Fails, in tests/wheel-and-gap-pulley:

    outcomes:
      - finding: in_limits
        label: All four gaps within limits
        verdict: neither
        means: The gap is right.
        next:
          - carry_on: true
      - finding: high
        label: A gap above the limit
        verdict: neither
        means: The signal grows weak.
        next:
          - procedure: set-gap-1-6

Passes:

    outcomes:
      - finding: in_limits
        label: All four gaps within limits
        verdict: neither
        means: The gap is right.
        next:
          - carry_on: true
      - finding: low
        label: A gap below the limit
        verdict: neither
        means: The tip may rub.
        next:
          - procedure: set-gap-1-6
      - finding: high
        label: A gap above the limit
        verdict: neither
        means: The signal grows weak.
        next:
          - procedure: set-gap-1-6
      - finding: erratic
        label: The four gaps differ
        verdict: neither
        means: The wheel runs out.
        next:
          - refer: A machine shop, for the run-out of the wheel.
      - finding: cannot_tell
        label: Dirt hides the teeth
        verdict: neither
        means: Clean it first.
        next:
          - repeat: true
"""

from __future__ import annotations

from collections.abc import Iterator

from generator.checks.fault_page import fault
from generator.checks.readings import quantity_of
from generator.expected import CannotExpect, expect
from generator.problems import Problem
from generator.records.kinds.facts import Finding
from generator.records.kinds.things import Component, Spec
from generator.records.kinds.work import Test
from generator.records.knowledge_base import KnowledgeBase

MISSING_OUTCOME = fault("missing-outcome", __doc__)

ByWord = frozenset[Finding]
"""Findings of which any one will do."""

WITHIN: ByWord = frozenset({Finding.IN_LIMITS, Finding.AS_EXPECTED})
BELOW: ByWord = frozenset({Finding.LOW})
ABOVE: ByWord = frozenset({Finding.HIGH})
DEAD: ByWord = frozenset({Finding.OPEN, Finding.FLAT_LOW, Finding.FLAT_HIGH})
ALWAYS: ByWord = frozenset({Finding.CANNOT_TELL})
JUMPS: ByWord = frozenset({Finding.ERRATIC})
ON_WIRING: tuple[ByWord, ...] = (
    frozenset({Finding.CHANGES_WHEN_MOVED}), frozenset({Finding.COMPLAINT_ABSENT}),
)  # fmt: skip

INSTRUMENTS = ("meter", "oscilloscope", "scan_tool", "gauge")
"""Methods that give a reading; looking and asking do not."""

ELECTRICAL = ("resistance", "voltage", "current", "frequency", "ratio")
"""Quantities that come over a wire, which can be open at one moment and whole at the next."""


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each test that leaves a reading without an answer."""
    found = []
    for test in kb.all("tests", Test):
        have = {outcome.finding for outcome in test.outcomes}
        lacking = sorted({_named(any_of) for any_of in needed(kb, test) if not any_of & have})
        if lacking:
            found.append(
                kb.problem(
                    MISSING_OUTCOME, test, ("outcomes",),
                    f"no outcome for {', '.join(lacking)}",
                    "add one, with what it means and where it leads", of_key=True,
                )
            )  # fmt: skip
    return found


def needed(kb: KnowledgeBase, test: Test) -> Iterator[ByWord]:
    """Give what a test must be able to answer, from its method, its values and its hook-ups."""
    yield ALWAYS
    specs = [kb.get("specs", id_, Spec) for id_ in test.specs]
    if not specs or test.method not in INSTRUMENTS:
        return
    yield from (WITHIN, JUMPS)
    for spec in specs:
        yield from _of_value(kb, spec)
    electrical = any(quantity_of(spec) in ELECTRICAL for spec in specs)
    if electrical and any(
        kb.get("components", hookup.component, Component).connector for hookup in test.hookups
    ):
        yield from ON_WIRING


def _of_value(kb: KnowledgeBase, spec: Spec) -> Iterator[ByWord]:
    try:
        limits = expect(kb, spec)
    except CannotExpect:
        return  # it has a finding of its own
    if limits.low is not None:
        yield BELOW
    if limits.high is not None:
        yield ABOVE
    if spec.model.name == "winding":
        yield from (frozenset({Finding.OPEN}), frozenset({Finding.SHORTED}))
    elif "insulation" in spec.quantity:
        yield frozenset({Finding.SHORTED})
    elif "drop" in spec.quantity:
        yield frozenset({Finding.OPEN})
    elif spec.model.name == "square_mean":
        yield from (frozenset({Finding.FLAT_LOW}), frozenset({Finding.FLAT_HIGH}))
    elif quantity_of(spec) == "voltage" and limits.low is not None and limits.high is not None:
        yield DEAD  # a level with two limits is a feed or a signal, and a wire can be dead


def _named(any_of: ByWord) -> str:
    return " or ".join(sorted(finding.value for finding in any_of))
