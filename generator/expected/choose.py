"""Which of several specs holds for one vehicle: the most exact match wins.

A spec that ``overrides`` another stands in for it on the vehicles, engines or build dates that
it names. More exact means: it holds for nothing but a part of what the other holds for.
"""

from __future__ import annotations

import datetime
from dataclasses import dataclass
from itertools import combinations

from generator.expected.engine import CannotExpect
from generator.records.kinds.things import Spec, Vehicle
from generator.records.knowledge_base import KnowledgeBase, table

EARLIEST, LATEST = datetime.date.min, datetime.date.max


@dataclass(frozen=True, slots=True)
class Scope:
    """What a spec holds for: vehicles, each by its engine, and a range of build dates."""

    vehicles: frozenset[str]
    since: datetime.date
    until: datetime.date

    def overlaps(self, other: Scope) -> bool:
        """Say whether a vehicle can belong to both."""
        return bool(self.vehicles & other.vehicles) and (
            self.since <= other.until and other.since <= self.until
        )

    def inside(self, other: Scope) -> bool:
        """Say whether it holds for a part of the other, and for less than all of it."""
        return self != other and (
            self.vehicles <= other.vehicles
            and other.since <= self.since
            and self.until <= other.until
        )


def scope(kb: KnowledgeBase, spec: Spec) -> Scope:
    """Give what a spec holds for; a vehicle with another engine code falls out."""
    fitting = frozenset(
        id_
        for id_ in spec.applies_to
        if not spec.engines or kb.get("vehicles", id_, Vehicle).engine.code in spec.engines
    )
    built = spec.built
    since = built.since if built and built.since else EARLIEST
    until = built.until if built and built.until else LATEST
    return Scope(fitting, since, until)


def family(kb: KnowledgeBase, spec: Spec) -> list[Spec]:
    """Give a spec and all that stand in for it, or for what stands in for it, by id."""
    root = general(kb, spec)
    ids = {root.id, *kb.table(_standing_in).get(root.id, ())}
    return [kb.get("specs", id_, Spec) for id_ in sorted(ids)]


@table
def _standing_in(kb: KnowledgeBase) -> dict[str, tuple[str, ...]]:
    """Give the specs that stand in for others, by the most general one of their family."""
    found: dict[str, tuple[str, ...]] = {}
    for spec in kb.all("specs", Spec):
        if spec.overrides is not None:
            root = general(kb, spec).id
            found[root] = (*found.get(root, ()), spec.id)
    return found


def specs_of(kb: KnowledgeBase, component: str) -> list[Spec]:
    """Give the specs of a part, by id."""
    return [kb.get("specs", id_, Spec) for id_ in kb.table(_by_part).get(component, ())]


@table
def _by_part(kb: KnowledgeBase) -> dict[str, tuple[str, ...]]:
    found: dict[str, tuple[str, ...]] = {}
    for spec in kb.all("specs", Spec):
        found[spec.component] = (*found.get(spec.component, ()), spec.id)
    return found


def general(kb: KnowledgeBase, spec: Spec) -> Spec:
    """Give the most general spec of a family; a round of overrides ends where it began."""
    seen = {spec.id}
    while spec.overrides is not None:
        above = kb.find("specs", spec.overrides, Spec)
        if above is None or above.id in seen:
            return spec
        seen.add(above.id)
        spec = above
    return spec


def families(kb: KnowledgeBase) -> dict[str, list[Spec]]:
    """Give the families of two and more by the id of their most general spec."""
    found: dict[str, list[Spec]] = {}
    for spec in kb.all("specs", Spec):
        found.setdefault(general(kb, spec).id, []).append(spec)
    return {
        id_: members
        for id_, members in found.items()
        if len(members) > 1 or members[0].overrides is not None
    }


def ties(kb: KnowledgeBase, members: list[Spec]) -> list[tuple[Spec, Spec]]:
    """Give the pairs that hold for one vehicle with neither more exact than the other."""
    scopes = {spec.id: scope(kb, spec) for spec in members}
    return [
        (one, two)
        for one, two in combinations(members, 2)
        for a, b in [(scopes[one.id], scopes[two.id])]
        if a.overlaps(b) and not a.inside(b) and not b.inside(a)
    ]


def choose(
    kb: KnowledgeBase, spec: Spec, vehicle: str, built: datetime.date | None = None
) -> Spec:
    """Give the spec of a family that holds for a vehicle.

    Parameters
    ----------
    kb : KnowledgeBase
        The manual, checked.
    spec : Spec
        Any member of the family.
    vehicle : str
        Id of the vehicle; its record says which engine it has.
    built : date, optional
        Day it was built.

    Returns
    -------
    Spec
        The most exact match.

    Raises
    ------
    CannotExpect
        If none holds for the vehicle, the build date decides and nobody stated it, or two hold
        alike.
    """
    members = family(kb, spec)
    scopes = {member.id: scope(kb, member) for member in members}
    on_it = [m for m in members if vehicle in scopes[m.id].vehicles]
    if not on_it:
        known = sorted({id_ for s in scopes.values() for id_ in s.vehicles})
        raise CannotExpect(
            f"{spec.id} does not hold for {vehicle}", f"it holds for {', '.join(known) or 'none'}"
        )
    if built is None:
        dated = [m for m in on_it if m.built is not None]
        if dated and len(on_it) > 1:
            raise CannotExpect(
                f"the value depends on when {vehicle} was built",
                f"say when, as --built 2016-05-01; {dated[0].id} holds for some builds only",
            )
    else:
        on_it = [m for m in on_it if scopes[m.id].since <= built <= scopes[m.id].until]
    if not on_it:
        raise CannotExpect(f"{spec.id} does not hold for a {vehicle} built then", "check the date")
    best = [
        m for m in on_it if all(n is m or not scopes[n.id].inside(scopes[m.id]) for n in on_it)
    ]
    if len(best) > 1:
        raise CannotExpect(
            f"{best[0].id} and {best[1].id} hold for {vehicle} alike", "narrow one of them"
        )
    return best[0]
