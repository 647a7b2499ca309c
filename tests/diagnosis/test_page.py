"""The complaint's page shows the order, why each test stands where it stands, and the others."""

from __future__ import annotations

import re

import pytest

from generator.pages import cases, symptom
from generator.pages.book import Book
from generator.pages.page import Page
from generator.records.kinds.knowledge import Symptom
from tests.demo import changed, demonstration, without


@pytest.fixture(scope="module")
def book() -> Book:
    """Give the demonstration, worked out once."""
    return Book.of(demonstration().released())


def page(book: Book, id_: str) -> Page:
    """Give one complaint's page."""
    return next(each for each in symptom.pages(book) if each.url == f"symptoms/{id_}.html")


@pytest.mark.parametrize("vehicle", ["corrie-1-2", "corrie-1-6"])
def test_the_page_lists_the_computed_order(book: Book, vehicle: str) -> None:
    """Every test of the order is on the page in its place, with its doubt left."""
    html = page(book, "cuts-out-hot").html
    part = re.split('class="vehicle-order"|id="when"', html.split(f'id="on-{vehicle}"')[1])[0]
    place = r'<li><span class="place"[^>]*>\d+</span> <a href="[^"]*/([^"/]+)\.html'
    linked = re.findall(place, part)
    order = book.orders["cuts-out-hot"][vehicle]
    assert linked == [place.test.id for place in order.places]
    assert part.count("% of the doubt is left after it") == len(order.places)
    assert f"{order.minutes:.0f} min" in part
    for minutes in order.naive.values():
        assert f"{minutes:.0f} min ({round(minutes) - round(order.minutes)} min more)" in part


def test_the_page_says_what_is_left_set_up(book: Book) -> None:
    """A test that takes over the lift says so and what it saves."""
    html = page(book, "cuts-out-hot").html
    assert re.search(r"skip the steps that set it up: [^<]*on the lift[^<]*; \d+ min saved", html)


def test_each_vehicle_has_its_own_first_looks() -> None:
    """A look that a vehicle lacks is not on its list; vehicles that share a list share it once."""
    kb = changed(demonstration(), "tests", "battery-rest", applies_to=["corrie-1-2"])
    html = page(Book.of(kb.released()), "cuts-out-hot").html
    part = html.split('id="opening"')[1].split('class="vehicle-order"')[0]
    one, other = part.split('<div data-for="')[1:]
    assert one.startswith('corrie-1-2"') and ">For Corrie 1.2<" in one
    assert other.startswith('corrie-1-6"') and ">For Corrie 1.6<" in other
    assert "battery-rest.html" in one and "battery-rest.html" not in other
    assert 'start="7"' in html and 'start="6"' in html
    alike = page(Book.of(demonstration().released()), "cuts-out-hot").html
    assert alike.count('class="order opening"') == 1


def test_solved_cases_are_on_both_pages(book: Book) -> None:
    """A case is linked from its complaint, told on its own page, and shown in the weight."""
    html = page(book, "cuts-out-hot").html
    assert 'href="../solved-cases.html#cases-hall-quits-on-the-hill"' in html
    assert "Corrie 1.6: 1 solved of it, which makes the weight" in html
    (told,) = cases.pages(book)
    assert 'id="cases-hall-quits-on-the-hill"' in told.html
    assert "Flat high when hot, supply and ground steady" in told.html
    assert "It stayed away, and counts." in told.html
    assert "Too early to say; it does not count yet." in told.html


def test_a_manual_without_cases_has_no_page_of_them() -> None:
    """Nothing is shown where nothing was recorded."""
    kb = demonstration().released()
    for id_ in list(kb.records["cases"]):
        kb = without(kb, "cases", id_)
    empty = Book.of(kb)
    assert cases.pages(empty) == []
    assert all('id="cases"' not in each.html for each in symptom.pages(empty))
    assert len(symptom.pages(empty)) == len(kb.all("symptoms", Symptom))
