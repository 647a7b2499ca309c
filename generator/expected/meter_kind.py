"""What changes in an expected value with the kind of meter that reads it."""

from __future__ import annotations

from typing import Literal

from generator.physics import readings
from generator.physics.pickup import pickup_waveform
from generator.physics.wheels import SAMPLES_PER_POSITION
from generator.records.kinds.instruments import Meter
from generator.records.kinds.models import (
    DividerModel,
    LoadedPickupModel,
    PickupModel,
    PullUpModel,
)
from generator.records.kinds.things import Component, Spec, Wheel
from generator.records.knowledge_base import KnowledgeBase

RESPONSES: dict[str, Literal["true-rms", "average", "peak"]] = {
    "true_rms": "true-rms", "average": "average", "peak": "peak",
}  # fmt: skip


def with_input_of(spec: Spec, meter: Meter) -> Spec:
    """Give a spec whose model takes this meter's input resistance for the one it was written for.

    Only models that take the instrument's load into account change.
    """
    if meter.input_resistance is None:
        return spec
    if isinstance(spec.model, (PullUpModel, DividerModel)):
        model = spec.model.model_copy(update={"meter": meter.input_resistance})
        other = spec.model_copy(update={"model": model})
        other.named(spec.kind, spec.id)
        return other
    return spec


def wheel_read_by(kb: KnowledgeBase, spec: Spec) -> Wheel | None:
    """Give the wheel that the spec's part reads, if its record names one."""
    if isinstance(spec.model, LoadedPickupModel):
        named = kb.find("components", spec.model.wheel, Component)
        return named.wheel if named else None
    part = kb.find("components", spec.component, Component)
    wheel = kb.find("components", part.reads if part else None, Component)
    return wheel.wheel if wheel else None


def shown_share(kb: KnowledgeBase, spec: Spec, meter: Meter) -> float | None:
    """Give what this meter shows of a pickup's wave, over what a true-RMS one shows.

    Returns
    -------
    float or None
        1 for a true-RMS meter and for values that are no wave; None where the wave is not known.
    """
    if not isinstance(spec.model, (PickupModel, LoadedPickupModel)):
        return 1.0
    if meter.ac_reading == "true_rms":
        return 1.0
    wheel = wheel_read_by(kb, spec)
    if wheel is None:
        return None
    samples = wheel.positions * 2 * SAMPLES_PER_POSITION
    wave = pickup_waveform(wheel.positions, wheel.missing, samples)
    shown = readings.meter_reading(wave, RESPONSES[meter.ac_reading], meter.ac_coupling)
    return shown / readings.meter_reading(wave, "true-rms", "ac")
