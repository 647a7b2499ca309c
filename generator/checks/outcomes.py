"""A test that cannot answer, or whose answers overlap.

A test on a number has an outcome for every reading the mechanic can get: in limits, low, high,
and "cannot tell". A plausibility band is never used for a verdict.
"""

from __future__ import annotations

from generator.problems import Problem, code
from generator.records.kinds.facts import Finding, Verdict
from generator.records.kinds.things import Spec
from generator.records.kinds.work import Test
from generator.records.knowledge_base import KnowledgeBase

MISSING_OUTCOME = code(
    "missing-outcome",
    "A mechanic who gets that reading would not know what it says.",
)
BAND_FOR_VERDICT = code(
    "verdict-from-band",
    "A spread over all designs proves nothing about this part; a good one would be thrown away.",
)
SAME_OUTCOME = code(
    "same-outcome-twice",
    "One reading would give two answers.",
)
LONGEST_NAMED = 3


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each outcome that is missing, doubled or rests on a band."""
    found: list[Problem] = []
    for test in kb.all("tests", Test):
        specs = [kb.get("specs", id_, Spec) for id_ in test.specs]
        found.extend(_missing(kb, test, specs))
        found.extend(_doubled(kb, test))
        found.extend(_bands(kb, test, specs))
    return found


def needed(specs: list[Spec]) -> set[Finding]:
    """Give the findings that a test on these values must be able to give."""
    if not specs:
        return {Finding.CANNOT_TELL}
    wanted = {Finding.IN_LIMITS, Finding.CANNOT_TELL}
    for spec in specs:
        one_sided = spec.value.form if spec.value else ""
        if one_sided != "at most":
            wanted.add(Finding.LOW)
        if one_sided != "at least":
            wanted.add(Finding.HIGH)
    return wanted


def _missing(kb: KnowledgeBase, test: Test, specs: list[Spec]) -> list[Problem]:
    have = {outcome.finding for outcome in test.outcomes}
    measured = [spec for spec in specs if test.method in ("meter", "scan_tool", "gauge")]
    wanted = needed(measured)
    if any(spec.model.name == "winding" for spec in measured):
        wanted |= {Finding.OPEN, Finding.SHORTED}
    lacking = sorted(finding.value for finding in wanted - have)
    if not lacking:
        return []
    return [
        kb.problem(
            MISSING_OUTCOME, test, ("outcomes",),
            f"no outcome for {', '.join(lacking[:LONGEST_NAMED])}",
            "add one, with what it means and where it leads", of_key=True,
        )
    ]  # fmt: skip


def _doubled(kb: KnowledgeBase, test: Test) -> list[Problem]:
    seen: set[tuple[str, str]] = set()
    found = []
    for index, outcome in enumerate(test.outcomes):
        key = (outcome.finding.value, outcome.label)
        if key in seen:
            found.append(
                kb.problem(
                    SAME_OUTCOME, test, ("outcomes", index, "label"),
                    f"the outcome {outcome.label!r} is there twice", "keep one of them",
                )
            )  # fmt: skip
        seen.add(key)
    return found


def _bands(kb: KnowledgeBase, test: Test, specs: list[Spec]) -> list[Problem]:
    """Find verdicts on a part of which the test knows nothing but bands."""
    if not specs or any(spec.standing == "vehicle_value" for spec in specs):
        return []
    return [
        kb.problem(
            BAND_FOR_VERDICT, test, ("outcomes", index, "verdict"),
            "this verdict rests on a plausibility band alone",
            "add the vehicle's own value to specs, or say neither",
        )
        for index, outcome in enumerate(test.outcomes)
        if outcome.verdict is not Verdict.NEITHER
        and outcome.finding in (Finding.IN_LIMITS, Finding.LOW, Finding.HIGH)
    ]
