"""Signs: our own small drawings, by the registered number, and none that says the wrong thing."""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest

from generator.hazards import HazardLine, Word, built_in, word_of
from generator.pages.page import environment
from generator.pages.symbols import ASKS, FORBIDS, LONGEST, SQUARE, TRIANGLE, WARNS, sign

DRAWN = [*WARNS, *ASKS, *FORBIDS]

PROHIBITED = {"battery-short": r"Take off rings and watch"}
"""Each built-in rule with a prohibition sign, and the words that forbid the same."""


@pytest.mark.parametrize("number", DRAWN)
def test_a_sign_is_small_whole_and_silent(number: str) -> None:
    """Each is well-formed, short, without words, colours or links, and keeps its number."""
    text = str(sign(number, Word.WARNING))
    root = ElementTree.fromstring(text)
    assert len(text.encode()) <= LONGEST
    assert root.get("data-symbol") == number and root.get("aria-hidden") == "true"
    assert not "".join(root.itertext()).strip()
    assert {element.tag for element in root.iter()} <= {"svg", "g", "path"}
    assert set(re.findall(r'(?:fill|stroke)="([^"]*)"', text)) <= {"none", "currentColor"}


def test_no_two_signs_are_alike() -> None:
    """Two numbers never share one drawing."""
    drawings = {str(sign(n, Word.WARNING)).replace(n, "") for n in DRAWN}
    assert len(drawings) == len(DRAWN)


def test_every_symbol_of_the_built_in_rules_is_drawn() -> None:
    """No built-in rule falls back to a general sign for want of a drawing."""
    assert {rule.symbol for rule in built_in() if rule.symbol} <= set(DRAWN)


def test_a_number_without_a_drawing_gets_the_general_one_of_its_kind() -> None:
    """A shop's own rule may name any number; none at all gives no sign."""
    general = str(sign("W001", Word.WARNING)).replace("W001", "")
    assert str(sign("W999", Word.WARNING)).replace("W999", "") == general
    assert TRIANGLE not in sign("M999", Word.WARNING) + sign("P999", Word.WARNING)
    assert sign(None, Word.WARNING) == ""


def test_a_prohibition_sign_forbids_what_the_message_forbids() -> None:
    """Each rule that carries one is listed here with its words, so a new one is looked at."""
    rules = {rule.id: rule for rule in built_in() if (rule.symbol or "").startswith("P")}
    assert set(rules) == set(PROHIBITED)
    for id_, words in PROHIBITED.items():
        assert re.search(words, " ".join(rules[id_].avoid))


@pytest.mark.parametrize("word", Word)
def test_the_triangle_speaks_of_injury_alone(word: Word) -> None:
    """In a panel of any word but NOTICE there is a triangle; in a NOTICE there is none."""
    line = HazardLine.of(next(rule for rule in built_in() if word_of(rule) is word))
    panel = environment().from_string(
        '{% import "parts.html" as parts with context %}{{ parts.panel(box) }}'
    )
    html = panel.render(box={"word": word, "hazards": [line]})
    triangles = [*re.findall(r"M12 1\.6 22\.8 20\.4H1\.2z", html), *re.findall(TRIANGLE, html)]
    assert bool(triangles) == (word is not Word.NOTICE)


def test_a_notice_with_a_warning_number_is_framed_square() -> None:
    """Harm to things or soil alone never borrows the triangle."""
    assert TRIANGLE in sign("W072", Word.CAUTION)
    assert TRIANGLE not in sign("W072", Word.NOTICE) and SQUARE in sign("W072", Word.NOTICE)
