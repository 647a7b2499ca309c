"""Findings: cautions that hang on one word, and wording that no fact declares."""

from __future__ import annotations

from collections.abc import Iterator

from generator.hazards.guarded import Guarded, GuardedStep
from generator.hazards.lexicon import wordings
from generator.hazards.match import Asked, ready_rules
from generator.hazards.prose import declared, implied
from generator.hazards.situation import kinds_of, situation, vehicles_of
from generator.problems import Problem, Severity, code
from generator.records.kinds.facts import Action, Energy
from generator.records.kinds.work import Job
from generator.records.knowledge_base import KnowledgeBase

UNDECLARED_HAZARD = code(
    "undeclared-hazard",
    "The sentence tells the reader to do something that no caution stands above.",
)

NEAR_ALONE = code(
    "near-alone",
    "A caution hangs on this one word of this one step; the next step at the part may forget it.",
    Severity.WARNING,
)

READ = ("do", "note")
"""The fields of a step that instruct."""


def of_job(kb: KnowledgeBase, job: Job, guarded: Guarded) -> Iterator[Problem]:
    """Read the wording of a job's own steps against their facts.

    A step that carries out a procedure is not read: its procedure's steps are.
    """
    kinds = kinds_of(vehicles_of(kb, job))
    for guarded_step in guarded.steps:
        step = guarded_step.step
        if guarded_step.record_key != job.key or step.action is Action.CARRY_OUT:
            continue
        it = situation(kb, kinds, step, guarded_step.state_during)
        yield from _alone(kb, job, guarded_step, kinds)
        for field in READ:
            for one in implied(getattr(step, field) or ""):
                if not declared(one.hazard, it):
                    yield kb.problem(
                        UNDECLARED_HAZARD, job, ("steps", guarded_step.index, field),
                        f"“{one.words}” implies {one.hazard.replace('_', ' ')}, and no fact of "
                        "the step declares it",
                        f"add the fact ({_facts(one.hazard)}), or word it otherwise",
                    )  # fmt: skip


def _alone(
    kb: KnowledgeBase, job: Job, guarded_step: GuardedStep, kinds: frozenset[str]
) -> Iterator[Problem]:
    """Find the words of `near` that carry a caution which nothing else would call for."""
    step = guarded_step.step
    warned = {line.id for line in guarded_step.hazards}
    warned |= {reminder.id for reminder in guarded_step.reminders}
    for position, energy in enumerate(step.near):
        if energy is Energy.UNKNOWN:
            continue
        rest = [other for other in step.near if other is not energy]
        bare = step.model_copy(update={"near": rest})
        it = situation(kb, kinds, bare, guarded_step.state_during)
        lost = warned - {ready.rule.id for ready in ready_rules(kb).due(it)}
        if lost:
            yield kb.problem(
                NEAR_ALONE, job, ("steps", guarded_step.index, "near", position),
                f"{', '.join(sorted(lost))} hangs on this word alone",
                f"add {energy} to `near` of the component, where every step at it finds it",
            )  # fmt: skip


def _facts(hazard: str) -> str:
    """Give in words the facts that declare a hazard."""
    return ", or ".join(
        " with ".join([*(f"action: {action}" for action in sorted(actions)[:1]), *_asks(asked)])
        for actions, asked in wordings()[hazard].declared
    )


def _asks(asked: Asked) -> Iterator[str]:
    for name, words in (*(("place", w) for w in [asked.place] if w), *asked.facts, *asked.state):
        said = "/".join(sorted(word for word in words if word != "unknown"))
        yield f"{NAMED.get(name, name)}: {said}"


NAMED = {
    "near": "near, or the energy of what it acts on",
    "energy": "the energy of what it acts on",
    "tool_class": "a tool of the class",
    "supply_class": "a supply of the class",
    "apart": "something apart of the energy",
}
"""A rule's fields as an author knows them."""
