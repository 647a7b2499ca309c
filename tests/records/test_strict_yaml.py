"""Strict reading: plain data out, true places, nothing hostile gets through."""

from __future__ import annotations

import datetime
import time
from pathlib import Path
from typing import Any

import pytest
import yaml
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from generator.problems import Span
from generator.records.strict_yaml import FAULTY, MOST_FOUND, PURE_PARSER, read
from tests.demonstration import SMALL_RECORDS

MANUAL = SMALL_RECORDS
PARSERS = [pytest.param(yaml.SafeLoader, id="pure")]
if hasattr(yaml, "CSafeLoader"):
    PARSERS.append(pytest.param(yaml.CSafeLoader, id="c"))
BOUND_S = 15.0
"""Generous for a slow machine; what it guards against takes minutes or never ends."""

GOOD = """\
# a comment
title: "Ω and 電池" # and another
empty_text: ''
number: -12
decimal: 0.50
truth: true
day: 2026-10-05
text: 860 ohm ± 10 %
list: [a, 1, [b, {c: d}]]
block:
  - x: |
      Two lines
      of text.

    y: >-
      folded
      text
  - z
"""


def codes(source: str, parser: Any = None) -> list[str]:
    """Give the codes found in a text."""
    return [found.code for found in read(source.encode(), "x.yml", parser).problems]


@pytest.mark.parametrize("parser", PARSERS)
def test_data(parser: Any) -> None:
    """Each plain word gets the one meaning that all readers share, and quotes make text."""
    reading = read(GOOD.encode(), "x.yml", parser)
    assert reading.problems == []
    assert reading.data == {
        "title": "Ω and 電池",
        "empty_text": "",
        "number": -12,
        "decimal": 0.5,
        "truth": True,
        "day": datetime.date(2026, 10, 5),
        "text": "860 ohm ± 10 %",
        "list": ["a", 1, ["b", {"c": "d"}]],
        "block": [{"x": "Two lines\nof text.\n", "y": "folded text"}, "z"],
    }


@pytest.mark.parametrize("parser", PARSERS)
def test_places(parser: Any) -> None:
    """Keys and values are found where an editor shows them: characters from 1, end exclusive."""
    places = read(GOOD.encode(), "x.yml", parser).places
    assert places[("title",)].key == Span(2, 1, 2, 6)
    assert places[("title",)].value == Span(2, 8, 2, 18)
    assert places[("list", 2, 1, "c")].key == Span(9, 19, 9, 20)
    assert places[("list",)].value == Span(9, 7, 9, 26)
    assert places[("block", 0, "x")].value == Span(11, 8, 13, 15)
    assert places[("block", 0, "y")].value == Span(15, 8, 17, 11)
    assert places[("block", 0)].key is None
    assert places[("block", 0)].value == Span(11, 5, 17, 11)
    assert places[("block", 1)].value == Span(18, 5, 18, 6)
    assert places[()].value == Span(2, 1, 18, 6)


@pytest.mark.parametrize("parser", PARSERS)
def test_places_count_characters(parser: Any) -> None:
    """A letter of two, three or four bytes, or a combining mark, is one column a character."""
    source = 'a: ["é電\U0001f50be\u0301", 010]\n'
    (found,) = read(source.encode(), "x.yml", parser).problems
    assert (found.line, found.column, found.end_column) == (1, 14, 17)


@pytest.mark.parametrize("ending", ["\n", "\r\n"])
def test_line_endings(ending: str) -> None:
    """Both line endings give the same data and the same places."""
    reading = read(GOOD.replace("\n", ending).encode(), "x.yml")
    assert reading == read(GOOD.encode(), "x.yml")


def records() -> list[Path]:
    """Give the small manual's records."""
    return sorted(MANUAL.rglob("*.yml"))


def test_agrees_with_an_ordinary_reader() -> None:
    """Records without a trick mean the same to PyYAML's own constructor."""
    assert len(records()) > 100
    for path in records():
        reading = read(path.read_bytes(), str(path))
        if not reading.problems:
            assert reading.data == yaml.safe_load(path.read_bytes()), path


def test_every_place_of_the_manual_cuts_out_its_value() -> None:
    """Cut out of the file, each single value is read by PyYAML as what stands in the data."""
    seen = 0
    for path in records():
        reading = read(path.read_bytes(), str(path))
        lines = reading.text.split("\n")
        for way, place in reading.places.items():
            value: Any = reading.data
            for step in way:
                value = value[step]
            if isinstance(value, (dict, list)) or value is FAULTY or place.value is place.key:
                continue
            span = place.value
            cut = lines[span.line - 1 : span.end_line]
            cut[-1] = cut[-1][: span.end_column - 1]
            cut[0] = cut[0][span.column - 1 :]
            again = yaml.safe_load("\n".join(cut))
            assert str(again).strip() == str(value).strip(), (path, way)
            seen += 1
    assert seen > 2000


@pytest.mark.parametrize("parser", PARSERS)
def test_parsers_agree_on_the_manual(parser: Any) -> None:
    """Every record of the manual reads the same, whichever parser is there."""
    for path in records():
        source = path.read_bytes()
        assert read(source, "x", parser) == read(source, "x", PURE_PARSER)


def test_duplicate_names_the_first() -> None:
    """A duplicate says where the first one is, and the first one's value is kept."""
    reading = read(b"a: 1\nb: 2\na: 3\n", "x.yml")
    assert reading.data == {"a": 1, "b": 2}
    assert "line 1" in reading.problems[0].message


def test_refused_values_leave_a_mark() -> None:
    """What was refused stands as refused in the data, so that nobody takes it for missing."""
    data = read(b"a: 010\nb: *x\nc:\nd: [yes, no]\n", "x.yml").data
    assert data == {"a": FAULTY, "b": FAULTY, "c": FAULTY, "d": [FAULTY, FAULTY]}


def test_quotes_make_anything_text() -> None:
    """In quotes each refused word is text."""
    words = ["010", "0x1F", "1:30", "yes", "1e3", ".nan", "~", "1_000", "2026-02-30", "<<"]
    source = "\n".join(f"- '{word}'\n- \"{word}\"" for word in words)
    data = read(f"a:\n{source}".encode(), "x.yml").data
    assert data == {"a": [word for word in words for _ in range(2)]}


def test_near_misses_are_text() -> None:
    """Words that only look like a trick are left alone."""
    for word in ["5W-30", "12 V", "1:30 h", "10 to 20", "yes please", "not", "on-off", "1e",
                 "P0335", "0335 and on", "a: b".replace(":", ";"), "5.5.5", "1-2", "e3", "-",
                 "12:75", "2026-10", "information", "nancy", "no.", "3/8", "Off-side"]:  # fmt: skip
        reading = read(f"a: {word}\n".encode(), "x.yml") if word != "-" else None
        if reading is not None:
            assert reading.problems == [] and reading.data == {"a": word}, word


def test_syntax_error_keeps_what_was_found_before() -> None:
    """Faults before the place where the parser gives up are reported with it."""
    assert codes("a: 010\nb: *x\nc: x: y\n") == ["leading-zero", "alias", "yaml-syntax"]


def test_syntax_error_caused_by_a_tab_is_not_reported_twice() -> None:
    """A tab that breaks the syntax is one finding, and a syntax error elsewhere stays one."""
    assert codes("a:\n\t- b\n") == ["tab"]
    assert codes("a: [x,\ty\nb: 1\n") == ["tab"]
    assert codes("a:\tx\nb: 1\nc: 1\nd: 'x\n") == ["tab", "yaml-syntax"]


HOSTILE = {
    "brackets": "[" * 250_000,
    "braces": "{a: " * 60_000,
    "dashes": "- " * 120_000,
    "questions": "? " * 120_000,
    "closed brackets": "a: " + "[" * 100_000 + "]" * 100_000,
    "steps": "\n".join(" " * depth + "a:" for depth in range(700)),
    "bomb": "a: &a [x, x]\n"
    + "".join(f"{chr(98 + n)}: &{chr(98 + n)} [{', '.join([f'*{chr(97 + n)}'] * 9)}]\n"
              for n in range(20)),
    "loop": "a: &a [*a]\nb: &b {<<: *b}\n",
    "one long word": "a: " + "x" * 250_000,
    "one long key": "x" * 250_000 + ": a",
    "one long number": "a: " + "9" * 250_000,
    "long version": "%YAML 1." + "9" * 5_000 + "\n---\na: 1\n",
    "impossible character": 'a: "\\U99999999"\n',
    "many keys": "".join(f"key{n}: {n}\n" for n in range(10_000)),
    "many duplicates": "a: 1\n" * 40_000,
    "many empty values": "".join(f"k{n}:\n" for n in range(20_000)),
    "many tabs": "a\t" * 100_000,
    "many lines of tabs": "\t\n" * 100_000,
    "many anchors": "".join(f"k{n}: &a{n} x\n" for n in range(15_000)),
    "many tags": "".join(f"k{n}: !t x\n" for n in range(15_000)),
    "open quotes": "a: '" + "x\n\n" * 80_000,
    "comments": "#" * 250_000 + "\n" + "# x\n" * 1,
    "blank lines": "\n" * 250_000,
    "many documents": "---\n" * 60_000,
    "many directives": "%TAG !a! b\n" * 20_000,
    "many items": "a: [" + "b," * 120_000 + "]",
    "many levels of quotes": "a: " + "'" * 250_001,
}  # fmt: skip


@pytest.mark.parametrize("parser", PARSERS)
@pytest.mark.parametrize("source", HOSTILE.values(), ids=HOSTILE.keys())
def test_hostile_input_is_bounded(source: str, parser: Any) -> None:
    """Bombs, endless nesting and heaps of faults end soon, with a bounded list of findings."""
    start = time.monotonic()
    reading = read(source.encode(), "x.yml", parser)
    assert time.monotonic() - start < BOUND_S
    assert len(reading.problems) <= MOST_FOUND + 1
    assert all(len(found.message) + len(found.hint) < 400 for found in reading.problems)


def test_bomb_is_not_built() -> None:
    """What aliases stand for is never expanded: each is one refused value."""
    data = read(HOSTILE["bomb"].encode(), "x.yml").data
    assert data is not None and data["c"] == [FAULTY] * 9


def test_over_large_file_is_not_read_on() -> None:
    """A file over the limit is one finding, and one at the limit is read."""
    limit = 256 * 1024
    line = b"a: 1\n#"
    assert codes((line + b"x" * (limit - len(line))).decode()) == []
    assert codes((line + b"x" * (limit + 1 - len(line))).decode()) == ["file-too-large"]


ALPHABET = st.sampled_from(
    [*"ab019.:-?,[]{}#&*!|>'\"%@`~=<+ \n\\", "  ", "\n  ", ": ", "- ", "\t", "\r", "é",
     "\U0001f50b", "yes", "null", "---\n", "...\n", "<<", "\x00", "\x85",
     "\u2028", "\ufeff", "1:30", "\\u00"]
)  # fmt: skip


@settings(max_examples=400, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(st.lists(ALPHABET, max_size=60).map("".join))
def test_any_text_gives_a_reading(source: str) -> None:
    """Whatever the text, reading gives a result; places lie in the text; parsers agree."""
    reading = read(source.encode("utf-8", "surrogatepass"), "x.yml")
    again = read(source.encode("utf-8", "surrogatepass"), "x.yml", PURE_PARSER)
    assert reading == again
    lines = reading.text.split("\n")
    for found in reading.problems:
        assert 1 <= found.line <= len(lines)
        assert 1 <= found.column <= len(lines[found.line - 1]) + 1
    assert reading.data is not None or reading.problems


@settings(max_examples=200, deadline=None)
@given(st.binary(max_size=200))
def test_any_bytes_give_a_reading(source: bytes) -> None:
    """Whatever the bytes, reading gives a result."""
    reading = read(source, "x.yml")
    assert reading.data is not None or reading.problems
    reading.text.encode("utf-8")
