"""The page about cautions says what the code does: figures, families, and what is not yet done."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from generator.hazards import built_in, families
from tests.demonstration import ROOT
from tests.hazards.test_prose import counted

PAGE = (ROOT / "docs" / "cautions.md").read_text("utf-8")
SETS = re.findall(r"^\| (\w+\.csv) \| (\d+) of (\d+) \| (\d+) of (\d+) \|", PAGE, flags=re.M)
LOTS = re.findall(r"^\| (\w+) \| (\d+) of (\d+) \| (\d+) of (\d+) \|$", PAGE, flags=re.M)


def test_every_set_is_on_the_page() -> None:
    """Each committed set of sentences has its row, the held-out one too."""
    kept = {path.name for path in Path(__file__).parent.glob("*_sentences.csv")}
    assert {row[0] for row in SETS} == kept


@pytest.mark.parametrize("row", SETS, ids=lambda row: row[0])
def test_a_figure_on_the_page_is_the_one_measured(row: tuple[str, ...]) -> None:
    """What the page says of a set is what reading that set gives now."""
    assert counted(row[0]) == tuple(int(figure) for figure in row[1:])


def test_the_lots_make_up_the_set_they_were_gathered_in() -> None:
    """The lots read on first sight are all of a set, nothing left out."""
    *ours, strangers = LOTS
    assert len(ours) == 3
    for lots, name in (
        (ours, "more_development_sentences.csv"),
        ([strangers], "fresh_sentences.csv"),
    ):
        _found, meant, _alarms, plain = counted(name)
        assert sum(int(lot[2]) for lot in lots) == meant
        assert sum(int(lot[4]) for lot in lots) == plain


def test_the_estimate_in_words_is_the_lots_own() -> None:
    """The shares missed and the share of false alarms follow from the lots on first sight."""
    found, meant, alarms, plain = (sum(int(lot[n]) for lot in LOTS) for n in (1, 2, 3, 4))
    strangers = LOTS[-1]
    assert "miss about a quarter" in PAGE and "one harmless sentence in forty" in PAGE
    assert 1 - found / meant == pytest.approx(0.25, abs=0.03)
    assert alarms / plain == pytest.approx(0.025, abs=0.005)
    assert "four in ten where a stranger" in PAGE
    assert 1 - int(strangers[1]) / int(strangers[2]) == pytest.approx(0.4, abs=0.03)


def test_every_family_is_listed_with_its_number_of_rules() -> None:
    """The table of families is the built-in set, and each family has a name on the safety page."""
    listed = dict(re.findall(r"^\| (\w+) \| (\d+) \|$", PAGE, flags=re.M))
    assert listed == {name: str(len(rules)) for name, rules in families().items()}


def test_the_page_says_who_has_not_reviewed_the_rules() -> None:
    """As long as any built-in rule is unreviewed, the page says so, and no longer."""
    said = "have not yet been reviewed by a competent person" in PAGE
    assert said == any(rule.reviewed is None for rule in built_in())
