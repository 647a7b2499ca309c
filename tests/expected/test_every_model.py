"""What holds for every model a record may name."""

from __future__ import annotations

import random
from math import inf

import pytest
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

from generator.expected import MODELS, CannotExpect, expect, needs, problems, table
from generator.expected.result import CONDITIONS
from generator.quantities import Interval, unit_named
from generator.records.kinds.things import Conditions, Spec
from tests.expected.samples import SAMPLES, WHEEL
from tests.hazards.build import manual

KB = manual(WHEEL, *SAMPLES)
# Points, and the boxes of conditions that they are drawn from.
FEW, MANY = (500, 5), (10_000, 20)
by_model = pytest.mark.parametrize("spec", SAMPLES, ids=lambda spec: spec.model.name)
FOLLOWING = [spec for spec in SAMPLES if needs(KB, spec)]
by_condition = pytest.mark.parametrize("spec", FOLLOWING, ids=lambda spec: spec.model.name)


def test_there_is_a_sample_of_every_model() -> None:
    """Shows that no model escapes the tests below."""
    assert {spec.model.name for spec in SAMPLES} == set(MODELS)


def test_every_condition_can_be_written_and_shown() -> None:
    """Shows that the record's field, the unit of a page and the question belong together."""
    assert set(CONDITIONS) == set(Conditions.model_fields) - {"state"}
    for known in CONDITIONS.values():
        unit = unit_named(known.unit)
        assert unit is not None
        assert unit.quantity == known.quantity


@by_model
def test_a_sound_record_has_no_finding(spec: Spec) -> None:
    """Shows that every sample gives its limits over its usual conditions and in every row."""
    assert [p for p in problems(KB) if p.record == spec.key] == []
    rows = table(KB, spec)
    assert rows
    assert all(row.trail and all(line.source for line in row.trail) for row in rows)
    assert len({len(row.trail) for row in rows}) == 1, "rows lay their workings side by side"


@by_model
def test_limits_hold_the_nominal_and_end_the_trail(spec: Spec) -> None:
    """Shows low ≤ nominal ≤ high, and that the working is the working of these limits."""
    for found in (*table(KB, spec), expect(KB, spec)):
        sides = [v for v in (found.low, found.nominal, found.high) if v is not None]
        assert sides == sorted(sides)
        shown = {v for line in found.trail for v in line.figures}
        assert {v for v in (found.low, found.high) if v is not None} <= shown


@by_condition
def test_a_range_of_conditions_holds_points_within_it(spec: Spec) -> None:
    """Shows that hundreds of random points lie inside the interval's limits, for each model."""
    _holds(spec, *FEW)


@pytest.mark.soak
@by_condition
def test_a_range_of_conditions_holds_every_point_within_it(spec: Spec) -> None:
    """Shows that 10,000 random points lie inside the interval's limits, for each model."""
    _holds(spec, *MANY)


def test_an_interval_that_ends_in_the_jump_of_the_cell_holds_what_lies_in_it() -> None:
    """Shows the oxygen cell's limits over ranges that end within 0.005 of λ = 1, or touch it."""
    cell = next(s for s in SAMPLES if s.model.name == "oxygen_cell")
    hot = Interval(620.0, 780.0)
    for low, high in ((97.0, 99.7), (99.4, 99.6), (99.8, 100.2), (100.0, 100.0), (100.3, 104.0)):
        _inside(cell, {"air_ratio": Interval(low, high), "temperature": hot}, 300, random.Random(1))


def _holds(spec: Spec, points: int, boxes: int) -> None:
    draw = random.Random(spec.model.name)
    for _ in range(boxes):
        span = {
            name: Interval(*sorted((draw.uniform(c.low, c.high), draw.uniform(c.low, c.high))))
            for name, c in needs(KB, spec).items()
        }
        _inside(spec, span, points // boxes, draw)


def _inside(spec: Spec, span: dict[str, Interval], points: int, draw: random.Random) -> None:
    whole = expect(KB, spec, span)
    low, high = _ends(whole.low, whole.high)
    for _ in range(points):
        at = {n: Interval.of(draw.uniform(c.low, c.high)) for n, c in span.items()}
        here = expect(KB, spec, at)
        slack = 1e-9 * max(abs(v) for v in (here.low, here.high) if v is not None)
        assert low - slack <= _ends(here.low, here.high)[0]
        assert _ends(here.low, here.high)[1] <= high + slack


def _ends(low: float | None, high: float | None) -> tuple[float, float]:
    return -inf if low is None else low, inf if high is None else high


RISING = {
    "winding": "temperature", "pickup_volts": "engine_speed", "pickup_loaded": "engine_speed",
    "tooth_rate": "engine_speed", "injector_duty": "engine_speed", "platinum": "temperature",
    "coil_current": "supply", "coil_flyback": "supply", "cold_soak": "ambient",
    "potentiometer": "travel", "transducer": "measured_pressure", "cable_drop": "temperature",
    "cable_resistance": "temperature", "drop_budget": "temperature", "heater_current": "supply",
    "battery_rest": "state_of_charge", "battery_load_bank": "temperature",
    "battery_cranking": "temperature", "fuel_pressure": "manifold_pressure",
}  # fmt: skip
FALLING = {
    "thermistor_points": "temperature", "thermistor_beta": "temperature",
    "thermistor_table": "temperature", "divider": "temperature", "coil_dwell": "supply",
    "battery_charging": "temperature", "standing_drain": "current",
    "battery_discharge": "current", "station_pressure": "altitude", "key_on_pressure": "altitude",
    "compression": "altitude", "oxygen_cell": "air_ratio",
}  # fmt: skip


@pytest.mark.parametrize(
    ("spec", "sign"),
    [(s, 1) for s in SAMPLES if s.model.name in RISING]
    + [(s, -1) for s in SAMPLES if s.model.name in FALLING],
    ids=lambda value: value.model.name if isinstance(value, Spec) else str(value),
)
@settings(max_examples=30, suppress_health_check=[HealthCheck.function_scoped_fixture])
@example(shares=(1.0, 0.3125))  # from within the leap of the oxygen cell to lean of it
@given(shares=st.tuples(st.floats(0, 1), st.floats(0, 1)))
def test_limits_follow_a_condition_the_way_physics_says(
    spec: Spec, sign: int, shares: tuple[float, float]
) -> None:
    """Shows that each limit rises, or falls, all along the condition it follows."""
    name = (RISING if sign > 0 else FALLING)[spec.model.name]
    usual = needs(KB, spec)
    span = usual[name]
    at = [span.low + share * (span.high - span.low) for share in sorted(shares)]
    one, two = (expect(KB, spec, {name: Interval.of(min(x, span.high))}) for x in at)
    for side in ("low", "nominal", "high"):
        first, second = getattr(one, side), getattr(two, side)
        if first is not None and second is not None:
            assert sign * (second - first) >= -1e-9 * abs(first)


@by_condition
def test_far_beyond_its_range_a_model_gives_no_figure(spec: Spec) -> None:
    """Shows that a condition no vehicle meets gets a refusal with a hint, never a figure."""
    for name in needs(KB, spec):
        with pytest.raises(CannotExpect) as refused:
            expect(KB, spec, {name: Interval.of(1e9)})
        assert refused.value.hint
