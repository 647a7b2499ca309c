"""Cells of a hand-written table say which column they are in."""

from __future__ import annotations

from markdown import markdown

from generator.publish.tables import labelled

WRITTEN = """
| Test | *Held* & found |
|---|---|
| [One](one.html) | 5 V |
| Two | |
"""


def test_each_cell_names_its_column() -> None:
    """Headings lose their tags and keep their signs; an empty cell stays empty."""
    made = labelled(markdown(WRITTEN, extensions=["tables"]))
    assert '<td data-column="Test"><a href="one.html">One</a></td>' in made
    assert made.count('data-column="Held &amp; found"') == 2
    assert '<td data-column="Held &amp; found"></td>' in made
    assert "<th>Test</th>" in made


def test_a_page_without_tables_stays_as_it_is() -> None:
    """Nothing else of the page is touched."""
    page = "<p>No table, but <code>td</code>.</p>"
    assert labelled(page) == page
