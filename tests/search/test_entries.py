"""What can be found: every released record, once, at an address that is there, and small."""

from __future__ import annotations

import gzip
import re
import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.pages import routes, search, search_pack
from generator.pages.book import Book
from generator.records.kinds.knowledge import FaultCode, Symptom, Term
from tests.demo import changed, demonstration
from tests.search import big

LIMIT_BYTES = 100_000
"""What a phone may be asked to fetch for the index of a thousand entries, compressed."""

NOT_SEARCHED = {"specs"}
"""A value has no page: it is found by the part it belongs to."""


def by_target(book: Book) -> dict[str, search.Entry]:
    """Give the entries by address."""
    return {entry.target: entry for entry in search.entries(book)}


def unpacked(words: str, lists: str) -> dict[str, list[int]]:
    """Undo the packing, as the format describes it and not as the packer does it."""
    found: dict[str, list[int]] = {}
    before = ""
    for coded, packed in zip(words.split(" "), lists.split(" "), strict=True):
        before = before[: search_pack.DIGITS.index(coded[0])] + coded[1:]
        numbers, last, groups = [], -1, []
        for digit in packed:
            value = search_pack.DIGITS.index(digit)
            groups.append(value & 31)
            if value < 32:
                last += 1 + sum(group << (5 * n) for n, group in enumerate(groups))
                numbers.append(last)
                groups = []
        found[before] = numbers
    return found


def test_every_released_record_is_found_once() -> None:
    """Each record with an address of its own has one entry, and nothing else names that address."""
    entries = search.entries(big.book())
    targets = [entry.target for entry in entries]
    assert len(targets) == len(set(targets))
    records = [r for r in big.book().kb if r.kind not in NOT_SEARCHED]
    assert records
    assert {routes.address(record) for record in records} <= set(targets)


@pytest.mark.parametrize("status", ["draft", "withdrawn"])
def test_what_is_not_released_is_not_found(status: str) -> None:
    """A record that is a draft or withdrawn leaves no entry and no word of its own behind."""
    kb = changed(
        demonstration(), "components", "exhaust", status=status, title="Zanzibar exhaust"
    ).released()
    book = Book.of(kb)
    assert by_target(book)
    assert "components/exhaust.html" not in by_target(book)
    assert "Zanzibar" not in search.document(book)


def test_a_code_is_found_by_its_number_and_says_it() -> None:
    """A code's title begins with the code, as its page does, and the code alone is a name."""
    for code in big.book().kb.all("codes", FaultCode):
        entry = by_target(big.book())[routes.address(code)]
        assert entry.title == f"{code.code} {code.title}"
        assert code.code in entry.names


def test_owners_sentences_and_other_names_are_found() -> None:
    """What owners say and what a term is also called is in the entry, word for word."""
    found = by_target(big.book())
    for symptom in big.book().kb.all("symptoms", Symptom):
        assert found[routes.address(symptom)].said == tuple(symptom.said)
    for term in big.book().kb.all("terms", Term):
        entry = found[routes.address(term)]
        names = {name.lower() for name in (entry.title, *entry.names)}
        assert {name.lower() for name in term.also} <= names


def test_a_kind_without_a_rank_is_seen() -> None:
    """Every kind that has an address has a rank, so that a new kind cannot be left out unseen."""
    assert {*routes.PAGED, *routes.SHARED, "pages"} == set(search.PRIOR)


def test_the_trades_words_hold_no_group_of_one_and_no_phrase_twice() -> None:
    """A group has at least two phrases, none of them twice or without a word."""
    for group in search.same(big.book()):
        words = [tuple(search_pack.words(phrase)) for phrase in group]
        assert all(words), group
    for group in search.trade()["same"]:
        assert len(group) == len({phrase.lower() for phrase in group}) > 1, group


def test_a_thousand_entries_stay_small() -> None:
    """The index of a manual of a thousand entries is at most 100 kB after gzip."""
    size = len(gzip.compress(big.index(1000).encode(), 9))
    print(f"index of 1000 entries: {size} bytes gzip")
    assert size <= LIMIT_BYTES


def test_the_index_is_the_same_for_the_same_records() -> None:
    """Two makings of one manual's index do not differ in a byte."""
    assert search.document(big.book()) == search.document(big.book())


@given(
    st.lists(
        st.frozensets(st.text("abcdefgh0123", min_size=1, max_size=6), max_size=8), max_size=120
    )
)
def test_what_is_packed_can_be_unpacked(texts: list[frozenset[str]]) -> None:
    """Words and lists come out of the packing as they went in."""
    found: dict[str, list[int]] = {}
    for number, text in enumerate(texts):
        for word in text:
            found.setdefault(word, []).append(number)
    ordered = sorted(found)
    if ordered:
        words = search_pack.front_coded(ordered)
        lists = " ".join(search_pack.deltas(found[word]) for word in ordered)
        assert unpacked(words, lists) == found


@given(st.lists(st.integers(0, 10**6), unique=True, min_size=1).map(sorted))
def test_large_steps_can_be_unpacked(numbers: list[int]) -> None:
    """A step of any size survives, those of several digits included."""
    assert unpacked("Aword", search_pack.deltas(numbers)) == {"word": numbers}


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("It won’t start!", ["it", "wont", "start"]),
        ("P0335 at 1.6 litres", ["p0335", "at", "1.6", "litres"]),
        ("A/C, E.G.R. and back-probe", ["ac", "egr", "and", "back", "probe"]),
        ("Café at 20 °C", ["cafe", "at", "20", "c"]),
        ("36−1 wheel", ["36", "1", "wheel"]),
        ("", []),
    ],
)
def test_a_text_falls_into_words(text: str, words: list[str]) -> None:
    """Codes and decimals stay whole, initials are joined, accents and apostrophes go."""
    assert search_pack.words(text) == words


@given(st.text(max_size=60))
def test_words_are_plain(text: str) -> None:
    """Whatever is written, its words are small letters and figures, so packing needs no escape."""
    for word in search_pack.words(text):
        assert re.fullmatch(r"[a-z0-9.]+", word)
        assert unicodedata.is_normalized("NFC", word)
