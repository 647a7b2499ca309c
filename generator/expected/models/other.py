"""Data bus and heaters."""

from __future__ import annotations

from generator.expected.models.use import (
    About,
    ModelUse,
    Three,
    both,
    ends,
    model_of,
    over,
    rows,
    shares,
    usual,
)
from generator.expected.result import BadSpec, Conditions, Limits, TrailLine
from generator.physics import databus, heaters
from generator.quantities import Interval
from generator.records.kinds.models import BusMeanModel, BusTerminationModel, HeaterModel
from generator.records.kinds.things import Spec
from generator.records.knowledge_base import KnowledgeBase

HEATER_ROWS_V = (9.0, 11.0, 12.0, 13.5, 14.5)
"""Supplies from cranking to charging (practice)."""

# ISO 11898-2: a dominant bus holds 1.5 to 3 V between its wires, 2 V nominal; half of it each.
SWING_V: Three = (0.75, 1.0, 1.5)


def _termination(_kb: KnowledgeBase, spec: Spec, _given: Conditions) -> Limits:
    model = model_of(spec, BusTerminationModel)
    each = both(model.each, "each")
    low, nominal, high = databus.pair_resistance_band_ohm(model.terminations, each)
    trail = (
        TrailLine(f"{model.terminations} side by side", model.each.text, each, "ohm", spec.source),
        TrailLine("Between the two wires", "R = R_each / n", (low, nominal, high), "ohm",
                  "Kirchhoff's laws"),
    )  # fmt: skip
    return Limits(low, nominal, high, trail)


def _mean(_kb: KnowledgeBase, spec: Spec, _given: Conditions) -> Limits:
    model = model_of(spec, BusMeanModel)
    which = 0 if model.wire == "high" else 1
    share, rest = shares(both(model.dominant, "dominant")), databus.RECESSIVE.high_v

    def volts(dominant: float, rest_v: float, swing_v: float) -> float:
        return float(databus.mean_pair_v(dominant, rest_v, swing_v)[which])

    low, nominal, high = over(volts, share, rest, SWING_V)
    trail = (
        TrailLine("Share of the time it is dominant", model.dominant.text, share, "", spec.source),
        TrailLine("Both wires at rest", "recessive", rest, "V", "ISO 11898-2"),
        TrailLine("How far each moves", "dominant", SWING_V, "V", "ISO 11898-2"),
        TrailLine("Mean on a slow meter", "V = V_r ± s·ΔV", (low, nominal, high), "V",
                  "mean of a square wave"),
    )  # fmt: skip
    return Limits(low, nominal, high, trail)


def _heater(_kb: KnowledgeBase, spec: Spec, given: Conditions) -> Limits:
    model = model_of(spec, HeaterModel)
    cold, ratio = both(model.cold, "cold"), (1.0, 1.0, 1.0)
    if model.settled_ratio is not None:
        ratio = (model.settled_ratio[0], model.settled_ratio[1], model.settled_ratio[2])
        if sorted(ratio) != list(ratio):
            raise BadSpec("the three ratios are not in rising order", "sort them",
                          ("model", "settled_ratio"))  # fmt: skip
    low, nominal, high = heaters.heater_current_band(ends(given["supply"]), cold, ratio)
    when = "first" if model.settled_ratio is None else "settled"
    trail = (
        TrailLine("Resistance cold", model.cold.text, cold, "ohm", spec.source),
        TrailLine("First over settled current", "k", ratio, "", spec.source),
        TrailLine(f"The {when} current", "I = V / (k·R)", (low, nominal, high), "A", "Ohm's law"),
    )
    return Limits(low, nominal, high, trail)


_SUPPLY = usual(supply=Interval(HEATER_ROWS_V[0], HEATER_ROWS_V[-1]))

MODELS: dict[str, ModelUse] = {
    "bus_termination": ModelUse(
        About(
            "Terminations of a data bus", "R = R_each / n",
            "a bus that sleeps or has no battery", "ISO 11898-2; Kirchhoff's laws",
            "A poor contact that only shows at the bus's own speed.",
        ),
        _termination, gives="resistance", unit="ohm",
    ),
    "bus_mean": ModelUse(
        About(
            "Mean of a data-bus wire", "V = V_r ± s·ΔV",
            "a high-speed bus with a 5 V transceiver", "ISO 11898-2",
            "Messages: a mean proves little, and their shape needs an oscilloscope.",
        ),
        _mean, gives="voltage", unit="V",
    ),
    "heater_current": ModelUse(
        About(
            "Current of a heater or glow plug", "I = V / (k·R)",
            "supplies to 36 V, ratios of first to settled current of 1 to 20", "Ohm's law",
            "The hot part: its cold resistance says nothing about whether it regulates itself.",
        ),
        _heater, gives="current", unit="A", usual=_SUPPLY,
        rows=rows(_SUPPLY, "supply", HEATER_ROWS_V),
    ),
}  # fmt: skip
