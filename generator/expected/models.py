"""How each model named by a record turns its value and the conditions into limits.

A model here is thin: it takes the record's intervals, asks `physics`, and writes the working
down. Every one says which conditions it needs, the range it takes where nobody stated one, and
the rows a mechanic meets.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from generator.expected.result import Conditions, Limits, TrailLine
from generator.physics import pickup, switching, wheels, windings
from generator.quantities import Interval, Written, base_unit
from generator.records.kinds.things import (
    Component,
    PickupModel,
    PullUpModel,
    Spec,
    SquareMeanModel,
    WindingModel,
)
from generator.records.knowledge_base import KnowledgeBase

WINDING_ROWS_C = (-20.0, 0.0, 20.0, 40.0, 60.0, 80.0, 100.0)
"""Temperatures of a sensor beside an engine, from a winter's night to a hot stop (practice)."""

CRANKING_ROWS_RPM = (150.0, 200.0, 250.0, 300.0)
"""Cranking speeds of a healthy petrol engine, cold to warm (practice)."""

IDLE_ROW_RPM = 800.0
"""A warm idle (practice)."""


@dataclass(frozen=True, slots=True)
class ModelUse:
    """One model: what it needs, what it takes for granted and how it works."""

    needs: tuple[str, ...]
    usual: Callable[[Spec], Conditions]
    rows: Callable[[Spec], Sequence[Conditions]]
    limits: Callable[[KnowledgeBase, Spec, Conditions], Limits]


def _written(spec: Spec) -> Written:
    if spec.value is None:
        raise ValueError(f"{spec.key} has no written value")
    value: Written = spec.value
    return value


def _as_written(spec: Spec) -> TrailLine:
    value = _written(spec)
    figures = tuple(v for v in (value.low, value.nominal, value.high) if v is not None)
    unit = base_unit(value.quantity).symbol
    return TrailLine("Written value", value.text, figures, unit, spec.source)


def _nothing(_spec: Spec) -> Conditions:
    return {}


def _one_row(_spec: Spec) -> Sequence[Conditions]:
    return ({},)


def _plain(_kb: KnowledgeBase, spec: Spec, _given: Conditions) -> Limits:
    value = _written(spec)
    return Limits(value.low, value.nominal, value.high, (_as_written(spec),))


def _winding(_kb: KnowledgeBase, spec: Spec, given: Conditions) -> Limits:
    model, value = spec.model, _written(spec)
    assert isinstance(model, WindingModel)
    at_c = given["temperature"]
    ref_c = spec.at.temperature.only if spec.at.temperature else windings.ALPHA_REF_C

    def ohm(nominal_ohm: float | None, temp_c: float) -> float | None:
        if nominal_ohm is None:
            return None
        return float(windings.winding_ohm(nominal_ohm, temp_c, ref_c, model.material))

    low, high = ohm(value.low, at_c.low), ohm(value.high, at_c.high)
    nominal = ohm(value.nominal, at_c.middle)
    alpha = float(windings.temperature_coefficient_per_k(ref_c, model.material))
    factors = tuple(1 + alpha * (temp_c - ref_c) for temp_c in sorted({at_c.low, at_c.high}))
    trail = (
        _as_written(spec),
        TrailLine(
            f"Temperature coefficient of {model.material} at {ref_c:g} °C",
            "α", (alpha,), "1/K", "IEC 60028",
        ),
        TrailLine(
            "Factor for the part's temperature", f"1 + α·(t − {ref_c:g} °C)", factors, "",
            "IEC 60028",
        ),
        TrailLine(
            "Limits at that temperature", "R = R_ref·(1 + α·(t − t_ref))",
            tuple(v for v in (low, nominal, high) if v is not None), "ohm",
            "NBS Handbook 100 (1966)",
        ),
    )  # fmt: skip
    return Limits(low, nominal, high, trail)


def _pickup_volts(_kb: KnowledgeBase, spec: Spec, given: Conditions) -> Limits:
    model, value = spec.model, _written(spec)
    assert isinstance(model, PickupModel)
    if spec.at.engine_speed is None:
        raise ValueError("a pickup's volts are written at an engine speed")
    at_rpm, ref_rpm = given["engine_speed"], spec.at.engine_speed.only

    def volts(ref_v: float | None, speed_rpm: float) -> float | None:
        if ref_v is None:
            return None
        return float(pickup.pickup_volts(ref_v, ref_rpm, speed_rpm))

    low, high = volts(value.low, at_rpm.low), volts(value.high, at_rpm.high)
    nominal = volts(value.nominal, at_rpm.middle)
    ratios = tuple(speed / ref_rpm for speed in sorted({at_rpm.low, at_rpm.high}))
    trail = (
        _as_written(spec),
        TrailLine(
            "Speed against the reference", f"n / {ref_rpm:g} rpm", ratios, "", "Faraday's law"
        ),
        TrailLine(
            "Limits at that speed", "V = V_ref·n / n_ref",
            tuple(v for v in (low, nominal, high) if v is not None), "V", "Faraday's law",
        ),
    )  # fmt: skip
    return Limits(low, nominal, high, trail)


def _tooth_rate(kb: KnowledgeBase, spec: Spec, given: Conditions) -> Limits:
    wheel_id = getattr(spec.model, "wheel", None)
    component = kb.get("components", str(wheel_id), Component)
    wheel = component.wheel
    if wheel is None:
        raise ValueError(f"components/{component.id} has no wheel")
    at_rpm = given["engine_speed"]
    rates = [
        float(wheels.tooth_frequency_hz(speed, wheel.positions))
        for speed in (at_rpm.low, at_rpm.middle, at_rpm.high)
    ]
    counted = tuple(
        float(wheels.counted_frequency_hz(speed, wheel.positions, wheel.missing))
        for speed in sorted({at_rpm.low, at_rpm.high})
    )
    trail = (
        TrailLine(
            f"Wheel {component.title}", "positions, gaps included", (float(wheel.positions),), "",
            spec.source,
        ),
        TrailLine(
            "Tooth rate between the gaps", "f = positions·n / 60", (rates[0], rates[2]), "Hz",
            "arithmetic",
        ),
        TrailLine(
            f"What a counter shows, which sees {wheel.positions - wheel.missing} teeth",
            "(positions − missing)·n / 60", counted, "Hz", "arithmetic",
        ),
    )  # fmt: skip
    # A counter that averages shows the lower figure, an oscilloscope between two teeth the upper.
    return Limits(min(counted), rates[1], rates[2], trail)


def _pull_up(_kb: KnowledgeBase, spec: Spec, _given: Conditions) -> Limits:
    model = spec.model
    assert isinstance(model, PullUpModel)
    resistor_ohm = model.resistor.high if model.resistor.high is not None else 0.0
    meter_ohm = model.meter.low if model.meter.low is not None else float("inf")

    def volts(pull_up_v: float | None) -> float | None:
        if pull_up_v is None:
            return None
        return float(switching.high_level_v(pull_up_v, resistor_ohm, meter_ohm))

    low, nominal, high = map(volts, (model.pull_up.low, model.pull_up.nominal, model.pull_up.high))
    trail = (
        TrailLine(
            "Voltage behind the pull-up", model.pull_up.text,
            tuple(v for v in (model.pull_up.low, model.pull_up.high) if v is not None), "V",
            spec.source,
        ),
        TrailLine(
            "Level with the output open and the meter on it",
            "V = V_pu·R_meter / (R_pu + R_meter)",
            tuple(v for v in (low, nominal, high) if v is not None), "V", "Kirchhoff's laws",
        ),
    )  # fmt: skip
    return Limits(low, nominal, high, trail)


def _square_mean(_kb: KnowledgeBase, spec: Spec, _given: Conditions) -> Limits:
    model = spec.model
    assert isinstance(model, SquareMeanModel)
    corners = {
        name: (
            value.low if value.low is not None else 0.0,
            value.nominal if value.nominal is not None else _middle(value),
            value.high if value.high is not None else 0.0,
        )
        for name, value in (("high", model.high), ("low", model.low), ("duty", model.duty))
    }
    share = tuple(percent / 100 for percent in corners["duty"])
    low, nominal, high = switching.mean_level_band(
        corners["high"], corners["low"], (share[0], share[1], share[2])
    )
    trail = (
        TrailLine(
            "Levels and duty",
            f"high {model.high.text}, low {model.low.text}, duty {model.duty.text}",
            (), "", spec.source,
        ),
        TrailLine(
            "Mean, as a DC meter shows it", "V = V_high·d + V_low·(1 − d)", (low, nominal, high),
            "V", "arithmetic mean",
        ),
    )  # fmt: skip
    return Limits(low, nominal, high, trail)


def _middle(value: Written) -> float:
    low = value.low if value.low is not None else 0.0
    high = value.high if value.high is not None else low
    return (low + high) / 2


def _winding_usual(_spec: Spec) -> Conditions:
    return {"temperature": Interval(WINDING_ROWS_C[0], WINDING_ROWS_C[-1])}


def _winding_rows(_spec: Spec) -> Sequence[Conditions]:
    return [{"temperature": Interval.of(temp_c)} for temp_c in WINDING_ROWS_C]


def _pickup_usual(spec: Spec) -> Conditions:
    model = spec.model
    assert isinstance(model, PickupModel)
    return {"engine_speed": Interval(model.slowest.only, model.fastest.only)}


def _pickup_rows(spec: Spec) -> Sequence[Conditions]:
    usual = _pickup_usual(spec)["engine_speed"]
    speeds = sorted({usual.low, *CRANKING_ROWS_RPM, usual.high})
    return [{"engine_speed": Interval.of(s)} for s in speeds if usual.low <= s <= usual.high]


def _rate_usual(_spec: Spec) -> Conditions:
    return {"engine_speed": Interval(CRANKING_ROWS_RPM[0], CRANKING_ROWS_RPM[-1])}


def _rate_rows(_spec: Spec) -> Sequence[Conditions]:
    return [{"engine_speed": Interval.of(s)} for s in (*CRANKING_ROWS_RPM, IDLE_ROW_RPM)]


MODELS: dict[str, ModelUse] = {
    "plain": ModelUse((), _nothing, _one_row, _plain),
    "winding": ModelUse(("temperature",), _winding_usual, _winding_rows, _winding),
    "pickup_volts": ModelUse(("engine_speed",), _pickup_usual, _pickup_rows, _pickup_volts),
    "tooth_rate": ModelUse(("engine_speed",), _rate_usual, _rate_rows, _tooth_rate),
    "pull_up": ModelUse((), _nothing, _one_row, _pull_up),
    "square_mean": ModelUse((), _nothing, _one_row, _square_mean),
}
"""Every model a record may name."""
