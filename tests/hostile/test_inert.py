"""Whatever a record says is text: no page gets an element, an attribute or an address from it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from functools import cache
from html.parser import HTMLParser

import pytest

from generator import site
from generator.pages.page import Page
from generator.pages.prose import ALLOWED_TAGS
from tests.demo import demonstration
from tests.hostile.saturated import fields, saturated
from tests.hostile.texts import MARK, TEXTS

Shape = tuple[str, frozenset[str]]


class Reader(HTMLParser):
    """Notes each kind of element, and each address, that a page has."""

    def __init__(self) -> None:
        super().__init__()
        self.shapes: set[Shape] = set()
        self.addresses: set[str] = set()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Look at one element; data for programs is no script, whatever its element is called."""
        kind = f"{tag} of {dict(attrs).get('type')}" if tag == "script" else tag
        self.shapes.add((kind, frozenset(name for name, _ in attrs)))
        for name, value in attrs:
            if name in ("href", "src", "action", "xlink:href", "srcset", "poster", "data"):
                self.addresses.add(value or "")

    handle_startendtag = handle_starttag


def read(pages: Iterable[Page]) -> Reader:
    """Give what the pages have between them."""
    reader = Reader()
    for page in pages:
        reader.feed(page.html)
        reader.close()
        reader.reset()
    return reader


def names_of(reader: Reader) -> set[str]:
    """Give the elements, and the attributes behind an @."""
    tags = {tag for tag, _ in reader.shapes}
    return tags | {f"@{name}" for _, names in reader.shapes for name in names}


@cache
def clean() -> site.Site:
    """Give the manual as it is."""
    return site.make(demonstration(), [])


@cache
def usual() -> set[str]:
    """Give what the manual has as it is, and what prose may have.

    A figure declares xlink as soon as the word stands in it, even in a text.
    """
    return names_of(read(clean().pages)) | ALLOWED_TAGS | {"@xmlns:xlink"}


def faults_of(pages: Iterable[Page]) -> list[str]:
    """Give what the pages have that no record may give them."""
    found = read(pages)
    return sorted(names_of(found) - usual()) + sorted(
        address for address in found.addresses
        if MARK in address and ":" in address.partition(MARK)[0].removeprefix("mailto:")
    )  # fmt: skip


def check(turn: int) -> None:
    """Make all pages of a saturated manual, and look at them."""
    made = site.make(saturated(turn), [])
    assert sum(MARK in page.html for page in made.pages) > 60
    assert faults_of(made.pages) == [], f"turn {turn}"


def test_every_kind_has_its_fields_saturated() -> None:
    """No kind is left out, and there are as many texts as were asked for."""
    found = fields()
    assert len(found) == 16 and all("title" in names for names in found.values())
    assert sum(map(len, found.values())) > 80
    assert len(set(TEXTS)) == len(TEXTS) >= 150 and all(MARK in text for text in TEXTS)


def test_texts_of_a_record_are_text_everywhere() -> None:
    """In one turn every text is in some field of some kind, and no page has an element for it."""
    check(0)


@pytest.mark.soak
@pytest.mark.parametrize("turn", range(1, len(TEXTS)))
def test_every_text_in_every_field(turn: int) -> None:
    """Over all turns every field of every record gets every text."""
    check(turn)


@pytest.mark.parametrize(
    "leak", ["<script>x</script>", "<b onclick=x>y</b>", f"<a href='javascript:{MARK}'>x</a>"]
)
def test_a_leak_is_noticed(leak: str) -> None:
    """An element, an attribute or an address that gets through is a fault."""
    page = clean().pages[1]
    assert faults_of([page]) == []
    assert faults_of([replace(page, html=page.html + leak)]) != []
