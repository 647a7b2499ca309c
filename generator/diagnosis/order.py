"""The order of tests for a complaint on a vehicle, with the reason for each place.

The opening is fixed. After it come the tests in the order with the fewest expected minutes until
the fault is proved, by everything that is known about the vehicle.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from generator.diagnosis.ending import Ending, ending_of
from generator.diagnosis.evidence import (
    Evidence,
    Prior,
    Working,
    causes_on,
    opening_shares,
    priors,
    weigh,
)
from generator.diagnosis.model import NOTHING
from generator.diagnosis.policy import (
    Choose,
    InThisOrder,
    best_choice,
    clear_line,
    expected_minutes,
)
from generator.diagnosis.readings import share
from generator.diagnosis.restore import Demand, demands
from generator.diagnosis.state import Board
from generator.diagnosis.survey import Survey, survey
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
        Its time here: less than its own where it takes over set-up.
    elapsed : float
        Minutes from the end of the opening to the end of this test.
    doubt : float
        Share of the doubt left after it, 0 to 1: of faults that no test so far would have shown.
    causes : tuple of Cause
        What it can show.
    opens_way_for : tuple of str
        Ids of later tests that must come after this one, where that is why it stands here.
    takes_over : tuple of str
        Set-up of the test before that is left for it.
    restore : tuple of Demand
        What must be put back before it, because the tests before it leave it otherwise.
    """

    test: Test
    share: float
    minutes: float
    elapsed: float
    doubt: float
    causes: tuple[Cause, ...]
    opens_way_for: tuple[str, ...]
    takes_over: tuple[str, ...] = ()
    restore: tuple[Demand, ...] = ()


@dataclass(frozen=True, slots=True)
class Odds:
    """How likely a cause is, and how that came about."""

    cause: Cause
    prior: Prior
    share: float


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
    odds : tuple of Odds
        The causes, likeliest first.
    workings : tuple of Working
        What each piece of evidence did.
    minutes : float
        Expected minutes, after the opening, until a cause is proved or no test is left.
    naive : mapping of str to float
        The same for the orders by_weight, by_minutes and by_name.
    method : str
        ratio, exact or look_ahead: how the order was found.
    ending : Ending or None
        How it ended, if what was found ends it or no test is left.
    after_pointing : mapping of str to tuple of str
        Test of the order to the tests that follow where it is the first to point at its causes.
    """

    opening: tuple[Test, ...]
    places: tuple[Place, ...]
    elsewhere: tuple[Cause, ...]
    odds: tuple[Odds, ...]
    workings: tuple[Working, ...]
    minutes: float
    naive: Mapping[str, float]
    method: str
    ending: Ending | None
    after_pointing: Mapping[str, tuple[str, ...]]


def order(
    kb: KnowledgeBase, symptom: Symptom, vehicle: str, evidence: Evidence | None = None
) -> Order:
    """Give the order of tests for a complaint on a vehicle.

    Parameters
    ----------
    kb : KnowledgeBase
        The manual, checked.
    symptom : Symptom
        The complaint.
    vehicle : str
        The vehicle's id.
    evidence : Evidence, optional
        What is known; nothing where it is not given.

    Returns
    -------
    Order
        Opening, computed order, and causes that lie elsewhere.
    """
    known = evidence or Evidence()
    causes = causes_on(symptom, vehicle)
    prior = priors(kb, symptom, vehicle)
    opening = opening_tests(kb, symptom, vehicle)
    _, workings = weigh(kb, causes, _normal([each.weight for each in prior]), known)
    shares = opening_shares(kb, symptom, vehicle, opening, known)
    done = {*(id_ for id_, _ in known.found), *(test.id for test in opening)}
    found = survey(kb, causes, shares, vehicle, done)
    board = Board(found.search)
    choose, method = best_choice(board)
    places = _places(kb, found, board, choose)
    return Order(
        tuple(opening),
        places,
        tuple(sorted((c for c in causes if c.refer is not None), key=_heaviest)),
        _likeliest(causes, prior, shares),
        workings,
        expected_minutes(board, choose),
        {
            name: expected_minutes(board, InThisOrder(board, ids))
            for name, ids in naive_orders(found).items()
        },
        method,
        ending_of(kb, causes, shares, vehicle, known, left=bool(places)),
        _after_pointing(board, choose),
    )


def _after_pointing(board: Board, choose: Choose) -> dict[str, tuple[str, ...]]:
    ids = [probe.id for probe in board.search.probes]
    found = {}
    for before, after in pairwise(clear_line(board, choose)):
        if board.points(after.last):
            line = clear_line(board, choose, board.pointed(before, after.last))
            found[ids[after.last]] = tuple(ids[state.last] for state in line[1:])
    return found


def odds_of(
    kb: KnowledgeBase, symptom: Symptom, vehicle: str, evidence: Evidence
) -> tuple[Odds, ...]:
    """Give the causes by what is known alone, likeliest first."""
    causes = causes_on(symptom, vehicle)
    prior = priors(kb, symptom, vehicle)
    shares, _ = weigh(kb, causes, _normal([each.weight for each in prior]), evidence)
    return _likeliest(causes, prior, shares)


def _likeliest(
    causes: Sequence[Cause], prior: Sequence[Prior], shares: Sequence[float]
) -> tuple[Odds, ...]:
    return tuple(sorted(map(Odds, causes, prior, shares), key=lambda o: (-o.share, o.cause.name)))


def naive_orders(found: Survey) -> dict[str, list[str]]:
    """Give the orders people fall back on: by weight of cause, by minutes, by name."""
    weights = [fault.weight for fault in found.search.faults]
    heaviest = sorted(range(len(weights)), key=lambda n: (-weights[n], n))
    return {
        "by_weight": [id_ for n in heaviest for id_ in found.causes[n].tests],
        "by_minutes": sorted(found.tests, key=lambda id_: (found.tests[id_].minutes, id_)),
        "by_name": sorted(found.tests),
    }


def opening_tests(kb: KnowledgeBase, symptom: Symptom, vehicle: str) -> list[Test]:
    """Give the fixed opening: the first looks, then the live data of the complaint."""
    ids = list(symptom.opening or kb.settings.opening)
    if symptom.live_data is not None and symptom.live_data not in ids:
        ids.append(symptom.live_data)
    tests = [kb.get("tests", id_, Test) for id_ in ids]
    return [test for test in tests if vehicle in test.applies_to]


def _normal(weights: Sequence[float]) -> list[float]:
    return [weight / sum(weights) for weight in weights]


def _heaviest(cause: Cause) -> tuple[float, str]:
    return (-cause.weight, cause.name)


def _places(
    kb: KnowledgeBase, found: Survey, board: Board, choose: Choose
) -> tuple[Place, ...]:
    states = clear_line(board, choose)
    ids = [probe.id for probe in found.search.probes]
    chain = [ids[state.last] for state in states[1:]]
    restores = demands(kb, [found.tests[id_] for id_ in chain])
    start = board.start()
    left = dict(enumerate(start.mass))  # share of each cause that has not been looked for
    places: list[Place] = []
    elapsed = 0.0
    for n, (before, after) in enumerate(pairwise(states)):
        probe, test = found.search.probes[after.last], found.tests[chain[n]]
        shown = [k for k, c in enumerate(found.causes) if left[k] > NOTHING and test.id in c.tests]
        power = {k: share(found.causes[k], test) for k in shown}
        settled = sum(left[k] * power[k] for k in shown)
        left |= {k: left[k] * (1 - power[k]) for k in shown}
        saved = board.saved(before.last, after.last)
        kept = found.search.probes[before.last].leaves & probe.takes if saved else frozenset()
        elapsed += probe.minutes - saved
        places.append(
            Place(
                test,
                settled,
                probe.minutes - saved,
                elapsed,
                sum(left.values()),
                tuple(found.causes[k] for k in shown),
                tuple(i for i in chain[n + 1 :] if test.id in _before(found, i)),
                tuple(sorted(kept)),
                restores[n],
            )
        )
    return tuple(places)


def _before(found: Survey, id_: str) -> set[str]:
    """Give what a test waits for, directly or through others."""
    after = {probe.id: probe.after for probe in found.search.probes}
    reached: set[str] = set()
    waiting = list(after[id_])
    while waiting:
        earlier = waiting.pop()
        if earlier not in reached:
            reached.add(earlier)
            waiting += after[earlier]
    return reached
