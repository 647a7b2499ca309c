"""Speed and position sensors: inductive pickups, and the wheels they read."""

from __future__ import annotations

from collections.abc import Sequence

from generator.expected.models.use import (
    About,
    ModelUse,
    always,
    as_written,
    ends,
    figures,
    model_of,
    reference,
    scaled,
    written,
)
from generator.expected.result import BadSpec, Conditions, Limits, TrailLine
from generator.physics import pickup, wheels
from generator.quantities import Interval
from generator.records.kinds.models import (
    LoadedPickupModel,
    PickupModel,
    ToothRateModel,
)
from generator.records.kinds.things import Component, Spec, Wheel
from generator.records.knowledge_base import KnowledgeBase

CRANKING_ROWS_RPM = (150.0, 200.0, 250.0, 300.0)
"""Cranking speeds of a healthy petrol engine, cold to warm (practice)."""

IDLE_ROW_RPM = 800.0
"""A warm idle (practice)."""


def wheel_of(kb: KnowledgeBase, component_id: str) -> Wheel:
    """Give the toothed wheel that a model names."""
    component = kb.get("components", component_id, Component)
    if component.wheel is None:
        raise BadSpec(
            f"components/{component.id} has no wheel", "name a component that has one",
            ("model", "wheel"),
        )  # fmt: skip
    return component.wheel


def _pickup_volts(_kb: KnowledgeBase, spec: Spec, given: Conditions) -> Limits:
    value, at_rpm = written(spec), given["engine_speed"]
    ref_rpm = reference(spec, "engine_speed")

    def volts(ref_v: float, speed_rpm: float) -> float:
        return float(pickup.pickup_volts(ref_v, ref_rpm, speed_rpm))

    low, nominal, high = scaled(value, volts, ends(at_rpm))
    ratios = tuple(speed / ref_rpm for speed in sorted({at_rpm.low, at_rpm.high}))
    trail = (
        as_written(spec),
        TrailLine(
            "Speed against the reference", f"n / {ref_rpm:g} rpm", ratios, "", "Faraday's law"
        ),
        TrailLine(
            "Limits at that speed", "V = V_ref·n / n_ref", figures(low, nominal, high), "V",
            "Faraday's law",
        ),
    )  # fmt: skip
    return Limits(low, nominal, high, trail)


def _pickup_loaded(kb: KnowledgeBase, spec: Spec, given: Conditions) -> Limits:
    model, value = model_of(spec, LoadedPickupModel), written(spec)
    positions = wheel_of(kb, model.wheel).positions
    ref_rpm = reference(spec, "engine_speed")
    coil = model.coil.only, model.inductance.only, model.load.only

    def volts(ref_v: float, speed_rpm: float) -> float:
        return float(pickup.loaded_pickup_volts(ref_v, ref_rpm, speed_rpm, positions, *coil))

    at_rpm = given["engine_speed"]
    low, nominal, high = scaled(value, volts, ends(at_rpm))
    kept = tuple(
        float(pickup.load_factor(wheels.tooth_frequency_hz(speed, positions), *coil))
        for speed in (ref_rpm, at_rpm.low, at_rpm.high)
    )
    trail = (
        as_written(spec),
        TrailLine(
            "Share that reaches the load: at the reference, at these speeds",
            "k = R_load / |R_coil + R_load + jωL|", kept, "", "Kirchhoff's laws",
        ),
        TrailLine(
            "Limits at that speed", "V = V_ref·(n / n_ref)·(k / k_ref)",
            figures(low, nominal, high), "V", "Faraday's law",
        ),
    )  # fmt: skip
    return Limits(low, nominal, high, trail)


def _tooth_rate(kb: KnowledgeBase, spec: Spec, given: Conditions) -> Limits:
    model = model_of(spec, ToothRateModel)
    wheel, at_rpm = wheel_of(kb, model.wheel), given["engine_speed"]
    rates = [
        float(wheels.tooth_frequency_hz(speed, wheel.positions))
        for speed in (at_rpm.low, at_rpm.middle, at_rpm.high)
    ]
    counted = tuple(
        float(wheels.counted_frequency_hz(speed, wheel.positions, wheel.missing))
        for speed in sorted({at_rpm.low, at_rpm.high})
    )
    title = kb.get("components", model.wheel, Component).title
    trail = (
        TrailLine(
            f"Wheel {title}", "positions, gaps included", (float(wheel.positions),), "",
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


def _pickup_usual(_kb: KnowledgeBase, spec: Spec) -> Conditions:
    model = spec.model
    assert isinstance(model, (PickupModel, LoadedPickupModel))
    if model.slowest.only > model.fastest.only:
        raise BadSpec(
            f"the slowest speed {model.slowest.text} is above the fastest",
            "swap the two", ("model", "slowest"),
        )  # fmt: skip
    return {"engine_speed": Interval(model.slowest.only, model.fastest.only)}


def _pickup_rows(kb: KnowledgeBase, spec: Spec) -> Sequence[Conditions]:
    span = _pickup_usual(kb, spec)["engine_speed"]
    speeds = sorted({span.low, *CRANKING_ROWS_RPM, span.high})
    return [{"engine_speed": Interval.of(s)} for s in speeds if span.low <= s <= span.high]


_CRANKING = always(engine_speed=Interval(CRANKING_ROWS_RPM[0], CRANKING_ROWS_RPM[-1]))


def _rate_rows(_kb: KnowledgeBase, _spec: Spec) -> Sequence[Conditions]:
    return [{"engine_speed": Interval.of(s)} for s in (*CRANKING_ROWS_RPM, IDLE_ROW_RPM)]


MODELS: dict[str, ModelUse] = {
    "pickup_volts": ModelUse(
        About(
            "Inductive pickup, by speed", "V = V_ref·n / n_ref",
            "from the slowest to the fastest speed the record states, at most five times the "
            "reference", "Faraday's law",
            "Roll-off by the coil's inductance, another gap, wheel or load than the reference's, "
            "and a meter of another kind.",
        ),
        _pickup_volts, gives="voltage", value=True, usual=_pickup_usual, rows=_pickup_rows,
        reference=("engine_speed",),
    ),
    "pickup_loaded": ModelUse(
        About(
            "Inductive pickup with coil and load",
            "V = V_ref·(n / n_ref)·(k / k_ref), k = R_load / |R_coil + R_load + jωL|",
            "speeds to 30 000 rpm, frequencies well below the coil's resonance",
            "Faraday's law; Kirchhoff's laws",
            "Cable capacitance, harmonics and the gap's taller swing.",
        ),
        _pickup_loaded, gives="voltage", value=True, usual=_pickup_usual, rows=_pickup_rows,
        reference=("engine_speed",),
    ),
    "tooth_rate": ModelUse(
        About(
            "Tooth rate of a wheel", "f = positions·n / 60",
            "speeds to 30 000 rpm", "arithmetic",
            "Jitter of single periods; a counter that averages misses the gap and reads lower.",
        ),
        _tooth_rate, gives="frequency", unit="Hz", usual=_CRANKING, rows=_rate_rows,
    ),
}  # fmt: skip
