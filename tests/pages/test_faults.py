"""The pages about faults, and the list of reasoned exceptions."""

from __future__ import annotations

from generator.checks.pages import every_page
from generator.pages import faults, routes
from generator.pages.book import Book
from generator.pages.page import Page
from generator.problems import CODES
from tests.checks.manuals import patched
from tests.demo import demonstration

ENTRY = """exceptions:
  - check: torque-step-without-value
    reason: The bolt has a shoulder & is turned home by hand.
    approved_by: workshop-lead
    date: 2026-09-21
"""


def made(book: Book) -> dict[str, Page]:
    """Give the pages by address."""
    return {page.url: page for page in faults.pages(book)}


def test_every_code_has_its_page_and_its_line_in_the_list() -> None:
    """The list links to each, and each leads back."""
    pages = made(Book.of(demonstration()))
    for name, page in every_page().items():
        assert routes.fault(name) in pages
        assert f'href="{name}.html"' in pages[routes.FAULTS].html
        assert page.title.split("&")[0] in pages[routes.fault(name)].title
    assert set(pages) == {routes.FAULTS, *map(routes.fault, CODES)}


def test_a_page_shows_reason_mend_and_both_examples() -> None:
    """The parts are headings of the page's own list of contents."""
    page = made(Book.of(demonstration()))[routes.fault("duplicate-title")]
    assert [heading.anchor for heading in page.contents] == [
        "wrong", "why", "mend", "fails", "passes"
    ]  # fmt: skip
    for heading in page.contents:
        assert f'id="{heading.anchor}"' in page.html
    assert "title: Air gap, Corrie 1.6" in page.html
    assert "specs/inductive-gap.yml" in page.html


def test_examples_are_shown_as_they_are_written() -> None:
    """What is YAML on the page is escaped, not read as a page."""
    page = made(Book.of(demonstration()))[routes.fault("merge-key")]
    assert "&lt;&lt;: {status: draft}" in page.html


def test_exceptions_are_listed_with_reason_role_and_day() -> None:
    """Who allowed what, where, why and when; the record and the check are a click away."""
    manual = patched("procedures/set-gap-1-6", ENTRY)
    html = made(Book.of(manual.kb))[routes.FAULTS].html
    assert "shoulder &amp; is turned home by hand" in html
    assert 'href="../procedures/set-gap-1-6.html"' in html
    assert 'href="torque-step-without-value.html"' in html
    assert "2026-09-21" in html
    assert 'href="../roles.html#people-workshop-lead"' in html


def test_a_value_is_linked_where_it_is_shown() -> None:
    """A value has no page of its own; its exception leads to the part's."""
    entry = ENTRY.replace("torque-step-without-value", "implausible-value")
    manual = patched("specs/hall-bolt-torque", entry)
    html = made(Book.of(manual.kb))[routes.FAULTS].html
    assert 'href="../components/crank-sensor-hall.html#value-hall-bolt-torque"' in html


def test_a_manual_without_exceptions_says_so() -> None:
    """An empty list is a statement too."""
    html = made(Book.of(demonstration()))[routes.FAULTS].html
    assert "every check holds for every record" in html
