"""Findings on the way through the tests: where it ends, and whether it gets anywhere.

Whoever follows the computed order makes each test once, so that way always ends; what can fail is
that it ends without an answer, or that the links of the outcomes lead in a circle.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from generator.diagnosis.readings import Says, proves, says, ways
from generator.problems import Problem, code
from generator.records.kinds.cases import Case
from generator.records.kinds.knowledge import Symptom
from generator.records.kinds.things import Vehicle
from generator.records.kinds.work import Test
from generator.records.knowledge_base import KnowledgeBase

LOOP = code(
    "loop-without-progress",
    "Readings that do not change send the reader round the same tests for ever.",
)
UNPROVABLE = code(
    "cause-never-proved",
    "Its tests only point at it: the reader would end with a guess and change a part on it.",
)
CASE_OFF_LIST = code(
    "case-off-the-list",
    "A solved case that names no cause of its complaint moves no weight and is lost.",
)
CASE_ELSEWHERE = code(
    "case-on-another-vehicle",
    "The case would move the weights of a vehicle it says nothing about.",
)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give the findings on complaints, tests and solved cases."""
    return [*_unprovable(kb), *_loops(kb), *_cases(kb)]


def _unprovable(kb: KnowledgeBase) -> Iterator[Problem]:
    for symptom in kb.all("symptoms", Symptom):
        for index, cause in enumerate(symptom.causes):
            if cause.refer is not None:
                continue
            left = []
            for vehicle in symptom.applies_to:
                if cause.vehicles and vehicle not in cause.vehicles:
                    continue
                tests = [kb.get("tests", id_, Test) for id_ in cause.tests]
                tests = [test for test in tests if vehicle in test.applies_to]
                # A cause without any test on a vehicle is another fault.
                if tests and not any(proves(test, cause, vehicle) for test in tests):
                    left.append(vehicle)
            if left:
                yield kb.problem(
                    UNPROVABLE, symptom, ("causes", index, "tests"),
                    f"on {', '.join(left)} no test here condemns {cause.name!r}",
                    "name the test whose outcome condemns its part, or say under refer where to go",
                    of_key=True,
                )  # fmt: skip


def _loops(kb: KnowledgeBase) -> Iterator[Problem]:
    """Find circles of readings: each stands where it is, and each sends on to the next."""
    reported: set[frozenset[str]] = set()
    for vehicle in kb.all("vehicles", Vehicle):
        onward: dict[str, dict[str, int]] = {}
        for test in kb.all("tests", Test):
            if vehicle.id in test.applies_to:
                onward[test.id] = dict(_steady_links(test, vehicle.id))
        for circle in circles(onward):
            if frozenset(circle) in reported:
                continue
            reported.add(frozenset(circle))
            first, second = circle[0], circle[1 % len(circle)]
            yield kb.problem(
                LOOP, kb.get("tests", first, Test), ("outcomes", onward[first][second], "next"),
                f"on {vehicle.id} it leads to {' and '.join([*circle[1:], first])} and round again",
                "let one of these outcomes carry on, refer, or lead to the work", of_key=True,
            )  # fmt: skip


def _steady_links(test: Test, vehicle: str) -> Iterator[tuple[str, int]]:
    """Give the tests that an outcome sends on to, where making the test again changes nothing.

    A reading that could not be had, or was had while the fault slept, may well change.
    """
    for index, outcome in enumerate(test.outcomes):
        if says(outcome) in (Says.NOTHING, Says.ASLEEP):
            continue
        for way in ways(outcome, vehicle):
            if way.test is not None:
                yield way.test, index


def circles(onward: Mapping[str, Mapping[str, int]]) -> list[list[str]]:
    """Give, for each test that leads back to itself, the shortest way round; each circle once."""
    found: dict[frozenset[str], list[str]] = {}
    for start in sorted(onward):
        way = _shortest_back(onward, start)
        if way:
            found.setdefault(frozenset(way), way)
    return list(found.values())


def _shortest_back(onward: Mapping[str, Mapping[str, int]], start: str) -> list[str]:
    ways_there = [[start]]
    seen: set[str] = set()
    while ways_there:
        longer = []
        for way in ways_there:
            for following in sorted(onward.get(way[-1], {})):
                if following == start:
                    return way
                if following not in seen:
                    seen.add(following)
                    longer.append([*way, following])
        ways_there = longer
    return []


def _cases(kb: KnowledgeBase) -> Iterator[Problem]:
    for case in kb.all("cases", Case):
        symptom = kb.get("symptoms", case.complaint, Symptom)
        named = [cause for cause in symptom.causes if cause.name == case.cause]
        if not named:
            yield kb.problem(
                CASE_OFF_LIST, case, ("cause",),
                f"{symptom.title!r} has no cause {case.cause!r}",
                "write it as the complaint does, or add the cause to the complaint",
            )  # fmt: skip
            continue
        on = named[0].vehicles or symptom.applies_to
        tests = [kb.get("tests", reading.test, Test) for reading in case.readings]
        strange = [test.id for test in tests if case.vehicle not in test.applies_to]
        if case.vehicle not in on or case.vehicle not in symptom.applies_to or strange:
            what = f"{strange[0]} is not made" if strange else f"{case.cause!r} does not happen"
            yield kb.problem(
                CASE_ELSEWHERE, case, ("vehicle",), f"{what} on {case.vehicle}",
                "name the vehicle that it was",
            )  # fmt: skip
