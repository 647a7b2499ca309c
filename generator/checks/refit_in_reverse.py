"""A refitting that is told as the reverse of taking apart.

Wrong: The words send the reader back through the steps in reverse order, and the work has what no
reverse order tells: a torque, a part that must not go back, or something to be learned anew.

Why: The reader would put the old seal ring back, guess the torque and forget the relearn.

Mend: Write the steps of refitting out, each with its torque, its new part or its relearn.

Fails, in replacements/replace-crank-sensor-inductive:

    if_not_cured: Refit in reverse order, and look further.

Passes:

    if_not_cured: Suspect the connector first, then the wiring.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from generator.checks.fault_page import fault
from generator.checks.places import words_of
from generator.checks.readings import quantity_of
from generator.hazards.findings import jobs_of
from generator.problems import Problem
from generator.records.kinds.facts import Action, Condition
from generator.records.kinds.things import Spec
from generator.records.kinds.work import Job, Replacement
from generator.records.knowledge_base import KnowledgeBase

REFIT_IN_REVERSE = fault("refit-in-reverse", __doc__)

_REVERSE = re.compile(
    r"\b(?:in (?:the )?reverse(?! gear)|(?:the |in )?reverse (?:order|sequence|procedure)"
    r"|(?:the )?reverse of (?:removal|removing|dismantling|disassembly|taking)"
    r"|in (?:the )?opposite order|reversing the (?:steps|order|procedure|removal))\b",
    re.IGNORECASE,
)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each "in reverse" in a job that reverse order cannot tell."""
    return [
        kb.problem(
            REFIT_IN_REVERSE, job, path,
            f"it says {match.group()!r}, and the work has {untold[0]}",
            "write the steps of refitting out",
        )
        for job in jobs_of(kb)
        if (untold := list(_untold(kb, job)))
        for path, text in words_of(job)
        if (match := _REVERSE.search(text))
    ]  # fmt: skip


def _untold(kb: KnowledgeBase, job: Job) -> Iterator[str]:
    """Give what a reverse order does not tell."""
    if isinstance(job, Replacement):
        yield from (f"a part that must not go back ({p.name})" for p in job.parts if p.single_use)
    parts = {id_ for step in job.steps for id_ in step.acts_on}
    for spec in kb.all("specs", Spec):
        if spec.component in parts and quantity_of(spec) == "torque":
            yield f"a torque ({spec.title})"
    for step in job.steps:
        if Condition.SINGLE_USE_FASTENER in step.condition:
            yield "a fastener that must not go back"
        if step.action is Action.PROGRAM or step.call is not None:
            yield f"something done afterwards ({step.do})"
