"""Mutants of a manual: one fact of one step taken away, or one carried state forgotten.

A mutant is *killed* where a finding appears that was not there before, or where every step still
has at least the cautions it had. Whatever is left is a survivor: a caution that one slip of an
author would lose without a word.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Any
from unittest.mock import patch

from pydantic import ValidationError

from generator.hazards import engine, guard
from generator.hazards.effects import DIMENSIONS
from generator.hazards.findings import jobs_of, of_job
from generator.hazards.state import FullState
from generator.hazards.state import after as true_after
from generator.records.kinds.facts import Action
from generator.records.kinds.work import Job, Step
from generator.records.knowledge_base import KnowledgeBase

FACTS = (
    "action", "place", "acts_on", "near", "opens", "tools", "supplies", "sets", "measures",
    "condition", "call", "spec", "plain",
)  # fmt: skip


@dataclass(frozen=True)
class Mutant:
    """A manual with one fact taken away."""

    name: str
    kb: KnowledgeBase
    refused: bool = False


Cautions = dict[tuple[str, str], tuple[frozenset[str], frozenset[str]]]


def cautions(kb: KnowledgeBase, jobs: list[Job]) -> Cautions:
    """Give, for each step of each job, the ids in its box and the ids it warns or reminds of."""
    found: Cautions = {}
    for job in jobs:
        for step in guard(kb, job).steps:
            boxed = frozenset(line.id for line in step.hazards)
            found[job.key, step.number] = (
                boxed, boxed | {reminder.id for reminder in step.reminders}
            )  # fmt: skip
    return found


def at_least(mutant: Cautions, whole: Cautions) -> bool:
    """Say whether every step still warns of all it warned of, and boxes no fewer of them.

    A box may turn into a reminder where an earlier step now has the box.
    """
    return all(
        key in mutant and warned <= mutant[key][1] for key, (_boxed, warned) in whole.items()
    )


def lost(mutant: Cautions, whole: Cautions) -> str:
    """Give the ids that are gone, for the message of a failing test."""
    gone = {id_ for key, (_b, warned) in whole.items() for id_ in warned - mutant[key][1]}
    return ", ".join(sorted(gone))


def seen(kb: KnowledgeBase, jobs: list[Job]) -> Counter[tuple[str, str, str]]:
    """Give the findings on jobs in a form that can be compared."""
    return Counter((p.code, p.record, p.message) for job in jobs for p in of_job(kb, job))


def affected(kb: KnowledgeBase, key: str) -> list[Job]:
    """Give a job and every job that calls it, at any depth."""
    return [
        job
        for job in jobs_of(kb)
        if job.key == key or any(step.record_key == key for step in guard(kb, job).steps)
    ]


def without(kb: KnowledgeBase, job: Job, index: int, changed: dict[str, Any]) -> Mutant:
    """Give the manual with one step of one job changed."""
    name = f"{job.key} step {index + 1} without {changed}"
    written = job.steps[index].model_dump()
    for field, value in changed.items():
        if value is None and field in ("action", "place"):
            del written[field]
        else:
            written[field] = value
    try:
        step = Step.model_validate(written, strict=False)
    except ValidationError:
        return Mutant(name, kb, refused=True)
    steps = [*job.steps[:index], step, *job.steps[index + 1 :]]
    other = job.model_copy(update={"steps": steps})
    other.named(job.kind, job.id)
    records = {**kb.records, job.kind: {**kb.records[job.kind], job.id: other}}
    return Mutant(name, replace(kb, records=records))


def mutants(kb: KnowledgeBase, key: str) -> Iterator[Mutant]:
    """Give every mutant of a job: each fact of each step dropped whole, and each list's items."""
    for job in jobs_of(kb):
        if job.key != key:
            continue
        for index, step in enumerate(job.steps):
            for field in FACTS:
                value = getattr(step, field)
                if not value:
                    continue
                empty: Any = [] if isinstance(value, list) else None
                yield without(kb, job, index, {field: empty})
                if isinstance(value, list) and len(value) > 1:
                    for position in range(len(value)):
                        kept = [*value[:position], *value[position + 1 :]]
                        yield without(kb, job, index, {field: kept})
            if step.sets is not None:
                for name in DIMENSIONS:
                    if getattr(step.sets, name) is not None:
                        yield without(
                            kb, job, index, {"sets": {**step.sets.model_dump(), name: None}}
                        )


def survivors(kb: KnowledgeBase) -> list[str]:
    """Give the names of the mutants that neither a finding nor an equal box kills."""
    found = []
    for key in [job.key for job in jobs_of(kb)]:
        jobs = affected(kb, key)
        before, whole = seen(kb, jobs), cautions(kb, jobs)
        for mutant in mutants(kb, key):
            if mutant.refused:
                continue
            changed = [job for job in jobs_of(mutant.kb) if job.key in {j.key for j in jobs}]
            now = cautions(mutant.kb, changed)
            if seen(mutant.kb, changed) <= before and not at_least(now, whole):
                found.append(f"{mutant.name}, which loses {lost(now, whole)}")
    return found


def forgetful_survivors(kb: KnowledgeBase) -> list[str]:
    """Give the carried states whose loss nothing notices.

    For each action and dimension, one job after the other: the act no longer changes it.
    """
    found = []
    for job in jobs_of(kb):
        before, whole = seen(kb, [job]), cautions(kb, [job])
        for action in sorted({step.step.action for step in guard(kb, job).steps}):
            for name in _changed(kb, job, action):
                with patch.object(engine, "after", _forgetting(action, name)):
                    if seen(kb, [job]) <= before and not at_least(cautions(kb, [job]), whole):
                        found.append(f"{job.key}: {action} no longer changes {name}")
    return found


def _changed(kb: KnowledgeBase, job: Job, action: Action) -> list[str]:
    """Give the dimensions that an act changes anywhere in a job."""
    return [
        name
        for name in DIMENSIONS
        if any(
            step.step.action is action
            and step.state_before.word(name) is not step.state_after.word(name)
            for step in guard(kb, job).steps
        )
    ]


def _forgetting(action: Action, name: str) -> Any:
    def after(state: FullState, step: Step, guards: Any = ()) -> FullState:
        then = true_after(state, step, guards)
        kept: dict[str, Any] = {name: state.word(name)}
        return replace(then, **kept) if step.action is action else then

    return after
