"""How a search ends: a proved cause, a referral, or what was looked for and not found."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from generator.diagnosis.evidence import Evidence, outcome_of
from generator.diagnosis.model import NOTHING
from generator.diagnosis.readings import Says, condemns, proves, says, ways
from generator.records.kinds.knowledge import Cause
from generator.records.kinds.work import Next, Outcome, Test
from generator.records.knowledge_base import KnowledgeBase


class How(StrEnum):
    """The three ways a search can end."""

    PROVED = "proved"
    REFER = "refer"
    NOT_FOUND = "not_found"


@dataclass(frozen=True, slots=True)
class Ending:
    """How a search ended.

    Parameters
    ----------
    how : How
        Which way.
    causes : tuple of Cause
        The proved causes; for a referral, those that lie elsewhere.
    by : str
        Id of the test that ended it, if one did.
    ways : tuple of Next
        Where the record leads from there.
    words : tuple of str
        Where to look, or what to write down, in the records' words.
    excluded : tuple of str
        Tests that found nothing.
    unsettled : tuple of str
        Tests that could not tell, or were made while the fault slept.
    """

    how: How
    causes: tuple[Cause, ...] = ()
    by: str = ""
    ways: tuple[Next, ...] = ()
    words: tuple[str, ...] = ()
    excluded: tuple[str, ...] = ()
    unsettled: tuple[str, ...] = ()


def ending_of(
    kb: KnowledgeBase,
    causes: Sequence[Cause],
    shares: Sequence[float],
    vehicle: str,
    evidence: Evidence,
    *,
    left: bool,
) -> Ending | None:
    """Give how it ended, or nothing while tests are left.

    Parameters
    ----------
    kb : KnowledgeBase
        The manual.
    causes, shares : sequence, shape (n,)
        What it can be, by everything that is known.
    vehicle : str
        The vehicle's id.
    evidence : Evidence
        What is known.
    left : bool
        Whether any test is left.
    """
    excluded, unsettled = _looked_for(kb, evidence)
    for id_, finding in reversed(evidence.found):
        test = kb.get("tests", id_, Test)
        outcome = outcome_of(test, finding)
        ended = ended_by(test, outcome, causes, vehicle) if outcome is not None else None
        if ended is not None:
            how, proved, onward = ended
            words = tuple(way.refer or way.done or "" for way in onward if way.refer or way.done)
            return Ending(how, proved, id_, onward, words, excluded, unsettled)
    if left:
        return None
    elsewhere = tuple(
        cause
        for cause, share in zip(causes, shares, strict=True)
        if cause.refer is not None and share > NOTHING
    )
    words = tuple(dict.fromkeys(cause.refer for cause in elsewhere if cause.refer))
    how = How.REFER if elsewhere else How.NOT_FOUND
    return Ending(how, elsewhere, "", (), words, excluded, unsettled)


def ended_by(
    test: Test, outcome: Outcome, causes: Sequence[Cause], vehicle: str
) -> tuple[How, tuple[Cause, ...], tuple[Next, ...]] | None:
    """Give how an outcome ends the search, what it proves and where it leads, if it ends it."""
    onward = tuple(ways(outcome, vehicle))
    meaning = says(outcome)
    if meaning is Says.PROVES:
        return How.PROVED, tuple(c for c in causes if condemns(test, outcome, c)), onward
    work = any(way.replacement or way.procedure for way in onward)
    shown = tuple(c for c in causes if test.id in c.tests and proves(test, c, vehicle))
    if meaning is Says.POINTS and work and shown:
        return How.PROVED, shown, onward
    if meaning in (Says.POINTS, Says.NOTHING) and any(way.refer for way in onward):
        return How.REFER, shown, onward
    if any(way.done for way in onward):
        return How.NOT_FOUND, (), onward
    return None


def _looked_for(
    kb: KnowledgeBase, evidence: Evidence
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    excluded, unsettled = [], []
    for id_, finding in evidence.found:
        outcome = outcome_of(kb.get("tests", id_, Test), finding)
        meaning = says(outcome) if outcome is not None else Says.NOTHING
        if meaning is Says.CLEAR:
            excluded.append(id_)
        elif meaning in (Says.ASLEEP, Says.NOTHING):
            unsettled.append(id_)
    return tuple(excluded), tuple(unsettled)
