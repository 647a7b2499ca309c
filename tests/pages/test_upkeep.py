"""The page that tells the state of the manual."""

from __future__ import annotations

import re

from generator.pages import routes, upkeep
from generator.pages.page import Page
from tests.demo import changed, demonstration
from tests.pages.books import book_of, whole


def made() -> Page:
    """Give the page of the small manual."""
    return upkeep.planned(whole())[routes.UPKEEP]()


def test_the_picture_and_the_words_say_the_same_figures() -> None:
    """Each count stands in the drawing, in its description and in the table below it."""
    html = made().html
    drawing = html[html.index("<svg") : html.index("</svg>")]
    table = html[html.index("<table") : html.index("</table>")]
    described = drawing[drawing.index("<desc") : drawing.index("</desc>")]
    for count in ("9 of 15", "10 of 15", "2 of 15", "7 of 15", "8 of 12", "8 of 11", "0 of 34"):
        assert f">{count}</text>" in drawing
        assert f": {count}." in described
        assert f"<td>{count}</td>" in table


def test_the_page_carries_days_and_no_today() -> None:
    """Each group of reviews names its day for the browser; its mark waits for it, hidden."""
    html = made().html
    days = re.findall(r'data-due="([^"]+)" data-count="(\d+)"', html)
    assert sum(int(count) for _, count in days) == 176
    assert {day for day, _ in days} == {"2027-09-21", "2028-09-21"}
    assert html.count('<b class="overdue" hidden>') == len(days)


def test_lists_lead_to_the_records() -> None:
    """A part to its page, a value to its place on the part's page, each anchor made by routes."""
    html = made().html
    assert 'href="components/starter.html"' in html
    assert re.search(r'href="components/[a-z-]+\.html#value-crank-time"', html)
    for heading in made().contents:
        assert f'id="{heading.anchor}"' in html


def test_a_code_without_a_test_is_named_with_its_vehicle() -> None:
    """A mechanic with that vehicle would be left alone with the code."""
    kb = changed(demonstration(), "codes", "p0335", tests=["hall-pull-up"])
    html = upkeep.planned(book_of(kb))[routes.UPKEEP]().html
    assert "no test on Corrie 1.2" in html
    assert "4 of 5" in html
