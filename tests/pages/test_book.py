"""Links both ways, made by the generator and never typed."""

from __future__ import annotations

from generator.pages.book import Book
from generator.records.kinds.base import links_of
from tests.demo import demonstration


def test_every_link_comes_back() -> None:
    """Shows that wherever a record links to another, that one knows of it."""
    book = Book.of(demonstration())
    checked = 0
    for record in book.kb:
        for _path, kinds, id_ in links_of(record):
            for kind in kinds:
                target = book.kb.records.get(kind, {}).get(id_)
                if target is not None:
                    assert record in book.linked_from(target, record.kind)
                    checked += 1
    assert checked > 500


def test_links_are_walked_through_lists_and_parts() -> None:
    """Shows that a link deep in a test's outcome is found, at its path."""
    test = demonstration().records["tests"]["winding-resistance"]
    paths = {path: id_ for path, _kinds, id_ in links_of(test)}
    deep = [p for p, id_ in paths.items() if p[0] == "outcomes" and id_.startswith("replace-")]
    assert deep and all(p[-1] == "replacement" for p in deep)
