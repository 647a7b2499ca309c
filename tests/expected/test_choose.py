"""Which of several specs holds: the most exact match, and never one of two by chance."""

from __future__ import annotations

import datetime
from typing import Any

import pytest

from generator.expected import CannotExpect, choose, family, problems
from generator.records.kinds.things import Spec
from generator.records.knowledge_base import KnowledgeBase
from tests.expected.samples import spec_of
from tests.hazards.build import manual

DAY = datetime.date


def one(id_: str, ohm: str, **fields: Any) -> Spec:
    """Give a resistance of the sensor, on both petrol cars unless said otherwise."""
    fields.setdefault("applies_to", ["petrol-car", "hybrid-car"])
    return spec_of("plain", ohm, id_=id_, quantity="resistance", **fields)


GENERAL = one("coil", "860 ohm ± 10 %")
HYBRID = one("coil-hybrid", "900 ohm ± 10 %", overrides="coil", applies_to=["hybrid-car"])
LATE = one(
    "coil-hybrid-late", "950 ohm ± 10 %", overrides="coil-hybrid", applies_to=["hybrid-car"],
    built={"since": DAY(2016, 5, 1)},
)  # fmt: skip


def codes(kb: KnowledgeBase) -> list[tuple[str, str]]:
    """Give code and record of each finding on overrides."""
    return [(p.code, p.record) for p in problems(kb) if p.code.startswith("override")]


def test_the_most_exact_match_wins() -> None:
    """Shows the general value on one car, and the narrower ones where they hold."""
    kb = manual(GENERAL, HYBRID, LATE)
    assert choose(kb, GENERAL, "petrol-car").id == "coil"
    assert choose(kb, GENERAL, "hybrid-car", DAY(2015, 1, 1)).id == "coil-hybrid"
    assert choose(kb, GENERAL, "hybrid-car", DAY(2016, 5, 1)).id == "coil-hybrid-late"
    assert choose(kb, LATE, "petrol-car").id == "coil", "any member stands for its family"
    assert [s.id for s in family(kb, HYBRID)] == ["coil", "coil-hybrid", "coil-hybrid-late"]
    assert codes(kb) == []


def test_an_unknown_build_date_is_asked_for() -> None:
    """Shows that a build range never decides without the date."""
    with pytest.raises(CannotExpect, match="when hybrid-car was built") as asked:
        choose(manual(GENERAL, HYBRID, LATE), GENERAL, "hybrid-car")
    assert "--built" in asked.value.hint


def test_an_engine_code_narrows_a_value() -> None:
    """Shows that a value for another engine falls out: the stock's engines are all H1."""
    other = one("coil-h2", "1 kohm", overrides="coil", engines=["H2"])
    same = one("coil-h1", "1 kohm", overrides="coil", engines=["H1"], applies_to=["petrol-car"])
    assert choose(manual(GENERAL, other), GENERAL, "petrol-car").id == "coil"
    assert choose(manual(GENERAL, same), GENERAL, "petrol-car").id == "coil-h1"


def test_a_vehicle_without_a_value_gets_none() -> None:
    """Shows that a family never answers for a vehicle it does not name."""
    with pytest.raises(CannotExpect, match="does not hold for diesel-van"):
        choose(manual(GENERAL, HYBRID), GENERAL, "diesel-van")


def test_a_tie_is_a_finding_and_gives_no_value() -> None:
    """Shows that two values that hold alike are told to the author and to the reader."""
    twin = one("coil-twin", "700 ohm", overrides="coil")
    kb = manual(GENERAL, twin)
    assert codes(kb) == [("override-tie", "specs/coil-twin")]
    with pytest.raises(CannotExpect, match="alike"):
        choose(kb, GENERAL, "petrol-car")


def test_build_ranges_that_cross_are_a_tie_and_those_that_meet_are_not() -> None:
    """Shows hit and near miss of two build ranges."""
    early = one("coil-early", "700 ohm", overrides="coil", built={"until": DAY(2016, 5, 1)})
    crossing = one("coil-new", "750 ohm", overrides="coil", built={"since": DAY(2016, 5, 1)})
    meeting = one("coil-new", "750 ohm", overrides="coil", built={"since": DAY(2016, 5, 2)})
    assert codes(manual(GENERAL, early, crossing)) == [("override-tie", "specs/coil-new")]
    assert codes(manual(GENERAL, early, meeting)) == []


def test_another_reading_cannot_be_overridden() -> None:
    """Shows that a resistance never stands in for a voltage, nor a band for a value."""
    stray = spec_of(
        "plain", "5 V", id_="feed", quantity="voltage", overrides="coil", applies_to=["petrol-car"]
    )
    band = one("band", "200 to 1200 ohm", overrides="coil", standing="plausibility_band",
               applies_to=["petrol-car"])  # fmt: skip
    assert ("override-stray", "specs/feed") in codes(manual(GENERAL, stray))
    assert ("override-stray", "specs/band") in codes(manual(GENERAL, band))


def test_a_round_of_overrides_is_a_finding() -> None:
    """Shows that two specs that override each other are told, and hang nothing."""
    a = one("a", "1 ohm", overrides="b", applies_to=["petrol-car"])
    b = one("b", "2 ohm", overrides="a")
    assert {code for code, _ in codes(manual(a, b))} >= {"override-stray"}
