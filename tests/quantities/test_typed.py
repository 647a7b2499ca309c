"""Readings as people type them, case by case; the page's script is held to the same table."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from generator.quantities import QUANTITIES, UNITS, WrittenError, unit_named
from generator.quantities.typed import as_data, read_typed, suffixes

CASES: list[dict[str, Any]] = json.loads(
    Path(__file__).with_name("reading-forms.json").read_text(encoding="utf-8")
)
FAULTS = {"form", "comma", "unit", "quantity", "impossible"}


@pytest.mark.parametrize("case", CASES, ids=lambda case: repr(case["text"])[:40])
def test_a_typed_reading_is_read_by_the_rule(case: dict[str, Any]) -> None:
    """Shows each form accepted with its figure, or refused for the stated fault."""
    unit = unit_named(case["shown"])
    assert unit is not None
    if "refused" in case:
        with pytest.raises(WrittenError) as refused:
            read_typed(case["text"], unit)
        assert refused.value.fault == case["refused"]
        assert refused.value.hint
        return
    found = read_typed(case["text"], unit)
    assert found.over_range == case.get("over_range", False)
    if found.over_range:
        assert found.value is None
    else:
        assert found.value == pytest.approx(case["value"], rel=1e-12, abs=0.0)


def test_the_table_has_every_kind_of_answer() -> None:
    """Shows that the table holds figures, over-range readings and every fault, each once."""
    assert {case["refused"] for case in CASES if "refused" in case} == FAULTS
    assert any(case.get("over_range") for case in CASES)
    assert sum("value" in case for case in CASES) > 50
    assert len({(case["text"], case["shown"]) for case in CASES}) == len(CASES)


def test_an_ambiguous_comma_is_refused_with_both_readings_named() -> None:
    """Shows that a reader who types 1,200 is told the two things it may mean."""
    ohm = unit_named("ohm")
    assert ohm is not None
    with pytest.raises(WrittenError, match=r"1200 or 1\.200") as refused:
        read_typed("1,200", ohm)
    assert "1200" in refused.value.hint
    assert "1.200" in refused.value.hint


def test_milli_and_mega_are_never_taken_for_each_other() -> None:
    """Shows that no spelling of a milli unit differs from a mega one by nothing but case."""
    for unit in UNITS:
        known = suffixes(unit.quantity)
        for key, meant in known.items():
            if meant.symbol[0] == "M" and key[0] == "M":
                other = known.get("m" + key[1:])
                assert other is None or other.symbol[0] == "m"


@pytest.mark.parametrize("quantity", QUANTITIES)
def test_the_data_for_the_page_says_the_same(quantity: str) -> None:
    """Shows that factor and offset of each spelling turn 12.5 into what the rule reads."""
    data: dict[str, Any] = json.loads(json.dumps(as_data(quantity)))
    unit = next(unit for unit in UNITS if unit.quantity == quantity)
    for spelling, (factor, offset) in data["suffixes"].items():
        found = read_typed(f"12.5 {spelling}", unit).value
        assert found == pytest.approx(12.5 * factor + offset, rel=1e-12)


@given(text=st.text(max_size=70), unit=st.sampled_from(UNITS))
@example(text="1" * 13, unit=UNITS[1])
def test_any_text_is_read_or_refused(text: str, unit: Any) -> None:
    """Shows that nothing typed raises anything but the one refusal that has a mend."""
    try:
        found = read_typed(text, unit)
    except WrittenError as wrong:
        refused: WrittenError | None = wrong
    else:
        refused = None
        assert (found.value is None) == found.over_range
    assert refused is None or (refused.fault in FAULTS and refused.hint)


@given(number=st.decimals(0, 999_999, places=3), unit=st.sampled_from(UNITS))
def test_what_is_shown_can_be_typed_back(number: Any, unit: Any) -> None:
    """Shows that a figure with the unit's own symbol reads as the same figure without it."""
    assert read_typed(f"{number} {unit.symbol}", unit) == read_typed(str(number), unit)
