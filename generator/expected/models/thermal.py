"""Temperature sensors, and a temperature in the live data after a night's rest."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import pairwise

from generator.expected.models.use import (
    About,
    ModelUse,
    Three,
    both,
    ends,
    model_of,
    over,
    rows,
    usual,
)
from generator.expected.result import BadSpec, Conditions, Limits, TrailLine
from generator.physics import platinum, thermistors
from generator.physics.curves import TabulatedCurve
from generator.physics.domain import within
from generator.quantities import Interval
from generator.records.kinds.models import (
    ColdSoakModel,
    PlatinumModel,
    ThermistorBetaModel,
    ThermistorPointsModel,
    ThermistorTableModel,
)
from generator.records.kinds.models.thermal import Point
from generator.records.kinds.things import Spec
from generator.records.knowledge_base import KnowledgeBase

SENSOR_ROWS_C = (-40.0, -20.0, 0.0, 20.0, 40.0, 60.0, 80.0, 100.0, 120.0, 200.0, 400.0, 600.0,
                 800.0)  # fmt: skip
"""Temperatures of coolant, air and exhaust sensors that a mechanic meets (practice)."""

SOAK_ROWS_C = (-10.0, 0.0, 10.0, 20.0, 30.0)
"""Air temperatures of a workshop's year (practice)."""

# Coldest and hottest air on a road (practice; ISO 16750-4 takes −40 to 55 °C, from memory).
AIR_C = (-50.0, 60.0)

_AT = "temperature"


def _band(ohm: Callable[[int, float], float], at_c: Interval, lift: Three) -> Three:
    """Give the limits of a resistance that falls or rises with temperature.

    Parameters
    ----------
    ohm : callable
        Side (0 low, 1 nominal, 2 high) and temperature to resistance.
    at_c : Interval
        Temperature.
    lift : tuple of float
        Factor on each side.
    """
    low, _, _ = over(lambda t: ohm(0, t), ends(at_c))
    _, nominal, _ = over(lambda t: ohm(1, t), ends(at_c))
    _, _, high = over(lambda t: ohm(2, t), ends(at_c))
    return low * lift[0], nominal * lift[1], high * lift[2]


def _sides(points: Sequence[Point]) -> list[tuple[float, Three]]:
    return sorted(
        (p.temperature.only, both(p.resistance, "points", n, "resistance"))
        for n, p in enumerate(points)
    )


def _printed(spec: Spec, points: list[tuple[float, Three]]) -> tuple[TrailLine, ...]:
    return (
        TrailLine("Rows of the sensor's table: temperatures", "as printed",
                  tuple(t for t, _ in points), "°C", spec.source),
        TrailLine("Rows of the sensor's table: resistances", "as printed, nominal",
                  tuple(r[1] for _, r in points), "ohm", spec.source),
    )  # fmt: skip


def _points(_kb: KnowledgeBase, spec: Spec, given: Conditions) -> Limits:
    model = model_of(spec, ThermistorPointsModel)
    table = _sides(model.points)
    try:
        curves = [
            thermistors.steinhart_hart_fit([(t, ohm[side]) for t, ohm in table])
            for side in range(3)
        ]
    except ValueError as wrong:
        raise BadSpec(str(wrong), "check the three rows", ("model", "points")) from None
    slack = 0.0 if model.tolerance is None else model.tolerance.only / 100
    band = _band(
        lambda side, t: float(curves[side].ohm(t)), given[_AT], (1 - slack, 1.0, 1 + slack)
    )
    curve = curves[1]
    trail = (
        *_printed(spec, table),
        TrailLine(
            "Curve through the three", "1/T = A + B·ln R + C·(ln R)³", (curve.a, curve.b, curve.c),
            "", "Steinhart and Hart, Deep-Sea Research 15 (1968) 497",
        ),
        TrailLine("Limits at that temperature", "the curve of each side, and its tolerance", band,
                  "ohm", "arithmetic"),
    )  # fmt: skip
    return Limits(*band, trail)


def _beta(_kb: KnowledgeBase, spec: Spec, given: Conditions) -> Limits:
    model = model_of(spec, ThermistorBetaModel)
    part = both(model.resistance, "resistance")
    span = _span(model.coldest.only, model.hottest.only)
    curve = thermistors.Beta(1.0, model.beta, model.reference.only, span.low, span.high)
    band = over(lambda ohm, t: ohm * float(curve.ohm(t)), part, ends(given[_AT]))
    trail = (
        TrailLine("Resistance at the reference", model.resistance.text, part, "ohm", spec.source),
        TrailLine("Beta", "as printed for this span", (model.beta,), "K", spec.source),
        TrailLine("Limits at that temperature", "R = R0·exp(B·(1/T − 1/T0))", band, "ohm",
                  "IEC 60539-1"),
    )  # fmt: skip
    return Limits(*band, trail)


def _table(_kb: KnowledgeBase, spec: Spec, given: Conditions) -> Limits:
    model = model_of(spec, ThermistorTableModel)
    table = _sides(model.points)
    for (_, before), (temp_c, after) in pairwise(table):
        if after[1] >= before[1]:
            raise BadSpec(
                f"the resistance does not fall up to {temp_c:g} °C", "check the rows",
                ("model", "points"),
            )  # fmt: skip
    temps = [t for t, _ in table]
    curves = [
        TabulatedCurve(
            temps, [ohm[side] for _, ohm in table], "log-linear",
            name="resistance", x_name="temperature", x_unit="°C", y_unit="ohm",
        )
        for side in range(3)
    ]  # fmt: skip
    band = _band(lambda side, t: float(curves[side].at(t)), given[_AT], (1.0, 1.0, 1.0))
    trail = (
        *_printed(spec, table),
        TrailLine("Limits read between the rows", "ln R straight in t", band, "ohm", "arithmetic"),
    )
    return Limits(*band, trail)


def _platinum(_kb: KnowledgeBase, spec: Spec, given: Conditions) -> Limits:
    model, at_c = model_of(spec, PlatinumModel), given[_AT]
    parts = model.at_zero.only, model.tolerance_class
    cold, warm = (
        platinum.platinum_band(t, *parts, curve=model.curve) for t in (at_c.low, at_c.high)
    )
    nominal = float(platinum.platinum_ohm(at_c.middle, parts[0], model.curve))
    low, high = float(cold[0]), float(warm[2])
    spread = tuple(
        float(platinum.platinum_tolerance_k(t, parts[1])) for t in sorted({at_c.low, at_c.high})
    )
    trail = (
        TrailLine(f"Curve {model.curve}", "resistance at 0 °C", (parts[0],), "ohm", spec.source),
        TrailLine(f"Deviation that class {parts[1]} allows", "Δt = a + b·|t|", spread, "K",
                  "IEC 60751"),
        TrailLine(
            "Limits at that temperature", "R = R0·(1 + A·t + B·t² + C·(t − 100)·t³ below 0 °C)",
            (low, nominal, high), "ohm", "IEC 60751",
        ),
    )  # fmt: skip
    return Limits(low, nominal, high, trail)


def _cold_soak(_kb: KnowledgeBase, spec: Spec, given: Conditions) -> Limits:
    model = model_of(spec, ColdSoakModel)
    spread = (-model.within, 0.0, model.within)
    air = given["ambient"]
    within("temperature of the air", [air.low, air.high], *AIR_C, "°C")
    low, nominal, high = over(lambda t, d: t + d, ends(air), spread)
    trail = (
        TrailLine("How far a sensor may lie from the air", "either way", (model.within,), "K",
                  spec.source),
        TrailLine("Reading after a night's rest", "t = t_air ± spread", (low, nominal, high), "°C",
                  "common-practice"),
    )  # fmt: skip
    return Limits(low, nominal, high, trail)


def _span(low_c: float, high_c: float) -> Interval:
    if low_c > high_c:
        raise BadSpec("the coldest temperature is above the hottest", "swap the two",
                      ("model", "coldest"))  # fmt: skip
    return Interval(low_c, high_c)


def _usual(_kb: KnowledgeBase, spec: Spec) -> Conditions:
    model = spec.model
    if isinstance(model, (PlatinumModel, ThermistorBetaModel)):
        return {_AT: _span(model.coldest.only, model.hottest.only)}
    assert isinstance(model, (ThermistorPointsModel, ThermistorTableModel))
    temps = [point.temperature.only for point in model.points]
    return {_AT: Interval(min(temps), max(temps))}


_ROWS = rows(_usual, _AT, SENSOR_ROWS_C)
_AIR = usual(ambient=Interval(SOAK_ROWS_C[0], SOAK_ROWS_C[-1]))

MODELS: dict[str, ModelUse] = {
    "thermistor_points": ModelUse(
        About(
            "Thermistor by three points", "1/T = A + B·ln R + C·(ln R)³",
            "between the outer two of the three points",
            "Steinhart and Hart, Deep-Sea Research 15 (1968) 497",
            "Self-heating by the meter, and temperatures beyond the points.",
        ),
        _points, gives="resistance", unit="ohm", usual=_usual, rows=_ROWS,
    ),
    "thermistor_beta": ModelUse(
        About(
            "Thermistor by its beta", "R = R0·exp(B·(1/T − 1/T0))",
            "the span that the beta is printed for, as 25 to 85 °C", "IEC 60539-1",
            "A wide span: stretched to −40 °C a beta errs by over 10 %. Use three points there.",
        ),
        _beta, gives="resistance", unit="ohm", usual=_usual, rows=_ROWS,
    ),
    "thermistor_table": ModelUse(
        About(
            "Thermistor by its printed table", "ln R straight in t between two rows",
            "from the first row to the last", "the record's own source",
            "The bend between rows: with rows 10 K apart it reads some 0.4 % high at 25 °C, more "
            "in the cold.",
        ),
        _table, gives="resistance", unit="ohm", usual=_usual, rows=_ROWS,
    ),
    "platinum": ModelUse(
        About(
            "Platinum sensor", "R = R0·(1 + A·t + B·t² + C·(t − 100)·t³ below 0 °C)",
            "that of the curve the record names and of its class", "IEC 60751",
            "Leads: two of 0.2 ohm are half a kelvin on a Pt200.",
        ),
        _platinum, gives="resistance", unit="ohm", usual=_usual, rows=_ROWS,
    ),
    "cold_soak": ModelUse(
        About(
            "Temperature after a night's rest", "t = t_air ± spread",
            "a vehicle that stood for eight hours or more out of the sun", "common practice",
            "A block heater, sun on the bonnet, and a sensor that is wrong only when hot.",
        ),
        _cold_soak, gives="temperature", unit="°C", usual=_AIR,
        rows=rows(_AIR, "ambient", SOAK_ROWS_C),
    ),
}  # fmt: skip
