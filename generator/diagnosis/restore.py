"""What must be put back before the next test: the state left behind against the state asked for."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from generator.records.kinds.work import State, Test
from generator.records.knowledge_base import KnowledgeBase


@dataclass(frozen=True, slots=True)
class Demand:
    """A state word that must read otherwise before a test.

    Parameters
    ----------
    word : str
        Which word of the state.
    is_, must_be : str
        What the tests before leave, and what the next one asks for.
    """

    word: str
    is_: str
    must_be: str


def demands(kb: KnowledgeBase, chain: Sequence[Test]) -> list[tuple[Demand, ...]]:
    """Give, for each test of a chain, what must be put back before it.

    Parameters
    ----------
    kb : KnowledgeBase
        The manual; it says in which state a vehicle arrives.
    chain : sequence of Test
        The tests, in the order they are made, each from first step to last.

    Returns
    -------
    list of tuple of Demand
        One for each test; empty where it can follow at once. The state at the start is that after
        the opening, as far as those tests say.
    """
    carried = _said(kb.settings.standing_state)
    for id_ in kb.settings.opening:
        opening = kb.find("tests", id_, Test)
        if opening is not None:
            carried |= _said(opening.leaves)
    found = []
    for test in chain:
        asked = _said(test.entry)
        found.append(
            tuple(
                Demand(word, carried[word], value)
                for word, value in asked.items()
                if carried.get(word, value) != value
            )
        )
        carried |= asked | _said(test.leaves)
    return found


def _said(state: State) -> dict[str, str]:
    return {word: str(value) for word, value in state.model_dump(exclude_none=True).items()}
