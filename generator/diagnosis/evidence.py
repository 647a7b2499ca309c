"""What is known about this vehicle today, and how it moves the odds, piece by piece."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from generator.diagnosis.belief import counted, update
from generator.diagnosis.readings import likelihoods
from generator.records.kinds.cases import Case
from generator.records.kinds.facts import CameBack, Circumstance, Finding
from generator.records.kinds.knowledge import Cause, FaultCode, Symptom
from generator.records.kinds.work import Outcome, Test
from generator.records.knowledge_base import KnowledgeBase

CODE_OF_ITS_PART = 0.6
"""Share of a part's faults that store a code which points at that part (judgement)."""

STRAY_CODE = 0.1
"""Share of other faults that store it all the same (judgement)."""

AS_OFTEN_AS_NOT = 0.5
"""Share of a cause's faults that show in a circumstance nobody has spoken of."""

SURPRISE = 0.02
"""Below this probability evidence is at odds with the list of causes, and the order says so."""


@dataclass(frozen=True, slots=True)
class Evidence:
    """What is known about the vehicle.

    Parameters
    ----------
    codes : tuple of str
        Ids of the stored codes' records.
    when : tuple of Circumstance
        When the complaint shows.
    found : tuple of (str, Finding)
        Tests made, each with what it found, in order.
    """

    codes: tuple[str, ...] = ()
    when: tuple[Circumstance, ...] = ()
    found: tuple[tuple[str, Finding], ...] = ()


@dataclass(frozen=True, slots=True)
class Working:
    """One piece of evidence at work.

    Parameters
    ----------
    kind : str
        code, when or found.
    what : str
        The code, circumstance or test.
    finding : str
        What the test found; else nothing.
    expected : float
        Its probability by the shares before it.
    shares : tuple of float
        The causes' shares after it.
    contradicts : bool
        It cannot be by the list of causes, and was left out.
    surprises : bool
        It can be, but hardly.
    """

    kind: str
    what: str
    finding: str
    expected: float
    shares: tuple[float, ...]
    contradicts: bool
    surprises: bool


@dataclass(frozen=True, slots=True)
class Prior:
    """A cause's weight before the vehicle is looked at.

    Parameters
    ----------
    judged : float
        The shop's judgement.
    cases : int
        Solved cases that stayed away.
    weight : float
        The judgement moved by the cases.
    """

    judged: float
    cases: int
    weight: float


def causes_on(symptom: Symptom, vehicle: str) -> list[Cause]:
    """Give the causes that a complaint can have on a vehicle."""
    return [cause for cause in symptom.causes if not cause.vehicles or vehicle in cause.vehicles]


def priors(kb: KnowledgeBase, symptom: Symptom, vehicle: str) -> list[Prior]:
    """Give each cause's weight, judged and moved by this vehicle's own solved cases."""
    causes = causes_on(symptom, vehicle)
    solved = [
        case.cause
        for case in kb.all("cases", Case)
        if case.complaint == symptom.id
        and case.vehicle == vehicle
        and case.came_back is CameBack.STAYED_AWAY
    ]
    counts = [solved.count(cause.name) for cause in causes]
    weights = counted([cause.weight for cause in causes], counts)
    return [
        Prior(cause.weight, count, weight)
        for cause, count, weight in zip(causes, counts, weights, strict=True)
    ]


def outcome_of(test: Test, finding: Finding) -> Outcome | None:
    """Give a test's outcome of a finding, the first where it has several."""
    return next((each for each in test.outcomes if each.finding is finding), None)


def weigh(
    kb: KnowledgeBase, causes: Sequence[Cause], shares: Sequence[float], evidence: Evidence
) -> tuple[tuple[float, ...], tuple[Working, ...]]:
    """Move the causes' shares by everything that is known, one piece after another.

    Parameters
    ----------
    kb : KnowledgeBase
        The manual; every code and test that the evidence names is in it.
    causes : sequence of Cause, shape (n,)
        What it can be.
    shares : sequence of float, shape (n,)
        Their shares before.
    evidence : Evidence
        What is known.

    Returns
    -------
    tuple
        The shares after, and what each piece did.

    Notes
    -----
    Pieces are taken as independent given the cause. A piece that cannot be under any cause left
    is marked and leaves the shares as they were: a list that is wrong must not turn into a
    certainty about something else.
    """
    here = tuple(shares)
    workings: list[Working] = []
    for kind, what, finding, likely in _pieces(kb, causes, evidence):
        result = update(here, likely)
        here = result.shares
        surprises = not result.contradicts and result.expected < SURPRISE
        workings.append(
            Working(kind, what, finding, result.expected, here, result.contradicts, surprises)
        )
    return here, tuple(workings)


def likelihoods_of(
    kb: KnowledgeBase, causes: Sequence[Cause], evidence: Evidence
) -> list[float]:
    """Give the probability of all the evidence under each cause."""
    found = [1.0] * len(causes)
    for _, _, _, likely in _pieces(kb, causes, evidence):
        found = [a * b for a, b in zip(found, likely, strict=True)]
    return found


def _pieces(
    kb: KnowledgeBase, causes: Sequence[Cause], evidence: Evidence
) -> Iterator[tuple[str, str, str, list[float]]]:
    """Walk the evidence: kind, what, finding and its likelihoods."""
    for id_ in evidence.codes:
        code = kb.get("codes", id_, FaultCode)
        yield "code", id_, "", [_stores(cause, code) for cause in causes]
    for circumstance in evidence.when:
        likely = [cause.when.get(circumstance, AS_OFTEN_AS_NOT) for cause in causes]
        yield "when", circumstance.value, "", likely
    for id_, finding in evidence.found:
        test = kb.get("tests", id_, Test)
        outcome = outcome_of(test, finding)
        if outcome is None:
            raise KeyError(f"{id_} cannot find {finding.value}")
        yield "found", id_, finding.value, likelihoods(causes, test, outcome)


def opening_shares(
    kb: KnowledgeBase, symptom: Symptom, vehicle: str, opening: Sequence[Test],
    evidence: Evidence | None = None,
) -> tuple[float, ...]:  # fmt: skip
    """Give the causes' shares by what is known and by the first looks.

    Whoever reaches the computed order has made them and found nothing, unless the evidence says
    what they found; what they miss of a cause stays.
    """
    causes = causes_on(symptom, vehicle)
    prior = [each.weight for each in priors(kb, symptom, vehicle)]
    known = evidence or Evidence()
    shares, _ = weigh(kb, causes, [weight / sum(prior) for weight in prior], known)
    named = {id_ for cause in causes for id_ in cause.tests} - {id_ for id_, _ in known.found}
    sound = []
    for test in opening:
        findings = [outcome.finding for outcome in test.outcomes]
        nothing = [each for each in (Finding.IN_LIMITS, Finding.AS_EXPECTED) if each in findings]
        if test.id in named and nothing:
            sound.append((test.id, nothing[0]))
    shares, _ = weigh(kb, causes, shares, Evidence(found=tuple(sound)))
    return shares


def _stores(cause: Cause, code: FaultCode) -> float:
    said = cause.codes.get(code.id)
    if said is not None:
        return said
    return CODE_OF_ITS_PART if cause.component in code.components else STRAY_CODE
