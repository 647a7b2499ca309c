"""The pattern of written values against the grammar that reads them."""

from __future__ import annotations

import re

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from generator.quantities import QUANTITIES, UNITS, WrittenError, parse
from generator.shapes.value_pattern import LONGEST_VALUE, pattern

SPELLINGS = sorted({one for unit in UNITS for one in (unit.symbol, *unit.spellings)})
ODD = ("0.5", "860", "-5", "−5", "007", "1.", ".5", "1,5", "1e3", "9" * 13, "+1", "")
NUMBERS = st.one_of(st.integers(-50, 900).map(str), st.sampled_from(ODD))
GAPS = st.sampled_from(["", " ", " ", " ", "  ", "\n"])
PIECES = st.one_of(
    NUMBERS, GAPS, st.sampled_from([*SPELLINGS, "±", "to", "at least", "at most", "%", "volts"])
)


@st.composite
def values(draw: st.DrawFn) -> str:
    """Draw a text of the grammar, or one a slip away from it."""
    n = [draw(NUMBERS) for _ in range(2)]
    unit, gap = draw(st.sampled_from(SPELLINGS)), draw(GAPS)
    forms = [
        f"{n[0]}{gap}{unit}", f"{n[0]} to {n[1]}{gap}{unit}", f"{n[0]} ± {n[1]}{gap}{unit}",
        f"{n[0]} {unit}{gap}± {n[1]}{gap}%", f"at least {n[0]}{gap}{unit}",
        f"at{gap}most {n[0]} {unit}", "".join(draw(st.lists(PIECES, max_size=7))),
    ]  # fmt: skip
    return draw(st.sampled_from(forms))


@settings(max_examples=3000)
@given(values(), st.sampled_from([None, *QUANTITIES]))
@example("860 ohm ± 10 %", "resistance")
@example("10 ± 1 N m", "torque")
@example("20 °C ± 5 %", "temperature")
@example("12 1/min", "rotational speed")
@example("5 mm²", "area")
def test_pattern_and_grammar_agree(text: str, quantity: str | None) -> None:
    """What the grammar reads fits; what fits is read, or refused for the size of its figures."""
    fits = bool(re.search(pattern(quantity), text)) and len(text) <= LONGEST_VALUE
    refused = refusal(text, quantity)
    if refused is None:
        assert fits, f"{text!r} is a value and does not fit"
    elif fits:
        assert refused.fault in ("limits", "impossible") or "percentage" in str(refused), text


def refusal(text: str, quantity: str | None) -> WrittenError | None:
    """Give why the grammar refuses a text, or None where it reads it."""
    try:
        parse(text, quantity)
    except WrittenError as refused:
        return refused
    return None


@pytest.mark.parametrize("text", ["20 °C", "-5 °C", "68 °F", " 20  °C "])
def test_one_value_without_a_spread(text: str) -> None:
    """Where no spread is taken, one value fits."""
    assert re.search(pattern("temperature", spread=False), text)


@pytest.mark.parametrize("text", ["20 to 30 °C", "20 ± 1 °C", "at least 20 °C", "20 V", "20"])
def test_a_spread_where_none_is_taken(text: str) -> None:
    """A range, a spread, a limit, another unit or none does not fit there."""
    assert not re.search(pattern("temperature", spread=False), text)


@pytest.mark.parametrize("quantity", [None, *QUANTITIES])
def test_the_syntax_is_shared(quantity: str | None) -> None:
    """Only what stands for itself or has the same meaning in ECMA-262 and in Python is used."""
    used = set(re.findall(r"\\.|\(\?.", pattern(quantity)))
    assert used <= {r"\s", r"\."}
