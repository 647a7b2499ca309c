"""What is known moves the odds: codes, circumstances, readings and solved cases."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.diagnosis import Evidence, order
from generator.diagnosis.belief import counted, update
from generator.diagnosis.evidence import STRAY_CODE, priors
from generator.diagnosis.order import odds_of
from generator.diagnosis.readings import ASLEEP, likelihoods
from generator.records.kinds.cases import Case
from generator.records.kinds.facts import Circumstance, Finding
from generator.records.kinds.knowledge import FaultCode, Symptom
from generator.records.knowledge_base import KnowledgeBase
from tests.diagnosis.test_order import a_test, complaint
from tests.hazards.build import made, manual

FIRST = {"weight": 5, "tests": ["one"], "name": "first"}
SECOND = {"weight": 5, "tests": ["two"], "name": "second", "component": "fan-guard"}


def code(*components: str) -> FaultCode:
    """Give the code P0335, pointing at these parts."""
    return made(
        FaultCode, "codes", "p0335", code="P0335", means="No signal.", set_when="Cranking.",
        does_not_mean="The part.", applies_to=["petrol-car"], components=list(components),
        tests=["one"], source="common-practice",
    )  # fmt: skip


def case(id_: str, cause: str, came_back: str = "stayed_away", **fields: Any) -> Case:
    """Give a solved case."""
    return made(
        Case, "cases", id_,
        **{
            "complaint": "complaint", "vehicle": "petrol-car", "cause": cause, "proof": "one",
            "readings": [{"test": "one", "finding": "fault_seen"}], "other_fix": "A part.",
            "came_back": came_back, "closed": "2026-05-04", **fields,
        },
    )  # fmt: skip


def world(*causes: dict[str, Any], more: tuple[Any, ...] = (), **shows: float) -> KnowledgeBase:
    """Give a manual with the complaint, tests one and two, and whatever else."""
    tests = [a_test(id_, 5, shows=shows.get(id_, 0.8), part=part)
             for id_, part in (("one", "sensor"), ("two", "fan-guard"))]  # fmt: skip
    return manual(complaint(*causes), a_test("look-first", 1), *tests, *more)


def shares(kb: KnowledgeBase, evidence: Evidence) -> dict[str, float]:
    """Give the causes' shares by what is known."""
    symptom = kb.get("symptoms", "complaint", Symptom)
    return {odds.cause.name: odds.share for odds in odds_of(kb, symptom, "petrol-car", evidence)}


def test_a_code_points_at_its_parts() -> None:
    """A code raises the causes of its own parts: .6 against .1 makes six sevenths of an even pair.

    By Bayes' rule on even shares; the two figures are the stated judgement.
    """
    kb = world(FIRST, SECOND, more=(code("sensor"),))
    known = shares(kb, Evidence(codes=("p0335",)))
    assert known["first"] == pytest.approx(6 / 7)


def test_a_causes_own_word_on_a_code_counts() -> None:
    """What a cause says on a code stands against what its part would say."""
    kb = world(FIRST | {"codes": {"p0335": 0.3}}, SECOND, more=(code("sensor"),))
    known = shares(kb, Evidence(codes=("p0335",)))
    assert known["first"] == pytest.approx(0.3 / (0.3 + STRAY_CODE))


def test_a_circumstance_moves_the_causes_that_speak_of_it() -> None:
    """Nine in ten that show hot, against as often as not, makes 9/14; the other stays silent."""
    kb = world(FIRST | {"when": {"hot": 0.9}}, SECOND)
    assert shares(kb, Evidence(when=(Circumstance.HOT,)))["first"] == pytest.approx(9 / 14)
    assert shares(kb, Evidence(when=(Circumstance.WET,)))["first"] == pytest.approx(1 / 2)


@pytest.mark.parametrize(
    ("finding", "first"),
    [
        (Finding.AS_EXPECTED, 0.2 / 1.2),  # four in five would have shown
        (Finding.CANNOT_TELL, 0.5),
        (Finding.COMPLAINT_ABSENT, (1 - 0.8 * ASLEEP) / (2 - 0.8 * ASLEEP)),
        (Finding.FAULT_SEEN, 1.0),  # the test never shows anything on a good part
    ],
)
def test_a_reading_moves_the_odds(finding: Finding, first: float) -> None:
    """A sound reading lowers its causes, one that cannot tell moves none, a sleeping one little.

    By Bayes' rule on even shares with sensitivity .8 and specificity 1.
    """
    kb = world(FIRST, SECOND, one=0.8)
    known = shares(kb, Evidence(found=(("one", finding),)))
    assert known["first"] == pytest.approx(first)


def test_a_contradiction_says_so_and_moves_nothing() -> None:
    """Two parts condemned by tests that are never wrong: the second is marked and left out."""
    kb = world(FIRST, SECOND)
    symptom = kb.get("symptoms", "complaint", Symptom)
    found = order(
        kb, symptom, "petrol-car",
        Evidence(found=(("one", Finding.FAULT_SEEN), ("two", Finding.FAULT_SEEN))),
    )  # fmt: skip
    first, second = found.workings
    assert not first.contradicts
    assert second.contradicts
    assert second.shares == first.shares
    assert sum(odds.share for odds in found.odds) == pytest.approx(1)


def test_what_hardly_fits_says_so() -> None:
    """A condemnation of the least likely cause is believed, and marked as a surprise."""
    kb = world(FIRST | {"weight": 100}, SECOND | {"weight": 1})
    symptom = kb.get("symptoms", "complaint", Symptom)
    evidence = Evidence(found=(("two", Finding.FAULT_SEEN),))
    found = order(kb, symptom, "petrol-car", evidence)
    (working,) = found.workings
    assert working.surprises and not working.contradicts
    # Nothing was assumed of the first looks that could undo it.
    assert found.odds[0].cause.name == "second"


def test_cases_that_stayed_away_move_the_weights() -> None:
    """Twenty judged cases even, and four solved ones of the first: 14 of 24 against 10 of 24.

    The mean of the Dirichlet posterior, by hand.
    """
    solved = tuple(case(f"case-{n}", "first") for n in range(4))
    others = (
        case("came-back", "second", "came_back"), case("too-early", "second", "too_early"),
        case("other-vehicle", "second", vehicle="diesel-van"),
    )  # fmt: skip
    kb = world(FIRST, SECOND, more=(*solved, *others))
    prior = priors(kb, kb.get("symptoms", "complaint", Symptom), "petrol-car")
    assert [each.cases for each in prior] == [4, 0]
    assert [each.judged for each in prior] == [5, 5]
    assert [each.weight for each in prior] == pytest.approx([10 * 14 / 24, 10 * 10 / 24])
    assert shares(kb, Evidence())["first"] == pytest.approx(14 / 24)


@given(
    st.lists(st.floats(0.01, 1), min_size=2, max_size=6),
    st.lists(st.integers(0, 1_000), min_size=6, max_size=6),
)
def test_cases_keep_the_total_and_win_in_the_long_run(
    weights: list[float], counts: list[int]
) -> None:
    """Weights keep their total, and a cause with every case comes to have nearly all of it."""
    counts = counts[: len(weights)]
    assert sum(counted(weights, counts)) == pytest.approx(sum(weights))
    alone = counted(weights, [10_000, *[0] * (len(weights) - 1)])
    assert alone[0] / sum(weights) > 0.99


@given(st.lists(st.tuples(st.floats(0, 1), st.floats(0, 1)), min_size=1, max_size=8))
def test_shares_always_add_up(rows: list[tuple[float, float]]) -> None:
    """Whatever the evidence, nothing is divided by nought and shares add up to 1."""
    total = sum(weight for weight, _ in rows)
    if total == 0:
        rows, total = [(1.0, rows[0][1])], 1.0
    result = update([weight / total for weight, _ in rows], [likely for _, likely in rows])
    assert sum(result.shares) == pytest.approx(1)
    assert result.contradicts == (result.expected <= 1e-12)


@pytest.mark.parametrize("likely", [[0.5], [0.5, 1.5], [0.5, -0.1]])
def test_what_is_no_probability_is_refused(likely: list[float]) -> None:
    """A likelihood for each share, between 0 and 1."""
    with pytest.raises(ValueError, match="likelihood"):
        update([0.5, 0.5], likely)


def test_every_outcome_of_a_test_is_a_probability() -> None:
    """Every outcome of every shape of test gives likelihoods from 0 to 1."""
    kb = world(FIRST, SECOND)
    symptom = kb.get("symptoms", "complaint", Symptom)
    test = a_test("one", 5, shows=0.8)
    for outcome in test.outcomes:
        assert all(0 <= each <= 1 for each in likelihoods(symptom.causes, test, outcome))
