"""The complaint's page: what to test first, on which vehicle, and why."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from markupsafe import Markup

from generator.diagnosis import Evidence, Odds, Order, Place, odds_of
from generator.pages import routes
from generator.pages.book import Book, LinkTo, RecordKey, listed, planned_for
from generator.pages.page import Heading, Page, Planned, render
from generator.pages.pictures import doubt_picture
from generator.pages.strings import joined, say
from generator.pages.tapping import tapping
from generator.quantities import figure
from generator.records.kinds.cases import Case
from generator.records.kinds.facts import Circumstance
from generator.records.kinds.knowledge import Cause, FaultCode, Symptom
from generator.records.kinds.things import Component, Vehicle
from generator.records.kinds.work import Test
from generator.records.knowledge_base import KnowledgeBase, table

LIKELIEST = 3
"""Causes named for each thing that is known; more would not be read."""

NAMED = 2
"""Tests named among those that one opens the way for; the others are counted."""


@dataclass(frozen=True, slots=True)
class PlaceView:
    """A test in the order: what must be restored first, what it leaves, why it stands there."""

    link: LinkTo
    minutes: str
    restore: str
    doubt: str
    why: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Row:
    """A line of a small table."""

    name: str
    text: str


@dataclass(frozen=True, slots=True)
class OrderView:
    """The order on one vehicle."""

    id: str
    title: str
    method: str
    opening: int
    places: tuple[PlaceView, ...]
    naive: tuple[Row, ...]
    narrow: tuple[Row, ...]
    elsewhere: tuple[Cause, ...]
    figure: Markup
    tapping: str


@dataclass(frozen=True, slots=True)
class OpeningView:
    """The first looks, and the vehicles that have these and no others."""

    vehicles: tuple[str, ...]
    names: str
    lead: str
    tests: tuple[Test, ...]


@dataclass(frozen=True, slots=True)
class CauseView:
    """A cause, the part it lies in, and the tests that show it."""

    name: str
    part: LinkTo | None
    weight: str
    reason: str
    only: str
    counted: list[str]
    links: list[LinkTo]
    vehicles: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ConfusionView:
    """A sound-alike."""

    what: str
    tell: str
    link: LinkTo | None


def planned(book: Book) -> Planned:
    """Plan the page of every complaint."""
    return planned_for(book, book.kb.all("symptoms", Symptom), _page)


def pages(book: Book) -> list[Page]:
    """Make the page of every complaint."""
    return [make() for make in planned(book).values()]


def _page(book: Book, symptom: Symptom) -> Page:
    orders = book.orders[symptom.id]
    contents = [
        Heading(say("symptom.start"), "start"),
        Heading(say("symptom.when"), "when"),
        Heading(say("symptom.causes"), "causes"),
    ]
    if symptom.confused_with:
        contents.append(Heading(say("symptom.confused"), "confused"))
    if symptom.codes:
        contents.append(Heading(say("symptom.codes"), "codes"))
    cases = book.pick(_cases_of, symptom.id, Case)
    if cases:
        contents.append(Heading(say("symptom.cases"), "cases"))
    return render(
        book,
        routes.address(symptom),
        symptom.title,
        "symptom.html",
        {
            "symptom": symptom,
            "vehicles": book.vehicles(symptom.applies_to),
            "openings": _openings(book, orders),
            "orders": [
                _order_view(book, symptom, vehicle, order) for vehicle, order in orders.items()
            ],
            "causes": [_cause_view(book, cause, orders) for cause in _heaviest_first(symptom)],
            "cases": [book.link(case) for case in cases],
            "confused": [
                ConfusionView(
                    item.what, item.tell,
                    book.links("symptoms", [item.symptom])[0] if item.symptom else None,
                )
                for item in symptom.confused_with
            ],
            "codes": [
                LinkTo(f"{link.note} {link.title}".strip(), link.target)
                for link in book.links("codes", symptom.codes)
            ],
        },
        record=symptom,
        contents=tuple(contents),
        description=f"{symptom.title}. {symptom.said[0]}",
    )  # fmt: skip


@table
def _cases_of(kb: KnowledgeBase) -> dict[str, tuple[RecordKey, ...]]:
    return listed(kb, "cases", Case, lambda case: [case.complaint])


def _openings(book: Book, orders: Mapping[str, Order]) -> list[OpeningView]:
    """Give the first looks once for all vehicles that share them."""
    sharing: dict[tuple[str, ...], list[str]] = {}
    for vehicle, order in orders.items():
        sharing.setdefault(tuple(test.id for test in order.opening), []).append(vehicle)
    views = []
    for vehicles in sharing.values():
        tests = orders[vehicles[0]].opening
        minutes = f"{sum(test.minutes for test in tests):g}"
        names = joined([book.kb.get("vehicles", id_, Vehicle).title for id_ in vehicles])
        views.append(
            OpeningView(
                tuple(vehicles),
                say("page.for", vehicles=names) if len(sharing) > 1 else "",
                say("symptom.opening_lead", minutes=minutes),
                tests,
            )
        )
    return views


def _heaviest_first(symptom: Symptom) -> list[Cause]:
    return sorted(symptom.causes, key=lambda cause: (-cause.weight, cause.name))


def _order_view(book: Book, symptom: Symptom, vehicle: str, order: Order) -> OrderView:
    return OrderView(
        vehicle,
        book.kb.get("vehicles", vehicle, Vehicle).title,
        say(f"symptom.method.{order.method}"),
        len(order.opening),
        tuple(
            PlaceView(
                book.link(place.test),
                say("symptom.minutes", minutes=f"{place.minutes:g}"),
                _restore(place),
                say("symptom.doubt_left", doubt=_percent(place.doubt)),
                tuple(_why(book, place)),
            )
            for place in order.places
        ),
        _naive(order),
        _narrow(book, symptom, vehicle),
        order.elsewhere,
        doubt_picture(book, f"doubt-{vehicle}", order.places),
        tapping(book, symptom, vehicle, order),
    )


def _naive(order: Order) -> tuple[Row, ...]:
    """Give the minutes to expect of this order and of the others."""
    rows = [
        Row(
            say("symptom.naive.this"), say("symptom.minutes", minutes=f"{order.minutes:.0f}")
        )
    ]  # fmt: skip
    for name, minutes in order.naive.items():
        more = round(minutes) - round(order.minutes)
        text = say("symptom.naive.saved", minutes=f"{minutes:.0f}", more=more)
        rows.append(Row(say(f"symptom.naive.{name}"), text))
    return tuple(rows)


def _narrow(book: Book, symptom: Symptom, vehicle: str) -> tuple[Row, ...]:
    """Give the likeliest causes by each thing that may be known, before any test."""
    known: list[tuple[str, Evidence]] = [(say("symptom.nothing_known"), Evidence())]
    for id_ in symptom.codes:
        code = book.kb.get("codes", id_, FaultCode)
        if vehicle in code.applies_to:
            known.append((say("symptom.with_code", code=code.code), Evidence(codes=(id_,))))
    spoken = {when for cause in symptom.causes for when in cause.when}
    known += [
        (say(f"when.{when.value}"), Evidence(when=(when,)))
        for when in Circumstance
        if when in spoken
    ]
    return tuple(
        Row(name, "; ".join(_share(odds) for odds in likeliest[:LIKELIEST]))
        for name, evidence in known
        for likeliest in [odds_of(book.kb, symptom, vehicle, evidence)]
    )


def _share(odds: Odds) -> str:
    return say("symptom.share_of", cause=odds.cause.name, share=f"{odds.share * 100:.0f}")


def _restore(place: Place) -> str:
    """Say what must be restored before the test; this stands in sight, never folded away."""
    must = [say(f"state.{demand.word}.{demand.must_be}") for demand in place.restore]
    return say("symptom.restore", what=joined(must)) if must else ""


def _why(book: Book, place: Place) -> list[str]:
    found = []
    if place.causes:
        rate = figure(place.share * 100 / place.minutes, 1)
        found.append(say("symptom.settles", share=_percent(place.share), rate=rate))
    if place.opens_way_for:
        titles = [link.title for link in book.links("tests", list(place.opens_way_for))]
        if len(titles) > NAMED + 1:
            titles = [*titles[:NAMED], say("symptom.others", n=len(titles) - NAMED)]
        found.append(say("symptom.opens_way", tests=joined(titles)))
    if place.takes_over:
        saved = f"{place.test.minutes - place.minutes:g}"
        what = joined([_setup(book, name) for name in place.takes_over])
        found.append(say("symptom.takes_over", what=what, minutes=saved))
    return found


def _setup(book: Book, name: str) -> str:
    """Say a set-up: its act, and the part it is done to."""
    act, _, part = name.partition(" ")
    if not part:
        return say(f"setup.{act}")
    return say(f"setup.{act}", part=book.kb.get("components", part, Component).title)


def _percent(share: float) -> str:
    """Give a share in per cent; what is there is never shown as nothing."""
    percent = share * 100
    return f"{percent:.0f}" if percent >= 1 or percent == 0 else say("symptom.under_one")


def _cause_view(book: Book, cause: Cause, orders: Mapping[str, Order]) -> CauseView:
    only = (
        say("symptom.only_on", vehicles=book.vehicles(cause.vehicles)) if cause.vehicles else ""
    )
    links = book.links("tests", cause.tests)
    part = book.links("components", [cause.component])[0] if cause.component else None
    counted = [
        say(
            "symptom.causes_counted", vehicle=book.vehicles([vehicle]), cases=odds.prior.cases,
            weight=f"{odds.prior.weight:.1f}",
        )
        for vehicle, order in orders.items()
        for odds in order.odds
        if odds.cause.name == cause.name and odds.prior.cases
    ]  # fmt: skip
    return CauseView(
        cause.name, part, f"{cause.weight:g}", cause.reason, only, counted, links,
        tuple(cause.vehicles),
    )  # fmt: skip
