"""Effects of a change, the gravest first."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Sort(StrEnum):
    """What an effect is of; the order is that of their gravity."""

    CAUTION_LOST = "caution lost"
    CAUTION_WEAKER = "caution weaker"
    VERDICT = "verdict changed"
    VALUE = "value changed"
    VALUE_GONE = "value gone"
    PAGE_GONE = "page gone"
    CAUTION_WORDS = "caution re-worded"
    CAUTION_GAINED = "caution gained"
    OUTCOME = "outcome changed"
    STEP = "step changed"
    STATE = "state changed"
    ORDER = "order of tests changed"
    LINK = "link changed"
    VALUE_NEW = "value new"
    PAGE_NEW = "page new"
    PAGE_MOVED = "page moved"
    EXCEPTION = "exception new"
    EXCEPTION_GONE = "exception gone"
    WORDS = "words changed"
    CONTROL = "sign-off changed"

    @property
    def rank(self) -> int:
        """Its place in the order of gravity, 0 the gravest."""
        return list(Sort).index(self)


SAFETY = frozenset((Sort.CAUTION_LOST, Sort.CAUTION_WEAKER))


@dataclass(frozen=True, slots=True)
class Effect:
    """One thing that a reader will find otherwise than before.

    Parameters
    ----------
    sort : Sort
        What it is of.
    record : str
        "kind/id" of the record the reader finds it at, by its name after the change.
    title : str
        That record's title.
    what : str
        In a few words, where on the page and what.
    before, after : str
        What stood there and what stands there; empty where there was or is nothing.
    """

    sort: Sort
    record: str
    title: str
    what: str
    before: str = ""
    after: str = ""


@dataclass(frozen=True, slots=True)
class Comparison:
    """Every effect, gravest first, then by record."""

    effects: tuple[Effect, ...]

    @classmethod
    def of(cls, effects: list[Effect]) -> Comparison:
        """Put effects in order; what is said twice is said once."""
        once = dict.fromkeys(effects)
        return cls(tuple(sorted(once, key=lambda one: (one.sort.rank, one.record))))

    @property
    def loses_a_caution(self) -> bool:
        """Whether a reader will be warned less than before anywhere."""
        return any(effect.sort in SAFETY for effect in self.effects)
