"""The order of tests: against the published rule, by brute force, and with prerequisites."""

from __future__ import annotations

from itertools import permutations
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.diagnosis import Order, order
from generator.records.kinds.knowledge import Symptom
from generator.records.kinds.work import Next, Test
from generator.records.knowledge_base import KnowledgeBase
from tests.hazards.build import made, manual


def a_test(
    id_: str, minutes: float, *, after: tuple[str, ...] = (), shows: float = 1.0,
    verdict: str = "condemns", part: str = "sensor", **fields: Any,
) -> Test:  # fmt: skip
    """Give a test that condemns its part on a share of the faults it is made for."""
    found = {"means": "So it is.", "next": [{"carry_on": True}]}
    made_: Test = made(
        Test, "tests", id_, applies_to=["petrol-car"], minutes=minutes, who="mechanic",
        purpose="To see.", components=[part], method="look", after=list(after),
        cannot_show="More.", sensitivity=shows, specificity=1.0,
        outcomes=[
            {"finding": "as_expected", "label": "Good", "verdict": "neither", **found},
            {"finding": "fault_seen", "label": "Bad", "verdict": verdict, **found},
            {"finding": "cannot_tell", "label": "Unclear", "verdict": "neither", **found},
            {"finding": "complaint_absent", "label": "Asleep", "verdict": "neither", **found},
        ],
        **{
            "entry": {}, "leaves": {},
            "steps": [{"do": "Look.", "action": "look", "place": "away"}], **fields,
        },
    )  # fmt: skip
    return made_


def complaint(*causes: dict[str, Any]) -> Symptom:
    """Give a complaint with these causes."""
    symptom: Symptom = made(
        Symptom, "symptoms", "complaint", said=["It is ill."], group="Ill",
        applies_to=["petrol-car"], when="Always.", driving="may_drive", driving_advice="Go on.",
        causes=[{"reason": "Because.", "name": f"cause {n}", **part(cause), **cause}
                for n, cause in enumerate(causes)],
        codes=["p0335"],
    )  # fmt: skip
    return symptom


def part(cause: dict[str, Any]) -> dict[str, str]:
    """Give a cause its part, unless it lies elsewhere."""
    return {} if "refer" in cause else {"component": "sensor"}


def ordered(symptom: Symptom, *tests: Test) -> tuple[KnowledgeBase, Order]:
    """Give the order on the petrol car, behind an opening of one look."""
    kb = manual(symptom, a_test("look-first", 1), *tests)
    return kb, order(kb, symptom, "petrol-car")


def ids(found: Order) -> list[str]:
    """Give the tests' ids, in order."""
    return [place.test.id for place in found.places]


def expected_cost(sequence: list[tuple[float, float]]) -> float:
    """Give Σ (1 − Σ earlier p)·c of a sequence of (p, c): Kadane & Simon (1977)."""
    cost, left = 0.0, 1.0
    for share, minutes in sequence:
        cost += left * minutes
        left -= share
    return cost


PUBLISHED = {"a": (15, 2), "b": (30, 5), "c": (45, 10), "d": (10, 20)}


def test_the_published_four_tests_stand_in_their_optimal_order() -> None:
    """Shows that (.15, 2), (.30, 5), (.45, 10), (.10, 20) is the order, at 13.75.

    Closed form of Kadane & Simon, Annals of Statistics 5 (1977) 237: the best of all 24 orders.
    """
    symptom = complaint(*({"weight": p, "tests": [name]} for name, (p, _c) in PUBLISHED.items()))
    tests = [a_test(name, c) for name, (_p, c) in PUBLISHED.items()]
    _, found = ordered(symptom, *tests)
    assert ids(found) == ["a", "b", "c", "d"]
    sequence = [(p.share, p.minutes) for p in found.places]
    assert expected_cost(sequence) == pytest.approx(13.75, abs=1e-9)


def test_smiths_textbook_exercise() -> None:
    """Shows that time 1 with weight 10 goes before time 3 with weight 2 (18 against 46).

    The rule of scheduling that the same mathematics gives; a printed textbook exercise.
    """
    symptom = complaint({"weight": 2, "tests": ["slow"]}, {"weight": 10, "tests": ["quick"]})
    _, found = ordered(symptom, a_test("slow", 3), a_test("quick", 1))
    assert ids(found) == ["quick", "slow"]


cases = st.lists(st.tuples(st.integers(1, 40), st.integers(1, 30)), min_size=2, max_size=5).map(
    lambda rows: {f"t{n}": row for n, row in enumerate(rows)}
)


@given(cases)
def test_no_other_order_is_cheaper(rows: dict[str, tuple[int, int]]) -> None:
    """Shows by brute force that independent perfect tests are in an order none can better."""
    symptom = complaint(*({"weight": w, "tests": [name]} for name, (w, _c) in rows.items()))
    _, found = ordered(symptom, *(a_test(name, c) for name, (_w, c) in rows.items()))
    total = sum(weight for weight, _ in rows.values())
    cost = expected_cost([(p.share, p.minutes) for p in found.places])
    best = min(
        expected_cost([(rows[n][0] / total, rows[n][1]) for n in way]) for way in permutations(rows)
    )
    assert cost == pytest.approx(best)


def test_a_prerequisite_comes_first_and_says_why() -> None:
    """Shows that a test that opens the way stands before what needs it, and names it."""
    symptom = complaint({"weight": 9, "tests": ["ohms"]}, {"weight": 1, "tests": ["other"]})
    _, found = ordered(
        symptom, a_test("ohms", 5, after=("type",)), a_test("type", 3), a_test("other", 60)
    )
    assert ids(found) == ["type", "ohms", "other"]
    assert found.places[0].opens_way_for == ("ohms",)
    assert found.places[0].share == 0


def test_a_circle_of_prerequisites_ends() -> None:
    """Shows that tests which each come after the other do not hang the order."""
    symptom = complaint({"weight": 9, "tests": ["one"]}, {"weight": 1, "tests": ["two"]})
    _, found = ordered(symptom, a_test("one", 5, after=("two",)), a_test("two", 3, after=("one",)))
    assert sorted(ids(found)) == ["one", "two"]


def test_a_static_test_leaves_the_doubt_of_a_fault_that_sleeps() -> None:
    """Shows that a cause's own share for a test counts, not the test's usual one."""
    sleeping = {"weight": 10, "tests": ["cold", "hot"], "shows": {"cold": 0.05}}
    _, found = ordered(complaint(sleeping, sleeping | {"name": "twin", "weight": 1}),
                       a_test("cold", 5), a_test("hot", 20, shows=0.9))  # fmt: skip
    assert ids(found) == ["hot", "cold"]


def test_doubt_never_rises_and_what_no_test_shows_stays() -> None:
    """Shows that doubt falls from test to test down to the causes this manual has no test for."""
    symptom = complaint(
        {"weight": 6, "tests": ["one"]}, {"weight": 2, "tests": ["two"]},
        {"weight": 2, "refer": "Look elsewhere."},
    )  # fmt: skip
    _, found = ordered(symptom, a_test("one", 5), a_test("two", 5))
    doubts = [1.0, *(place.doubt for place in found.places)]
    assert doubts == sorted(doubts, reverse=True)
    assert doubts[-1] == pytest.approx(0.2)
    assert [cause.refer for cause in found.elsewhere] == ["Look elsewhere."]


def test_the_opening_is_never_reordered_or_repeated() -> None:
    """Shows that a first look that also shows a cause is not made twice."""
    symptom = complaint({"weight": 5, "tests": ["look-first"]}, {"weight": 5, "tests": ["one"]})
    _, found = ordered(symptom, a_test("one", 5))
    assert [test.id for test in found.opening] == ["look-first"]
    assert ids(found) == ["one"]


def test_a_complaint_may_have_first_looks_of_its_own() -> None:
    """Shows that a complaint's own first looks stand in the place of the manual's."""
    symptom = complaint({"weight": 5, "tests": ["one"]}, {"weight": 5, "refer": "Elsewhere."})
    symptom = symptom.model_copy(update={"opening": ["sniff", "look-first"]})
    symptom.named("symptoms", "complaint")
    _, found = ordered(symptom, a_test("one", 5), a_test("sniff", 2))
    assert [test.id for test in found.opening] == ["sniff", "look-first"]
    assert ids(found) == ["one"]


def test_a_test_that_only_points_does_not_end_the_search() -> None:
    """Shows that a test whose part is another's is followed by the one that condemns the part."""
    symptom = complaint(
        {"weight": 5, "tests": ["hint", "proof"]}, {"weight": 5, "refer": "Look elsewhere."}
    )
    hint = a_test("hint", 2, verdict="neither", shows=0.9)
    leads_on = hint.outcomes[1].model_copy(update={"next": [Next(test="proof")]})
    hint = hint.model_copy(update={"outcomes": [hint.outcomes[0], leads_on, *hint.outcomes[2:]]})
    hint.named("tests", "hint")
    _, found = ordered(symptom, hint, a_test("proof", 10))
    assert "proof" in ids(found)
    # By hand: the hint proves nothing and clears little, so making it at all costs 2 of 12.
    assert found.minutes <= 12 + 1e-9


def test_what_must_be_restored_is_asked_for_first() -> None:
    """Shows that a test that asks for a state the one before leaves otherwise demands it back."""
    symptom = complaint({"weight": 9, "tests": ["drive"]}, {"weight": 1, "tests": ["cold"]})
    drive = a_test("drive", 5, leaves={"engine_heat": "hot"})
    cold = a_test("cold", 5, entry={"engine_heat": "cold"})
    _, found = ordered(symptom, drive, cold)
    assert ids(found) == ["drive", "cold"]
    assert found.places[0].restore == ()
    (demand,) = found.places[1].restore
    assert (demand.word, demand.is_, demand.must_be) == ("engine_heat", "hot", "cold")


def test_codes_are_used_before_they_are_cleared() -> None:
    """Shows that a test that clears codes waits for one that needs them, whatever the odds."""
    symptom = complaint({"weight": 1, "tests": ["needs"]}, {"weight": 9, "tests": ["clears"]})
    needs = a_test("needs", 30, entry={"codes": "saved"}, leaves={"codes": "saved"})
    _, found = ordered(symptom, needs, a_test("clears", 1, leaves={"codes": "cleared"}))
    assert ids(found) == ["needs", "clears"]
    _, found = ordered(symptom, a_test("needs", 30), a_test("clears", 1))
    assert ids(found) == ["clears", "needs"]


def test_other_orders_are_never_quicker() -> None:
    """Shows that the orders people fall back on are valued too, and lose."""
    symptom = complaint({"weight": 6, "tests": ["a"]}, {"weight": 5, "tests": ["b"]})
    _, found = ordered(symptom, a_test("a", 60), a_test("b", 5))
    assert found.method == "ratio"
    # By hand, (.545, 60), (.455, 5): b first 5 + 60·6/11, a first 60 + 5·5/11.
    assert found.minutes == pytest.approx(5 + 60 * 6 / 11)
    assert found.naive["by_weight"] == pytest.approx(60 + 5 * 5 / 11)
    assert found.naive["by_minutes"] == pytest.approx(found.minutes)
    assert found.naive["by_name"] == pytest.approx(60 + 5 * 5 / 11)
