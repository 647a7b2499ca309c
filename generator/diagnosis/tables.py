"""What the reader's browser needs to follow the order: numbers worked out by the build.

The browser multiplies and ranks; it holds no model. Likelihoods, shares and the orders after the
likeliest findings are worked out here. Where a path leaves those orders, the rest is ranked by
:class:`generator.diagnosis.policy.ByRatio`, each test from a restored vehicle.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from generator.diagnosis.ending import ended_by
from generator.diagnosis.evidence import Evidence, causes_on, likelihoods_of, opening_shares
from generator.diagnosis.model import Search
from generator.diagnosis.order import Order, opening_tests
from generator.diagnosis.readings import likelihoods, says
from generator.diagnosis.restore import carried_at_first, said
from generator.diagnosis.survey import Survey, survey
from generator.records.kinds.facts import Circumstance
from generator.records.kinds.knowledge import Symptom
from generator.records.kinds.work import Test
from generator.records.knowledge_base import KnowledgeBase


def tables(kb: KnowledgeBase, symptom: Symptom, vehicle: str, order: Order) -> dict[str, Any]:
    """Give the tables of a complaint on a vehicle, as plain data for JSON.

    Parameters
    ----------
    kb : KnowledgeBase
        The manual.
    symptom : Symptom
        The complaint.
    vehicle : str
        The vehicle's id.
    order : Order
        Its order, nothing being known.

    Returns
    -------
    dict
        ``causes`` (name, share, refer), ``tests`` by id, ``known`` by kind and name, ``order``,
        ``after_pointing`` and ``state``, the vehicle's state after the first looks.
    """
    causes = causes_on(symptom, vehicle)
    opening = opening_tests(kb, symptom, vehicle)
    shares = opening_shares(kb, symptom, vehicle, opening)
    found = restored(survey(kb, causes, shares, vehicle, {test.id for test in opening}))
    probes = found.search.probes
    known: dict[str, list[float]] = {}
    for id_ in symptom.codes:
        known[f"code {id_}"] = likelihoods_of(kb, causes, Evidence(codes=(id_,)))
    for when in Circumstance:
        if any(when in cause.when for cause in causes):
            known[f"when {when.value}"] = likelihoods_of(kb, causes, Evidence(when=(when,)))
    return {
        "causes": [
            {"name": cause.name, "share": share, "refer": cause.refer}
            for cause, share in zip(causes, shares, strict=True)
        ],
        "tests": {probe.id: _test(found, n, vehicle) for n, probe in enumerate(probes)},
        "known": known,
        "order": [place.test.id for place in order.places],
        "after_pointing": {id_: list(chain) for id_, chain in order.after_pointing.items()},
        "state": carried_at_first(kb),
    }


def restored(found: Survey) -> Survey:
    """Give a search in which every test sets the vehicle up and restores it by itself."""
    search: Search = replace(found.search, setup_minutes={})
    return replace(found, search=search)


def _test(found: Survey, n: int, vehicle: str) -> dict[str, Any]:
    probe = found.search.probes[n]
    test: Test = found.tests[probe.id]
    return {
        "minutes": probe.minutes,
        "after": sorted(probe.after),
        "first": sorted(a for a, b in found.search.precedence if b == probe.id),
        "proves": {int(name): share for name, share in probe.proves.items()},
        "points": {int(name): share for name, share in probe.points.items()},
        "falsely": 1 - probe.specificity,
        "wrong": probe.wrong_minutes,
        "entry": said(test.entry),
        "leaves": said(test.leaves),
        "outcomes": [
            {
                "says": says(outcome).value,
                "likelihoods": likelihoods(found.causes, test, outcome),
                "ends": _ends(found, test, index, vehicle),
            }
            for index, outcome in enumerate(test.outcomes)
        ],
    }


def _ends(found: Survey, test: Test, index: int, vehicle: str) -> dict[str, Any] | None:
    ended = ended_by(test, test.outcomes[index], found.causes, vehicle)
    if ended is None:
        return None
    how, causes, _ = ended
    return {"how": how.value, "causes": [cause.name for cause in causes]}
