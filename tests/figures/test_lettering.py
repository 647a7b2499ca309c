"""Widths are never guessed too small, and breaking a text loses nothing."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.figures.lettering import text_width, wrapped
from tests.figures.reading import measured_width

LETTERS = [chr(code) for code in range(0x20, 0x7F)] + list("°±×÷µΩ−–—…≤≥²³äöüßéèñçÄÖÜ→€")
WORDS = st.lists(st.text(st.characters(codec="utf-8", exclude_categories=("Z", "C")), min_size=1))


@pytest.mark.parametrize("bold", [False, True], ids=["normal", "bold"])
@pytest.mark.parametrize("letter", LETTERS)
def test_no_letter_is_wider_than_thought(letter: str, bold: bool) -> None:
    """Each letter fits its estimate in DejaVu Sans, by the plotting library's font engine."""
    assert text_width(letter * 10, 12, bold) >= measured_width(letter * 10, 12, bold) * 0.995


@pytest.mark.parametrize(
    "text",
    ["temperature of the sensor, °C", "2 teeth missing: one long high", "RD/BU 0.75 mm²"],
)
def test_estimate_is_not_wasteful(text: str) -> None:
    """Whole texts are at most a fifth narrower than thought."""
    assert text_width(text) <= 1.2 * measured_width(text, 12, False)


def test_width_grows_with_size() -> None:
    """Twice the type is twice as wide."""
    assert text_width("F14, 10 A", 24) == pytest.approx(2 * text_width("F14, 10 A", 12))


def test_wide_and_combining_letters() -> None:
    """An ideograph takes an em, a combining accent no room of its own (Unicode annex 11)."""
    assert text_width("温", 12) >= 12
    assert text_width("e\u0301", 12) == text_width("e", 12)


@given(WORDS, st.floats(20, 400))
def test_nothing_is_lost(words: list[str], room: float) -> None:
    """All letters come out in their order, whatever the room."""
    assert "".join(wrapped(" ".join(words), room)).replace(" ", "").replace(
        "\u00a0", ""
    ) == "".join(words)


@given(st.text("abcdefgh .WM", max_size=60), st.floats(20, 400))
def test_lines_fit(text: str, room: float) -> None:
    """No line is wider than its room."""
    assert all(text_width(line) <= room for line in wrapped(text, room))


def test_figure_and_unit_stay_together() -> None:
    """A figure never stands at the end of a line with its unit on the next."""
    room = text_width("high: 4.5")
    assert wrapped("high: 4.5 V or more", room) == ["high:", "4.5\u00a0V or", "more"]


def test_written_no_break_space_holds() -> None:
    """A no-break space that the caller wrote does not break."""
    room = text_width("connector C21")
    assert wrapped("connector C21\u00a0left", room) == ["connector", "C21\u00a0left"]


def test_empty_text_has_no_lines() -> None:
    """White space alone takes no line."""
    assert wrapped(" \n\t ", 100) == []
