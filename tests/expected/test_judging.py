"""Verdicts: what a reading says with the meter's error taken in, and what it does not."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.expected import CannotExpect, Reading, Verdict, judge, read
from generator.expected.engine import unit_of
from generator.physics.deciding import USUAL_RISK
from generator.quantities import Interval, WrittenError
from generator.records.kinds.knowledge import Tool
from generator.records.kinds.things import Component, Spec
from tests.expected.samples import WHEEL, spec_of
from tests.hazards.build import made, manual

RANGES = [
    {"function": "resistance", "up_to": "200 ohm", "digit": "0.1 ohm", "percent": 0.9, "counts": 2},
    {"function": "resistance", "up_to": "2 kohm", "digit": "1 ohm", "percent": 0.8, "counts": 2},
    {"function": "resistance", "up_to": "20 Mohm", "digit": "10 kohm", "percent": 1.5, "counts": 5},
    {"function": "dc_volts", "up_to": "20 V", "digit": "10 mV", "percent": 0.5, "counts": 2},
    {"function": "ac_volts", "up_to": "2 V", "digit": "1 mV", "percent": 1.0, "counts": 5},
]  # fmt: skip


def meter(**fields: Any) -> Tool:
    """Give a multimeter; its leads are not taken off unless said otherwise."""
    tool: Tool = made(
        Tool, "tools", "meter", tool_class="multimeter", needs="To read.", calibrated=True,
        meter={"ranges": RANGES, "leads": "0.1 to 0.5 ohm", "input_resistance": "10 Mohm",
               **fields},
    )  # fmt: skip
    return tool


READER = made(
    Component, "components", "reader", fitted_to=["petrol-car"], does="Reads.",
    energies=["low_voltage_signal"], reads="wheel",
    location={"zone": "flywheel_end", "words": "above the wheel", "side": "below"},
)  # fmt: skip
BAND = spec_of("plain", "200 to 1200 ohm", id_="band", standing="plausibility_band")
WINDING = spec_of(
    {"name": "winding", "material": "copper"}, "860 ohm ± 10 %", at={"temperature": "20 °C"},
    band="band", source="some-sheet",
)  # fmt: skip
PRIMARY = spec_of("plain", "0.4 to 0.6 ohm", id_="primary")
FEED = spec_of("plain", "12.4 to 12.8 V", id_="feed")
INSULATION = spec_of("plain", "at least 1 Mohm", id_="insulation")
AT_20 = {"temperature": Interval.of(20.0)}


def asked(spec: Spec, text: str, conditions: Any = None, tool: Tool | None = None,
          **more: Any) -> Verdict:  # fmt: skip
    """Judge a reading as it was written down."""
    kb = manual(WHEEL, READER, BAND, spec)
    return judge(kb, spec, read(text, unit_of(spec)), conditions, tool, **more)


def remarks(verdict: Verdict) -> set[str]:
    """Give the codes of a verdict's remarks."""
    return {remark.code for remark in verdict.remarks}


@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("860", "in_limits"), ("0.86 kohm", "in_limits"), ("860 Ω", "in_limits"), ("5", "low"),
        ("1500", "high"), ("OL", "open"), ("-3", "implausible"), ("946", "cannot_tell"),
    ],
)  # fmt: skip
def test_each_verdict_is_given(text: str, word: str) -> None:
    """Shows all six verdicts on one winding: 774 to 946 ohm at 20 °C by arithmetic."""
    assert asked(WINDING, text, AT_20, meter()).word == word


def test_a_guarded_verdict_follows_the_published_figures() -> None:
    """JCGM 100, 4.3.7: 12.60 V ± (0.5 % + 2 counts of 10 mV) is a = 0.083 V, u = a/√3.

    JCGM 106, one side, 5 %: a guard band of 1.6449 standard uncertainties (closed form).
    """
    found = asked(FEED, "12.60", None, meter())
    assert found.measured is not None
    assert found.measured.u == pytest.approx(0.083 / 3**0.5, abs=1e-6)
    edge = 12.4 + 1.6449 * (0.005 * 12.4 + 0.02) / 3**0.5
    assert asked(FEED, f"{edge + 0.002:.4f}", None, meter()).word == "in_limits"
    assert asked(FEED, f"{edge - 0.002:.4f}", None, meter()).word == "cannot_tell"


def test_an_un_nulled_low_ohm_reading_decides_nothing() -> None:
    """JCGM 100: .5 Ω ± (.9 % + 2 counts of .1 Ω) is a = .2045 Ω, half the width of the limits."""
    found = asked(PRIMARY, "0.5", None, meter())
    assert found.word == "cannot_tell"
    assert {"null_leads", "drop_under_load", "better_meter"} <= remarks(found)
    nulled = asked(PRIMARY, "0.5", None, meter(), nulled=True)
    assert nulled.word == "cannot_tell", "the counts alone are too coarse"
    assert "null_leads" not in remarks(nulled)


def test_the_bare_figure_is_judged_only_where_no_meter_is_named() -> None:
    """Shows that a verdict without a meter says so, and one with it does not."""
    assert "bare_figure" in remarks(asked(WINDING, "860", AT_20))
    assert "bare_figure" not in remarks(asked(WINDING, "860", AT_20, meter()))


def test_the_unknown_temperature_decides_or_does_not() -> None:
    """Shows that −20 to 100 °C (725 to 1130 ohm nominal by IEC 60028) decides far out only."""
    found = asked(WINDING, "860", None, meter())
    assert found.word == "cannot_tell"
    assert "state_condition" in remarks(found)
    assert asked(WINDING, "2000", None, meter()).word == "high"
    known = asked(WINDING, "860", {"temperature": Interval(15.0, 25.0)}, meter())
    assert known.word == "in_limits", "a range is enough where the reading is in all over it"


def test_the_vehicles_own_value_wins_over_the_band() -> None:
    """IEC 60028: 860·1.3144 = 1130 ohm at 100 °C, +10 % is 1243: above the band's 1200."""
    found = asked(WINDING, "1215", {"temperature": Interval.of(100.0)}, meter())
    assert found.word == "in_limits"
    assert "outside_band" in remarks(found)


def test_a_band_never_condemns_and_never_clears() -> None:
    """Shows that inside a band proves nothing and outside it is implausible, never low."""
    inside, outside = asked(BAND, "860", None, meter()), asked(BAND, "20", None, meter())
    assert (inside.word, outside.word) == ("cannot_tell", "implausible")
    assert "band_proves_nothing" in remarks(inside)
    assert asked(BAND, "OL", None, meter()).word == "implausible"


def test_over_range_means_open_only_above_the_limit() -> None:
    """Shows OL on a meter that reaches, on one that does not, and where no limit is above."""
    low = meter(ranges=RANGES[:1])
    assert asked(WINDING, "OL", AT_20, low).word == "cannot_tell"
    assert "higher_range" in remarks(asked(WINDING, "OL", AT_20, low))
    assert asked(INSULATION, "OL", None, meter()).word == "in_limits"
    assert asked(INSULATION, "OL", None, low).word == "cannot_tell"
    assert asked(INSULATION, "OL").word == "cannot_tell"
    assert asked(FEED, "OL", None, meter()).word == "cannot_tell"


def test_in_limits_says_what_it_does_not_prove() -> None:
    """Shows the fault asleep, the part that fails hot, and the limit that is only practice."""
    cold = asked(WINDING, "860", AT_20, meter())
    hot = asked(WINDING, "1100", {"temperature": Interval.of(90.0)}, meter())
    assert {"asleep", "fails_hot"} <= remarks(cold)
    assert "fails_hot" not in remarks(hot)
    assert "practice" in remarks(asked(FEED, "12.6", None, meter()))


def test_a_slip_of_the_unit_is_suspected_first() -> None:
    """Shows that 0.86 ohm on an 860 ohm winding asks for the unit before the part."""
    assert "unit_slip" in remarks(asked(WINDING, "0.86", AT_20, meter()))
    assert "unit_slip" not in remarks(asked(WINDING, "5", AT_20, meter()))


def test_an_average_responding_meter_has_limits_of_its_own() -> None:
    """Shows that a gap makes a scaled mean read low: 1.11072·mean|x| of a sine is its RMS.

    A 60−2 wheel loses 2 of 60 periods: the mean falls by 1/30, the RMS by its root (closed form,
    a sine that stops dead at the gap, so to one percent).
    """
    model = {"name": "pickup_volts", "slowest": "100 rpm", "fastest": "900 rpm"}
    spec = spec_of(model, "0.9 V ± 30 %", at={"engine_speed": "200 rpm"}, component="reader")
    at = {"engine_speed": Interval.of(200.0)}
    true_rms = asked(spec, "0.9", at, meter())
    average = asked(spec, "0.9", at, meter(ac_reading="average"))
    assert true_rms.expectation.high == pytest.approx(1.17)
    assert average.expectation.high == pytest.approx(1.17 * (58 / 60) ** 0.5, rel=0.01)
    lone = spec.model_copy(update={"component": "sensor"})
    lone.named("specs", "lone")
    unknown = asked(lone, "0.9", at, meter(ac_reading="average"))
    assert (unknown.word, remarks(unknown)) == ("cannot_tell", {"true_rms"})


def test_a_meters_load_is_taken_into_account() -> None:
    """Closed form: 1 MΩ in front of 10 MΩ shows 10/11 of the voltage; 4.545 V is 5 V."""
    spec = spec_of("plain", "4.9 to 5.1 V", circuit_resistance="1 Mohm")
    assert asked(spec, "4.545", None, meter()).word == "in_limits"
    assert asked(spec, "4.545").word == "low", "without a meter nothing is corrected"
    pull_up = spec_of({"name": "pull_up", "pull_up": "5 V", "resistor": "1 Mohm",
                       "meter": "1000 Mohm"})  # fmt: skip
    assert asked(pull_up, "4.545", None, meter()).expectation.nominal == pytest.approx(5 * 10 / 11)


def test_an_instrument_that_cannot_read_it_is_refused() -> None:
    """Shows that a meter without a range, or without a word on its error, gives no verdict."""
    pressure = spec_of("plain", "3 ± 0.2 bar")
    with pytest.raises(CannotExpect, match="no range for pressure"):
        asked(pressure, "3", None, meter())
    blank = meter().model_copy(update={"meter": None})
    with pytest.raises(CannotExpect, match="says nothing"):
        asked(pressure, "3", None, blank)


@pytest.mark.parametrize("text", ["800 to 900", "5 V", "about 860", "860 ohm ± 1 %", ""])
def test_what_is_no_reading_is_refused(text: str) -> None:
    """Shows that a range, another quantity and a guess are no reading."""
    with pytest.raises(WrittenError):
        read(text, unit_of(WINDING))


@given(st.floats(1, 5000), st.floats(-20, 100))
def test_a_verdict_never_risks_more_than_it_says(ohm: float, temp_c: float) -> None:
    """Shows for any reading: a verdict's probability is 95 % and more, and low lies below high."""
    kb = manual(WHEEL, BAND, WINDING)
    at = {"temperature": Interval.of(temp_c)}
    found = judge(kb, WINDING, Reading(f"{ohm}", ohm), at, meter())
    assert found.word != "open"
    if found.word in ("in_limits", "low", "high"):
        assert found.probability >= 1 - USUAL_RISK - 1e-9
    if found.word == "low":
        assert ohm < (found.expectation.low or 0)
    if found.word == "high":
        assert ohm > (found.expectation.high or 0)


def test_a_printed_curve_that_turns_is_judged_at_its_turn() -> None:
    """Shows that 9 V, in limits at both ends (8 to 10), is not so at a row between (11 to 13)."""
    rows = [{"at": f"{t} °C", "value": f"{v} ± 1 V"} for t, v in ((0, 9), (30, 12), (100, 9))]
    curve = spec_of({"name": "curve", "over": "temperature", "interpolation": "linear",
                     "rows": rows})  # fmt: skip
    assert asked(curve, "9").word == "cannot_tell"
    assert asked(curve, "9", {"temperature": Interval.of(0.0)}).word == "in_limits"


@pytest.mark.parametrize("text", ["0.86k", "860 ohm", "0,86 kohm", "860Ω", "0.86 KOHM"])
def test_a_reading_may_be_typed_as_the_meter_shows_it(text: str) -> None:
    """Shows one reading in limits in five ways of typing it."""
    assert asked(WINDING, text, AT_20, meter()).word == "in_limits"


def test_a_comma_that_may_mark_thousands_gives_no_verdict() -> None:
    """Shows that 1,200 is refused and its two meanings named, instead of one being guessed."""
    with pytest.raises(WrittenError, match=r"1200 or 1\.200"):
        asked(WINDING, "1,200", AT_20, meter())
