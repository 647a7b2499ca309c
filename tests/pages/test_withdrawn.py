"""Withdrawn pages and drafts: what is left of the one, and where the other is to be seen."""

from __future__ import annotations

import datetime
import json
from functools import cache

from generator import site
from generator.pages import routes
from generator.records.kinds import Record
from generator.records.kinds.base import Withdrawal
from generator.records.knowledge_base import KnowledgeBase
from tests.demo import changed, demonstration, with_record

GONE = "replacements/replace-crank-sensor-hall.html"
REASON = Withdrawal(
    reason="The bolt & its torque were of another engine.", by="workshop-lead",
    date=datetime.date(2026, 10, 5),
)  # fmt: skip


def withdrawn(**fields: object) -> KnowledgeBase:
    """Give the small manual with one replacement withdrawn."""
    kb = changed(
        demonstration(), "replacements", "replace-crank-sensor-hall", status="withdrawn",
        withdrawn=REASON, **fields,
    )  # fmt: skip
    # What led to it leads elsewhere now, as a check would ask for.
    for test in kb.records["tests"].values():
        text = test.model_dump_json().replace(
            "replace-crank-sensor-hall", "replace-crank-sensor-inductive"
        )
        kb = with_record(kb, _named(type(test).model_validate_json(text), test.kind, test.id))
    for case in list(kb.records["cases"].values()):
        text = case.model_dump_json().replace(
            "replace-crank-sensor-hall", "replace-crank-sensor-inductive"
        )
        kb = with_record(kb, _named(type(case).model_validate_json(text), case.kind, case.id))
    return kb


def _named(record: Record, kind: str, id_: str) -> Record:
    record.named(kind, id_)
    return record


@cache
def made() -> site.Plan:
    """Plan the site of that manual."""
    return site.plan(withdrawn(replaced_by="replace-crank-sensor-inductive"), [])


def test_the_reason_and_the_successor_are_all_that_is_left() -> None:
    """No step, no caution, no value of it; its address stands, and so does its revision."""
    page = made().pages[GONE]()
    assert "The bolt &amp; its torque were of another engine." in page.html
    assert 'href="replace-crank-sensor-inductive.html"' in page.html
    assert "2026-10-05 by Workshop lead" in page.html
    for word in ('class="step', "signal", "hazard", "value", "torque wrench", "Released 20"):
        assert word not in page.html
    assert f'data-revision="{page.revision}"' in page.html
    assert page.record.startswith("kb_source/")


def test_no_page_and_no_search_leads_to_it() -> None:
    """Neither lists, its part and its tool nor the index have it; the audit knows no step of it."""
    for url in ("index.html", "replacements/index.html", "components/crank-sensor-hall.html",
                "tools-and-supplies.html", "sources.html", "state-of-the-manual.html"):  # fmt: skip
        assert "replace-crank-sensor-hall" not in made().pages[url]().html, url
    assert "replace-crank-sensor-hall" not in made().texts[routes.SEARCH]()
    assert "replace-crank-sensor-hall" not in made().texts[routes.AUDIT]()


def test_a_copy_taken_along_can_tell_that_it_was_withdrawn() -> None:
    """Its address stays, so its digest of cautions says so."""
    told = json.loads(made().texts[routes.CAUTIONS]())
    assert told[GONE] == "withdrawn"
    assert "withdrawn" not in {digest for address, digest in told.items() if address != GONE}


def test_without_a_successor_the_page_says_so() -> None:
    """A reader need not look for one."""
    pages = site.plan(withdrawn(), []).pages
    assert "Nothing replaces it." in pages[GONE]().html


def drafts() -> KnowledgeBase:
    """Give the small manual with a test, a value, a term and a tool as drafts."""
    kb = demonstration()
    for kind, id_ in (("tests", "pickup-wave-on-scope"), ("specs", "inductive-winding"),
                      ("terms", "air-gap"), ("tools", "oscilloscope")):  # fmt: skip
        kb = changed(kb, kind, id_, status="draft")
    return kb


def test_a_preview_marks_drafts_and_every_page() -> None:
    """The page itself, the value, the entries of lists, and links to them."""
    pages = site.plan(drafts(), [], preview=True).pages
    test = pages["tests/pickup-wave-on-scope.html"]().html
    assert test.index("Do not work from it") < test.index("<h1>")
    part = pages["components/crank-sensor-inductive.html"]().html
    assert part.count('<b class="draft-mark">Draft</b>') == 1
    assert "Do not work from it" not in part and "Preview with drafts" in part
    link = part.index('href="../tests/pickup-wave-on-scope.html"')
    assert '<span class="aside">Draft.</span>' in part[link : part.index("</li>", link)]
    assert "Air gap (Draft)" in pages["terms.html"]().html
    assert "(Draft)" in pages["tools-and-supplies.html"]().html
    assert "Preview with drafts" in pages["index.html"]().html


def test_nothing_published_is_marked_or_a_draft() -> None:
    """The drafts have no address, and no page speaks of a preview."""
    kb = changed(demonstration(), "symptoms", "long-cranking", status="draft")
    planned = site.plan(kb, [])
    assert "symptoms/long-cranking.html" not in planned.pages
    home = planned.pages["index.html"]().html
    assert "long-cranking" not in home and "Preview" not in home and "draft" not in home.lower()
    assert "symptoms/long-cranking.html" in site.plan(kb, [], preview=True).pages
