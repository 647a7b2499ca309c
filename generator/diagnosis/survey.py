"""A complaint on a vehicle, read off the records as a search in plain numbers."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass

from generator.diagnosis import setups
from generator.diagnosis.model import Fault, Probe, Search, circular
from generator.diagnosis.readings import proves, share, ways
from generator.records.kinds.facts import Codes, Verdict
from generator.records.kinds.knowledge import Cause
from generator.records.kinds.work import Job, Test
from generator.records.knowledge_base import KnowledgeBase


@dataclass(frozen=True, slots=True)
class Survey:
    """A search, with the records it was read off.

    Parameters
    ----------
    search : Search
        The plain numbers; its faults are named by position.
    tests : mapping of str to Test
        The tests in it.
    causes : tuple of Cause
        The causes, fault by fault.
    """

    search: Search
    tests: Mapping[str, Test]
    causes: tuple[Cause, ...]


def survey(
    kb: KnowledgeBase, causes: Sequence[Cause], shares: Sequence[float], vehicle: str,
    done: Collection[str],
) -> Survey:  # fmt: skip
    """Read the search off the records.

    Parameters
    ----------
    kb : KnowledgeBase
        The manual.
    causes : sequence of Cause, shape (n,)
        What it can be on the vehicle.
    shares : sequence of float, shape (n,)
        Their shares, by everything that is known.
    vehicle : str
        The vehicle's id.
    done : collection of str
        Tests that were made already.

    Returns
    -------
    Survey
        The search over the tests that are left, with those they have to come after.
    """
    tests = _tests(kb, causes, vehicle, done)
    names = [str(n) for n in range(len(causes))]
    cuts = {id_: frozenset(test.after) & tests.keys() for id_, test in tests.items()}
    cuts = _without_circles(cuts)
    probes, minutes = [], dict[str, float]()
    for id_, test in tests.items():
        left, taken = setups.leaves(test), setups.takes(test)
        minutes |= left | taken
        shown = {n: c for n, c in zip(names, causes, strict=True) if id_ in c.tests}
        probes.append(
            Probe(
                id=id_,
                minutes=test.minutes,
                proves={n: share(c, test) for n, c in shown.items() if proves(test, c, vehicle)},
                points={
                    n: share(c, test) for n, c in shown.items() if not proves(test, c, vehicle)
                },
                specificity=test.specificity,
                wrong_minutes=_wrong_minutes(kb, test, vehicle),
                after=cuts[id_],
                leaves=frozenset(left),
                takes=frozenset(taken),
            )
        )
    faults = tuple(Fault(n, s) for n, s in zip(names, shares, strict=True))
    search = Search(
        faults=faults, probes=tuple(probes), setup_minutes=minutes,
        precedence=_precedence(tests, probes),
    )  # fmt: skip
    return Survey(search, tests, tuple(causes))


def _tests(
    kb: KnowledgeBase, causes: Sequence[Cause], vehicle: str, done: Collection[str]
) -> dict[str, Test]:
    """Give the tests that show a cause, and those they have to come after; by id."""
    found: dict[str, Test] = {}
    waiting = [id_ for cause in causes for id_ in cause.tests]
    while waiting:
        id_ = waiting.pop()
        test = kb.get("tests", id_, Test)
        if id_ not in found and id_ not in done and vehicle in test.applies_to:
            found[id_] = test
            waiting += test.after
    return dict(sorted(found.items()))


def _without_circles(after: Mapping[str, frozenset[str]]) -> dict[str, frozenset[str]]:
    """Give what each test waits for, less what would make it wait for itself."""
    kept: dict[str, set[str]] = {id_: set() for id_ in after}
    for id_ in sorted(after):
        for earlier in sorted(after[id_]):
            if not _leads_to(kept, earlier, id_):
                kept[id_].add(earlier)
    return {id_: frozenset(earlier) for id_, earlier in kept.items()}


def _leads_to(after: Mapping[str, set[str]], start: str, goal: str) -> bool:
    return start == goal or any(_leads_to(after, each, goal) for each in after[start])


def _wrong_minutes(kb: KnowledgeBase, test: Test, vehicle: str) -> float:
    """Give the work thrown away when a test condemns a good part: the mean of what it leads to."""
    jobs: dict[str, float] = {}
    for outcome in test.outcomes:
        if outcome.verdict is not Verdict.CONDEMNS:
            continue
        for way in ways(outcome, vehicle):
            kind = {"replacement": "replacements", "procedure": "procedures"}.get(way.way)
            job = kb.records[kind].get(getattr(way, way.way)) if kind else None
            if isinstance(job, Job):
                jobs[job.key] = job.minutes
    return sum(jobs.values()) / len(jobs) if jobs else 0.0


def _precedence(
    tests: Mapping[str, Test], probes: Sequence[Probe]
) -> frozenset[tuple[str, str]]:
    """Give the pairs that safety of the evidence demands: saved codes are used, then cleared."""
    needs = [id_ for id_, test in tests.items() if test.entry.codes is Codes.SAVED]
    clears = [id_ for id_, test in tests.items() if test.leaves.codes is Codes.CLEARED]
    pairs: set[tuple[str, str]] = set()
    for first in needs:
        for second in clears:
            pair = (first, second)
            if first != second and not circular(probes, pairs | {pair}):
                pairs.add(pair)
    return frozenset(pairs)
