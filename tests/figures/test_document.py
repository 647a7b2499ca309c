"""The outside of a figure."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.figures.document import (
    Words,
    checked_id,
    document,
    escaped,
    finite,
    hatch,
    legal,
    number,
)
from tests.figures.reading import elements, parsed

WORDS = Words(title="t", desc="d")


@given(st.text(st.characters(codec="utf-8", exclude_characters="\r")))
def test_any_words_come_back(text: str) -> None:
    """Whatever the words, an XML parser reads them back, with illegal characters replaced."""
    root = parsed(document("f", "kind", Words(title=text, desc=text), 10, ""))
    assert root[0].text == root[1].text == (legal(text) or None)


@given(st.text(st.characters(codec="utf-8", exclude_characters="\r\n\t")))
def test_any_words_fit_an_attribute(text: str) -> None:
    """Escaped words may stand between double quotes."""
    assert parsed(f'<a b="{escaped(text)}"/>').attrib["b"] == legal(text)


@pytest.mark.parametrize("letter", ["\x00", "\x08", "\x1f", "\ud800", "\ufffe", "\uffff"])
def test_illegal_characters(letter: str) -> None:
    """Characters outside production 2 of XML 1.0 are replaced by U+FFFD."""
    assert legal(f"a{letter}b") == "a\ufffdb"


@pytest.mark.parametrize(
    ("value", "shown"),
    [(0.0, "0"), (-0.0, "0"), (-0.001, "0"), (1.0, "1"), (1.005, "1"), (100.0, "100"),
     (-2.5, "-2.5"), (1 / 3, "0.33"), (12345.678, "12345.68")],
)  # fmt: skip
def test_number(value: float, shown: str) -> None:
    """Two decimals at most, no needless noughts, no minus nought (arithmetic)."""
    assert number(value) == shown


@pytest.mark.parametrize("value", [float("nan"), float("inf"), -float("inf")])
def test_number_must_be_finite(value: float) -> None:
    """A coordinate that is no number stops the figure."""
    with pytest.raises(ValueError, match="cannot show"):
        number(value)
    with pytest.raises(ValueError, match=r"low: .* is not a finite number"):
        finite("low", 1.0, value)


@pytest.mark.parametrize("figure_id", ["", "A", "1a", "a b", 'a"', "a_b", "a\n", "ä", "a)"])
def test_ids_that_cannot_be(figure_id: str) -> None:
    """An id that would break a reference is refused."""
    with pytest.raises(ValueError, match="figure id"):
        checked_id(figure_id)
    with pytest.raises(ValueError, match="figure id"):
        document(figure_id, "kind", WORDS, 10, "")


def test_hatching_is_defined_where_used() -> None:
    """The pattern is there once if something is hatched, and not at all if nothing is."""
    bare = parsed(document("f", "kind", WORDS, 10, ""))
    hatched = parsed(document("f", "kind", WORDS, 10, f'<path d="M0 0" fill="{hatch("f")}"/>'))
    assert not elements(bare, "pattern")
    assert [each.attrib["id"] for each in elements(hatched, "pattern")] == ["f-hatch"]


def test_link_namespace_is_declared_where_used() -> None:
    """A link inside a figure has its namespace; a figure without links does without."""
    plain = document("f", "kind", WORDS, 10, "")
    linked = document("f", "kind", WORDS, 10, '<path id="f-1"/><use xlink:href="#f-1"/>')
    assert "xlink" not in plain
    assert elements(parsed(linked), "use")
