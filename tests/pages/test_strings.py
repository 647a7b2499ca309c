"""The catalogue of words: nothing missing, nothing idle, no key twice."""

from __future__ import annotations

import re
from string import Formatter

import pytest

from generator.pages import words
from generator.pages.strings import joined, say
from tests.demonstration import ROOT

FAMILIES = [module for module in vars(words).values() if hasattr(module, "WORDS")]
MADE = re.compile(r"""f["']([a-z_.]+\.)\{|["']([a-z_.]+\.)['"] [~+]""")
"""Where a key is made from a family and a word of a record: f"zone.{zone}", 'signal.' ~ word."""


def sources() -> str:
    """Give the text of everything that may ask for words."""
    files = [*(ROOT / "generator").rglob("*.py"), *(ROOT / "generator").rglob("*.html"),
             *(ROOT / "site_overrides").rglob("*.html")]  # fmt: skip
    return "\n".join(f.read_text() for f in files if "words" not in f.parts)


def test_no_key_is_in_two_families() -> None:
    """Shows that joining the families loses none of them."""
    assert sum(len(family.WORDS) for family in FAMILIES) == len(words.ALL)


def test_no_key_is_idle() -> None:
    """Shows that every key is asked for, by its whole name or by a name made from its family."""
    text = sources()
    families = {one or other for one, other in MADE.findall(text)}
    named = set(re.findall(r"""["']([\w.-]+)(?=["'])""", text))
    assert "zone." in families and "signal." in families
    assert all(re.fullmatch(r"[\w.-]+", key) for key in words.ALL)
    idle = [
        key
        for key in words.ALL
        if key not in named
        and key.rpartition(".")[0] + "." not in families
        and not (key.startswith("state.") and "state." in families)  # two words, one family
    ]
    assert idle == []


def test_a_missing_key_stops_the_page() -> None:
    """Shows that a hole in the catalogue is never published."""
    with pytest.raises(KeyError):
        say("no.such.key")


def test_every_blank_has_a_plain_name() -> None:
    """Shows that blanks are filled by name, so that a translator may move them."""
    for text in words.ALL.values():
        for _, name, _, _ in Formatter().parse(text):
            assert name is None or name.isidentifier()


def test_lists_in_words() -> None:
    """Shows one, two and three items."""
    assert joined([]) == ""
    assert joined(["a"]) == "a"
    assert joined(["a", "b"]) == "a and b"
    assert joined(["a", "b", "c"]) == "a, b and c"
