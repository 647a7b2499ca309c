"""Cautions from facts and carried state: steps in, guarded steps out."""

from generator.hazards.audit import audit
from generator.hazards.engine import guard
from generator.hazards.guarded import Box, Guarded, GuardedStep, HazardLine, Reminder
from generator.hazards.match import rules_for
from generator.hazards.onward import Gap, gap
from generator.hazards.rules import Word, built_in, families, word_of
from generator.hazards.state import FullState

__all__ = [
    "Box",
    "FullState",
    "Gap",
    "Guarded",
    "GuardedStep",
    "HazardLine",
    "Reminder",
    "Word",
    "audit",
    "built_in",
    "families",
    "gap",
    "guard",
    "rules_for",
    "word_of",
]
