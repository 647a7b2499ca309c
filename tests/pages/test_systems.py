"""Values in both systems of units: one computation, limits inwards in each, marked for a script."""

from __future__ import annotations

import re
from html.parser import HTMLParser

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from generator.expected import CONDITIONS
from generator.pages.page import environment
from generator.pages.systems import (
    TO_SI,
    TO_US,
    condition_text,
    counterpart,
    limits_in,
    places_in,
    system_of,
    written_condition,
    written_text,
)
from generator.pages.values import value_view
from generator.quantities import UNITS, Interval, base_unit, convert, parse, unit_named
from generator.records.kinds.things import Spec
from tests.demo import with_record
from tests.expected.samples import spec_of
from tests.pages.books import book_of, made, whole

PAIRED = [unit for unit in UNITS if counterpart(unit) is not None]


def test_every_unit_with_a_counterpart_measures_the_same() -> None:
    """Shows that no value is shown beside a unit of another quantity, and none is left out."""
    assert set(TO_US) | set(TO_SI) == {unit.symbol for unit in PAIRED}
    assert not set(TO_US) & set(TO_SI)
    for unit in PAIRED:
        other = counterpart(unit)
        assert other is not None
        assert other.quantity == unit.quantity
        assert system_of(other) != system_of(unit)


# NIST SP 811 (2008), B.8: lbf·ft 1.355818 N·m, psi 6894.757 Pa, inch 25.4 mm, foot 0.3048 m,
# mile 1.609344 km, t/°F = 1.8·t/°C + 32; limits rounded inwards by hand.
WRITTEN = [
    ("25 ± 2 N·m", 0, "17.0 to 19.9 lbf·ft"),  # 16.964 to 19.914
    ("10 ± 1 N·m", 1, "6.64 to 8.11 lbf·ft"),  # 6.638 to 8.113
    ("at most 110 N·m", 0, "at most 81.1 lbf·ft"),  # 81.132
    ("80 lbf·ft", 0, "108 N·m"),  # 108.465
    ("at least 2.2 bar", 1, "at least 32 psi"),  # 31.908
    ("300 ± 20 kPa", 0, "40.7 to 46.4 psi"),  # 40.611 to 46.412
    ("0.7 to 1.3 mm", 1, "0.028 to 0.051 in"),  # 0.02756 to 0.05118
    ("-10 to 25 °C", 0, "14 to 77 °F"),
    ("50 km/h", 0, "31.1 mph"),  # 31.069
    ("30 psi", 0, "207 kPa"),  # 206.843
]


@pytest.mark.parametrize(("text", "places", "second"), WRITTEN)
def test_a_written_value_has_its_counterpart(text: str, places: int, second: str) -> None:
    """Shows each pair of units by published factors, the limits rounded inwards."""
    found = written_text(parse(text), places)
    assert found.first == text
    assert found.second == second


def test_a_value_that_all_readers_share_has_no_counterpart() -> None:
    """Shows that ohms and volts are printed once."""
    assert written_text(parse("860 ohm ± 10 %"), 0).second == ""


CONDITION = [
    ("temperature", 20.0, 20.0, "20 °C", "68 °F"), ("altitude", 0.0, 1500.0, "0 to 1500 m",
    "0 to 4921 ft"), ("air_pressure", 101_325.0, 101_325.0, "101 kPa", "29.9 inHg"),
    ("measured_pressure", 100e3, 100e3, "100 kPa", "14.5 psi"), ("supply", 12.0, 12.0, "12 V", ""),
    ("gap", 0.001, 0.001, "1 mm", "0.0394 in"), ("ambient", -40.0, -40.0, "−40 °C", "−40 °F"),
]  # fmt: skip


@pytest.mark.parametrize(("name", "low", "high", "first", "second"), CONDITION)
def test_a_condition_is_said_in_both(
    name: str, low: float, high: float, first: str, second: str
) -> None:
    """Shows conditions in both systems by NIST SP 811, B.8, to three figures."""
    found = condition_text(name, Interval(low, high))
    assert (found.first, found.second) == (first, second)
    assert name in CONDITIONS


def test_a_one_sided_condition_keeps_its_word() -> None:
    """Shows that "at least 80 °C" is "at least 176 °F" (1.8·80 + 32)."""
    assert written_condition("temperature", parse("at least 80 °C")).second == "at least 176 °F"


@given(
    unit=st.sampled_from(PAIRED),
    ends=st.tuples(st.floats(0.01, 1e6), st.floats(0.01, 1e6)),
    places=st.integers(0, 3),
)
def test_limits_are_rounded_inwards_in_each_system(
    unit: object, ends: tuple[float, float], places: int
) -> None:
    """Shows that a reading which passes the shown limits passes the true ones, in either unit."""
    assert hasattr(unit, "symbol")
    known = unit_named(unit.symbol)
    assert known is not None
    low, high = sorted(ends)
    assume(high > low * 1.000001)
    other = counterpart(known)
    assert other is not None
    for one, digits in ((known, places), (other, places_in(other, known, places))):
        first, _, last = limits_in(one, low, None, high, digits)
        base = base_unit(one.quantity)
        true_low, true_high = convert(low, base, one), convert(high, base, one)
        slack = 1e-11 * max(abs(true_low), abs(true_high))
        shown = [float(text.replace("−", "-")) for text in (first, last)]
        assert true_low - slack <= shown[0] < shown[1] <= true_high + slack


@given(unit=st.sampled_from(PAIRED), places=st.integers(0, 4))
def test_the_other_systems_digit_is_no_coarser(unit: object, places: int) -> None:
    """Shows that rounding inwards costs no reader more than the record's own last digit."""
    assert hasattr(unit, "symbol")
    known = unit_named(unit.symbol)
    assert known is not None
    other = counterpart(known)
    assert other is not None
    factor = abs(convert(1.0, known, other) - convert(0.0, known, other))
    assert 10.0 ** -places_in(other, known, places) <= factor * 10.0**-places * (1 + 1e-8)


class Systems(HTMLParser):
    """The texts that a page marks for each system."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.open: list[str] = []
        self.marked: dict[str, list[str]] = {"si": [], "us": []}
        self.feed(html)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Note what opens, and start a text where a system does."""
        if tag == "span":
            names = (dict(attrs).get("class") or "").split()
            system = next((n for n in names if n in self.marked), "")
            self.open.append(system)
            if system:
                self.marked[system].append("")

    def handle_endtag(self, tag: str) -> None:
        """Note what closes."""
        if tag == "span":
            self.open.pop()

    def handle_data(self, data: str) -> None:
        """Add to the text of the system that is open."""
        system = next((s for s in reversed(self.open) if s), "")
        if system:
            self.marked[system][-1] += data


US_UNITS = re.compile(r"(?:°F|lbf·ft|lbf·in|psi|inHg|mph|\bin|\bft)$")


def test_the_demonstration_marks_every_second_unit() -> None:
    """Shows as many texts in the one system as in the other, and no US unit outside its mark."""
    seen = 0
    for page in made().pages:
        marked = Systems(page.html).marked
        assert len(marked["si"]) == len(marked["us"])
        assert all(US_UNITS.search(text) for text in marked["us"])
        assert not any(US_UNITS.search(text) for text in marked["si"])
        seen += len(marked["us"])
    assert seen > 20


def test_each_row_of_a_table_has_both_systems() -> None:
    """Boyle's law on ISO 2533: 12 bar at sea level; 1500 m is 84 556 Pa, so 10.01 bar, 145 psi."""
    spec = spec_of({"name": "compression", "stated_at": "101.325 kPa"}, "12 ± 1 bar", places=1)
    found = spec.model_copy(update={
        "applies_to": ["corrie-1-2"], "component": "crank-sensor-inductive",
        "author": "technician", "owner": "technician",
    })  # fmt: skip
    found.named("specs", "compression")
    assert isinstance(found, Spec)
    view = value_view(book_of(with_record(whole().kb, found)), found)
    assert (view.system, view.unit, view.second_unit) == ("si", "bar", "psi")
    row = next(r for r in view.rows if r.conditions[0].first == "1500 m")
    assert row.conditions[0].second == "4921 ft"
    assert row.second is not None
    assert (row.nominal, row.second.nominal) == ("10.0", "145")
    assert (view.headline.first, view.headline.second) == ("12 ± 1 bar", "160 to 188 psi")
    assert all(r.second is not None for r in view.rows)
    html = str(environment().get_template("parts.html").module.value(view, lambda _: "#"))  # type: ignore[attr-defined]
    marked = Systems(html).marked
    cells = sum(bool(t) for r in view.rows for t in (r.low, r.nominal, r.high))
    # The headline, one condition a row, and every limit.
    assert len(marked["si"]) == len(marked["us"]) == 1 + len(view.rows) + cells
    assert "155 psi" in marked["us"]
