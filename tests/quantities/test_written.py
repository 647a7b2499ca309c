"""Written values: the grammar, its refusals with their mends, and that nothing else can happen."""

from __future__ import annotations

import time
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.quantities import UNITS, WrittenError, base_unit, parse, unit_named
from generator.quantities.units import spellings


def refused(text: str, quantity: str | None = None) -> WrittenError:
    """Give the refusal of a text."""
    with pytest.raises(WrittenError) as caught:
        parse(text, quantity)
    return caught.value


@pytest.mark.parametrize(
    ("text", "form", "low", "nominal", "high"),
    [  # closed-form arithmetic on the figures as written
        ("860 ohm", "exact", 860, 860, 860),
        ("860 ohm ± 10 %", "percent", 774, 860, 946),
        ("860 ohm ± 10%", "percent", 774, 860, 946),
        ("10 ± 1 N·m", "spread", 9, 10, 11),
        ("10.1 ± 0.2 V", "spread", 9.9, 10.1, 10.3),  # 10.1 + 0.2 in binary is less than 10.3
        ("0.2 to 2 V", "range", 0.2, None, 2),
        ("-40 to 120 °C", "range", -40, None, 120),
        ("−5 ± 1 V", "spread", -6, -5, -4),
        ("-5 V ± 10 %", "percent", -5.5, -5, -4.5),
        ("at least 9.6 V", "at least", 9.6, None, None),
        ("at most 0.3 V", "at most", None, None, 0.3),
        ("20 °C", "exact", 20, 20, 20),
        ("20°C", "exact", 20, 20, 20),
        ("1.2 kohm", "exact", 1200, 1200, 1200),
        ("0.7 mm", "exact", 0.0007, 0.0007, 0.0007),
        ("330 ± 20 mV", "spread", 0.31, 0.33, 0.35),
        ("50 ± 5 %", "spread", 45, 50, 55),
        ("2.2 to 2.4 bar", "range", 220000, None, 240000),
        ("999999999999 Mohm", "exact", 999999999999e6, 999999999999e6, 999999999999e6),
        ("  860   ohm ", "exact", 860, 860, 860),
    ],
)
def test_forms(
    text: str, form: str, low: float | None, nominal: float | None, high: float | None
) -> None:
    """Each form gives its limits in the base unit, exactly, and keeps what was written."""
    written = parse(text)
    assert (written.form, written.low, written.nominal, written.high) == (form, low, nominal, high)
    assert written.text == text


def test_what_other_readers_get_wrong() -> None:
    """Sums, huge numbers, a spread in a unit and a unit with its own zero are told apart."""
    assert refused("9**9**9").fault == "form"
    assert refused("9**9**9 ohm").fault == "form"
    assert refused("1e400").fault == "form"
    assert refused("1e400 V").fault == "form"
    spread = parse("10 ± 1 N·m", "torque")
    assert (spread.low, spread.nominal, spread.high) == (9, 10, 11)
    assert parse("20 °C", "temperature").nominal == 20


@pytest.mark.parametrize(
    ("text", "fault", "hint"),
    [
        ("860", "unit", "add its unit"),
        ("2 to 5", "unit", "add its unit"),
        ("at least 9.6", "unit", "add its unit"),
        ("5 volts", "unit", "did you mean V?"),
        ("5 v", "unit", "did you mean V?"),
        ("5 kOhm", "unit", "did you mean kohm?"),
        ("5 MOHM", "unit", "did you mean mohm or Mohm?"),
        ("5 millimetre", "unit", "did you mean mm?"),
        ("5 parsec", "unit", ""),
        ("1,5 V", "form", "decimal point"),
        ("1,000 ohm", "form", "no mark for thousands"),
        ("10 000 ohm", "form", "without a space"),
        ("1e3 V", "form", "write the number out"),
        ("10^3 V", "form", "write the number out"),
        ("10 +/- 1 V", "form", "write ±"),
        ("10 +- 1 V", "form", "write ±"),
        ("> 9.6 V", "form", "at least"),
        ("≥9.6 V", "form", "at least"),
        ("min 9.6 V", "form", "at least"),
        ("< 0.3 V", "form", "at most"),
        ("max. 0.3 V", "form", "at most"),
        ("~5 V", "form", "a range or a spread"),
        ("about 5 V", "form", "a range or a spread"),
        ("12-14 V", "form", "0.2 to 2 V"),
        ("12 – 14 V", "form", "0.2 to 2 V"),
        ("12...14 V", "form", "0.2 to 2 V"),
        ("12 V to 14 V", "form", "once, at the end"),
        ("10 N·m ± 1 N·m", "form", "once, at the end"),
        ("10 V ± 1", "form", "once, at the end"),
        ("860 ± 10 %", "form", "860 ohm ± 10 %"),
        ("4k7 ohm", "form", "4.7 kohm"),
        (".5 V", "form", "0.5 V"),
        ("5. V", "form", "0.5 V"),
        ("+5 V", "form", "leave the plus out"),
        ("٣ ohm", "form", ""),  # the digit three of another script
        ("³ ohm", "form", ""),
        ("", "form", ""),
        ("±", "form", ""),
        ("V", "form", ""),
        ("to", "form", ""),
        ("1234567890123 V", "form", ""),  # thirteen digits
        ("x" * 61, "form", "one value"),
        ("20 °C ± 10 %", "form", "20 ± 5 °C"),
        ("50 % ± 10 %", "form", "20 ± 5 %"),
        ("2 to 1 V", "limits", "smaller value first"),
        ("-5 ohm", "impossible", "sign"),
        ("5 ± 6 ohm", "impossible", "sign"),
        ("860 ohm ± 101 %", "impossible", "sign"),
        ("at most -1 rpm", "impossible", "sign"),
        ("-300 °C", "impossible", "sign"),
        ("-460 °F", "impossible", "sign"),
    ],
)
def test_refusals(text: str, fault: str, hint: str) -> None:
    """What is not of the grammar is refused by kind of fault, with the mend that fits."""
    wrong = refused(text)
    assert wrong.fault == fault
    assert hint in wrong.hint and wrong.hint
    assert str(wrong)


def test_quantity_is_demanded() -> None:
    """A unit of another quantity is refused, and those that fit are named."""
    wrong = refused("20 V", "temperature")
    assert wrong.fault == "quantity"
    assert wrong.hint == "use one of °C, °F"
    assert parse("5 mV", "voltage").quantity == "voltage"


def test_absolute_zero_is_possible() -> None:
    """The coldest temperature there is can be written in either scale, and nothing below it."""
    # ITS-90: 0 K is −273.15 °C and −459.67 °F.
    assert parse("-273.15 °C").low == -273.15
    assert parse("-459.67 °F").low == pytest.approx(-273.15, abs=1e-12)
    assert refused("-273.16 °C").fault == "impossible"
    assert refused("-459.68 °F").fault == "impossible"


def test_single_value() -> None:
    """Only a value without a spread is a single one."""
    assert parse("5 V").only == 5
    for text in ("5 ± 1 V", "4 to 6 V", "at least 4 V", "at most 4 V"):
        with pytest.raises(ValueError, match="not a single value"):
            _ = parse(text).only


def test_back_to_the_written_unit() -> None:
    """A limit comes back in the unit it was written in as the figure that was written."""
    for text, high in (("0.5 to 0.7 mm", 0.7), ("4.5 to 4.7 kohm", 4.7), ("10 to 50 °F", 50.0)):
        written = parse(text)
        assert written.high is not None
        assert written.in_unit(written.high) == high


FIGURES = st.decimals(0, 10**6, places=3, allow_nan=False, allow_infinity=False)
SYMBOLS = st.sampled_from([unit.symbol for unit in UNITS if unit is base_unit(unit.quantity)])


@given(FIGURES, FIGURES, SYMBOLS)
def test_spread_is_exact(value: Decimal, spread: Decimal, symbol: str) -> None:
    """Both ends of a spread are the nearest floats to the sums in decimal arithmetic."""
    if spread > value or (symbol == "%" and value > 100):
        return
    written = parse(f"{value:f} ± {spread:f} {symbol}")
    assert written.low == float(value - spread)
    assert written.high == float(value + spread)


@given(FIGURES, st.decimals(0, 100, places=2), st.sampled_from(["ohm", "V", "N·m"]))
def test_percentage_is_exact(value: Decimal, percent: Decimal, symbol: str) -> None:
    """Both ends of a percentage are the nearest floats to the products in decimal arithmetic."""
    written = parse(f"{value:f} {symbol} ± {percent:f} %")
    assert written.low == float(value - value * percent / 100)
    assert written.high == float(value + value * percent / 100)


PIECES = st.sampled_from(
    [*"0123456789.,-−+±%^*/~<>= eEVmkΩ°C", " to ", " ± ", "at least ", "at most ", " ohm", " %",
     "9" * 12, "**", "N·m", "\n", "\x00", "٣", "²", "㎏", "min ", *spellings()]
)  # fmt: skip


@settings(max_examples=1500)
@given(st.one_of(st.text(max_size=80), st.lists(PIECES, max_size=14).map("".join)))
def test_any_text_is_a_value_or_refused(text: str) -> None:
    """Whatever the text, it is a value with finite, ordered limits, or a refusal with a mend."""
    start = time.perf_counter()
    wrong = written = None
    try:
        written = parse(text)
    except WrittenError as refusal:
        wrong = refusal
    if wrong is not None:
        assert wrong.fault in {"form", "unit", "quantity", "limits", "impossible"}
        assert str(wrong) and wrong.hint and len(str(wrong)) + len(wrong.hint) < 300
    if written is not None:
        ends = [end for end in (written.low, written.nominal, written.high) if end is not None]
        assert ends and ends == sorted(ends)
        assert all(abs(end) < 1e19 for end in ends)
        assert unit_named(written.unit.symbol) is written.unit
        assert written.text == text
    assert time.perf_counter() - start < 1


PIECES_OF_NOTHING = ["9", "9 ", " ", "±", "to ", "at least ", "0.", "-", "V", "9 to "]


@pytest.mark.parametrize("piece", PIECES_OF_NOTHING)
def test_long_text_takes_no_time(piece: str) -> None:
    """A text of a million characters is refused at once, whatever it repeats."""
    start = time.perf_counter()
    assert refused(piece * 1_000_000).fault == "form"
    assert time.perf_counter() - start < 1
