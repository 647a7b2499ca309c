"""Manuals of any size for the search: the demonstration's entries, with words of an invented kind.

A real manual's vocabulary grows with its size. Every third word of a copied entry is therefore
replaced by one of a vocabulary that grows as Heaps' law has it for English text, rare words rarely.
"""

from __future__ import annotations

import re
from dataclasses import replace
from functools import cache
from random import Random

from generator.pages import search
from generator.pages.book import Book
from generator.pages.search import Entry
from generator.records.kinds.things import Vehicle
from tests.demo import demonstration

SYLLABLES = [a + b + c for a in "bdfglmprst" for b in "aeiou" for c in ("", "n", "r", "l", "ck")]
HEAPS = 0.6
"""Exponent of vocabulary over text; 0.4 to 0.6 for English (from memory: Manning, Raghavan and
Schütze, Introduction to Information Retrieval, 5.1.1). The upper end makes the larger index."""


@cache
def book() -> Book:
    """Give the demonstration's records and nothing worked out: the search needs no engine."""
    return Book.of(demonstration().released())


def vehicles() -> dict[str, str]:
    """Give the demonstration's vehicles by id."""
    return {vehicle.id: vehicle.title for vehicle in book().kb.all("vehicles", Vehicle)}


@cache
def entries(count: int) -> tuple[Entry, ...]:
    """Give so many entries, the same ones every time."""
    random = Random(count)
    own = search.entries(book())
    own = [entry for entry in own if entry.kind != "pages"]
    vocabulary = [
        "".join(random.choice(SYLLABLES) for _ in range(random.choice((1, 2, 2, 3, 3, 4))))
        for _ in range(round(10 * (30 * count) ** HEAPS))
    ]

    def other(match: re.Match[str]) -> str:
        if random.random() > 1 / 3:
            return match[0]
        return vocabulary[int(len(vocabulary) * random.random() ** 3)]

    found = []
    for number in range(count):
        entry = own[number % len(own)]
        if number >= len(own):
            title, text = (re.sub(r"[a-z]{4,}", other, part) for part in (entry.title, entry.text))
            before, after = search.frame(entry)
            id_ = f"{entry.target.removeprefix(before).removesuffix(after)}-{number}"
            entry = replace(
                entry, target=before + id_ + after, title=title, text=text,
                names=tuple(_other_code(name, number) for name in entry.names),
                said=tuple(re.sub(r"[a-z]{4,}", other, sentence) for sentence in entry.said),
            )  # fmt: skip
        found.append(entry)
    return tuple(found)


def _other_code(name: str, number: int) -> str:
    """Give another code for a code: every one in a manual is there once."""
    return f"B{number:04X}" if re.fullmatch(r"[PCBU]\w{4}", name) else name


def index(count: int) -> str:
    """Give the index script of so many entries, with all the synonyms of the demonstration."""
    return search.packed(list(entries(count)), vehicles(), search.same(book()))
