"""The second net: what wording implies, and how well it reads sentences it was not tuned on.

Three sets of sentences. `development_sentences.csv` was given. `more_development_sentences.csv`
was written here, in three lots, and the patterns were tuned on it. `held_out_sentences.csv` was
written before any pattern; its misses were never looked at while tuning, only its score.
The same person wrote the sentences and the patterns, so the score on it flatters.
"""

from __future__ import annotations

import csv
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.hazards.findings import problems
from generator.hazards.lexicon import language, participles, wordings
from generator.hazards.prose import implied
from generator.hazards.rules import built_in
from generator.problems import Problem
from generator.records.kinds.work import Step
from tests.hazards.build import job, manual, step

HERE = Path(__file__).parent


def hazards(sentence: str) -> set[str]:
    """Give the names of the hazards a sentence implies."""
    return {one.hazard for one in implied(sentence)}


def counted(name: str) -> tuple[int, int, int, int]:
    """Give the hazards found, of how many, and the false alarms, of how many, in a set."""
    with (HERE / name).open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    meant = [row for row in rows if row["implies"]]
    plain = [row for row in rows if not row["implies"]]
    found = [row for row in meant if row["implies"] in hazards(row["sentence"])]
    alarms = [row for row in plain if hazards(row["sentence"])]
    return len(found), len(meant), len(alarms), len(plain)


def score(name: str) -> tuple[float, float]:
    """Give the share of hazards found and the share of false alarms in a set of sentences."""
    found, meant, alarms, plain = counted(name)
    print(f"{name}: {found} of {meant} hazards found, {alarms} false alarms in {plain}")
    return found / meant, alarms / plain


@pytest.mark.parametrize(
    ("name", "least", "most"),
    [
        ("development_sentences.csv", 0.97, 0.02),
        ("more_development_sentences.csv", 0.95, 0.02),
        ("held_out_sentences.csv", 0.85, 0.05),
        ("fresh_sentences.csv", 0.95, 0.05),
    ],
)
def test_score(name: str, least: float, most: float) -> None:
    """Each set is read at least this well, with no more false alarms than that."""
    found, alarms = score(name)
    assert found >= least
    assert alarms <= most


def test_the_held_out_set_is_large_and_apart() -> None:
    """It has at least eighty sentences, none of them in a set that patterns were tuned on."""
    sets = []
    for name in (
        "held_out_sentences.csv", "development_sentences.csv", "more_development_sentences.csv",
    ):  # fmt: skip
        with (HERE / name).open(encoding="utf-8", newline="") as file:
            sets.append({row["sentence"].casefold() for row in csv.DictReader(file)})
    assert len(sets[0]) >= 80
    assert not sets[0] & (sets[1] | sets[2])


@pytest.mark.parametrize(
    ("sentence", "hazard", "meant"),
    [
        # polarity
        ("Slacken the fuel pipe.", "fuel", True),
        ("Do not slacken the fuel pipe.", "fuel", False),
        ("Do not slacken the fuel pipe until the pressure is gone.", "fuel", True),
        ("Don't forget to slacken the fuel pipe.", "fuel", True),
        ("There is no need to slacken the fuel pipe.", "fuel", False),
        ("Without slackening the fuel pipe, look at the bracket.", "fuel", False),
        # statements and reports
        ("The fuel pipe runs along the sill.", "fuel", False),
        ("Note which fuel pipe was slackened.", "fuel", False),
        ("Ask whether the fuel pipe was slackened.", "fuel", False),
        # compounds
        ("Slacken the fuel pipe nut.", "fuel", True),
        ("Replace the fuel gauge.", "fuel", False),
        ("Remove the fuel pump relay.", "fuel", False),
        # reach
        ("Remove the bracket behind the fuel tank.", "fuel", False),
        ("Slacken the bolt at the fuel filter.", "fuel", True),
        ("Unplug the connector at the fuel filter.", "fuel", False),
        ("Remove: clip, bracket, fuel pipe.", "fuel", True),
        # verbs no list knows
        ("Unscramble the fuel pipe.", "fuel", True),
        # forms
        ("SLACKEN THE FUEL PIPE", "fuel", True),
        ("Slack\u00aden the fuel pipe.", "fuel", True),
        ("Slacken the gasoline pipe.", "fuel", True),
        ("Lift the hood.", "fuel", False),
    ],
)
def test_reading(sentence: str, hazard: str, meant: bool) -> None:
    """Negation, statements, compounds, reach and spelling are read as a mechanic reads them."""
    assert (hazard in hazards(sentence)) == meant


def test_the_words_are_marked() -> None:
    """The finding names the very words, at their place in the text."""
    (one,) = implied("Look first. Then slacken the fuel pipe.")
    assert (one.hazard, one.words) == ("fuel", "fuel pipe")


@given(st.text(alphabet=st.sampled_from("aeinot fuel pump,.;:'-–\u00ad(’)\n0"), max_size=80))
def test_any_text_can_be_read(text: str) -> None:
    """No text stops the reader, and every mark lies inside the text."""
    for one in implied(text):
        assert text[one.start : one.end] == one.words != ""


def test_every_word_list_holds_words() -> None:
    """No entry was taken for a truth value or a number by the YAML reader."""
    lang = language()
    for words in lang.words.values():
        assert all(isinstance(word, str) and word not in ("True", "False") for word in words)
    assert "on" in lang.words["brings"]
    assert "off" in lang.words["away"]


@pytest.mark.parametrize(
    ("verb", "forms"),
    [
        ("remove", {"removing", "removed"}),
        ("spin", {"spinning"}),
        ("drain", {"draining", "drained"}),
        ("free", {"freeing", "freed"}),
    ],
)
def test_forms_of_verbs(verb: str, forms: set[str]) -> None:
    """Forms in -ing and -ed follow the spelling of English."""
    assert forms <= {form.replace("eeed", "eed") for form in participles(verb)}


def test_every_hazard_in_words_can_be_declared() -> None:
    """For each wording there is a fact that declares it, so no author is left without a mend."""
    assert all(wording.declared for wording in wordings().values())
    assert len(wordings()) <= len(built_in())


def test_wording_without_its_fact_is_found() -> None:
    """A step that says more than its facts do is an error; with the fact it is none."""
    bare = step("look", "engine_bay", do="Crank the engine for five seconds.")
    said = step("crank", "engine_bay", do="Crank the engine for five seconds.")
    off = step("key_off", "engine_bay")
    assert [p.code for p in _of(bare)] == ["undeclared-hazard"]
    assert "Crank" in _of(bare)[0].message
    assert _of(said, off) == []


def test_a_note_is_read_too() -> None:
    """What a note instructs counts as well as the sentence itself."""
    one = step("look", "engine_bay", note="Pull the airbag plug first.")
    assert [p.code for p in _of(one)] == ["undeclared-hazard"]


def _of(*steps: Step) -> list[Problem]:
    one = job("story", *steps)
    return [p for p in problems(manual(one)) if p.record == one.key]
