"""Everything the hazard engine finds wrong with a manual."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from generator.hazards import ending, missing, sequence, unsaid
from generator.hazards.classes import SUPPLIES, TOOLS
from generator.hazards.effects import SAFEST_FIRST
from generator.hazards.engine import guard
from generator.hazards.rules import built_in_ids
from generator.problems import Problem, code, in_order
from generator.records.kinds.knowledge import Hazard
from generator.records.kinds.work import Job, Procedure, Replacement, Test
from generator.records.knowledge_base import KnowledgeBase

BUILT_IN_ID = code(
    "builtin-hazard-id",
    "A built-in caution cannot be taken away or reworded; a shop's own stands beside it.",
)
RULE_NEVER_FIRES = code(
    "rule-word",
    "A rule that asks for a word nobody uses never fires, and nobody notices.",
)
RULE_HARM = code(
    "rule-harm",
    "DANGER is for what will kill or maim; used for less it stops being read.",
)


def jobs_of(kb: KnowledgeBase) -> list[Job]:
    """Give every test, replacement and procedure of a manual."""
    return [
        *kb.all("tests", Test),
        *kb.all("replacements", Replacement),
        *kb.all("procedures", Procedure),
    ]


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give every finding on hazards, states and steps, in the order of their places."""
    return in_order(_every(kb))


def _every(kb: KnowledgeBase) -> Iterator[Problem]:
    yield from own_rules(kb)
    yield from missing.of_stock(kb)
    for job in jobs_of(kb):
        yield from kb.remember("cautions", job.key, partial(_all_of_job, kb, job))


def _all_of_job(kb: KnowledgeBase, job: Job) -> list[Problem]:
    return list(of_job(kb, job))


def of_job(kb: KnowledgeBase, job: Job) -> Iterator[Problem]:
    """Give every finding on one job: facts left out, order, and what it leaves behind."""
    guarded = guard(kb, job)
    yield from missing.of_job(kb, job, guarded)
    yield from sequence.of_job(kb, job)
    yield from ending.of_job(kb, job, guarded)
    yield from unsaid.of_job(kb, job, guarded)


def own_rules(kb: KnowledgeBase) -> Iterator[Problem]:
    """Give the findings on a shop's own rules."""
    for rule in kb.all("hazards", Hazard):
        if rule.id in built_in_ids():
            yield kb.problem(
                BUILT_IN_ID, rule, (),
                f"{rule.id} is the id of a built-in caution", "give it an id of its own",
            )  # fmt: skip
        if rule.likelihood == "will" and rule.harm in ("minor", "property"):
            yield kb.problem(
                RULE_HARM, rule, ("likelihood",),
                f"`will` does not go with a harm of {rule.harm}", "write could",
            )  # fmt: skip
        for index, when in enumerate(rule.when):
            at = ("when", index)
            for name, words in when.state.items():
                if name not in SAFEST_FIRST:
                    yield kb.problem(
                        RULE_NEVER_FIRES, rule, (*at, "state", name),
                        f"no state has {name}", f"use one of: {', '.join(SAFEST_FIRST)}",
                        of_key=True,
                    )  # fmt: skip
                    continue
                for position, word in enumerate(words):
                    if word not in SAFEST_FIRST[name]:
                        yield kb.problem(
                            RULE_NEVER_FIRES, rule, (*at, "state", name, position),
                            f"no state has {name}: {word}",
                            f"use one of: {', '.join(SAFEST_FIRST[name])}",
                        )  # fmt: skip
            for field, known_classes in (("tool_class", TOOLS), ("supply_class", SUPPLIES)):
                for position, word in enumerate(getattr(when, field)):
                    if word not in known_classes:
                        yield kb.problem(
                            RULE_NEVER_FIRES, rule, (*at, field, position),
                            f"the rules know no {field} called {word}",
                            "use one of: " + ", ".join(known_classes),
                        )  # fmt: skip
