"""What a test's outcome says about a cause: the records' words as probabilities."""

from __future__ import annotations

from collections.abc import Sequence
from enum import StrEnum

from generator.records.kinds.facts import Finding, Verdict
from generator.records.kinds.knowledge import Cause
from generator.records.kinds.work import Next, Outcome, Test

ASLEEP = 0.1
"""Share of a test's power that is left while the fault sleeps (judgement: a fault that is not
there while it is looked for shows by a lasting trace, or not at all)."""

SOUND = (Finding.IN_LIMITS, Finding.AS_EXPECTED, Finding.IS_A)


class Says(StrEnum):
    """What an outcome says, whatever the test."""

    PROVES = "proves"
    POINTS = "points"
    CLEAR = "clear"
    ASLEEP = "asleep"
    NOTHING = "nothing"


def says(outcome: Outcome) -> Says:
    """Give what an outcome says."""
    if outcome.verdict is Verdict.CONDEMNS:
        return Says.PROVES
    if outcome.finding is Finding.CANNOT_TELL:
        return Says.NOTHING
    if outcome.finding is Finding.COMPLAINT_ABSENT:
        return Says.ASLEEP
    if outcome.finding in SOUND or outcome.verdict is Verdict.CLEARS:
        return Says.CLEAR
    return Says.POINTS


def share(cause: Cause, test: Test) -> float:
    """Give the share of a cause's faults that a test shows: the cause's word, or the test's own.

    A static reading that finds nine broken coils in ten finds few of those that break when hot.
    """
    return cause.shows.get(test.id, test.sensitivity)


def ways(outcome: Outcome, vehicle: str) -> list[Next]:
    """Give the ways that an outcome leads on a vehicle."""
    return [way for way in outcome.next if not way.vehicles or vehicle in way.vehicles]


def proves(test: Test, cause: Cause, vehicle: str) -> bool:
    """Say whether a test proves a cause, or only points at it.

    It proves it if an outcome condemns the cause's part, or if nothing it shows sends the reader
    on to another test: the work or the referral then follows at once.
    """
    shown = [outcome for outcome in test.outcomes if says(outcome) in (Says.PROVES, Says.POINTS)]
    if any(condemns(test, outcome, cause) for outcome in shown):
        return True
    ends = [way for outcome in shown for way in ways(outcome, vehicle) if not way.repeat]
    return bool(ends) and all(way.test is None and not way.carry_on for way in ends)


def condemns(test: Test, outcome: Outcome, cause: Cause) -> bool:
    """Say whether an outcome condemns a cause's part."""
    about = outcome.about or test.components
    return outcome.verdict is Verdict.CONDEMNS and cause.component in about


def likelihoods(causes: Sequence[Cause], test: Test, outcome: Outcome) -> list[float]:
    """Give the probability of what an outcome says under each cause.

    Notes
    -----
    Under a cause that the test shows with share s: s for what shows it, 1 − s for a sound
    reading, 1 − s·:data:`ASLEEP` for a sound reading while the fault sleeps. Under any other: 1 −
    specificity for what shows something, and specificity for a sound reading. A test that could
    not tell says nothing: 1 throughout.
    """
    meaning = says(outcome)
    found = []
    for cause in causes:
        named = condemns(test, outcome, cause)
        power = share(cause, test) if test.id in cause.tests or named else None
        if meaning is Says.NOTHING:
            found.append(1.0)
        elif meaning is Says.ASLEEP:
            found.append(1.0 if power is None else 1 - power * ASLEEP)
        elif meaning is Says.CLEAR:
            found.append(test.specificity if power is None else 1 - power)
        elif meaning is Says.PROVES and not named:
            found.append(1 - test.specificity)
        else:
            found.append(1 - test.specificity if power is None else power)
    return found
