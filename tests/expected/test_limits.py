"""Limits shipped to the page: within their stated error of the model, and fine enough to show."""

from __future__ import annotations

import json
from math import isclose

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.expected import MODELS, expect, needs
from generator.expected.judging import judge
from generator.expected.limits import curves, interpolate, limits_over
from generator.expected.readings import Reading
from generator.quantities import Interval
from generator.records.kinds.things import Spec
from tests.expected.samples import SAMPLES, WHEEL
from tests.hazards.build import manual

KB = manual(WHEEL, *SAMPLES)
CURVED = [spec for spec in SAMPLES if not MODELS[spec.model.name].jumps]


@pytest.mark.parametrize("spec", CURVED, ids=lambda spec: spec.model.name)
@settings(max_examples=60)
@given(data=st.data())
def test_interpolated_limits_stay_within_their_error(spec: Spec, data: st.DataObject) -> None:
    """Shows that the browser's figures are the model's to the error that is shipped with them."""
    shipped = _shipped(spec)
    at = [data.draw(st.floats(axis["knots"][0], axis["knots"][-1])) for axis in shipped["axes"]]
    names = [axis["name"] for axis in shipped["axes"]]
    here = expect(KB, spec, {n: Interval.of(x) for n, x in zip(names, at, strict=True)})
    for side in ("low", "nominal", "high"):
        exact, read = getattr(here, side), interpolate(shipped, side, at)
        assert (exact is None) == (read is None)
        if exact is not None and read is not None:
            assert abs(exact - read) <= shipped["max_error"]


_cache: dict[str, dict[str, object]] = {}


def _shipped(spec: Spec):
    if spec.id not in _cache:
        made = curves(KB, spec)
        assert made is not None
        _cache[spec.id] = json.loads(json.dumps(made))
    return _cache[spec.id]


@pytest.mark.parametrize("spec", CURVED, ids=lambda spec: spec.model.name)
def test_shipped_curves_are_fine_enough_for_the_display(spec: Spec) -> None:
    """Shows that the stated error is below the last digit shown, and the data small."""
    shipped = _shipped(spec)
    factor = abs(shipped["unit"]["factor"])
    assert shipped["max_error"] * factor < 10.0**-spec.places
    sizes = [len(axis["knots"]) for axis in shipped["axes"]]
    assert all(sizes)
    assert len(json.dumps(shipped)) < 150_000


def test_a_model_that_jumps_ships_no_curve() -> None:
    """Shows that no line is drawn through the oxygen cell's jump."""
    spec = next(s for s in SAMPLES if s.model.name == "oxygen_cell")
    assert curves(KB, spec) is None


def test_nothing_is_interpolated_beyond_the_last_knot() -> None:
    """Shows that the reader's calculator refuses what the model was not asked."""
    shipped = _shipped(next(s for s in SAMPLES if s.model.name == "winding"))
    with pytest.raises(ValueError, match="outside"):
        interpolate(shipped, "low", [101.0])


@pytest.mark.parametrize("spec", CURVED, ids=lambda spec: spec.model.name)
@settings(max_examples=25)
@given(data=st.data())
def test_limits_over_a_range_stay_within_their_error(spec: Spec, data: st.DataObject) -> None:
    """Shows outer and sure limits over ranges of the conditions, against the model's own."""
    shipped = _shipped(spec)
    spans: list[tuple[float, float]] = []
    for axis in shipped["axes"]:
        ends = st.floats(*axis["usual"])
        one, two = data.draw(ends), data.draw(ends)
        spans.append((min(one, two), max(one, two)))
    given_ = {
        axis["name"]: Interval(*span) for axis, span in zip(shipped["axes"], spans, strict=True)
    }
    found = limits_over(shipped, spans)
    verdict = judge(KB, spec, Reading("OL", None, over_range=True), given_)
    exact = {
        "low": verdict.expectation.low, "high": verdict.expectation.high,
        "sure_low": verdict.sure_low, "sure_high": verdict.sure_high,
    }  # fmt: skip
    for side, wanted in exact.items():
        got = found[side]
        assert (got is None) == (wanted is None)
        if got is not None and wanted is not None:
            assert abs(got - wanted) <= shipped["max_error"]


def test_samples_follow_none_one_and_two_conditions() -> None:
    """Shows that the tests above meet every count of axes that a model has."""
    assert {len(_shipped(spec)["axes"]) for spec in CURVED} == {0, 1, 2}
    for spec in CURVED:
        usual = needs(KB, spec)
        assert [a["name"] for a in _shipped(spec)["axes"]] == list(usual)
        assert [a["usual"] for a in _shipped(spec)["axes"]] == [
            [span.low, span.high] for span in usual.values()
        ]


def test_units_of_shipped_curves_are_straight_lines() -> None:
    """Shows 20 °C as 68 °F by the factor and offset that are shipped (NIST SP 811, B.8)."""
    spec = next(s for s in SAMPLES if s.model.name == "cold_soak").model_copy(update={"unit": "°F"})
    spec.named("specs", "cold-soak")
    made = curves(KB, spec)
    assert made is not None
    assert isclose(20.0 * made["unit"]["factor"] + made["unit"]["offset"], 68.0)
