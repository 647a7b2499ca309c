"""Findings at a terminal: the mark stands under the fault, and nothing in a file can act."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.problems import Code, Severity, Span, as_text, elsewhere, problem
from generator.problems.finding import Problem
from generator.problems.text import WIDTH, visible, width_of, window

FAULT = Code("some-fault", Severity.ERROR, "It matters.")
ESCAPE = re.compile(r"\x1b\[[0-9;]*m")


def at(span: Span, path: str = "kb_source/terms/a.yml") -> Problem:
    """Give a finding at a place."""
    return problem(FAULT, path, span, "something is wrong", "mend it")


def test_block() -> None:
    """A finding has its place, severity, code, message, line, mark, reason and mend."""
    found = at(Span(2, 8, 2, 12))
    assert as_text([found], {found.path: "title: a\nmeans: gaps\n"}, colour=False) == (
        "kb_source/terms/a.yml:2:8: error some-fault: something is wrong\n"
        "    2 | means: gaps\n"
        "      |        ^^^^\n"
        "  why:  It matters.\n"
        "  hint: mend it"
    )


def test_blocks_are_apart() -> None:
    """Two findings have one blank line between, none has no text."""
    text = as_text([at(Span()), at(Span(3, 1, 3, 2))], {}, colour=False)
    assert text.count("\n\n") == 1 and not text.endswith("\n")
    assert as_text([], {}, colour=False) == ""


def test_whole_file_has_no_excerpt() -> None:
    """A finding about a file as a whole, or in a file whose text is not there, shows no line."""
    whole = at(Span())
    assert "|" not in as_text([whole], {whole.path: "title: a\n"}, colour=False)
    assert "|" not in as_text([at(Span(2, 1, 2, 2))], {}, colour=False)
    assert "|" not in as_text([at(Span(9, 1, 9, 2))], {whole.path: "title: a\n"}, colour=False)


def test_second_place() -> None:
    """A second place that helps is shown with what stands there."""
    found = replace(at(Span(2, 1, 2, 2)), second=elsewhere("b.yml", Span(4, 2, 4, 3), "first here"))
    assert "see:  b.yml:4:2: first here" in as_text([found], {}, colour=False)


def test_colour_changes_nothing_else() -> None:
    """Without its colour the coloured text is the plain one; the plain one has no escape."""
    found = [at(Span(1, 1, 1, 3)), at(Span())]
    sources = {found[0].path: "title: \x1b[31mred\n"}
    plain, coloured = as_text(found, sources, False), as_text(found, sources, True)
    assert coloured != plain and ESCAPE.sub("", coloured) == plain
    assert "\x1b" not in plain


def test_severities_have_their_own_colour() -> None:
    """An error and a warning differ in colour as well as in word."""
    error = at(Span())
    warning = replace(error, severity=Severity.WARNING)
    first, second = (as_text([one], {}, True).split("some-fault")[0] for one in (error, warning))
    assert "error" in first and "warning" in second
    assert ESCAPE.findall(first) != ESCAPE.findall(second)


@pytest.mark.parametrize(
    ("raw", "span", "shown", "mark"),
    [
        ("a: 010", Span(1, 4, 1, 7), "a: 010", "   ^^^"),
        ("a:\t010", Span(1, 4, 1, 7), "a:→010", "   ^^^"),
        ("a: 電池 010", Span(1, 7, 1, 10), "a: 電池 010", "        ^^^"),
        ("a: 電池", Span(1, 4, 1, 6), "a: 電池", "   ^^^^"),
        ("a: e\u0301 010", Span(1, 7, 1, 10), "a: e\u0301 010", "     ^^^"),
        ("a: \U0001f50b 1", Span(1, 6, 1, 7), "a: \U0001f50b 1", "      ^"),
        ("a: \x1b[31m", Span(1, 4, 1, 5), "a: ␛[31m", "   ^"),
        ("a: \u202eb", Span(1, 4, 1, 5), "a: \ufffdb", "   ^"),
        ("a: \x7f\x85", Span(1, 4, 1, 6), "a: ␡\ufffd", "   ^^"),
        ("a:\u00a0b", Span(1, 3, 1, 4), "a:␣b", "  ^"),
        ("a: b", Span(1, 5, 1, 5), "a: b", "    ^"),  # just behind the line
        ("a: b", Span(1, 2, 1, 2), "a: b", " ^"),  # of no length
        ("a: b  ", Span(1, 4, 3, 2), "a: b  ", "   ^"),  # goes on in further lines
        ("", Span(1, 1, 1, 1), "", "^"),
        ("a", Span(1, 9, 1, 12), "a", " ^"),  # a place that is not there
    ],
)
def test_mark_stands_under_the_fault(raw: str, span: Span, shown: str, mark: str) -> None:
    """Marks count the columns that characters take, not the characters."""
    assert window(raw, span) == (shown, mark)


def test_long_line_is_windowed() -> None:
    """Of a long line the part around the fault is shown, with a sign where some was left out."""
    raw = "a: " + "x" * 500 + " 010 " + "y" * 500
    shown, mark = window(raw, Span(1, 505, 1, 508))
    assert shown.startswith("…") and shown.endswith("…")
    assert width_of(shown) <= WIDTH
    assert shown[mark.index("^") : mark.rindex("^") + 1] == "010"


def test_fault_longer_than_the_window() -> None:
    """A stretch longer than the window is marked as far as it is shown."""
    shown, mark = window("a: " + "x" * 500, Span(1, 4, 1, 504))
    assert width_of(shown) <= WIDTH and width_of(mark) <= WIDTH
    assert mark.strip("^ ") == ""


@given(st.text(max_size=300), st.integers(1, 320), st.integers(0, 320))
def test_any_line_can_be_shown(raw: str, column: int, length: int) -> None:
    """Whatever the line and the place: one printable line that fits, and at least one mark."""
    line = raw.replace("\n", " ")
    shown, mark = window(line, Span(1, column, 1, column + length))
    assert all(character.isprintable() for character in shown)
    assert width_of(shown) <= WIDTH + 1
    assert mark.strip(" ").strip("^") == "" and "^" in mark
    assert width_of(mark) <= width_of(shown) + 1


@given(st.text())
def test_visible_text_keeps_its_length(text: str) -> None:
    """Each character is shown by one character, and none of them acts on the terminal."""
    shown = visible(text)
    assert len(shown) == len(text)
    assert all(character.isprintable() for character in shown)


def test_names_and_words_cannot_act() -> None:
    """Control characters in a path, a message or a hint are made visible too."""
    found = problem(FAULT, "a\x1b[2Jb.yml", Span(), "say \x07 this", "do \u202e that")
    text = as_text([found], {}, colour=False)
    assert all(character.isprintable() or character == "\n" for character in text)
