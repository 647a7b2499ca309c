"""The order of tests after the fixed opening.

Weights of the causes become probabilities; a test covers the causes that name it. Independent
tests of one fault are best made in falling order of probability over cost (Kadane & Simon 1977;
Heckerman, Breese & Rommelse 1995); the cost here is minutes. A test that must follow others
competes together with those of them that are still to do, as one block.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from generator.records.kinds.knowledge import Cause, Symptom
from generator.records.kinds.work import Test
from generator.records.knowledge_base import KnowledgeBase


@dataclass(frozen=True, slots=True)
class Place:
    """A test's place in the order, and why it stands there.

    Parameters
    ----------
    test : Test
        The test.
    share : float
        Share of the doubt it can settle, 0 to 1.
    minutes : float
        Its time.
    elapsed : float
        Minutes from the end of the opening to the end of this test.
    doubt : float
        Share of the doubt left after it, 0 to 1.
    causes : tuple of Cause
        What it can show.
    opens_way_for : tuple of str
        Ids of later tests that must come after this one, where that is why it stands here.
    """

    test: Test
    share: float
    minutes: float
    elapsed: float
    doubt: float
    causes: tuple[Cause, ...]
    opens_way_for: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Order:
    """A complaint's tests on one vehicle.

    Parameters
    ----------
    opening : tuple of Test
        The first looks, never reordered.
    places : tuple of Place
        The computed order.
    elsewhere : tuple of Cause
        Causes this manual has no test for, heaviest first, with where to look.
    """

    opening: tuple[Test, ...]
    places: tuple[Place, ...]
    elsewhere: tuple[Cause, ...]


def order(kb: KnowledgeBase, symptom: Symptom, vehicle: str) -> Order:
    """Give the order of tests for a complaint on a vehicle.

    Parameters
    ----------
    kb : KnowledgeBase
        The manual, checked.
    symptom : Symptom
        The complaint.
    vehicle : str
        The vehicle's id.

    Returns
    -------
    Order
        Opening, computed order, and causes that lie elsewhere.
    """
    opening = opening_tests(kb, symptom, vehicle)
    causes = [c for c in symptom.causes if not c.vehicles or vehicle in c.vehicles]
    done = {test.id for test in opening}
    covers = _covers(kb, causes, vehicle, done)
    total = sum(cause.weight for cause in causes)
    places: list[Place] = []
    settled: dict[str, float] = {}  # cause name to the share of it already looked for
    elapsed = 0.0
    while True:
        chain = _best_chain(kb, covers, causes, settled, done, vehicle)
        if not chain:
            break
        test = chain[0]
        shown = tuple(c for c in causes if c.name in covers.get(test.id, ()))
        share = sum(_left(c, settled) * shown_share(c, test) for c in shown) / total
        for cause in shown:
            settled[cause.name] = _after(settled, cause, test)
        elapsed += test.minutes
        doubt = sum(_left(cause, settled) for cause in causes) / total
        way = tuple(later.id for later in chain[1:])
        places.append(Place(test, share, test.minutes, elapsed, doubt, shown, way))
        done.add(test.id)
    elsewhere = sorted(
        (c for c in causes if c.refer is not None), key=lambda c: (-c.weight, c.name)
    )
    return Order(tuple(opening), tuple(places), tuple(elsewhere))


def opening_tests(kb: KnowledgeBase, symptom: Symptom, vehicle: str) -> list[Test]:
    """Give the fixed opening: the manual's first looks, then the complaint's own live data."""
    ids = list(kb.settings.opening)
    if symptom.live_data is not None and symptom.live_data not in ids:
        ids.append(symptom.live_data)
    tests = [kb.get("tests", id_, Test) for id_ in ids]
    return [test for test in tests if vehicle in test.applies_to]


def _covers(
    kb: KnowledgeBase, causes: Iterable[Cause], vehicle: str, done: set[str]
) -> dict[str, set[str]]:
    """Map each test still to do to the names of the causes it can show on this vehicle."""
    covers: dict[str, set[str]] = {}
    for cause in causes:
        for id_ in cause.tests:
            test = kb.get("tests", id_, Test)
            if vehicle in test.applies_to and id_ not in done:
                covers.setdefault(id_, set()).add(cause.name)
    return covers


def shown_share(cause: Cause, test: Test) -> float:
    """Give the share of a cause's faults that a test shows: the cause's word, or the test's own.

    A static reading that finds nine broken coils in ten finds few of those that break when hot.
    """
    return cause.shows.get(test.id, test.sensitivity)


def _after(settled: Mapping[str, float], cause: Cause, test: Test) -> float:
    """Give the share of a cause that has been looked for once a test is made as well."""
    return 1 - (1 - settled.get(cause.name, 0.0)) * (1 - shown_share(cause, test))


def _left(cause: Cause, settled: Mapping[str, float]) -> float:
    return cause.weight * (1 - settled.get(cause.name, 0.0))


def _best_chain(
    kb: KnowledgeBase,
    covers: Mapping[str, set[str]],
    causes: Iterable[Cause],
    settled: Mapping[str, float],
    done: set[str],
    vehicle: str,
) -> list[Test]:
    """Give the block of tests with the most doubt settled a minute; its first is next."""
    by_name = {cause.name: cause for cause in causes}
    best: tuple[float, float, str, list[Test]] | None = None
    for id_ in covers:
        if id_ in done:
            continue
        chain = _with_what_comes_before(kb, id_, done, vehicle)
        minutes = sum(test.minutes for test in chain)
        gain, looked = 0.0, dict(settled)
        for test in chain:
            for name in sorted(covers.get(test.id, ())):
                gain += _left(by_name[name], looked) * shown_share(by_name[name], test)
                looked[name] = _after(looked, by_name[name], test)
        rank = (-gain / minutes, minutes, id_, chain)
        if best is None or rank[:3] < best[:3]:
            best = rank
    return best[3] if best else []


def _with_what_comes_before(
    kb: KnowledgeBase, id_: str, done: set[str], vehicle: str
) -> list[Test]:
    """Give a test behind those that must precede it and are still to do, each once."""
    chain: list[Test] = []
    seen: set[str] = set()

    def visit(test_id: str) -> None:
        if test_id in seen or test_id in done:
            return
        seen.add(test_id)  # before descending: a circle of prerequisites must not run forever
        test = kb.get("tests", test_id, Test)
        if vehicle not in test.applies_to:
            return
        for earlier in test.after:
            visit(earlier)
        chain.append(test)

    visit(id_)
    return chain
