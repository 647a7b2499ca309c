"""A tool or a supply that a step uses and the job does not list.

The mechanic would find out half way through, under the vehicle.
"""

from __future__ import annotations

from generator.problems import Problem, code
from generator.records.kinds.work import Job, Procedure, Replacement, Test
from generator.records.knowledge_base import KnowledgeBase

TOOL_NOT_LISTED = code(
    "tool-not-listed",
    "The mechanic would find out half way through that something is missing.",
)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each tool or supply used in a step but not laid out at the start."""
    jobs: list[Job] = [
        *kb.all("tests", Test), *kb.all("replacements", Replacement),
        *kb.all("procedures", Procedure),
    ]  # fmt: skip
    found: list[Problem] = []
    for job in jobs:
        for index, step in enumerate(job.steps):
            for name in ("tools", "supplies"):
                listed = getattr(job, name)
                for place, id_ in enumerate(getattr(step, name)):
                    if id_ not in listed:
                        found.append(
                            kb.problem(
                                TOOL_NOT_LISTED, job, ("steps", index, name, place),
                                f"{id_} is used here but not listed under {name}",
                                f"add {id_} to the job's {name}",
                            )
                        )  # fmt: skip
    return found
