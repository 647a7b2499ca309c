"""Knowledge base in, the whole site's pages out; no page is made while an error stands."""

from __future__ import annotations

import datetime
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from generator import checks
from generator.pages import audit, cases, faults, routes, shared, symptom, things, work
from generator.pages.book import Book
from generator.pages.page import Page
from generator.problems import Problem, has_errors, in_order
from generator.records.knowledge_base import KnowledgeBase


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
    read = {record.key for record in kb}
    broken = frozenset(problem.record for problem in found) - read
    return in_order([*found, *checks.problems(replace(kb, broken=broken), as_of)])


def make(kb: KnowledgeBase, problems: Sequence[Problem]) -> Site:
    """Make every page.

    Parameters
    ----------
    kb : KnowledgeBase
        The manual.
    problems : sequence of Problem
        What :func:`check` gave for it.

    Returns
    -------
    Site
        The pages.

    Raises
    ------
    ErrorsStand
        If an error is among the findings.
    """
    if has_errors(problems):
        raise ErrorsStand("no page is made while an error stands")
    book = Book.of(kb.released())
    pages = [
        *shared.pages(book), *symptom.pages(book), *cases.pages(book), *work.pages(book),
        *things.pages(book), *faults.pages(book),
    ]  # fmt: skip
    home, rest = pages[0], pages[1:]
    files = {routes.AUDIT: audit.document(book)}
    return Site(kb.settings.title, (home, *sorted(rest, key=lambda page: page.url)), files)
