"""The page of solved cases: complaint, readings, proof, what fixed it, and whether it came back."""

from __future__ import annotations

from dataclasses import dataclass
from functools import partial

from generator.diagnosis.belief import PRIOR_CASES
from generator.diagnosis.evidence import outcome_of
from generator.pages import routes
from generator.pages.book import Book, LinkTo
from generator.pages.page import Heading, Page, Planned, render
from generator.pages.strings import say
from generator.records.kinds.cases import Case
from generator.records.kinds.knowledge import FaultCode
from generator.records.kinds.work import Test


@dataclass(frozen=True, slots=True)
class ReadingView:
    """A test that was made: its link, and what it found."""

    link: LinkTo
    found: str


@dataclass(frozen=True, slots=True)
class CaseView:
    """A case, ready to be shown."""

    case: Case
    anchor: str
    complaint: LinkTo
    vehicle: LinkTo
    known: str
    readings: tuple[ReadingView, ...]
    proof: LinkTo
    fix: LinkTo | None
    later: str


def planned(book: Book) -> Planned:
    """Plan the page of solved cases, where there are any."""
    return {routes.CASES: partial(_page, book)} if book.kb.all("cases", Case) else {}


def pages(book: Book) -> list[Page]:
    """Make the page of solved cases, where there are any."""
    return [make() for make in planned(book).values()]


def _page(book: Book) -> Page:
    cases = sorted(book.kb.all("cases", Case), key=lambda case: (case.closed, case.id))
    return render(
        book,
        routes.CASES,
        say("cases.heading"),
        "cases.html",
        {
            "lead": say("cases.lead", prior=f"{PRIOR_CASES:g}"),
            "cases": [_view(book, case) for case in reversed(cases)],
        },
        contents=tuple(
            Heading(case.title, routes.entry("cases", case.id)) for case in reversed(cases)
        ),
        description=say("cases.heading"),
    )


def _view(book: Book, case: Case) -> CaseView:
    codes = [book.kb.get("codes", id_, FaultCode).code for id_ in case.codes]
    known = [say("symptom.with_code", code=code) for code in codes]
    known += [say(f"when.{when.value}") for when in case.when]
    fix = None
    for kind, id_ in (("replacements", case.replacement), ("procedures", case.procedure)):
        if id_ is not None:
            fix = book.links(kind, [id_])[0]
    return CaseView(
        case,
        routes.entry("cases", case.id),
        book.links("symptoms", [case.complaint])[0],
        book.links("vehicles", [case.vehicle])[0],
        "; ".join(known),
        tuple(_reading(book, case, n) for n in range(len(case.readings))),
        book.links("tests", [case.proof])[0],
        fix,
        say(f"cases.{case.came_back.value}"),
    )


def _reading(book: Book, case: Case, n: int) -> ReadingView:
    reading = case.readings[n]
    outcome = outcome_of(book.kb.get("tests", reading.test, Test), reading.finding)
    found = outcome.label if outcome is not None else reading.finding.value.replace("_", " ")
    if reading.note:
        found = say("cases.noted", reading=found, note=reading.note.rstrip("."))
    return ReadingView(book.links("tests", [reading.test])[0], found)
