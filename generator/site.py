"""Knowledge base in, the whole site's pages out; no page is made while an error stands."""

from __future__ import annotations

import datetime
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import partial

from generator import checks
from generator.pages import (
    audit,
    cases,
    check_data,
    choice,
    faults,
    in_hand,
    moved,
    offline,
    record_form,
    routes,
    search,
    shared,
    symptom,
    things,
    upkeep,
    withdrawn,
    work,
    wrong,
)
from generator.pages.book import Book
from generator.pages.page import Page, Planned
from generator.problems import Problem, has_errors, in_order
from generator.records.knowledge_base import KnowledgeBase


@dataclass(frozen=True, slots=True)
class Plan:
    """A manual's pages, none of them made yet.

    Parameters
    ----------
    kb : KnowledgeBase
        The records that readers may work from, watched, so that who makes a page can tell what it
        was made from.
    pages : mapping
        Address to what makes the page, home first, then by address.
    texts : mapping
        Address to what makes a text: what is published beside the pages for programs to read.
    """

    kb: KnowledgeBase
    pages: Planned
    texts: Mapping[str, Callable[[], str]]

    @property
    def title(self) -> str:
        """The manual's name."""
        return self.kb.settings.title


@dataclass(frozen=True, slots=True)
class Site:
    """A manual's pages.

    Parameters
    ----------
    title : str
        The manual's name.
    pages : tuple of Page
        Home first, then by address.
    files : mapping
        Address to text: what is published beside the pages for programs to read.
    """

    title: str
    pages: tuple[Page, ...]
    files: Mapping[str, str]


class ErrorsStand(ValueError):
    """Pages were asked for while a finding of severity error stands."""


def check(
    kb: KnowledgeBase, found: Sequence[Problem] = (), as_of: datetime.date | None = None
) -> list[Problem]:
    """Give every finding on a knowledge base, those of its reading included, in order.

    Reviews are overdue on the day `as_of`; without a day none is.
    """
    whole = replace(kb, broken=broken(kb, found))
    return in_order([*found, *checks.problems(whole, as_of)])


def broken(kb: KnowledgeBase, found: Sequence[Problem]) -> frozenset[str]:
    """Give the keys of the records that have findings of their reading and are not there."""
    if not found:
        return frozenset()
    return frozenset(problem.record for problem in found) - {record.key for record in kb}


def plan(kb: KnowledgeBase, problems: Sequence[Problem], *, preview: bool = False) -> Plan:
    """Plan every page.

    Parameters
    ----------
    kb : KnowledgeBase
        The manual.
    problems : sequence of Problem
        What :func:`check` gave for it.
    preview : bool
        Whether drafts get pages, each marked as one: for their authors, never to be published.

    Returns
    -------
    Plan
        What makes each page.

    Raises
    ------
    ErrorsStand
        If an error is among the findings.
    """
    if has_errors(problems):
        raise ErrorsStand("no page is made while an error stands")
    shown = kb.previewed() if preview else kb.released()
    book = Book.of(shown, preview=preview)
    rooms = (
        shared, symptom, cases, work, things, faults, offline, upkeep, withdrawn, record_form,
    )  # fmt: skip
    pages = {url: make for room in rooms for url, make in room.planned(book).items()}
    texts: dict[str, Callable[[], str]] = {
        routes.AUDIT: partial(audit.document, book),
        routes.SEARCH: partial(search.document, book),
        routes.READINGS: check_data.script,
        routes.CHOICE: partial(choice.script, book),
        routes.IN_HAND: in_hand.script,
        routes.FORMS: partial(record_form.script, book),
        routes.WRONG: partial(wrong.script, book),
        routes.CAUTIONS: partial(offline.cautions, book),
        **moved.planned(book.kb),
    }
    home = {routes.HOME: pages.pop(routes.HOME)}
    return Plan(book.kb, home | dict(sorted(pages.items())), texts)


def make(kb: KnowledgeBase, problems: Sequence[Problem], *, preview: bool = False) -> Site:
    """Make every page that nobody remembers; parameters and errors are those of :func:`plan`."""
    planned = plan(kb, problems, preview=preview)
    remember = planned.kb.remember
    pages = tuple(remember("whole page", url, make) for url, make in planned.pages.items())
    texts = {url: remember("whole text", url, make) for url, make in planned.texts.items()}
    return Site(planned.title, pages, texts)
