"""What the engine gives back: steps that carry their cautions.

Page code takes guarded steps and nothing else, and only the engine can make one: without its
seal the constructors refuse.
"""

from __future__ import annotations

from dataclasses import InitVar, dataclass
from typing import Any

from generator.hazards.rules import Word, word_of
from generator.hazards.state import FullState
from generator.records.kinds.knowledge import Hazard
from generator.records.kinds.work import Job, Step


class _Seal:
    """The one object that lets a guarded step be made; the engine alone uses it."""


_SEAL = _Seal()


@dataclass(frozen=True, slots=True)
class HazardLine:
    """One hazard inside a box.

    Parameters
    ----------
    id : str
        The rule's id.
    word : Word
        Its own signal word.
    title, hazard, consequence : str
        Its name, what is dangerous, what it does.
    avoid : tuple of str
        How to stay clear of it, as commands.
    symbol : str or None
        Registered symbol number.
    reserved_for, defer : str or None
        Who alone may do it; law or licensed practice that wins.
    basis : str
        The source, or that it is common practice.
    """

    id: str
    word: Word
    title: str
    hazard: str
    consequence: str
    avoid: tuple[str, ...]
    symbol: str | None
    reserved_for: str | None
    defer: str | None
    basis: str

    @classmethod
    def of(cls, rule: Hazard) -> HazardLine:
        """Give the line that a rule puts in a box."""
        return cls(
            rule.id, word_of(rule), rule.title, rule.hazard, rule.consequence,
            tuple(rule.avoid), rule.symbol, rule.reserved_for, rule.defer, rule.basis,
        )  # fmt: skip


@dataclass(frozen=True, slots=True)
class Box:
    """A caution box: its hazards, worst first, under the worst word of them."""

    hazards: tuple[HazardLine, ...]

    @property
    def word(self) -> Word:
        """The worst word among its hazards."""
        return self.hazards[0].word


@dataclass(frozen=True, slots=True)
class Reminder:
    """One line while a state lasts whose box stood at an earlier step."""

    id: str
    word: Word
    text: str


@dataclass(frozen=True, slots=True)
class GuardedStep:
    """A step with the state it happens in and the cautions that are due.

    Parameters
    ----------
    number : str
        "4", or "4.1" for the first step of a procedure that step 4 calls.
    anchor : str
        "step-4", "step-4-1": the address of the step on its page.
    step : Step
        The record's step.
    record_key : str
        "kind/id" of the record the step is written in.
    index : int
        Its place in that record's steps, from 0.
    state_before, state_during, state_after : FullState
        The vehicle's state; *during* is in each dimension the worse of before and after.
    boxes : tuple of Box
        None or one.
    reminders : tuple of Reminder
        Worst first.
    """

    number: str
    anchor: str
    step: Step
    record_key: str
    index: int
    state_before: FullState
    state_during: FullState
    state_after: FullState
    boxes: tuple[Box, ...]
    reminders: tuple[Reminder, ...]
    seal: InitVar[Any]

    def __post_init__(self, seal: Any) -> None:
        if seal is not _SEAL:
            raise TypeError("only the hazard engine makes guarded steps")

    @property
    def hazards(self) -> tuple[HazardLine, ...]:
        """Every hazard with a full box here, worst first."""
        return tuple(line for box in self.boxes for line in box.hazards)

    @property
    def reserved(self) -> tuple[HazardLine, ...]:
        """The hazards that reserve this step for a named role; the page stops here."""
        return tuple(line for line in self.hazards if line.reserved_for)


@dataclass(frozen=True, slots=True)
class Guarded:
    """A job whose every step, and every step it calls, carries its cautions.

    Parameters
    ----------
    job : Job
        The test, replacement or procedure.
    start, left : FullState
        The state it begins in and the one it ends in.
    steps : tuple of GuardedStep
        In the order they are done, called procedures in place.
    """

    job: Job
    start: FullState
    left: FullState
    steps: tuple[GuardedStep, ...]
    seal: InitVar[Any]

    def __post_init__(self, seal: Any) -> None:
        if seal is not _SEAL:
            raise TypeError("only the hazard engine makes guarded jobs")

    @property
    def summary(self) -> tuple[HazardLine, ...]:
        """Every hazard met, once, worst first: for the head of the page."""
        met = {line.id: line for step in self.steps for line in step.hazards}
        return tuple(sorted(met.values(), key=lambda line: line.word.rank))
