"""The order of tests at work: thousands of vehicles with a fault drawn from the weights."""

from __future__ import annotations

import re
from math import sqrt
from random import Random
from statistics import fmean, pstdev, quantiles

import pytest

from generator.diagnosis.evidence import Evidence, causes_on, priors
from generator.diagnosis.model import Probe
from generator.diagnosis.order import naive_orders, opening_tests, order
from generator.diagnosis.policy import (
    Choose,
    Exact,
    InThisOrder,
    LookAhead,
    best_choice,
    expected_minutes,
)
from generator.diagnosis.state import Board, State
from generator.diagnosis.survey import Survey, survey
from generator.records.kinds.knowledge import Symptom
from generator.records.kinds.things import Vehicle
from tests.demo import demonstration
from tests.demonstration import ROOT
from tests.diagnosis.searches import drawn

pytestmark = pytest.mark.soak

METHOD = ROOT / "docs" / "order.md"
CASES = 500
VEHICLES = 4000
SURE = 1.96
"""Two-sided 95 % of the normal distribution."""

STARTS = [
    (symptom.id, vehicle)
    for symptom in demonstration().all("symptoms", Symptom)
    for vehicle in symptom.applies_to
]


def searched(symptom: Symptom, vehicle: str) -> Survey:
    """Give the search that the complaint's page shows the order of."""
    kb = demonstration()
    causes = causes_on(symptom, vehicle)
    weights = [prior.weight for prior in priors(kb, symptom, vehicle)]
    opening = {test.id for test in opening_tests(kb, symptom, vehicle)}
    return survey(kb, causes, [w / sum(weights) for w in weights], vehicle, opening)


class Workshop:
    """Vehicles with one fault each; what a test would show is drawn once, for every order alike."""

    def __init__(self, found: Survey, vehicles: int, number: int) -> None:
        self.found = found
        random = Random(number)
        faults = found.search.faults
        self.faults = random.choices(
            [fault.name for fault in faults], [fault.weight for fault in faults], k=vehicles
        )
        self.draws = [
            {probe.id: random.random() for probe in found.search.probes} for _ in range(vehicles)
        ]

    def minutes(self, board: Board, choose: Choose) -> tuple[list[float], int]:
        """Give each vehicle's minutes, and how many were proved."""
        spent, proved = [], 0
        for fault, draws in zip(self.faults, self.draws, strict=True):
            minutes, found = self._one(board, choose, fault, draws)
            spent.append(minutes)
            proved += found
        return spent, proved

    def _one(
        self, board: Board, choose: Choose, fault: str, draws: dict[str, float]
    ) -> tuple[float, bool]:
        probes = self.found.search.probes
        state: State = board.start()
        spent = 0.0
        last: Probe | None = None
        while not board.finished(state):
            j = choose(state)
            probe = probes[j]
            left = last.leaves if last is not None else frozenset[str]()
            saved = sum(self.found.search.setup_minutes[name] for name in left & probe.takes)
            spent += probe.minutes - min(saved, probe.minutes / 2)
            draw = draws[probe.id]
            if draw < probe.proves.get(fault, 0.0):
                return spent, True
            pointed = draw < probe.points.get(fault, 0.0)
            if fault not in probe.proves and fault not in probe.points:
                falsely = draw > probe.specificity
                pointed = falsely and bool(probe.points) and not probe.proves
                if falsely and probe.proves:
                    spent += probe.wrong_minutes
            state = board.pointed(state, j) if pointed else board.clear(state, j)
            last = probe
        return spent, False


@pytest.mark.parametrize(("complaint", "vehicle"), STARTS)
def test_the_computed_order_finds_faults_sooner(complaint: str, vehicle: str) -> None:
    """Following the order takes fewer minutes than by weight, by minutes and by name.

    So does the printed list alone, made from top to bottom whatever a test points at. Common
    draws; each 95 % confidence interval of the paired difference lies above nought, and the mean
    agrees with the computed expectation within its own interval (four standard errors).
    """
    symptom = demonstration().get("symptoms", complaint, Symptom)
    page = (demonstration(), symptom, vehicle)
    found = searched(symptom, vehicle)
    board = Board(found.search)
    choose, _ = best_choice(board)
    workshop = Workshop(found, VEHICLES, number=8)
    ours, proved = workshop.minutes(board, choose)
    error = pstdev(ours) / sqrt(VEHICLES)
    assert abs(fmean(ours) - expected_minutes(board, choose)) < 4 * error
    assert 0 < proved < VEHICLES  # what this manual has no test for ends in "not found"
    printed = InThisOrder(board, [place.test.id for place in order(*page).places])
    as_printed, _ = workshop.minutes(board, printed)
    for name, ids in naive_orders(found).items():
        theirs, _ = workshop.minutes(board, InThisOrder(board, ids))
        for way in (ours, as_printed):
            gain = [their - our for our, their in zip(way, theirs, strict=True)]
            half = SURE * pstdev(gain) / sqrt(VEHICLES)
            print(f"{complaint} {vehicle} {name}: {fmean(gain):.1f} ± {half:.1f} minutes saved")
            assert fmean(gain) - half > 0, name


@pytest.mark.parametrize(("complaint", "vehicle"), STARTS)
def test_the_method_page_states_the_minutes(complaint: str, vehicle: str) -> None:
    """The order that was tried is the page's own, and the method page has its figures."""
    symptom = demonstration().get("symptoms", complaint, Symptom)
    found = searched(symptom, vehicle)
    shown = order(demonstration(), symptom, vehicle, Evidence())
    board = Board(found.search)
    assert shown.minutes == pytest.approx(expected_minutes(board, best_choice(board)[0]))
    printed = InThisOrder(board, [place.test.id for place in shown.places])
    title = demonstration().get("vehicles", vehicle, Vehicle).title
    figures = [shown.minutes, expected_minutes(board, printed), *shown.naive.values()]
    row = f"| {symptom.title}, {title} | {' | '.join(f'{each:.0f}' for each in figures)} |"
    assert row in METHOD.read_text(encoding="utf-8"), f"docs/order.md should say: {row}"


def gaps() -> list[float]:
    """Give how much looking ahead costs over the exact answer, in per cent, case by case."""
    random = Random(8)
    found = []
    for _ in range(CASES):
        board = Board(drawn(random, random.randint(3, 8)))
        exact = Exact(board, limit=10**6).minutes
        found.append(max(0.0, 100 * (expected_minutes(board, LookAhead(board)) / exact - 1)))
    return found


def test_the_method_page_states_the_gap() -> None:
    """The figures printed for 500 random cases are those that this run gives."""
    found = gaps()
    exact = sum(gap < 1e-6 for gap in found)
    line = (
        f"{exact} of {CASES} exact; mean {fmean(found):.2f} %, "
        f"95th percentile {quantiles(found, n=20)[-1]:.1f} %, worst {max(found):.1f} %"
    )
    page = METHOD.read_text(encoding="utf-8")
    assert line in re.sub(r"\s+", " ", page), f"docs/order.md should say: {line}"
