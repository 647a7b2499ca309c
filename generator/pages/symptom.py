"""The complaint's page: what to test first, on which vehicle, and why."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from generator.diagnosis import Order, Place
from generator.pages import routes
from generator.pages.book import Book, LinkTo
from generator.pages.page import Heading, Page, render
from generator.pages.pictures import doubt_picture
from generator.pages.strings import joined, say
from generator.records.kinds.knowledge import Cause, Symptom
from generator.records.kinds.things import Vehicle


@dataclass(frozen=True, slots=True)
class PlaceView:
    """A test in the order: its link, and why it stands there."""

    link: LinkTo
    why: str


@dataclass(frozen=True, slots=True)
class OrderView:
    """The order on one vehicle."""

    id: str
    title: str
    places: tuple[PlaceView, ...]
    elsewhere: tuple[Cause, ...]
    figure: Markup


@dataclass(frozen=True, slots=True)
class CauseView:
    """A cause, with where it shows."""

    name: str
    weight: str
    reason: str
    only: str
    links: list[LinkTo]


@dataclass(frozen=True, slots=True)
class ConfusionView:
    """A sound-alike."""

    what: str
    tell: str
    link: LinkTo | None


def pages(book: Book) -> list[Page]:
    """Make the page of every complaint."""
    return [_page(book, symptom) for symptom in book.kb.all("symptoms", Symptom)]


def _page(book: Book, symptom: Symptom) -> Page:
    orders = book.orders[symptom.id]
    opening = next(iter(orders.values())).opening
    contents = [
        Heading(say("symptom.start"), "start"),
        Heading(say("symptom.when"), "when"),
        Heading(say("symptom.causes"), "causes"),
    ]
    if symptom.confused_with:
        contents.append(Heading(say("symptom.confused"), "confused"))
    if symptom.codes:
        contents.append(Heading(say("symptom.codes"), "codes"))
    return render(
        book,
        routes.address(symptom),
        symptom.title,
        "symptom.html",
        {
            "symptom": symptom,
            "vehicles": book.vehicles(symptom.applies_to),
            "opening": opening,
            "opening_minutes": sum(test.minutes for test in opening),
            "orders": [_order_view(book, vehicle, order) for vehicle, order in orders.items()],
            "causes": [_cause_view(book, cause) for cause in _heaviest_first(symptom)],
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


def _heaviest_first(symptom: Symptom) -> list[Cause]:
    return sorted(symptom.causes, key=lambda cause: (-cause.weight, cause.name))


def _order_view(book: Book, vehicle: str, order: Order) -> OrderView:
    title = book.kb.get("vehicles", vehicle, Vehicle).title
    return OrderView(
        vehicle,
        title,
        tuple(PlaceView(book.link(place.test), _why(book, place)) for place in order.places),
        order.elsewhere,
        doubt_picture(f"doubt-{vehicle}", order.places),
    )


def _why(book: Book, place: Place) -> str:
    parts = [say("symptom.minutes", minutes=f"{place.minutes:g}")]
    if place.causes:
        parts.append(say("symptom.settles", share=f"{place.share * 100:.0f}"))
    if place.opens_way_for:
        titles = [link.title for link in book.links("tests", list(place.opens_way_for))]
        parts.append(say("symptom.opens_way", tests=joined(titles)))
    parts.append(say("symptom.doubt_left", doubt=f"{place.doubt * 100:.0f}"))
    return "; ".join(parts)


def _cause_view(book: Book, cause: Cause) -> CauseView:
    only = (
        say("symptom.only_on", vehicles=book.vehicles(cause.vehicles)) if cause.vehicles else ""
    )
    links = book.links("tests", cause.tests)
    if cause.component:
        links = book.links("components", [cause.component]) + links
    return CauseView(cause.name, f"{cause.weight:g}", cause.reason, only, links)
