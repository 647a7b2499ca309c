"""Plain words: one meaning, or refused by name."""

from __future__ import annotations

import datetime

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from generator.records.scalars import Refused, plain, shorten

# What YAML 1.1 (type repository at yaml.org, from memory) makes of a word, against what YAML 1.2
# (core schema, section 10.3.2, from memory) makes of it; each of these pairs differs.
DISAGREE = [
    ("010", "leading-zero"),  # 8 against 10
    ("00.5", "leading-zero"),
    ("08", "leading-zero"),  # text against 8
    ("0o10", "number-base"),  # text against 8
    ("0x1F", "number-base"),
    ("-0x1f", "number-base"),
    ("0b101", "number-base"),  # 5 against text
    ("1:30", "sexagesimal"),  # 90 against text
    ("-1:30:00", "sexagesimal"),
    ("190:20:30.15", "sexagesimal"),
    ("1_000", "loose-number"),  # 1000 against text
    ("685_230.15", "loose-number"),
    ("+12", "loose-number"),
    (".5", "loose-number"),
    ("5.", "loose-number"),
    ("-0", "loose-number"),
    ("1e3", "exponent"),  # text against 1000.0
    ("1.5E+3", "exponent"),
    (".5e-2", "exponent"),
    ("yes", "truth-word"),
    ("No", "truth-word"),
    ("ON", "truth-word"),
    ("off", "truth-word"),
    ("True", "truth-word"),
    ("FALSE", "truth-word"),
    (".nan", "not-a-number"),
    (".NaN", "not-a-number"),
    ("-.INF", "not-a-number"),
    ("Infinity", "not-a-number"),
    ("~", "empty-value"),
    ("null", "empty-value"),
    ("NULL", "empty-value"),
    ("", "empty-value"),
    ("9007199254740993", "long-number"),  # 2**53 + 1: no double holds it
    ("0.1234567890123456", "long-number"),
    ("2026-02-30", "no-such-date"),
    ("2026-00-10", "no-such-date"),
    ("0000-01-01", "no-such-date"),
]


@pytest.mark.parametrize(("word", "code"), DISAGREE)
def test_words_on_which_readers_disagree_are_refused(word: str, code: str) -> None:
    """A word that two readers of YAML take differently is refused by name, with a mend."""
    meant = plain(word)
    assert isinstance(meant, Refused)
    assert meant.code.name == code
    assert meant.message and meant.hint


@pytest.mark.parametrize(
    ("word", "value"),
    [
        ("0", 0), ("-12", -12), ("0.5", 0.5), ("-10.50", -10.5), ("true", True), ("false", False),
        ("2026-10-05", datetime.date(2026, 10, 5)), ("123456789012345", 123456789012345),
        ("12 V", "12 V"), ("P0335", "P0335"), ("y", "y"), ("n", "n"), ("Nothing", "Nothing"),
        ("-", "-"), (".", "."), ("1-2", "1-2"), ("2026-1-5", "2026-1-5"), ("1.2.3", "1.2.3"),
        ("e5", "e5"), ("0.5 mm", "0.5 mm"), ("12:75", "12:75"), ("٣", "٣"), ("1²", "1²"),
    ],
)  # fmt: skip
def test_other_words_have_one_meaning(word: str, value: object) -> None:
    """Whole numbers, decimals, truths, dates and texts come out as what they are."""
    meant = plain(word)
    assert meant == value and type(meant) is type(value)


@given(st.text(alphabet="0123456789+-.:_eExob ", max_size=12))
def test_numbers_agree_with_an_ordinary_reader(word: str) -> None:
    """What is taken for a number is the number that PyYAML's constructor makes of it."""
    meant = plain(word)
    if isinstance(meant, (int, float)):
        assert yaml.safe_load(word) == meant


@given(st.text(max_size=30))
def test_any_word_has_an_answer(word: str) -> None:
    """No word is beyond reading, and a text stays letter for letter."""
    meant = plain(word)
    if isinstance(meant, str):
        assert meant == word


@given(st.text())
def test_shortened_text_fits_a_message(text: str) -> None:
    """A shortened text has one line of forty characters at most."""
    short = shorten(text)
    assert len(short) <= 40 and len(short.splitlines()) <= 1
