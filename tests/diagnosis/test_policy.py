"""Choosing the next test: against brute force over all orders, and over all ways to react."""

from __future__ import annotations

from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.diagnosis.model import Fault, Probe, Search
from generator.diagnosis.policy import (
    ByRatio,
    Exact,
    InThisOrder,
    LookAhead,
    TooLarge,
    best_choice,
    clear_line,
    expected_minutes,
    is_simple,
)
from generator.diagnosis.state import Board
from tests.diagnosis.searches import best_sequence, best_tree, cost_of_sequence, drawn, simple

numbers = st.integers(0, 2**32 - 1)


@given(numbers)
def test_exact_search_agrees_with_every_order_tried(number: int) -> None:
    """No order of tests that only prove is cheaper than the exact one, and it is one of them."""
    random = Random(number)
    search = drawn(random, random.randint(1, 5), pointing=0)
    assert Exact(Board(search)).minutes == pytest.approx(best_sequence(search))


@given(numbers)
def test_exact_search_agrees_with_every_way_to_react(number: int) -> None:
    """Where tests only point, no way to react to what is found is cheaper than the exact one."""
    random = Random(number)
    search = drawn(random, random.randint(1, 4), pointing=0.5)
    board = Board(search)
    exact = Exact(board)
    assert exact.minutes == pytest.approx(best_tree(search))
    assert expected_minutes(board, exact) == pytest.approx(exact.minutes)


@given(numbers)
def test_looking_ahead_is_between_the_exact_and_the_ratio(number: int) -> None:
    """Looking ahead never beats the exact answer and never loses to either ratio."""
    random = Random(number)
    board = Board(drawn(random, random.randint(2, 6)))
    ahead = expected_minutes(board, LookAhead(board))
    assert ahead >= Exact(board).minutes - 1e-9
    for pointing in (0.0, 1.0):
        assert ahead <= expected_minutes(board, ByRatio(board, pointing)) + 1e-9


@given(st.lists(st.tuples(st.integers(1, 40), st.integers(1, 30)), min_size=1, max_size=5))
def test_the_ratio_is_used_only_where_it_is_exact(rows: list[tuple[int, int]]) -> None:
    """Independent perfect tests go by p/c, and no order is cheaper."""
    search = simple(*rows)
    board = Board(search)
    choose, name = best_choice(board)
    assert name == "ratio"
    assert expected_minutes(board, choose) == pytest.approx(best_sequence(search))


@given(numbers)
def test_what_counts_as_simple_is_solved_by_the_ratio(number: int) -> None:
    """Whatever is taken for a base case costs by ratio what the best order costs."""
    random = Random(number)
    names = ["f0", "f1", "f2"]
    shown = random.sample(names, 3)
    search = Search(
        faults=tuple(Fault(name, random.randint(1, 9)) for name in names),
        probes=tuple(
            Probe(
                id=f"t{n}", minutes=random.randint(1, 20),
                proves={shown[n]: random.choice([0.4, 1.0])},
                wrong_minutes=random.choice([0, 30]), specificity=random.choice([0.8, 1.0]),
                after=frozenset({"t0"} if n == 2 and random.random() < 0.2 else ()),
                leaves=frozenset({"a"} if random.random() < 0.3 else ()),
                takes=frozenset({"a"} if random.random() < 0.3 else ()),
            )
            for n in range(random.randint(1, 3))
        ),
        setup_minutes={"a": 4},
    )  # fmt: skip
    board = Board(search)
    if is_simple(board):
        assert expected_minutes(board, ByRatio(board)) == pytest.approx(best_sequence(search))


@given(numbers)
def test_a_fixed_order_costs_what_its_definition_says(number: int) -> None:
    """Following a list costs the sum that is written down for it."""
    random = Random(number)
    search = drawn(random, random.randint(1, 5), pointing=0)
    board = Board(search)
    ids = [probe.id for probe in search.probes]
    random.shuffle(ids)
    made: list[str] = []
    choose = InThisOrder(board, ids)
    for state in clear_line(board, choose)[1:]:
        made.append(search.probes[state.last].id)
    assert expected_minutes(board, choose) == pytest.approx(cost_of_sequence(search, made))


def test_a_shared_test_goes_before_the_two_it_saves() -> None:
    """A test of two causes is weighed by both: three causes at 3, of which one test shows two.

    By hand: the shared test at 4 for two thirds first, 4 + 3/3 = 5; the single one first,
    3 + 4·2/3 = 5.67.
    """
    search = Search(
        faults=(Fault("a", 1), Fault("b", 1), Fault("c", 1)),
        probes=(
            Probe(id="shared", minutes=4, proves={"a": 1.0, "b": 1.0}),
            Probe(id="single", minutes=3, proves={"c": 1.0}),
        ),
    )
    board = Board(search)
    assert Exact(board).minutes == pytest.approx(5)
    ids = [search.probes[state.last].id for state in clear_line(board, Exact(board))[1:]]
    assert ids == ["shared", "single"]


def test_a_test_that_splits_the_list_goes_first() -> None:
    """A cheap test that points at half of the list is worth its minutes, and is made first.

    By hand, four causes alike, proving tests of 10 each: one after another 10·(1 + .75 + .5 +
    .25) = 25; split by a test of 1 first, then each half at 10·(1 + .5) = 15: 16.
    """
    names = ["a", "b", "c", "d"]
    search = Search(
        faults=tuple(Fault(name, 1) for name in names),
        probes=(
            Probe(id="split", minutes=1, points={"a": 1.0, "b": 1.0}),
            *(Probe(id=f"prove-{name}", minutes=10, proves={name: 1.0}) for name in names),
        ),
    )
    board = Board(search)
    exact = Exact(board)
    assert exact.minutes == pytest.approx(16)
    assert search.probes[exact(board.start())].id == "split"
    assert expected_minutes(board, LookAhead(board)) == pytest.approx(16)


def test_set_up_that_stays_draws_two_tests_together() -> None:
    """Two tests on the lift follow each other, where p/c alone would part them.

    By hand with weights 5, 4, 3, times 10 each and 5 saved on the lift: lift, lift, other costs
    10 + 5·7/12 + 10·4/12 = 16.25; by p/c 10 + 10·7/12 + 10·3/12 = 18.33.
    """
    lift = frozenset({"lift"})
    search = Search(
        faults=(Fault("a", 5), Fault("b", 4), Fault("c", 3)),
        probes=(
            Probe(id="a", minutes=10, proves={"a": 1.0}, leaves=lift, takes=lift),
            Probe(id="b", minutes=10, proves={"b": 1.0}),
            Probe(id="c", minutes=10, proves={"c": 1.0}, leaves=lift, takes=lift),
        ),
        setup_minutes={"lift": 8},  # never more than half of a test's own minutes is saved
    )
    board = Board(search)
    ids = [search.probes[state.last].id for state in clear_line(board, Exact(board))[1:]]
    assert ids == ["a", "c", "b"]
    assert Exact(board).minutes == pytest.approx(10 + 5 * 7 / 12 + 10 * 4 / 12)


def test_the_cost_of_being_wrong_counts() -> None:
    """Of two tests alike, the one that seldom condemns a good part goes first."""
    search = Search(
        faults=(Fault("a", 1), Fault("b", 1)),
        probes=(
            Probe(id="a", minutes=10, proves={"a": 1.0}, specificity=0.8, wrong_minutes=60),
            Probe(id="b", minutes=10, proves={"b": 1.0}, specificity=0.99, wrong_minutes=60),
        ),
    )
    board = Board(search)
    assert search.probes[Exact(board)(board.start())].id == "b"
    # By hand: 10 + .5·.01·60 for the first; then .5·10, and nobody is left for a false alarm.
    assert Exact(board).minutes == pytest.approx(10 + 0.3 + 5)


def test_safety_comes_before_the_odds() -> None:
    """A pair that must keep its order does, however the odds stand; alone, neither waits."""
    rows = ((1, 30), (9, 1))
    search = simple(*rows)
    held = Search(faults=search.faults, probes=search.probes, precedence=frozenset({("t0", "t1")}))
    board = Board(held)
    ids = [held.probes[state.last].id for state in clear_line(board, Exact(board))[1:]]
    assert ids == ["t0", "t1"]
    assert best_choice(board)[1] == "exact"


def test_a_search_too_large_looks_ahead() -> None:
    """Above the limit the order is looked ahead for, and says so."""
    board = Board(drawn(Random(4), 7))
    with pytest.raises(TooLarge):
        Exact(board, limit=10)
    assert best_choice(board, limit=10)[1] == "look_ahead"


@pytest.mark.parametrize(
    ("fields", "said"),
    [
        ({"faults": (Fault("f0", -1),)}, "weights"),
        ({"faults": (Fault("f0", 0),)}, "weights"),
        ({"faults": (Fault("f0", float("nan")),)}, "weights"),
        ({"faults": (Fault("f0", 1), Fault("f0", 1))}, "twice"),
        ({"probes": (Probe(id="t", minutes=0, proves={"f0": 1.0}),)}, "minutes"),
        ({"probes": (Probe(id="t", minutes=1, proves={"f0": 1.5}),)}, "share"),
        ({"probes": (Probe(id="t", minutes=1, proves={"nobody": 1.0}),)}, "not there"),
        ({"probes": (Probe(id="t", minutes=1, after=frozenset({"t"})),)}, "wait for each other"),
        ({"precedence": frozenset({("t", "u")})}, "not there"),
        ({"probes": (Probe(id="t", minutes=1, specificity=0),)}, "cannot be"),
        (
            {"probes": (Probe(id="t", minutes=1, proves={"f0": 1.0}, points={"f0": 1.0}),)},
            "only points",
        ),
    ],
)
def test_a_search_that_cannot_be_is_refused(fields: dict[str, object], said: str) -> None:
    """Figures out of range, strangers, doubles and circles are named."""
    given_: dict[str, object] = {"faults": (Fault("f0", 1),), "probes": (), **fields}
    with pytest.raises(ValueError, match=said):
        Search(**given_)  # type: ignore[arg-type]
