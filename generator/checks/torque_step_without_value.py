"""A fastener tightened without a torque.

Wrong: A step tightens something, and names no torque and no angle under `spec`.

Why: Too loose and it comes off; too tight and the thread, the seal or the part is gone.

Mend: Name the torque's record under `spec`. Where hand-tight is right, say so in the step and why
in a reasoned exception.

Fails, in procedures/set-gap-1-6:

    steps:
      - do: Tighten the bolt to its torque.
        action: tighten
        place: engine_bay
        acts_on: [crank-sensor-hall]
        tools: [torque-wrench]

Passes:

    steps:
      - do: Tighten the bolt to its torque.
        action: tighten
        place: engine_bay
        acts_on: [crank-sensor-hall]
        tools: [torque-wrench]
        spec: hall-bolt-torque
"""

from __future__ import annotations

from generator.checks.fault_page import fault
from generator.checks.readings import quantity_of
from generator.hazards.findings import jobs_of
from generator.problems import Problem
from generator.records.kinds.facts import Action
from generator.records.kinds.things import Spec
from generator.records.kinds.work import Step
from generator.records.knowledge_base import KnowledgeBase

TIGHTENED_BLIND = fault("torque-step-without-value", __doc__)

SAYS_HOW_TIGHT = ("torque", "angle")


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each step that tightens without saying how tight."""
    return [
        kb.problem(
            TIGHTENED_BLIND, job, ("steps", index, "action"),
            "it tightens, and names no torque",
            "add spec with the torque of this fastener",
        )
        for job in jobs_of(kb)
        for index, step in enumerate(job.steps)
        if step.action is Action.TIGHTEN and not _says_how_tight(kb, step)
    ]  # fmt: skip


def _says_how_tight(kb: KnowledgeBase, step: Step) -> bool:
    return any(quantity_of(kb.get("specs", id_, Spec)) in SAYS_HOW_TIGHT for id_ in step.specs)
