"""Sensors read as a share of their supply: dividers, potentiometers, pressure transducers."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from generator.expected.models.use import (
    About,
    ModelUse,
    both,
    ends,
    model_of,
    over,
    rows,
    stated,
    usual,
)
from generator.expected.result import BadSpec, Conditions, Limits, TrailLine
from generator.physics import dividers, transducers
from generator.physics.domain import within
from generator.quantities import Interval
from generator.records.kinds.models import DividerModel, PotentiometerModel, TransducerModel
from generator.records.kinds.things import Spec
from generator.records.knowledge_base import KnowledgeBase

FIVE_VOLTS = Interval(4.75, 5.25)
"""A sensor feed of 5 V, 5 % either way (practice)."""

TRAVEL_ROWS = (0.0, 25.0, 50.0, 75.0, 100.0)
"""Travel of a pedal or flap, percent."""

PRESSURE_STEPS = 4
"""Steps of a transducer's range that a page shows."""

SensorUse = Callable[[KnowledgeBase, Spec], ModelUse]


def divider(use_of: SensorUse) -> ModelUse:
    """Give the divider's entry; `use_of` gives the entry of the sensor's own model."""

    def sensor(kb: KnowledgeBase, spec: Spec) -> tuple[Spec, ModelUse]:
        named = kb.get("specs", model_of(spec, DividerModel).sensor, Spec)
        use = use_of(kb, named)
        quantity = use.gives or (named.value.quantity if named.value is not None else "")
        if quantity != "resistance":
            raise BadSpec(
                f"{named.id} gives no resistance", "name the spec of the sensor's resistance",
                ("model", "sensor"),
            )  # fmt: skip
        return named, use

    def usual_of(kb: KnowledgeBase, spec: Spec) -> Conditions:
        named, use = sensor(kb, spec)
        return {**use.usual(kb, named), "supply": stated(spec, "supply") or FIVE_VOLTS}

    def rows_of(kb: KnowledgeBase, spec: Spec) -> Sequence[Conditions]:
        named, use = sensor(kb, spec)
        supply = stated(spec, "supply") or FIVE_VOLTS
        return [{**row, "supply": supply} for row in use.rows(kb, named)]

    def limits(kb: KnowledgeBase, spec: Spec, given: Conditions) -> Limits:
        named, use = sensor(kb, spec)
        model = model_of(spec, DividerModel)
        found = use.limits(kb, named, {k: v for k, v in given.items() if k != "supply"})
        if found.low is None or found.high is None:
            raise BadSpec(f"{named.id} leaves one side open", "write both limits there",
                          ("model", "sensor"))  # fmt: skip
        middle = (found.low + found.high) / 2 if found.nominal is None else found.nominal
        meter_ohm = float("inf") if model.meter is None else model.meter.only
        upper, lower = both(model.upper, "upper"), (found.low, middle, found.high)
        low, nominal, high = (
            float(v) for v in dividers.divider_band(ends(given["supply"]), upper, lower, meter_ohm)
        )
        trail = (
            *found.trail,
            TrailLine("Resistor in the control unit", model.upper.text, upper, "ohm", spec.source),
            TrailLine("Voltage at the sensor", "V = V_s·R / (R_u + R)", (low, nominal, high), "V",
                      "Kirchhoff's laws"),
        )  # fmt: skip
        return Limits(low, nominal, high, trail)

    return ModelUse(
        About(
            "Sensor behind a resistor", "V = V_s·R / (R_u + R)",
            "that of the sensor's own model; supplies to 60 V", "Kirchhoff's laws",
            "A control unit that switches a second resistor in when the sensor is hot.",
        ),
        limits, gives="voltage", unit="V", usual=usual_of, rows=rows_of,
    )  # fmt: skip


def _potentiometer(_kb: KnowledgeBase, spec: Spec, given: Conditions) -> Limits:
    model = model_of(spec, PotentiometerModel)
    track, slack = both(model.track, "track"), model.tolerance.only / 100
    load_ohm = float("inf") if model.load is None else model.load.only

    def volts(supply_v: float, track_ohm: float, percent: float, off: float) -> float:
        travel = min(1.0, max(0.0, percent / 100 + off))
        return float(transducers.potentiometer_v(supply_v, track_ohm, travel, load_ohm))

    travel = given["travel"]
    within("travel", [travel.low, travel.high], 0.0, 100.0, "%")
    at = ends(given["supply"]), track, ends(travel), (-slack, 0.0, slack)
    low, nominal, high = over(volts, *at)
    trail = (
        TrailLine("Track", model.track.text, track, "ohm", spec.source),
        TrailLine("Error of the travel", "either way", (model.tolerance.only,), "%", spec.source),
        TrailLine(
            "Voltage of the wiper", "V = V_s·x / (1 + x·(1 − x)·R / R_load)",
            (low, nominal, high), "V", "Kirchhoff's laws",
        ),
    )  # fmt: skip
    return Limits(low, nominal, high, trail)


def _line(model: TransducerModel) -> transducers.RatiometricTransducer:
    ends_pa = model.from_pressure.only, model.to_pressure.only
    ends_share = model.from_share.only / 100, model.to_share.only / 100
    if ends_pa[0] >= ends_pa[1]:
        raise BadSpec("the two pressures are not in rising order", "swap the two",
                      ("model", "from_pressure"))  # fmt: skip
    gain = (ends_share[1] - ends_share[0]) / (ends_pa[1] - ends_pa[0])
    return transducers.RatiometricTransducer(
        gain, ends_share[0] - gain * ends_pa[0], *ends_pa, "Pa"
    )


def _transducer(_kb: KnowledgeBase, spec: Spec, given: Conditions) -> Limits:
    model = model_of(spec, TransducerModel)
    line, at_pa = _line(model), given["measured_pressure"]
    supply = ends(given["supply"])
    bands = [line.band(p, supply, model.tolerance.only) for p in (at_pa.low, at_pa.high)]
    low, high = (float(v) for v in (min(b[0] for b in bands), max(b[2] for b in bands)))
    nominal = float(line.volts(at_pa.middle, supply[1]))
    trail = (
        TrailLine(
            "The sensor's line: share of the supply a kilopascal, and at none",
            f"{model.from_share.text} at {model.from_pressure.text}, {model.to_share.text} at "
            f"{model.to_pressure.text}", (line.gain * 1000, line.offset), "", spec.source,
        ),
        TrailLine("Output", "V = V_s·(a·p + b)", (low, nominal, high), "V",
                  "the sensor's data sheet"),
    )  # fmt: skip
    return Limits(low, nominal, high, trail)


def _transducer_usual(_kb: KnowledgeBase, spec: Spec) -> Conditions:
    line = _line(model_of(spec, TransducerModel))
    return {
        "measured_pressure": stated(spec, "measured_pressure") or Interval(line.low, line.high),
        "supply": stated(spec, "supply") or FIVE_VOLTS,
    }


def _transducer_rows(kb: KnowledgeBase, spec: Spec) -> Sequence[Conditions]:
    known = _transducer_usual(kb, spec)
    span = known["measured_pressure"]
    step = (span.high - span.low) / PRESSURE_STEPS
    # The last step may end a rounding error beyond the range.
    at = [min(span.low + n * step, span.high) for n in range(PRESSURE_STEPS + 1)]
    return [{"measured_pressure": Interval.of(p), "supply": known["supply"]} for p in at]


_TRAVEL = usual(travel=Interval(0.0, 100.0), supply=FIVE_VOLTS)

MODELS: dict[str, ModelUse] = {
    "potentiometer": ModelUse(
        About(
            "Potentiometer", "V = V_s·x / (1 + x·(1 − x)·R / R_load)",
            "travel 0 to 100 %, supplies to 60 V", "Kirchhoff's laws",
            "A worn spot on the track, which only a slow sweep shows.",
        ),
        _potentiometer, gives="voltage", unit="V", usual=_TRAVEL,
        rows=rows(_TRAVEL, "travel", TRAVEL_ROWS),
    ),
    "transducer": ModelUse(
        About(
            "Pressure transducer", "V = V_s·(a·p + b)",
            "from the least to the greatest pressure the record states",
            "the sensor's data sheet",
            "The supply at the sensor's own pins: measure it, the output follows it.",
        ),
        _transducer, gives="voltage", unit="V", usual=_transducer_usual, rows=_transducer_rows,
    ),
}  # fmt: skip
