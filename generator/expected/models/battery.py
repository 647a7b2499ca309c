"""The 12 V lead-acid battery."""

from __future__ import annotations

from collections.abc import Sequence

from generator.expected.models.use import (
    About,
    ModelUse,
    always,
    as_written,
    both,
    ends,
    figures,
    model_of,
    over,
    rows,
    scaled,
    stated,
    usual,
    written,
)
from generator.expected.result import BadSpec, Conditions, Limits, TrailLine
from generator.physics import battery, charging, discharge
from generator.physics.domain import within
from generator.quantities import Interval
from generator.records.kinds.models import (
    BatteryRestModel,
    DischargeModel,
    LoadBankModel,
    StandingDrainModel,
)
from generator.records.kinds.things import Spec
from generator.records.knowledge_base import KnowledgeBase

DAY_S, HOUR_S = 86_400.0, 3_600.0
CHARGE_ROWS = (100.0, 75.0, 50.0, 25.0, 0.0)
"""States of charge that printed tables give, percent."""

BATTERY_ROWS_C = (-10.0, 0.0, 10.0, 20.0, 30.0, 40.0)
"""Battery temperatures of a workshop's year (practice)."""

DRAIN_ROWS_A = (0.02, 0.05, 0.1, 0.2, 0.5)
"""Standing drains from sound to a lamp left on (practice)."""

PRACTICE = "common-practice"

# Vehicle batteries are rated over twenty hours (EN 50342-1, from memory).
RATED_H = 20.0
# Past a hundred times the rating current Peukert's exponent is no longer one figure (practice).
MOST_LOAD = 100.0


def _rest(_kb: KnowledgeBase, spec: Spec, given: Conditions) -> Limits:
    model = model_of(spec, BatteryRestModel)

    def volts(side: int, percent: float, temp_c: float) -> float:
        return float(battery.rest_voltage_band_v(percent / 100, model.battery, temp_c)[side])

    at = ends(given["state_of_charge"]), ends(given["temperature"])
    low = over(lambda s, t: volts(0, s, t), *at)[0]
    nominal = over(lambda s, t: volts(1, s, t), *at)[1]
    high = over(lambda s, t: volts(2, s, t), *at)[2]
    kind = battery.battery_kind(model.battery)
    trail = (
        TrailLine(f"Table of a {model.battery} battery", "V at 0, 25, 50, 75, 100 %, 26.7 °C",
                  tuple(kind.rest.y), "V", "a battery maker's published table"),
        TrailLine("Spread of sound batteries", "either way", (kind.spread_v,), "V", PRACTICE),
        TrailLine("Voltage at rest", "straight between the rows, + 1.2 mV/K", (low, nominal, high),
                  "V", PRACTICE),
    )  # fmt: skip
    return Limits(low, nominal, high, trail)


def _load_bank(_kb: KnowledgeBase, spec: Spec, given: Conditions) -> Limits:
    model = model_of(spec, LoadBankModel)
    low, _, _ = over(lambda t: float(battery.load_bank_limit_v(t)), ends(given["temperature"]))
    amp = float(battery.load_bank_current_a(model.cold_cranking.only))
    trail = (
        TrailLine("Current to set", "half the cold-cranking rating", (amp,), "A", PRACTICE),
        TrailLine("Least voltage after 15 s", "table over the battery's temperature", (low,), "V",
                  PRACTICE),
    )  # fmt: skip
    return Limits(low, None, None, trail)


def _cranking(_kb: KnowledgeBase, _spec: Spec, given: Conditions) -> Limits:
    low, _, _ = over(lambda t: float(battery.cranking_minimum_v(t)), ends(given["temperature"]))
    trail = (
        TrailLine("Least voltage while the engine turns steadily",
                  "8 V at −18 °C to 9.6 V at 21 °C and above", (low,), "V", PRACTICE),
    )  # fmt: skip
    return Limits(low, None, None, trail)


def _charging(_kb: KnowledgeBase, spec: Spec, given: Conditions) -> Limits:
    def volts(set_v: float, temp_c: float) -> float:
        return float(charging.charging_voltage_v(set_v, temp_c))

    at_c = given["temperature"]
    low, nominal, high = scaled(written(spec), volts, ends(at_c))
    shift = tuple(
        volts(14.0, t) - 14.0 for t in sorted({at_c.low, at_c.high})
    )
    trail = (
        as_written(spec),
        TrailLine("Shift by the battery's temperature", "6·(−3 mV/K)·(t − 25 °C)", shift, "V",
                  "battery makers' published recommendation"),
        TrailLine("Limits at that temperature", "U = U25 + 6·c·(t − 25 °C)",
                  figures(low, nominal, high), "V", "battery makers' published recommendation"),
    )  # fmt: skip
    return Limits(low, nominal, high, trail)


def _drain(_kb: KnowledgeBase, spec: Spec, given: Conditions) -> Limits:
    model = model_of(spec, StandingDrainModel)
    span = model.from_charge.only / 100, model.to_charge.only / 100
    capacity_ah, drain = model.capacity.only, given["current"]
    within("standing drain", [drain.low, drain.high], 1e-6, _most_drain_a(spec), "A")

    def seconds(amp: float) -> float:
        return DAY_S * float(discharge.drain_days(capacity_ah, amp, *span))

    low, nominal, high = over(seconds, ends(drain))
    trail = (
        TrailLine("Capacity", model.capacity.text, (capacity_ah,), "Ah", spec.source),
        TrailLine("Charge it loses", f"{model.from_charge.text} to {model.to_charge.text}",
                  (capacity_ah * (span[0] - span[1]),), "Ah", spec.source),
        TrailLine("Time to get there", "t = C·Δs / I", (low, nominal, high), "s", "arithmetic"),
    )  # fmt: skip
    return Limits(low, nominal, high, trail)


def _most_drain_a(spec: Spec) -> float:
    """Give the current a battery's capacity is rated at: beyond it the charge is not all there."""
    return float(model_of(spec, StandingDrainModel).capacity.only) / RATED_H


def _drain_usual(_kb: KnowledgeBase, spec: Spec) -> Conditions:
    most_a = _most_drain_a(spec)
    usual_a = Interval(min(DRAIN_ROWS_A[0], most_a), min(DRAIN_ROWS_A[-1], most_a))
    return {"current": stated(spec, "current") or usual_a}


def _discharge(_kb: KnowledgeBase, spec: Spec, given: Conditions) -> Limits:
    model = model_of(spec, DischargeModel)
    capacity, hours = both(model.capacity, "capacity"), model.rated_time.only / HOUR_S

    load = given["current"]
    within("load", [load.low, load.high], 0.0, MOST_LOAD * capacity[2] / hours, "A")

    def seconds(ah: float, amp: float) -> float:
        return HOUR_S * float(discharge.peukert_hours_rated(ah, hours, amp, model.exponent))

    low, nominal, high = over(seconds, capacity, ends(load))
    trail = (
        TrailLine("Capacity", model.capacity.text, capacity, "Ah", spec.source),
        TrailLine("Rated time and exponent", "H, k", (hours, model.exponent), "", spec.source),
        TrailLine("Time it feeds the load", "t = H·(C / (I·H))^k", (low, nominal, high), "s",
                  "Peukert's law in its rated form"),
    )  # fmt: skip
    return Limits(low, nominal, high, trail)


def _discharge_usual(_kb: KnowledgeBase, spec: Spec) -> Conditions:
    model = model_of(spec, DischargeModel)
    if model.rated_time.only <= 0:
        raise BadSpec("the rated time is nothing", "write it, as 20 h", ("model", "rated_time"))
    rated_a = both(model.capacity, "capacity")[2] / (model.rated_time.only / HOUR_S)
    return {"current": stated(spec, "current") or Interval(rated_a, 10 * rated_a)}


def _discharge_rows(kb: KnowledgeBase, spec: Spec) -> Sequence[Conditions]:
    span = _discharge_usual(kb, spec)["current"]
    at = [span.low + share * (span.high - span.low) for share in (0.0, 1 / 9, 4 / 9, 1.0)]
    return [{"current": Interval.of(min(a, span.high))} for a in at]


_TEMPERATE = Interval(0.0, 40.0)
_REST = usual(state_of_charge=Interval(75.0, 100.0), temperature=_TEMPERATE)
_REST_ALL = usual(state_of_charge=Interval(0.0, 100.0), temperature=_TEMPERATE)
_COLD = usual(temperature=Interval(-17.0, 40.0))
_CHARGING = always(temperature=Interval(-10.0, 40.0))
_COLD_ROWS = rows(_COLD, "temperature", BATTERY_ROWS_C)

MODELS: dict[str, ModelUse] = {
    "battery_rest": ModelUse(
        About(
            "Battery at rest", "straight between the rows of a printed table, + 1.2 mV/K",
            "0 to 100 % charge, 0 to 50 °C, some hours without charge or load",
            "a battery maker's published table; common practice for efb and agm",
            "The battery's health: a worn-out one may rest at 12.6 V.",
        ),
        _rest, gives="voltage", unit="V", usual=_REST,
        rows=rows(_REST_ALL, "state_of_charge", CHARGE_ROWS),
    ),
    "battery_load_bank": ModelUse(
        About(
            "Battery on a load bank", "table over the battery's temperature, 9.6 V at 21 °C",
            "−17.8 to 50 °C, 15 s at half the cold-cranking rating, three quarters charged",
            "common practice", "Cranking the engine: its current is another.",
        ),
        _load_bank, gives="voltage", unit="V", usual=_COLD, rows=_COLD_ROWS,
    ),
    "battery_cranking": ModelUse(
        About(
            "Battery while the starter turns", "8 V at −18 °C to 9.6 V at 21 °C and above",
            "−18 to 50 °C", "common practice",
            "Which part is at fault: a tight engine or a bad starter pulls it down as well.",
        ),
        _cranking, gives="voltage", unit="V", usual=_COLD, rows=_COLD_ROWS,
    ),
    "battery_charging": ModelUse(
        About(
            "Charging voltage against temperature", "U = U25 + 6·c·(t − 25 °C), c = −3 mV/K",
            "12 to 16 V at 25 °C, −30 to 60 °C",
            "battery makers' published recommendation",
            "Charging run by a control unit, which may sit outside these limits without fault.",
        ),
        _charging, gives="voltage", value=True, usual=_CHARGING,
        rows=rows(_CHARGING, "temperature", BATTERY_ROWS_C),
    ),
    "standing_drain": ModelUse(
        About(
            "Standing drain", "t = C·Δs / I", "currents far below the rating current",
            "arithmetic", "Self-discharge, which shortens it beyond a month.",
        ),
        _drain, gives="time", unit="days", usual=_drain_usual,
        rows=rows(_drain_usual, "current", DRAIN_ROWS_A),
    ),
    "battery_discharge": ModelUse(
        About(
            "Time a battery feeds a load", "t = H·(C / (I·H))^k",
            "currents at or above the rating current", "Peukert's law in its rated form",
            "Cold, age, and the other printed form of the law, whose C is another figure.",
        ),
        _discharge, gives="time", unit="h", usual=_discharge_usual, rows=_discharge_rows,
    ),
}  # fmt: skip
