"""Addresses: every link works at a root, under a path and from a folder."""

from __future__ import annotations

from posixpath import join, normpath

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.pages import routes

segment = st.from_regex(r"[a-z0-9]{1,5}(-[a-z0-9]{1,5})?", fullmatch=True)
pages = st.lists(segment, min_size=1, max_size=3).map(lambda parts: "/".join(parts) + ".html")


@given(pages, pages)
def test_a_relative_link_resolves_to_its_target(here: str, there: str) -> None:
    """Shows that following a link from a page leads to the page it names, by the URL rules."""
    link = routes.relative(here, there)
    folder = here.rpartition("/")[0]
    assert normpath(join(folder, link)) == there


@pytest.mark.parametrize(
    ("here", "target", "link"),
    [
        ("tests/a.html", "tests/b.html", "b.html"),
        ("tests/a.html", "index.html", "../index.html"),
        ("index.html", "tests/a.html#step-1", "tests/a.html#step-1"),
        ("tests/a.html", "tests/a.html#steps", "#steps"),
        ("tests/a.html", "#steps", "#steps"),
        ("tests/index.html", "codes/index.html", "../codes/index.html"),
    ],
)
def test_links_by_example(here: str, target: str, link: str) -> None:
    """Shows the shapes of links, anchors included."""
    assert routes.relative(here, target) == link


def test_a_kind_without_a_page_is_refused() -> None:
    """Shows that nobody can link to a page that is never made."""
    with pytest.raises(KeyError):
        routes.page_of("specs", "winding")
