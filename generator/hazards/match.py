"""Which rules a situation calls for.

The alternatives of each rule are made ready once: an alternative becomes the few questions it
asks, and an index by action leaves most rules unasked.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from generator.hazards.classes import UNKNOWN
from generator.hazards.rules import built_in, built_in_ids
from generator.hazards.situation import Situation
from generator.hazards.state import FullState
from generator.records.kinds.facts import Action, Place
from generator.records.kinds.knowledge import Hazard, When
from generator.records.knowledge_base import KnowledgeBase

FACTS = (
    "energy", "near", "opens", "tool_class", "supply_class", "measures", "condition", "apart",
    "undone",
)  # fmt: skip
"""The fields of a rule in which any one word is enough, and *unknown* matches every word."""


@dataclass(frozen=True, slots=True)
class Asked:
    """One alternative of a rule, made ready for matching.

    Parameters
    ----------
    place, vehicle : frozenset of str
        Words that count; empty means any.
    state : tuple of (str, frozenset of str)
        Dimensions with the words that count, *unknown* always among them.
    facts : tuple of (str, frozenset of str)
        Fields of the situation with the words that count.
    """

    place: frozenset[str]
    vehicle: frozenset[str]
    state: tuple[tuple[str, frozenset[str]], ...]
    facts: tuple[tuple[str, frozenset[str]], ...]

    @classmethod
    def of(cls, when: When) -> Asked:
        """Make an alternative ready; its actions are the index's business."""
        return cls(
            frozenset((*when.place, Place.UNKNOWN)) if when.place else frozenset(),
            frozenset(when.vehicle),
            tuple((name, frozenset((*words, UNKNOWN))) for name, words in when.state.items()),
            tuple(
                (name, frozenset((*getattr(when, name), UNKNOWN)))
                for name in FACTS
                if getattr(when, name)
            ),
        )

    def matches(self, it: Situation) -> bool:
        """Say whether everything asked is so."""
        if self.place and it.place not in self.place:
            return False
        if self.vehicle and self.vehicle.isdisjoint(it.vehicle):
            return False
        for name, words in self.facts:
            if words.isdisjoint(getattr(it, name)):
                return False
        return self.holds_in(it.state)

    def holds_in(self, state: FullState) -> bool:
        """Say whether the state alone is as asked; a word not known counts."""
        for name, words in self.state:  # noqa: SIM110 - this runs for every rule at every step
            if getattr(state, name) not in words:
                return False
        return True


@dataclass(frozen=True, slots=True)
class Ready:
    """A rule with its alternatives made ready, those of one action or all of them."""

    rule: Hazard
    asked: tuple[Asked, ...]

    def calls(self, it: Situation) -> bool:
        """Say whether the rule fires: any one of its alternatives matches."""
        return any(asked.matches(it) for asked in self.asked)

    def lasts(self, it: Situation, after: FullState) -> bool:
        """Say whether what the rule warned of still holds when the step is over.

        A rule that asks for a state lasts while that state does, wherever the person is
        meanwhile; one that asks only for where the person is lasts from step to step.
        """
        return any(
            asked.holds_in(it.state) and asked.holds_in(after) if asked.state else asked.matches(it)
            for asked in self.asked
        )


class Rules:
    """The rules of a manual, indexed by the action they can fire at.

    Parameters
    ----------
    rules : sequence of Hazard
        In the order in which hazards of one word stand in a box.
    """

    def __init__(self, rules: Sequence[Hazard]) -> None:
        self.rules = tuple(rules)
        every = tuple(Ready(rule, tuple(map(Asked.of, rule.when))) for rule in rules)
        self._every = {ready.rule.id: ready for ready in every}
        self._by_action = {action: tuple(_at(action, every)) for action in Action}
        self._known: dict[Situation, tuple[Ready, ...]] = {}

    def due(self, it: Situation) -> tuple[Ready, ...]:
        """Give the rules that a situation calls for, whole, in the order they are written."""
        found = self._known.get(it)
        if found is None:
            called = (ready.rule.id for ready in self._by_action[it.action] if ready.calls(it))
            found = self._known[it] = tuple(self._every[id_] for id_ in called)
        return found


def rules_for(kb: KnowledgeBase) -> tuple[Hazard, ...]:
    """Give the rules that hold for a manual: the built-in ones, then the shop's own."""
    own = (rule for rule in kb.all("hazards", Hazard) if rule.id not in built_in_ids())
    return (*built_in(), *own)


def ready_rules(kb: KnowledgeBase) -> Rules:
    """Give the rules that hold for a manual, made ready for matching."""
    own = tuple(rule for rule in kb.all("hazards", Hazard) if rule.id not in built_in_ids())
    if len(_READY) > _KEPT:
        _READY.clear()
    key = tuple(map(id, own))
    if key not in _READY:
        _READY[key] = Rules((*built_in(), *own))
    return _READY[key]


_READY: dict[tuple[int, ...], Rules] = {}
"""Rules made ready, by the identity of the shop's own records, which the rules keep alive."""
_KEPT = 8


def _at(action: Action, every: Iterable[Ready]) -> Iterable[Ready]:
    """Give the rules that an action can call for, each with the alternatives that it can."""
    for ready in every:
        open_to = tuple(
            asked
            for when, asked in zip(ready.rule.when, ready.asked, strict=True)
            if not when.action or action in when.action
        )
        if open_to:
            yield Ready(ready.rule, open_to)
