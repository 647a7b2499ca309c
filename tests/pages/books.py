"""Books and single pages for the page tests; orders of tests are worked out once, not per copy."""

from __future__ import annotations

from functools import cache, partial

from generator import site
from generator.pages import work
from generator.pages.book import Book
from generator.pages.page import Page
from generator.records.kinds.work import Job
from generator.records.knowledge_base import KnowledgeBase
from tests.demo import demonstration


@cache
def whole() -> Book:
    """Give the book of the demonstration manual."""
    return Book.of(demonstration())


@cache
def made() -> site.Site:
    """Give the site of the demonstration manual."""
    return site.make(demonstration(), [])


def book_of(kb: KnowledgeBase) -> Book:
    """Give the book of a changed copy of the demonstration manual, with the orders it had."""

    kb = kb.remembering()
    for id_, symptom in kb.records.get("symptoms", {}).items():
        for vehicle in symptom.applies_to:  # type: ignore[attr-defined]
            known = partial(whole().orders[id_].__getitem__, vehicle)
            kb.remember("order", f"{id_} {vehicle}", known)
    return Book.of(kb)


def page_of(kb: KnowledgeBase, key: str) -> Page:
    """Give the page of one job."""
    kind, _, id_ = key.partition("/")
    job = kb.records[kind][id_]
    assert isinstance(job, Job)
    return work.page(book_of(kb), job)
