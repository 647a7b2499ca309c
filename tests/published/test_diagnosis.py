"""The order of tests and the odds, against figures printed elsewhere."""

from __future__ import annotations

from itertools import permutations
from math import inf

import pytest

from generator.diagnosis.belief import counted, update
from generator.diagnosis.model import Fault, Probe, Search
from generator.diagnosis.policy import (
    ByRatio,
    Choose,
    Exact,
    InThisOrder,
    LookAhead,
    best_choice,
    clear_line,
    expected_minutes,
)
from generator.diagnosis.state import Board
from tests.diagnosis.searches import simple

# Kadane & Simon, Annals of Statistics 5 (1977) 237: Σ (1 − Σ earlier p)·c; all 24 orders valued
# by that closed form.
FOUR = ((0.15, 2), (0.30, 5), (0.45, 10), (0.10, 20))
BEST, BY_FALLING_P, WORST = 13.75, 15.25, 31.55


def chain(board: Board, choose: Choose) -> list[str]:
    """Give the tests in the order in which they are made while nothing is found."""
    ids = [probe.id for probe in board.search.probes]
    return [ids[state.last] for state in clear_line(board, choose)[1:]]


@pytest.mark.parametrize("way", [ByRatio, Exact, LookAhead])
def test_the_four_tests_cost_what_the_closed_form_gives(way: type) -> None:
    """Each way of choosing finds the order at 13.75."""
    board = Board(simple(*FOUR))
    choose = way(board)
    assert chain(board, choose) == ["t0", "t1", "t2", "t3"]
    assert expected_minutes(board, choose) == pytest.approx(BEST, abs=1e-9)


def test_the_other_orders_cost_what_the_closed_form_gives() -> None:
    """Falling probability costs 15.25, and the worst of all 24 orders 31.55."""
    board = Board(simple(*FOUR))
    cost = {
        way: expected_minutes(board, InThisOrder(board, way))
        for way in permutations(["t0", "t1", "t2", "t3"])
    }
    assert cost["t2", "t1", "t0", "t3"] == pytest.approx(BY_FALLING_P, abs=1e-9)
    assert max(cost.values()) == pytest.approx(WORST, abs=1e-9)
    assert min(cost.values()) == pytest.approx(BEST, abs=1e-9)


def test_smiths_exercise() -> None:
    """Time 1 with weight 10 before time 3 with weight 2 costs 18, the other way round 46.

    Smith's rule of scheduling, a printed textbook exercise: Σ weight × completion time.
    """
    board = Board(simple((10, 1), (2, 3)))
    total_weight = 12
    assert expected_minutes(board, ByRatio(board)) * total_weight == pytest.approx(18)
    slow_first = expected_minutes(board, InThisOrder(board, ["t1", "t0"]))
    assert slow_first * total_weight == pytest.approx(46)


def test_the_trap_of_the_last_candidate() -> None:
    """Where the last candidate needs no test, p/c is not the best for (.9, 10), (.1, 5).

    By hand: making the test of the likelier one costs 10 and concludes the other; making the
    cheap one costs 5 and concludes the likelier. With every test paid, p/c's order costs 10.5.
    """
    trap = Board(simple((0.9, 10), (0.1, 5), concludes_last=True))
    assert expected_minutes(trap, ByRatio(trap)) == pytest.approx(10)
    assert chain(trap, Exact(trap)) == ["t1"]
    assert Exact(trap).minutes == pytest.approx(5)
    assert best_choice(trap)[1] == "exact"
    paid = Board(simple((0.9, 10), (0.1, 5)))
    assert Exact(paid).minutes == pytest.approx(10.5)


def test_looks_that_can_overlook_go_by_the_present_chance_over_the_cost() -> None:
    """Repeated looks stand by p·α^(k−1)·(1 − α)/c, falling, and no order is cheaper.

    Chew, Annals of Mathematical Statistics 38 (1967) 494, who gives Blackwell's rule with costs;
    α is the chance of overlooking and k the number of the look.
    """
    boxes = {"f0": (0.5, 0.4, 4.0), "f1": (0.3, 0.2, 3.0), "f2": (0.2, 0.6, 1.25)}
    looks = 2
    rank = {
        f"{name}-{k}": p * alpha**k * (1 - alpha) / c
        for name, (p, alpha, c) in boxes.items()
        for k in range(looks)
    }
    board = Board(
        Search(
            faults=tuple(Fault(name, p) for name, (p, _, _) in boxes.items()),
            probes=tuple(
                Probe(id=f"{name}-{k}", minutes=c, proves={name: 1 - alpha})
                for name, (_, alpha, c) in boxes.items()
                for k in range(looks)
            ),
        )
    )
    rule = sorted(rank, key=lambda id_: -rank[id_])
    assert len({round(value, 9) for value in rank.values()}) == len(rank)  # no ties to hide in
    ruled = expected_minutes(board, InThisOrder(board, rule))
    assert Exact(board).minutes == pytest.approx(ruled)
    boxes_in_order = [id_.split("-")[0] for id_ in chain(board, ByRatio(board))]
    assert boxes_in_order == [id_.split("-")[0] for id_ in rule]


def test_bayes_rule() -> None:
    """Prevalence .01, sensitivity .80, specificity .90 leave .0748 after one that shows.

    A printed textbook exercise on a rare condition.
    """
    after = update([0.01, 0.99], [0.80, 1 - 0.90])
    assert after.shares[0] == pytest.approx(0.0748, abs=5e-5)
    assert after.expected == pytest.approx(0.01 * 0.80 + 0.99 * 0.10)


def test_counting_cases() -> None:
    """A judgement of one half worth two cases, with one success in one, becomes two thirds.

    Laplace's rule of succession, (s + 1)/(n + 2).
    """
    success, failure = counted([1, 1], [1, 0], prior_cases=2)
    assert success / (success + failure) == pytest.approx(2 / 3)


def test_no_bound_is_hidden() -> None:
    """What the exact search gives up on, it says."""
    with pytest.raises(ValueError, match="more than 3 states"):
        Exact(Board(simple(*FOUR)), limit=3)
    assert Exact(Board(simple(*FOUR)), limit=15).minutes < inf
