"""What a manual covers and what it lacks, worked out from its records; page and command tell it."""

from __future__ import annotations

import datetime
from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from generator.checks import review_overdue
from generator.records.kinds import Record
from generator.records.kinds.base import COMMON_PRACTICE, ReasonedException
from generator.records.kinds.knowledge import FaultCode, Source, Symptom
from generator.records.kinds.things import Component, Spec, Vehicle
from generator.records.kinds.work import Replacement, Test
from generator.records.knowledge_base import KnowledgeBase

PART_NEEDS = ("symptom", "test", "replacement", "figure")
"""What a part can have: a complaint that names it as a cause, a test that judges it, a
replacement, a drawing of its circuit, its wheel or the leads on it."""

_WEIGHT = {"test": 8, "replacement": 4, "symptom": 2, "figure": 1}
"""How grave it is that a part lacks it (judgement): a part without a test can only be guessed."""


class Cover(StrEnum):
    """How far something is covered."""

    FULL = "full"
    PART = "part"
    NONE = "none"


@dataclass(frozen=True, slots=True)
class PartCover:
    """A part, and what it has and lacks.

    Parameters
    ----------
    part : Component
        The part.
    has : tuple of str
        Those of :data:`PART_NEEDS` that it has, in that order.
    led_to : bool
        Whether a complaint, a code or a test leads a reader to it at all.
    """

    part: Component
    has: tuple[str, ...]
    led_to: bool

    @property
    def lacks(self) -> tuple[str, ...]:
        """Those of :data:`PART_NEEDS` that it has not."""
        return tuple(need for need in PART_NEEDS if need not in self.has)

    @property
    def gravity(self) -> int:
        """How grave the lack is; a part that nothing leads to keeps nobody waiting."""
        lack = sum(_WEIGHT[need] for need in self.lacks)
        return 16 + lack if self.led_to and lack else lack


@dataclass(frozen=True, slots=True)
class VehicleCover:
    """A vehicle, and for each part fitted to it whether the manual has a value of it.

    Parameters
    ----------
    vehicle : Vehicle
        The vehicle.
    parts : tuple of tuple
        Each part with its cover: full with a value of the vehicle's own, part with no more than a
        plausibility band, none without a value.
    """

    vehicle: Vehicle
    parts: tuple[tuple[Component, Cover], ...]


@dataclass(frozen=True, slots=True)
class CodeCover:
    """A fault code, and the vehicles that can store it and have none of its tests."""

    code: FaultCode
    without: tuple[str, ...]

    @property
    def cover(self) -> Cover:
        """Full where each of its vehicles has a test, part where some have."""
        if not self.without:
            return Cover.FULL
        return Cover.PART if set(self.without) < set(self.code.applies_to) else Cover.NONE


@dataclass(frozen=True, slots=True)
class Unverified:
    """A value that nobody can vouch for as it stands, and why.

    Parameters
    ----------
    spec : Spec
        The value.
    reasons : tuple of str
        Of "unreviewed", "practice", "second_hand" and "invented", those that hold.
    """

    spec: Spec
    reasons: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Review:
    """A record, who keeps it true, and the last day of its review; None where it never had one."""

    record: Record
    due: datetime.date | None

    def overdue(self, as_of: datetime.date) -> bool:
        """Say whether its day has passed."""
        return self.due is not None and self.due < as_of


@dataclass(frozen=True, slots=True)
class Coverage:
    """What a manual covers; each list with its weakest entries first."""

    parts: tuple[PartCover, ...]
    vehicles: tuple[VehicleCover, ...]
    codes: tuple[CodeCover, ...]
    values: int
    unverified: tuple[Unverified, ...]
    reviews: tuple[Review, ...]
    exceptions: tuple[tuple[Record, ReasonedException], ...]

    def having(self, need: str) -> int:
        """Give how many parts have one of :data:`PART_NEEDS`."""
        return sum(need in one.has for one in self.parts)

    def lacking(self) -> dict[tuple[bool, tuple[str, ...]], list[Component]]:
        """Give the parts that lack something, by whether they are led to and what they lack."""
        found: dict[tuple[bool, tuple[str, ...]], list[Component]] = {}
        for one in self.parts:
            if one.lacks:
                found.setdefault((one.led_to, one.lacks), []).append(one.part)
        return found


def coverage(kb: KnowledgeBase) -> Coverage:
    """Give what a manual covers.

    Parameters
    ----------
    kb : KnowledgeBase
        The records a reader may work from; no error stands.
    """
    specs = kb.all("specs", Spec)
    return Coverage(
        parts=tuple(sorted(_parts(kb), key=lambda one: (-one.gravity, one.part.title))),
        vehicles=tuple(sorted(_vehicles(kb, specs), key=_share_with_value)),
        codes=tuple(sorted(_codes(kb), key=lambda one: (-len(one.without), one.code.code))),
        values=len(specs),
        unverified=tuple(_unverified(kb, specs)),
        reviews=tuple(sorted(_reviews(kb), key=_never_first)),
        exceptions=tuple((record, one) for record in kb for one in record.exceptions),
    )


def _parts(kb: KnowledgeBase) -> Iterable[PartCover]:
    tests = kb.all("tests", Test)
    causes = {
        cause.component for one in kb.all("symptoms", Symptom) for cause in one.causes
    }  # fmt: skip
    judged = {id_ for test in tests for id_ in judged_by(test)}
    replaced = {job.component for job in kb.all("replacements", Replacement)}
    probed = {hookup.component for test in tests for hookup in test.hookups}
    coded = {id_ for code in kb.all("codes", FaultCode) for id_ in code.components}
    for part in kb.all("components", Component):
        there = {
            "symptom": part.id in causes,
            "test": part.id in judged,
            "replacement": part.id in replaced,
            "figure": bool(part.circuit or part.wheel or part.reads) or part.id in probed,
        }
        has = tuple(need for need in PART_NEEDS if there[need])
        yield PartCover(part, has, led_to=part.id in causes | judged | coded)


def judged_by(test: Test) -> set[str]:
    """Give the ids of the parts that a test can judge."""
    return {*test.components, *(id_ for one in test.outcomes for id_ in one.about)}


def _vehicles(kb: KnowledgeBase, specs: list[Spec]) -> Iterable[VehicleCover]:
    best: dict[tuple[str, str], Cover] = {}
    for spec in specs:
        for id_ in spec.applies_to:
            own = spec.standing == "vehicle_value"
            if own or (id_, spec.component) not in best:
                best[id_, spec.component] = Cover.FULL if own else Cover.PART
    parts = sorted(kb.all("components", Component), key=lambda part: part.title)
    order = list(Cover)
    for vehicle in kb.all("vehicles", Vehicle):
        fitted = [
            (part, best.get((vehicle.id, part.id), Cover.NONE))
            for part in parts
            if vehicle.id in part.fitted_to
        ]
        yield VehicleCover(
            vehicle, tuple(sorted(fitted, key=lambda pair: -order.index(pair[1])))
        )  # fmt: skip


def _share_with_value(one: VehicleCover) -> tuple[float, str]:
    full = sum(cover is Cover.FULL for _, cover in one.parts)
    return full / max(1, len(one.parts)), one.vehicle.title


def _codes(kb: KnowledgeBase) -> Iterable[CodeCover]:
    for code in kb.all("codes", FaultCode):
        tested = {v for id_ in code.tests for v in kb.get("tests", id_, Test).applies_to}
        yield CodeCover(code, tuple(v for v in code.applies_to if v not in tested))


def _unverified(kb: KnowledgeBase, specs: Iterable[Spec]) -> Iterable[Unverified]:
    for spec in specs:
        reasons = doubts(kb, spec)
        if reasons:
            yield Unverified(spec, reasons)


def doubts(kb: KnowledgeBase, spec: Spec) -> tuple[str, ...]:
    """Give why a value is not verified, in the words of :class:`Unverified`; none if it is."""
    found = ["unreviewed"] if spec.reviewed is None else []
    if spec.source == COMMON_PRACTICE:
        found.append("practice")
    else:
        read = kb.get("sources", spec.source, Source).read
        found += [read] if read in ("second_hand", "invented") else []
    return tuple(found)


def _reviews(kb: KnowledgeBase) -> Iterable[Review]:
    for record in kb:
        if record.status == "approved":
            yield Review(record, review_overdue.due(kb, record))


def _never_first(one: Review) -> tuple[datetime.date, str, str]:
    return one.due or datetime.date.min, one.record.owner, one.record.key
