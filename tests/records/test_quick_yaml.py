"""The quick reader gives what the strict one gives, or gives up: it never has a word of its own."""

from __future__ import annotations

import random
from pathlib import Path

import pytest

from generator.records import quick_yaml, strict_yaml
from generator.records.source_text import decode
from tests.demonstration import ROOT

RECORDS = sorted((ROOT / "kb_source").rglob("*.yml"))
BROKEN = sorted((ROOT / "tests/corpus").rglob("*.y*ml"))

TRICKS = [
    b"010", b"1:30", b"NO", b"on", b"~", b"null", b"0x1F", b"1_000", b"1e5", b".inf", b".nan",
    b"2026-10-05", b"2026-13-05", b"&a", b"*a", b"<<", b"!!str", b"---", b"...", b"\t", b"\xff",
    b"\xef\xbb\xbf", b"\x00", b"\r\n", b"? ", b"- ", b": ", b"# ", b"'", b'"', b"|", b">-", b"{",
    b"}", b"[", b"]", b",", b"%", b"\xc2\x85", b"\xe2\x80\xa8", b"\\x07", b"title: x\n", b" ",
]  # fmt: skip
"""What readers of YAML differ on, or trip over."""


def agree(source: bytes) -> bool:
    """Hold the two readers together on a file; say whether the quick one read it."""
    text = decode(source, "x.yml")
    if text.problems or text.clean is None:
        return False
    quick = quick_yaml.read(text.clean)
    if quick is None:
        return False
    strict = strict_yaml.read(source, "x.yml")
    assert strict.problems == [], source
    # Equal is not enough: 1, 1.0 and True are, and mean different things to a shape.
    assert repr(quick) == repr(strict.data), source
    return True


def test_the_records_are_read_alike() -> None:
    """And most of them by the quick reader, or it would be of no use."""
    read = [agree(path.read_bytes()) for path in RECORDS]
    assert sum(read) > 0.9 * len(read)


def test_no_broken_record_is_taken_for_a_good_one() -> None:
    """Whatever the strict reader finds fault with, the quick one leaves to it."""
    assert len(BROKEN) >= 120
    for path in BROKEN:
        agree(path.read_bytes())


@pytest.mark.parametrize("seed", range(20))
def test_damage_is_read_alike(seed: int) -> None:
    """Bytes changed, lost, doubled, and tricks put in at random, two hundred times a seed."""
    chance = random.Random(seed)
    whole = [path.read_bytes() for path in chance.sample(RECORDS, 20)]
    for _ in range(200):
        source = bytearray(chance.choice(whole))
        for _ in range(chance.randint(1, 3)):
            at = chance.randrange(len(source))
            match chance.randrange(4):
                case 0:
                    source[at] = chance.randrange(256)
                case 1:
                    del source[at : at + chance.randint(1, 8)]
                case 2:
                    source[at:at] = source[at : at + chance.randint(1, 40)]
                case 3:
                    source[at:at] = chance.choice(TRICKS)
        agree(bytes(source))


def test_without_the_parser_in_c_it_gives_up(monkeypatch: pytest.MonkeyPatch) -> None:
    """Then the strict reader reads everything."""
    monkeypatch.setattr(quick_yaml, "CParser", None)
    assert not any(agree(path.read_bytes()) for path in RECORDS[:20])


def test_a_place_is_found_though_the_quick_reader_keeps_none() -> None:
    """A finding about a file that was read quickly still stands at its line."""
    from generator.records.on_demand import PlacesIn

    path = Path(ROOT / "kb_source/specs/inductive-winding.yml")
    places = PlacesIn(path.read_bytes(), "x.yml")
    lines = path.read_text("utf-8").split("\n")
    span = places[("value",)].value
    assert lines[span.line - 1][span.column - 1 :].startswith("860 ohm")
