"""The whole site: refused while an error stands, and the same whenever it is made."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from generator import site
from generator.problems import Code, Severity, Span, problem
from tests.demo import changed, demonstration, without

TEST_FAULT = Code("a-fault-of-this-test", Severity.ERROR, "It is only here to stand in the way.")


def test_no_page_while_an_error_stands() -> None:
    """Shows that one error is enough."""
    error = problem(TEST_FAULT, "kb_source/x.yml", Span(), "wrong", "mend it")
    with pytest.raises(site.ErrorsStand):
        site.make(demonstration(), [error])


def test_every_paged_record_has_its_page_and_no_address_twice() -> None:
    """Shows one page for each record that has one, home first."""
    made = site.make(demonstration(), [])
    addresses = [page.url for page in made.pages]
    assert addresses[0] == "index.html"
    assert len(addresses) == len(set(addresses))
    for kind in ("symptoms", "tests", "replacements", "components", "codes", "vehicles"):
        for id_ in demonstration().records[kind]:
            assert f"{kind}/{id_}.html" in addresses


def test_the_same_records_give_the_same_pages() -> None:
    """Shows that nothing of the day or of an order of sets gets into a page."""
    assert site.make(demonstration(), []) == site.make(demonstration(), [])


def test_a_revision_changes_with_what_a_page_shows_and_only_then() -> None:
    """Shows that an edit touches the pages that show it."""
    before = {p.url: p.revision for p in site.make(demonstration(), []).pages}
    edited = changed(demonstration(), "tests", "recent-work", title="Ask what was done of late")
    after = {p.url: p.revision for p in site.make(edited, []).pages}
    assert before["tests/recent-work.html"] != after["tests/recent-work.html"]
    assert before["tests/winding-resistance.html"] == after["tests/winding-resistance.html"]


def test_what_is_not_released_has_no_page() -> None:
    """Shows that a draft that nothing leans on stays out of the site."""
    kb = without(demonstration(), "terms", "inductive-pickup")
    draft = changed(demonstration(), "terms", next(iter(kb.records["terms"])), status="draft")
    title = re.escape(draft.records["terms"][next(iter(kb.records["terms"]))].title)
    page = next(p for p in site.make(draft, []).pages if p.url == "terms.html")
    assert not re.search(rf"<h3>{title}", page.html)


def test_a_record_that_could_not_be_read_is_one_finding() -> None:
    """Shows that links to a record that exists but is broken add nothing."""
    broken = without(demonstration(), "specs", "inductive-winding")
    one = problem(TEST_FAULT, "kb_source/specs/inductive-winding.yml", Span(), "wrong", "mend it",
                  "specs/inductive-winding")  # fmt: skip
    assert site.check(broken, [one]) == [one]
    assert {p.code for p in site.check(replace(broken), [])} == {"dangling-link"}


def test_every_page_says_what_wins_over_it() -> None:
    """Shows that each page defers to local codes, the maker's data and licensed practice."""
    for page in site.make(demonstration(), []).pages:
        assert "licensed practice win" in page.html
        assert "invented" in page.html
