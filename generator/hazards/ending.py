"""Findings: what a job leaves behind against what it says it leaves."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from generator.hazards.effects import DIMENSIONS
from generator.hazards.guarded import Guarded
from generator.hazards.state import said_words
from generator.hazards.undone import WAYS
from generator.problems import Problem, code
from generator.records.kinds.work import Job
from generator.records.knowledge_base import KnowledgeBase
from generator.records.knowledge_base import Path as FieldPath

LEAVES_UNTRUE = code(
    "leaves-untrue",
    "Whoever goes on from here counts on a state that the vehicle is not in.",
)
NOT_RESTORED = code(
    "not-restored",
    "The next person finds the vehicle changed and nobody has said so.",
)
LEFT_UNDONE = code(
    "left-undone",
    "A part is left unplugged, off, loose or with leads in it, and the page ends there.",
)

IN_WORDS: Mapping[str, tuple[str, str]] = {
    "unplugged": ("unplugged", "plug it in again"),
    "removed": ("removed", "fit it again"),
    "loose": ("loose", "tighten it again"),
    "leads": ("with leads in it", "take the leads out"),
    "guards_off": ("a guard that is off", "fit it again"),
}
"""How something was left undone, and how it is restored."""


def of_job(kb: KnowledgeBase, job: Job, guarded: Guarded) -> Iterator[Problem]:
    """Compare the state the steps end in with what the record says."""
    said = said_words(job.leaves)
    for name in DIMENSIONS:
        start, left = guarded.start.word(name), guarded.left.word(name)
        if name in said and said[name] is not left:
            yield kb.problem(
                LEAVES_UNTRUE, job, ("leaves", name),
                f"it says that {name} is {said[name]} at the end, and its steps leave it {left}",
                f"write {name}: {left}, or add the step that restores it",
            )  # fmt: skip
        elif name not in said and start is not left:
            yield kb.problem(
                NOT_RESTORED, job, ("leaves",),
                f"{name} was {start} at the start and is {left} at the end",
                f"add the step that restores it, or write {name}: {left} under `leaves`",
                of_key=True,
            )  # fmt: skip
    yield from _undone(kb, job, guarded)


def _undone(kb: KnowledgeBase, job: Job, guarded: Guarded) -> Iterator[Problem]:
    meant = set(job.leaves_apart)
    for joint in guarded.left.undone.joints:
        meant |= joint if joint & meant else set()
    reported: set[str] = set()
    for name in WAYS:
        for id_ in sorted(guarded.left.undone.of(name) - meant - reported):
            reported.add(id_)
            how, mend = IN_WORDS[name]
            yield kb.problem(
                LEFT_UNDONE, job, _where(job, guarded, name, id_),
                f"{id_} is still {how} at the end",
                f"add the step that does it: {mend}; or name it under leaves_apart",
            )  # fmt: skip
    for position, id_ in enumerate(job.leaves_apart):
        if not any(id_ in guarded.left.undone.of(name) for name in WAYS):
            yield kb.problem(
                LEAVES_UNTRUE, job, ("leaves_apart", position),
                f"it says that {id_} is left apart, and its steps leave it whole", "drop it here",
            )  # fmt: skip


def _where(job: Job, guarded: Guarded, name: str, id_: str) -> FieldPath:
    """Give the job's own step that left it so, or the one whose call did."""
    for step in reversed(guarded.steps):
        if id_ in step.state_after.undone.of(name) - step.state_before.undone.of(name):
            return ("steps", int(step.number.split(".")[0]) - 1)
    return ("leaves",)
