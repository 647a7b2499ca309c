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
    carried = carried_at_first(kb)
    found = []
    for test in chain:
        asked = said(test.entry)
        found.append(
            tuple(
                Demand(word, carried[word], value)
                for word, value in asked.items()
                if carried.get(word, value) != value
            )
        )
        carried |= asked | said(test.leaves)
    return found


def carried_at_first(kb: KnowledgeBase) -> dict[str, str]:
    """Give the state of a vehicle after the first looks, as far as the records speak of it."""
    carried = said(kb.settings.standing_state)
    for id_ in kb.settings.opening:
        opening = kb.find("tests", id_, Test)
        if opening is not None:
            carried |= said(opening.leaves)
    return carried


def said(state: State) -> dict[str, str]:
    """Give the words of a state that are said."""
    return {word: str(value) for word, value in state.model_dump(exclude_none=True).items()}
