"""How each model named by a record turns its value and the conditions into limits.

A model here is thin: it takes the record's intervals, asks `physics`, and writes the working
down. Every one says which conditions it needs, the range it takes where nobody stated one, the
rows a mechanic meets, and what the method page says of it.
"""

from __future__ import annotations

from generator.expected.models import (
    battery,
    dividers,
    other,
    outputs,
    plain,
    pressure,
    sensors,
    thermal,
    wiring,
)
from generator.expected.models import windings as coils
from generator.expected.models.use import About, ModelUse
from generator.records.kinds.models import CurveModel
from generator.records.kinds.things import Spec
from generator.records.knowledge_base import KnowledgeBase

MODELS: dict[str, ModelUse] = {
    **plain.MODELS,
    **coils.MODELS,
    **sensors.MODELS,
    **outputs.MODELS,
    **thermal.MODELS,
    **dividers.MODELS,
    **wiring.MODELS,
    **battery.MODELS,
    **pressure.MODELS,
    **other.MODELS,
}
"""Every model a record may name."""


def _sensor_use(_kb: KnowledgeBase, spec: Spec) -> ModelUse:
    return MODELS[spec.model.name]


MODELS["divider"] = dividers.divider(_sensor_use)

def quantity_of(spec: Spec) -> str:
    """Give what a spec's reading measures; empty where the record does not say."""
    gives = MODELS[spec.model.name].gives
    if gives:
        return gives
    if isinstance(spec.model, CurveModel):
        return plain.curve_quantity(spec.model)
    return spec.value.quantity if spec.value is not None else ""


__all__ = ["MODELS", "About", "ModelUse", "quantity_of"]
