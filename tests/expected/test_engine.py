"""Specs and conditions to limits: what is taken, what is refused, and what the trail says."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.expected import CannotExpect, Expectation, expect, problems, table
from generator.quantities import Interval
from generator.records.kinds.things import Component, Spec
from generator.records.knowledge_base import KnowledgeBase
from tests.hazards.build import made, manual

WHEEL = made(
    Component, "components", "wheel", fitted_to=["petrol-car"], does="Is read.",
    energies=["rotating"], wheel={"positions": 60, "missing": 2},
    location={"zone": "flywheel_end", "words": "on the flywheel", "side": "below"},
)  # fmt: skip


def value(id_: str = "value", **fields: Any) -> Spec:
    """Give a spec; a winding unless said otherwise."""
    given_ = {
        "quantity": "resistance", "standing": "vehicle_value", "value": "860 ohm ± 10 %",
        "at": {"temperature": "20 °C"}, "model": {"name": "winding", "material": "copper"},
        **fields,
    }  # fmt: skip
    spec: Spec = made(
        Spec, "specs", id_, applies_to=["petrol-car"], component="sensor", method="At the plug.",
        source="common-practice", **given_,
    )  # fmt: skip
    return spec


def with_(*specs: Spec) -> KnowledgeBase:
    """Give a manual with a toothed wheel and these specs."""
    return manual(WHEEL, *specs)


def at(spec: Spec, **conditions: float | tuple[float, float]) -> Expectation:
    """Expect a spec under conditions in base units."""
    given_ = {
        name: Interval(*c) if isinstance(c, tuple) else Interval.of(c)
        for name, c in conditions.items()
    }
    return expect(with_(spec), spec, given_)


def codes_of(spec: Spec) -> list[str]:
    """Give the codes of the findings on one spec."""
    return [p.code for p in problems(with_(spec)) if p.record == spec.key]


def test_a_range_of_temperature_covers_both_ends() -> None:
    """Shows that a range gives the low limit of its cold end and the high one of its hot end."""
    whole = at(value(), temperature=(0.0, 80.0))
    assert whole.low == at(value(), temperature=0.0).low
    assert whole.high == at(value(), temperature=80.0).high


def test_an_unstated_condition_takes_its_usual_range_and_says_so() -> None:
    """Shows that nothing is assumed in silence."""
    whole = expect(with_(value()), value())
    assert whole.assumed == ("temperature",)
    assert whole.conditions["temperature"] == Interval(-20.0, 100.0)
    assert not at(value(), temperature=20.0).assumed


@given(st.floats(-20, 100), st.floats(-20, 100))
def test_limits_rise_with_temperature_and_hold_the_nominal(one_c: float, other_c: float) -> None:
    """Shows that a copper winding's limits rise with its temperature, the nominal between them."""
    cold, hot = sorted((one_c, other_c))
    low, high = at(value(), temperature=cold), at(value(), temperature=hot)
    for name in ("low", "nominal", "high"):
        assert getattr(low, name) <= getattr(high, name)
    assert low.low <= low.nominal <= low.high  # type: ignore[operator]


def test_a_condition_the_value_does_not_follow_is_refused() -> None:
    """Shows that a condition that changes nothing is not swallowed."""
    with pytest.raises(CannotExpect, match="does not change this value"):
        at(value(), engine_speed=200.0)
    with pytest.raises(CannotExpect, match="is no condition"):
        at(value(), moon_phase=1.0)


def test_beyond_the_models_range_there_is_no_figure() -> None:
    """Shows that a model is never stretched beyond its source."""
    with pytest.raises(CannotExpect, match="outside") as refused:
        at(value(), temperature=900.0)
    assert "stay within" in refused.value.hint


def test_a_band_is_never_corrected() -> None:
    """Shows that a plausibility band with a model that corrects it is refused."""
    band = value(standing="plausibility_band", value="200 to 1200 ohm")
    with pytest.raises(CannotExpect, match="never corrected"):
        at(band, temperature=80.0)


def test_a_one_sided_value_keeps_its_open_side() -> None:
    """Shows that "at least" gives no high limit and "at most" no low one."""
    least = value(value="at least 1 Mohm", model={"name": "plain"}, at={})
    most = value(value="at most 0.3 ohm", model={"name": "plain"}, at={})
    assert (at(least).low, at(least).high) == (1e6, None)
    assert (at(most).low, at(most).high) == (None, 0.3)


def test_the_trail_starts_with_what_was_written_and_ends_with_the_limits() -> None:
    """Shows that the working is the working of these very limits."""
    found = at(value(), temperature=80.0)
    assert found.trail[0].how == "860 ohm ± 10 %"
    assert found.trail[-1].figures == (found.low, found.nominal, found.high)
    assert all(line.source for line in found.trail)


def test_table_rows_are_the_expectations_themselves() -> None:
    """Shows that the table of a page comes from the same computation as a single question."""
    kb, spec = with_(value()), value()
    for row in table(kb, spec):
        assert row == expect(kb, spec, row.conditions)


def test_a_winding_without_its_reference_temperature_is_a_finding() -> None:
    """Shows that a value that follows temperature must say at which one it was written."""
    assert codes_of(value(at={})) == ["no-reference-condition"]
    assert codes_of(value()) == []


def test_a_wheel_that_is_none_is_a_finding() -> None:
    """Shows that a tooth rate needs a component with teeth; a real wheel gives no finding."""
    good = value("rate", value=None, at={}, model={"name": "tooth_rate", "wheel": "wheel"})
    bad = value("rate", value=None, at={}, model={"name": "tooth_rate", "wheel": "sensor"})
    assert codes_of(good) == []
    assert codes_of(bad) == ["no-expectation"]
