"""What is undone by now: plugs apart, parts off or loose, leads in, guards off."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass, replace
from typing import Any

from generator.records.kinds.facts import Action
from generator.records.kinds.work import Step

Ids = frozenset[str]

WAYS = ("unplugged", "removed", "loose", "leads", "guards_off")
"""The ways in which something can be left undone."""

LEADS = "instrument"
"""Stands for the component where a step connects leads and names none."""

_BEGINS: Mapping[Action, str] = {Action.REMOVE: "removed", Action.LOOSEN: "loose"}
_ENDS: Mapping[Action, tuple[str, ...]] = {
    Action.REMOVE: ("loose",),
    Action.FIT: ("removed", "loose", "guards_off"),
    Action.TIGHTEN: ("loose",),
}


@dataclass(frozen=True, slots=True)
class Undone:
    """Everything that is undone by now.

    Parameters
    ----------
    joints : frozenset of frozenset of str
        Each plug that is apart, as the ids of the components it joins: a harness with two plugs
        apart is two joints.
    hookups : frozenset of (frozenset of str, frozenset of str)
        Each instrument whose leads are in: the components they are on, and the tools.
    removed, loose, guards_off : frozenset of str
        Ids of the components that are so.
    """

    joints: frozenset[Ids] = frozenset()
    hookups: frozenset[tuple[Ids, Ids]] = frozenset()
    removed: Ids = frozenset()
    loose: Ids = frozenset()
    guards_off: Ids = frozenset()

    @property
    def unplugged(self) -> Ids:
        """Ids of the components that have a plug apart."""
        return Ids().union(*self.joints)

    @property
    def leads(self) -> Ids:
        """Ids of the components that have leads in them."""
        return Ids().union(*(parts for parts, _tools in self.hookups))

    @property
    def apart(self) -> Ids:
        """Ids of the components that are unplugged, removed or loose."""
        return self.unplugged | self.removed | self.loose

    @property
    def ways(self) -> dict[str, tuple[str, ...]]:
        """Each way in which anything is undone, with the ids of the components, sorted."""
        found = ((way, tuple(sorted(self.of(way)))) for way in WAYS)
        return {way: ids for way, ids in found if ids}

    def of(self, way: str) -> Ids:
        """Give the ids that are undone in one way."""
        ids: Ids = getattr(self, way)
        return ids

    def __or__(self, other: Undone) -> Undone:
        """Give all that is undone in either."""
        if self == other:
            return self
        return Undone(
            self.joints | other.joints, self.hookups | other.hookups,
            self.removed | other.removed, self.loose | other.loose,
            self.guards_off | other.guards_off,
        )  # fmt: skip

    def after(self, step: Step, guards: Collection[str]) -> Undone:
        """Give what is undone after a step; `guards` are the ids of the components that guard."""
        parts, act = frozenset(step.acts_on), step.action
        if act is Action.UNPLUG and parts:
            return replace(self, joints=self.joints | {parts})
        if act is Action.PLUG:
            return replace(self, joints=self.joints - self.joined(parts))
        if act in (Action.CONNECT_LEADS, Action.LOAD_CIRCUIT):
            hookup = (parts or Ids({LEADS}), frozenset(step.tools))
            return replace(self, hookups=self.hookups | {hookup})
        if act is Action.DISCONNECT_LEADS:
            return replace(self, hookups=self._without(parts, self.unhooked(parts, step.tools)))
        if act not in _ENDS and act not in _BEGINS:
            return self
        changed: dict[str, Any] = {way: self.of(way) - parts for way in _ENDS.get(act, ())}
        if act in _BEGINS:
            changed[_BEGINS[act]] = self.of(_BEGINS[act]) | parts
        if act is Action.REMOVE:
            changed["guards_off"] = self.guards_off | parts.intersection(guards)
        return replace(self, **changed)

    def _without(self, parts: Ids, taken: frozenset[tuple[Ids, Ids]]) -> frozenset[tuple[Ids, Ids]]:
        """Take leads off these components; what they are on besides keeps them."""
        rest = {(on - parts, using) for on, using in taken if parts and on - parts}
        return (self.hookups - taken) | rest

    def joined(self, parts: Ids) -> frozenset[Ids]:
        """Give the joints that come together when a plug of these components is joined.

        The joint of exactly these components is meant; failing that, every joint that names
        only some of them, or them and more.
        """
        if parts in self.joints:
            return frozenset({parts})
        return frozenset(j for j in self.joints if parts and (j <= parts or j >= parts))

    def unhooked(self, parts: Ids, tools: Iterable[str]) -> frozenset[tuple[Ids, Ids]]:
        """Give the hook-ups that are taken off: those on these components, with these tools.

        Where a step names no component or no tool, every one is meant.
        """
        named = frozenset(tools)
        return frozenset(
            (on, using)
            for on, using in self.hookups
            if (not parts or on & parts) and (not named or not using or using & named)
        )


NOTHING = Undone()
"""Everything plugged in, fitted, tight and clear of leads."""
