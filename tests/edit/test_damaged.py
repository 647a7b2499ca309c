"""Ordering damaged records: layouts that nobody would think of."""

from __future__ import annotations

import random
from collections import Counter

import pytest

from generator.edit.order import ordered
from generator.edit.source import Unreadable, meaning, read
from generator.records.kinds import KINDS
from generator.shapes.outline import SETTINGS, outline
from tests.edit.handwriting import Hand

SCRAPS = (
    " ", "  ", "\n", "\n\n", "#", " # x", "\n# x\n", "\n      # x\n", "- ", ":", ": ", "? ", "|",
    "|+\n", ">-", "{", "}", "[", "]", ",", "'", '"', "a: 1\n", "\r\n", "---\n", "...\n", "%", "0",
)  # fmt: skip


def damaged(text: str, pick: random.Random) -> str:
    """Give a text with a few characters, scraps or lines put in, taken out or moved."""
    for _ in range(pick.randint(1, 4)):
        at, to = sorted(pick.randint(0, len(text)) for _ in range(2))
        lines = text.split("\n")
        match pick.randint(0, 3):
            case 0:
                text = text[:at] + pick.choice(SCRAPS) + text[at:]
            case 1:
                text = text[:at] + text[min(to, at + pick.randint(1, 9)) :]
            case 2:
                pick.shuffle(lines)
                text = "\n".join(lines[: pick.randint(2, 12)])
            case 3:
                line = lines.pop(pick.randrange(len(lines)))
                lines.insert(pick.randint(0, len(lines)), " " * pick.randint(0, 4) + line.lstrip())
                text = "\n".join(lines)
    return text


def hold_damaged(pick: random.Random) -> bool:
    """Order a damaged record and insist that it means what it did; say whether it could be read."""
    kind = pick.choice([*KINDS, SETTINGS])
    text = damaged(Hand(pick).record(outline(kind)), pick)
    try:
        source = read(text.encode(), "x.yml")
    except Unreadable:
        return False
    made = ordered(source, outline(kind))
    again = read(made.encode(), "x.yml")
    assert meaning(again.data) == meaning(source.data)
    assert Counter("".join(made.split())) == Counter("".join(text.split()))
    assert ordered(again, outline(kind)) == made
    return True


def test_a_damaged_record_is_ordered_or_refused() -> None:
    """Whatever can still be read keeps its meaning and its characters; the rest is refused."""
    read_ = [hold_damaged(random.Random(seed)) for seed in range(600)]
    assert read_.count(True) > 50
    assert read_.count(False) > 50


@pytest.mark.soak
def test_many_damaged_records() -> None:
    """The same a hundred thousand times."""
    for seed in range(1000, 101000):
        hold_damaged(random.Random(seed))
