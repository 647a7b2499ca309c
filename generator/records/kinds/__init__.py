"""The record kinds: folder name to shape."""

from __future__ import annotations

from generator.records.kinds.base import Record
from generator.records.kinds.cases import Case
from generator.records.kinds.knowledge import (
    FaultCode,
    Hazard,
    Person,
    Settings,
    Source,
    Supply,
    Symptom,
    Term,
    Tool,
)
from generator.records.kinds.things import Circuit, Component, Spec, Vehicle
from generator.records.kinds.work import Procedure, Replacement, Test

KINDS: dict[str, type[Record]] = {
    "vehicles": Vehicle,
    "components": Component,
    "circuits": Circuit,
    "specs": Spec,
    "symptoms": Symptom,
    "cases": Case,
    "codes": FaultCode,
    "tests": Test,
    "replacements": Replacement,
    "procedures": Procedure,
    "tools": Tool,
    "supplies": Supply,
    "hazards": Hazard,
    "sources": Source,
    "terms": Term,
    "people": Person,
}
"""Every kind, by the folder its records lie in, in the order a manual is read."""

SETTINGS_FILE = "settings.yml"

__all__ = ["KINDS", "SETTINGS_FILE", "Record", "Settings"]
