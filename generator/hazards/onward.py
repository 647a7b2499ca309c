"""From one job to the next: what has to be restored before the reader goes on."""

from __future__ import annotations

from dataclasses import dataclass

from generator.hazards.effects import DIMENSIONS
from generator.hazards.engine import start_of
from generator.hazards.state import FullState, rank, said_words
from generator.records.kinds.work import Job
from generator.records.knowledge_base import KnowledgeBase

MAY_BE_SAFER = ("codes", "high_voltage", "ventilation")
"""Dimensions in which a safer state than the one asked for will do."""


@dataclass(frozen=True, slots=True)
class Gap:
    """What lies between the state a job leaves and the one the next begins in.

    Parameters
    ----------
    words : dict
        Each dimension to restore: how it is left, and how the next job counts on it.
    undone : dict
        Each way in which anything is still undone, with the ids of the components.
    """

    words: dict[str, tuple[str, str]]
    undone: dict[str, tuple[str, ...]]

    def __bool__(self) -> bool:
        """Say whether anything has to be restored."""
        return bool(self.words or self.undone)


def gap(kb: KnowledgeBase, left: FullState, job: Job) -> Gap:
    """Give what has to be restored before a job, coming from the state another left.

    Parameters
    ----------
    kb : KnowledgeBase
        The manual.
    left : FullState
        What the job before leaves: :attr:`Guarded.left`.
    job : Job
        The one that comes next.

    Notes
    -----
    What the next job's entry says has to be so. Where it says nothing it counts on the standing
    state, so there only a worse state than that has to be restored.
    """
    begins, said = start_of(kb, job), said_words(job.entry)
    words = {
        name: (str(left.word(name)), str(begins.word(name)))
        for name in DIMENSIONS
        if not meets(name, left.word(name), begins.word(name), asked=name in said)
    }
    return Gap(words, left.undone.ways)


def meets(dimension: str, found: str, needed: str, *, asked: bool) -> bool:
    """Say whether a word of a dimension will do where another is needed.

    Parameters
    ----------
    dimension : str
        Which dimension.
    found, needed : str
        How it is, and how it is counted on.
    asked : bool
        True where a record asks for it outright; otherwise any safer word will do.
    """
    if found == needed:
        return True
    safer = rank(dimension, found) < rank(dimension, needed)
    return safer and (not asked or dimension in MAY_BE_SAFER)
