"""Pages about the faults of records, made from the rules' own text, and the reasoned exceptions."""

from __future__ import annotations

import datetime
from collections.abc import Iterable
from dataclasses import dataclass
from functools import partial

from generator.checks.fault_page import EXCUSABLE
from generator.checks.pages import by_group, page_of
from generator.pages import routes
from generator.pages.book import Book, LinkTo
from generator.pages.page import Heading, Page, Planned, render
from generator.pages.strings import say
from generator.problems import CODES
from generator.records.kinds import Record


@dataclass(frozen=True, slots=True)
class Allowed:
    """A check that a record is excused from, as the list shows it."""

    record: LinkTo
    check: str
    reason: str
    approver: LinkTo
    date: datetime.date


def planned(book: Book) -> Planned:
    """Plan the page of every fault, and the list of them with the exceptions."""
    names = [name for names in by_group().values() for name in names]
    return {
        routes.FAULTS: partial(_list, book),
        **{routes.fault(name): partial(_page, book, name) for name in names},
    }


def pages(book: Book) -> list[Page]:
    """Make the page of every fault, and the list of them with the exceptions."""
    return [make() for make in planned(book).values()]


def _list(book: Book) -> Page:
    groups = [
        (Heading(say(f"faults.group.{group}"), group), [(name, page_of(name)) for name in names])
        for group, names in by_group().items()
    ]
    return render(
        book, routes.FAULTS, say("faults.heading"), "faults.html",
        {"groups": groups, "exceptions": list(_allowed(book))},
        contents=(
            Heading(say("faults.exceptions"), "exceptions"), *(heading for heading, _ in groups)
        ),
        description=say("faults.lead"),
    )  # fmt: skip


def _page(book: Book, name: str) -> Page:
    page = page_of(name)
    shown = ("wrong", "why", "mend", "fails", "passes")
    return render(
        book, routes.fault(name), page.title, "fault.html",
        {
            "name": name, "page": page, "severity": CODES[name].severity.value,
            "excusable": name in EXCUSABLE,
        },
        contents=tuple(
            Heading(say(f"faults.{part}"), part) for part in shown if getattr(page, part)
        ),
        description=f"{name}: {page.title}",
    )  # fmt: skip


def _allowed(book: Book) -> Iterable[Allowed]:
    for record in book.kb:
        for entry in record.exceptions:
            yield Allowed(
                LinkTo(record.title, _address(book, record), record.kind),
                entry.check, entry.reason, book.role(entry.approved_by), entry.date,
            )  # fmt: skip


def _address(book: Book, record: Record) -> str:
    """Give the address of a record, or of the part a value is shown with."""
    if record.kind != "specs":
        return routes.address(record)
    part = book.kb.records["components"][record.component]  # type: ignore[attr-defined]
    return f"{routes.address(part)}#{routes.spec(record.id)}"
