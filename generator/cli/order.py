"""The command that answers "what to test first", with everything known about the vehicle."""

from __future__ import annotations

import json
from collections.abc import Collection
from difflib import get_close_matches
from typing import Any

import click

from generator.cli.shared import FORMATS, Options, good_manual, usage
from generator.diagnosis import Evidence, Order
from generator.diagnosis import order as order_of_tests
from generator.diagnosis.ending import Ending
from generator.diagnosis.evidence import Working, causes_on, outcome_of
from generator.pages.strings import say
from generator.records.kinds.facts import Circumstance, Finding
from generator.records.kinds.knowledge import FaultCode, Symptom
from generator.records.kinds.things import Vehicle
from generator.records.kinds.work import Test
from generator.records.knowledge_base import KnowledgeBase

EXAMPLE = "as heat-and-wiggle-hall=flat_high"


@click.command()
@click.argument("symptom_id", metavar="SYMPTOM")
@click.option("--vehicle", metavar="ID", help="The vehicle (default: each it is written for).")
@click.option("--code", "codes", multiple=True, metavar="CODE", help="A stored code, as P0335.")
@click.option(
    "--when", "when", multiple=True, type=click.Choice([each.value for each in Circumstance]),
    help="When it shows; may be repeated.",
)  # fmt: skip
@click.option(
    "--found", "found", multiple=True, metavar="TEST=FINDING",
    help=f"A test made and what it found, {EXAMPLE}; in order, may be repeated.",
)
@click.option("--format", "form", type=FORMATS, default="text", help="How to print.")
@click.pass_obj
def order(
    options: Options, symptom_id: str, vehicle: str | None, codes: tuple[str, ...],
    when: tuple[str, ...], found: tuple[str, ...], form: str,
) -> None:  # fmt: skip
    """Print what to test first for a complaint, and why."""
    kb = good_manual(options).released()
    symptom = kb.find("symptoms", symptom_id, Symptom)
    if symptom is None:
        usage(f"there is no complaint {symptom_id}{_near(symptom_id, kb.records['symptoms'])}")
    if vehicle is not None and vehicle not in symptom.applies_to:
        near = _near(vehicle, symptom.applies_to)
        usage(f"{symptom_id} is not written for a vehicle {vehicle}{near}")
    vehicles = [vehicle] if vehicle else symptom.applies_to
    evidence = Evidence(
        tuple(_code(kb, code) for code in codes),
        tuple(Circumstance(each) for each in dict.fromkeys(when)),
        tuple(_found(kb, text, vehicles) for text in found),
    )
    made = [id_ for id_, _ in evidence.found]
    twice = next((id_ for id_ in made if made.count(id_) > 1), None)
    if twice:
        usage(f"{twice} is given twice; give what it found last")
    orders = {id_: order_of_tests(kb, symptom, id_, evidence) for id_ in vehicles}
    if form == "json":
        document = {
            "schema": 1,
            "symptom": symptom.id,
            "orders": [_as_data(kb, symptom, id_, each) for id_, each in orders.items()],
        }
        click.echo(json.dumps(document, ensure_ascii=False, indent=2))
        return
    click.echo("\n".join(_as_text(kb, symptom, id_, each) for id_, each in orders.items()))


def _near(text: str, known: Collection[str]) -> str:
    near = get_close_matches(text, list(known), n=1, cutoff=0.5)
    return f"; did you mean {near[0]}?" if near else ""


def _code(kb: KnowledgeBase, text: str) -> str:
    """Give the record of a code, written as the scan tool says it or as its file is named."""
    for code in kb.all("codes", FaultCode):
        if text.upper() == code.code or text == code.id:
            return code.id
    known = [code.code for code in kb.all("codes", FaultCode)]
    usage(f"this manual has no code {text}{_near(text.upper(), known)}")


def _found(kb: KnowledgeBase, text: str, vehicles: list[str]) -> tuple[str, Finding]:
    id_, equals, word = text.partition("=")
    if not equals:
        usage(f"{text!r} is not TEST=FINDING, {EXAMPLE}")
    test = kb.find("tests", id_, Test)
    if test is None:
        usage(f"there is no test {id_}{_near(id_, kb.records['tests'])}")
    if not set(vehicles) & set(test.applies_to):
        usage(f"{id_} is not made on {', '.join(vehicles)}")
    known = list(dict.fromkeys(outcome.finding.value for outcome in test.outcomes))
    if word not in known:
        usage(f"{id_} cannot find {word or 'nothing'}; it finds {', '.join(known)}")
    return id_, Finding(word)


def _working(symptom: Symptom, vehicle: str, working: Working) -> dict[str, Any]:
    names = [cause.name for cause in causes_on(symptom, vehicle)]
    return {
        "kind": working.kind,
        "what": working.what,
        "finding": working.finding or None,
        "probability": round(working.expected, 6),
        "contradicts": working.contradicts,
        "surprises": working.surprises,
        "shares": {
            name: round(share, 6) for name, share in zip(names, working.shares, strict=True)
        },
    }


def _ending(ending: Ending | None) -> dict[str, Any] | None:
    if ending is None:
        return None
    return {
        "how": ending.how.value,
        "causes": [cause.name for cause in ending.causes],
        "by": ending.by or None,
        "next": [
            {"way": way.way, "record": getattr(way, way.way)}
            for way in ending.ways
            if way.way in ("test", "replacement", "procedure")
        ],
        "words": list(ending.words),
        "excluded": list(ending.excluded),
        "unsettled": list(ending.unsettled),
    }


def _as_data(kb: KnowledgeBase, symptom: Symptom, vehicle: str, found: Order) -> dict[str, Any]:
    return {
        "vehicle": vehicle,
        "method": found.method,
        "expected_minutes": round(found.minutes, 3),
        "other_orders_minutes": {name: round(m, 3) for name, m in found.naive.items()},
        "opening": [test.id for test in found.opening],
        "tests": [
            {
                "test": place.test.id,
                "minutes": place.minutes,
                "elapsed_minutes": place.elapsed,
                "can_settle": round(place.share, 6),
                "doubt_left": round(place.doubt, 6),
                "causes": [cause.name for cause in place.causes],
                "comes_before": list(place.opens_way_for),
                "takes_over": list(place.takes_over),
                "restore": {demand.word: demand.must_be for demand in place.restore},
            }
            for place in found.places
        ],
        "causes": [
            {
                "name": odds.cause.name,
                "share": round(odds.share, 6),
                "judged_weight": odds.prior.judged,
                "solved_cases": odds.prior.cases,
                "weight": round(odds.prior.weight, 6),
                "refer": odds.cause.refer,
            }
            for odds in found.odds
        ],
        "evidence": [_working(symptom, vehicle, working) for working in found.workings],
        "last_outcome": _last(kb, found),
        "ending": _ending(found.ending),
    }


def _last(kb: KnowledgeBase, found: Order) -> dict[str, Any] | None:
    """Give what the record itself says about the last reading."""
    made = [working for working in found.workings if working.kind == "found"]
    if not made:
        return None
    test = kb.get("tests", made[-1].what, Test)
    outcome = outcome_of(test, Finding(made[-1].finding))
    assert outcome is not None  # asked for before the evidence was weighed
    return {
        "label": outcome.label,
        "verdict": outcome.verdict.value,
        "means": outcome.means,
        "next": [{way.way: getattr(way, way.way)} for way in outcome.next],
    }


def _as_text(kb: KnowledgeBase, symptom: Symptom, vehicle: str, found: Order) -> str:
    lines = [f"{symptom.title}: {kb.get('vehicles', vehicle, Vehicle).title}"]
    for working in found.workings:
        finding = f"={working.finding}" if working.finding else ""
        said = ""
        if working.contradicts:
            said = "  contradicts everything else; left out"
        elif working.surprises:
            said = "  hardly fits the causes listed"
        lines.append(f"  known: {working.what}{finding}{said}")
    lines += [f"  {odds.share * 100:5.1f} %  {odds.cause.name}" for odds in found.odds]
    if found.ending is not None:
        named = ", ".join(cause.name for cause in found.ending.causes)
        lines.append(f"  ends: {found.ending.how.value} {named}".rstrip())
        lines += [f"    {words}" for words in found.ending.words]
        if found.ending.excluded:
            lines.append(f"    found good: {', '.join(found.ending.excluded)}")
        if found.ending.unsettled:
            lines.append(f"    not settled: {', '.join(found.ending.unsettled)}")
    if found.places:
        others = ", ".join(f"{name} {minutes:.0f}" for name, minutes in found.naive.items())
        lines.append(f"  {found.minutes:.0f} min to expect ({others})")
        lines.append(f"  {say(f'symptom.method.{found.method}')}")
    for n, place in enumerate(found.places, start=1):
        lines.append(
            f"  {n:2} {place.test.id}: {place.minutes:g} min, settles {place.share * 100:.1f} %, "
            f"{place.doubt * 100:.0f} % left"
        )
    return "\n".join(lines)
