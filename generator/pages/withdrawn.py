"""What stands at the address of a withdrawn page: why, by whom, and what to use; no word of it."""

from __future__ import annotations

from dataclasses import replace
from functools import partial

from generator.pages import routes
from generator.pages.book import Book
from generator.pages.page import Page, Planned, render
from generator.pages.strings import say
from generator.records.kinds import Record
from generator.records.kinds.knowledge import Person
from generator.records.knowledge_base import KnowledgeBase, table

STATUS = "withdrawn"

_EVERY = ""
"""Key under which the table lists all addresses."""


def addresses(kb: KnowledgeBase) -> tuple[str, ...]:
    """Give the address of each withdrawn page; an entry of a list is just gone from it."""
    return kb.table(_told)[_EVERY]


def planned(book: Book) -> Planned:
    """Plan the page of each withdrawn record that had one."""
    return {address: partial(_page, book, address) for address in addresses(book.kb)}


@table
def _told(kb: KnowledgeBase) -> dict[str, tuple[str, ...]]:
    """Give all that is told of each withdrawn page, by its address."""
    found = {routes.address(r): _said(kb, r) for r in kb.withdrawn if r.kind in routes.PAGED}
    return {**found, _EVERY: tuple(found)}


def _said(kb: KnowledgeBase, record: Record) -> tuple[str, ...]:
    why = record.withdrawn
    assert why is not None, "a check holds a withdrawn record to its reason"
    path = kb.origins[record.key].path
    return (record.kind, record.replaced_by or "", path, record.title, why.reason, why.by,
            str(why.date))  # fmt: skip


def _page(book: Book, address: str) -> Page:
    kind, replaced_by, path, title, reason, by, date = book.kb.table(_told)[address]
    person = book.kb.find("people", by, Person)
    instead = book.kb.records.get(kind, {}).get(replaced_by)
    page = render(
        book, address, title, "withdrawn.html",
        {
            "reason": reason, "date": date, "who": person.title if person else by,
            "instead": book.link(instead) if instead else None,
        },
        description=say("withdrawn.lead"),
    )  # fmt: skip
    # Not given to render: nothing of the record is shown, its vehicles and sign-off included.
    return replace(page, record=path)
