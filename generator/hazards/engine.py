"""The engine: a job in, the same job with its cautions out.

It walks the steps in order, those of called procedures in place, and carries the state along.
A hazard of the act gets its full box each time; a hazard of a state gets it where the state
begins, one line while it lasts, and the box again when the state ended and began anew.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from generator.hazards.guarded import (
    _SEAL,
    Box,
    Guarded,
    GuardedStep,
    HazardLine,
    Reminder,
)
from generator.hazards.match import Ready, ready_rules
from generator.hazards.rules import word_of
from generator.hazards.situation import kinds_of, situation, vehicles_of
from generator.hazards.state import FullState, after, during, standing
from generator.records.kinds.knowledge import Hazard
from generator.records.kinds.things import Component
from generator.records.kinds.work import Job, Procedure, State, Step
from generator.records.knowledge_base import KnowledgeBase, table


@dataclass(frozen=True, slots=True)
class Walked:
    """A step where the walk meets it.

    Parameters
    ----------
    number : str
        "4" or "4.1".
    job : Job
        The record the step is written in.
    index : int
        Its place there, from 0.
    step : Step
        The step.
    before, during, after : FullState
        The state around it. For a step that calls, *after* is the state before the called steps.
    """

    number: str
    job: Job
    index: int
    step: Step
    before: FullState
    during: FullState
    after: FullState


def start_of(kb: KnowledgeBase, job: Job, start: State | None = None) -> FullState:
    """Give the state a job begins in: the standing state, then its entry, then `start`."""
    high_voltage = "hybrid" in kinds_of(vehicles_of(kb, job))
    arrived = standing(kb.settings.standing_state, high_voltage=high_voltage)
    return arrived.overlaid(job.entry).overlaid(start)


def guards_of(kb: KnowledgeBase) -> frozenset[str]:
    """Give the ids of the components that are guards."""
    return kb.table(_guards)[""]


@table
def _guards(kb: KnowledgeBase) -> dict[str, frozenset[str]]:
    return {"": frozenset(part.id for part in kb.all("components", Component) if part.guard)}


def walk(kb: KnowledgeBase, job: Job, start: FullState) -> Iterator[Walked]:
    """Walk a job's steps and those of the procedures it calls, carrying the state.

    Notes
    -----
    A procedure that is called from within itself is not entered again, so a walk always ends.
    """
    yield from _walk(kb, job, start, guards_of(kb), "", (job.key,))


def _walk(
    kb: KnowledgeBase, job: Job, state: FullState, guards: frozenset[str], prefix: str,
    way: tuple[str, ...],
) -> Iterator[Walked]:  # fmt: skip
    for index, step in enumerate(job.steps):
        number = f"{prefix}{index + 1}"
        then = after(state, step, guards)
        yield Walked(number, job, index, step, state, during(state, step, guards), then)
        state = then
        called = kb.find("procedures", step.call, Procedure)
        if called is not None and called.key not in way:
            for inner in _walk(kb, called, state, guards, f"{number}.", (*way, called.key)):
                yield inner
                state = inner.after


def guard(kb: KnowledgeBase, job: Job, start: State | None = None) -> Guarded:
    """Give a job with its cautions.

    Parameters
    ----------
    kb : KnowledgeBase
        The manual.
    job : Job
        A test, replacement or procedure of it.
    start : State, optional
        What is known of the vehicle's state beyond what the job's entry says.

    Returns
    -------
    Guarded
        Every step in order, each with its state, its box and its reminders.
    """
    if start is None and kb.records.get(job.kind, {}).get(job.id) is job:
        return kb.remember("guard", job.key, lambda: _guard(kb, job, None), keep=False)
    return _guard(kb, job, start)


def _guard(kb: KnowledgeBase, job: Job, start: State | None) -> Guarded:
    begins = start_of(kb, job, start)
    kinds = kinds_of(vehicles_of(kb, job))
    rules = ready_rules(kb)
    lasting: dict[str, Ready] = {}
    steps: list[GuardedStep] = []
    left = begins
    for walked in walk(kb, job, begins):
        it = situation(kb, kinds, walked.step, walked.during)
        due = rules.due(it)
        of_state = {ready.rule.id: ready for ready in due if ready.rule.begins == "state"}
        full = [ready.rule for ready in due if ready.rule.id not in of_state.keys() & lasting]
        lines = [ready.rule for id_, ready in of_state.items() if id_ in lasting]
        lasting = {
            id_: ready
            for id_, ready in {**lasting, **of_state}.items()
            if ready.lasts(it, walked.after)
        }
        steps.append(_guarded(walked, full, lines))
        left = walked.after
    return Guarded(job, begins, left, tuple(steps), seal=_SEAL)


def _guarded(walked: Walked, full: list[Hazard], lines: list[Hazard]) -> GuardedStep:
    hazards = sorted((HazardLine.of(rule) for rule in full), key=lambda line: line.word.rank)
    reminders = sorted(
        (Reminder(rule.id, word_of(rule), rule.reminder or rule.hazard) for rule in lines),
        key=lambda line: line.word.rank,
    )
    return GuardedStep(
        number=walked.number,
        anchor="step-" + walked.number.replace(".", "-"),
        step=walked.step,
        record_key=walked.job.key,
        index=walked.index,
        state_before=walked.before,
        state_during=walked.during,
        state_after=walked.after,
        boxes=(Box(tuple(hazards)),) if hazards else (),
        reminders=tuple(reminders),
        seal=_SEAL,
    )
