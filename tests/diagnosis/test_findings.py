"""The way through the tests is sound, and what is not is found."""

from __future__ import annotations

from collections.abc import Iterable

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.diagnosis import Evidence, order
from generator.diagnosis.ending import How
from generator.diagnosis.findings import circles, problems
from generator.problems import Problem
from generator.records.kinds.facts import Finding
from generator.records.kinds.knowledge import Symptom
from generator.records.kinds.work import Next, Test
from generator.records.knowledge_base import KnowledgeBase
from tests.demo import changed, demonstration
from tests.diagnosis.test_evidence import FIRST, SECOND, case, world
from tests.diagnosis.test_order import a_test, complaint
from tests.hazards.build import manual

STARTS = [
    (symptom.id, vehicle)
    for symptom in demonstration().all("symptoms", Symptom)
    for vehicle in symptom.applies_to
]


def codes(found: Iterable[Problem]) -> list[str]:
    """Give the codes of findings."""
    return [each.code for each in found]


@settings(max_examples=60)
@given(st.sampled_from(STARTS), st.data())
def test_every_way_ends(start: tuple[str, str], data: st.DataObject) -> None:
    """Whatever is found, the demonstration ends in a proof, a referral or what was excluded.

    Each answer takes one test away, so there is no loop; the walk follows the computed order, or
    steps aside to a test further down.
    """
    kb = demonstration()
    symptom = kb.get("symptoms", start[0], Symptom)
    evidence = Evidence()
    here = order(kb, symptom, start[1])
    steps = 0
    while here.ending is None:
        assert here.places, "a state with no test and no ending is a dead end"
        place = here.places[data.draw(st.sampled_from([0, 0, 0, len(here.places) - 1]))]
        outcome = data.draw(st.sampled_from(place.test.outcomes))
        evidence = Evidence(found=(*evidence.found, (place.test.id, outcome.finding)))
        before = {each.test.id for each in here.places}
        here = order(kb, symptom, start[1], evidence)
        assert place.test.id not in {each.test.id for each in here.places}
        assert {each.test.id for each in here.places} <= before
        steps += 1
        assert steps <= len(kb.records["tests"])
    if here.ending.how is How.PROVED:
        assert here.ending.causes or here.ending.ways
    elif here.ending.how is How.REFER:
        assert here.ending.words
    else:
        assert here.ending.words or here.ending.excluded or here.ending.unsettled


@pytest.mark.parametrize(("symptom", "vehicle"), STARTS)
def test_nothing_found_says_what_was_excluded(symptom: str, vehicle: str) -> None:
    """When every test of the order finds nothing, each is named as found good or not settled."""
    kb = demonstration()
    record = kb.get("symptoms", symptom, Symptom)
    evidence = Evidence()
    here = order(kb, record, vehicle)
    while here.ending is None:
        test = here.places[0].test
        sound = [
            o.finding for o in test.outcomes
            if o.finding in (Finding.AS_EXPECTED, Finding.IN_LIMITS)
            and not any(way.refer or way.done for way in o.next)
        ]  # fmt: skip
        finding = sound[0] if sound else Finding.CANNOT_TELL
        evidence = Evidence(found=(*evidence.found, (test.id, finding)))
        here = order(kb, record, vehicle, evidence)
    assert here.ending.how is not How.PROVED
    looked = {*here.ending.excluded, *here.ending.unsettled}
    assert looked == {id_ for id_, _ in evidence.found}
    assert {cause.name for cause in here.ending.causes} == {c.name for c in here.elsewhere}


def test_the_demonstration_has_no_findings() -> None:
    """Every cause can be proved, no circle stands, and every case counts for its vehicle."""
    assert problems(demonstration()) == []


def turned(kb: KnowledgeBase, id_: str, finding: Finding, way: Next) -> KnowledgeBase:
    """Give a copy in which one outcome leads another way."""
    test = kb.get("tests", id_, Test)
    outcomes = [
        each.model_copy(update={"next": [way]}) if each.finding is finding else each
        for each in test.outcomes
    ]
    return changed(kb, "tests", id_, outcomes=outcomes)


def test_a_circle_of_steady_readings_is_found() -> None:
    """Two sound readings that send to each other are one finding; asleep, they may change."""
    kb = world(FIRST, SECOND)
    there = turned(kb, "one", Finding.AS_EXPECTED, Next(test="two"))
    assert problems(there) == []
    both = turned(there, "two", Finding.AS_EXPECTED, Next(test="one"))
    found = problems(both)
    assert codes(found) == ["loop-without-progress"]
    assert "two and one" in found[0].message or "one and two" in found[0].message
    asleep = turned(there, "two", Finding.COMPLAINT_ABSENT, Next(test="one"))
    assert problems(asleep) == []


@pytest.mark.parametrize(
    ("links", "found"),
    [
        ({"a": ["b"], "b": []}, []),
        ({"a": ["a"]}, [["a"]]),
        ({"a": ["b"], "b": ["c"], "c": ["a"], "d": ["a"]}, [["a", "b", "c"]]),
        ({"a": ["b"], "b": ["a"], "c": ["d"], "d": ["c"]}, [["a", "b"], ["c", "d"]]),
    ],
)
def test_each_circle_is_given_once(links: dict[str, list[str]], found: list[list[str]]) -> None:
    """A circle is one finding, whatever leads into it."""
    assert circles({id_: dict.fromkeys(onward, 0) for id_, onward in links.items()}) == found


def test_a_cause_that_nothing_condemns_is_found() -> None:
    """A cause whose only test condemns another part is one finding; named elsewhere, it is none."""
    stray = FIRST | {"component": "fan-guard"}
    tests = (a_test("one", 5, verdict="neither"), a_test("two", 5, part="fan-guard"))
    kb = manual(complaint(stray, SECOND), *tests)
    hint = turned(kb, "one", Finding.FAULT_SEEN, Next(test="two"))
    assert codes(problems(hint)) == ["cause-never-proved"]
    assert problems(world(FIRST, SECOND)) == []


def test_a_case_off_its_list_is_found() -> None:
    """A case must name a cause of its complaint, on a vehicle that can have it."""
    assert problems(world(FIRST, SECOND, more=(case("good", "first"),))) == []
    off = world(FIRST, SECOND, more=(case("off", "frist"),))
    assert codes(problems(off)) == ["case-off-the-list"]
    elsewhere = world(FIRST, SECOND, more=(case("van", "first", vehicle="diesel-van"),))
    assert codes(problems(elsewhere)) == ["case-on-another-vehicle"]
