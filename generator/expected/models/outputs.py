"""Switching outputs: their two levels, the mean a meter shows, current outputs."""

from __future__ import annotations

from generator.expected.models.sensors import wheel_of
from generator.expected.models.use import About, ModelUse, both, model_of, over, shares
from generator.expected.result import Conditions, Limits, TrailLine
from generator.physics import switching
from generator.records.kinds.models import (
    CurrentSensorModel,
    LowLevelModel,
    PullUpModel,
    SquareMeanModel,
)
from generator.records.kinds.things import Component, Spec
from generator.records.knowledge_base import KnowledgeBase


def _pull_up(_kb: KnowledgeBase, spec: Spec, _given: Conditions) -> Limits:
    model = model_of(spec, PullUpModel)
    behind, resistor = both(model.pull_up, "pull_up"), both(model.resistor, "resistor")
    meter = both(model.meter, "meter")

    def volts(pull_up_v: float, pull_up_ohm: float, meter_ohm: float) -> float:
        return float(switching.high_level_v(pull_up_v, pull_up_ohm, meter_ohm))

    low, nominal, high = over(volts, behind, resistor, meter)
    trail = (
        TrailLine("Voltage behind the pull-up", model.pull_up.text, behind, "V", spec.source),
        TrailLine("Pull-up resistor", model.resistor.text, resistor, "ohm", spec.source),
        TrailLine("Input of the instrument", model.meter.text, meter, "ohm", spec.source),
        TrailLine(
            "Level with the output open and the meter on it",
            "V = V_pu·R_meter / (R_pu + R_meter)", (low, nominal, high), "V", "Kirchhoff's laws",
        ),
    )  # fmt: skip
    return Limits(low, nominal, high, trail)


def _low_level(_kb: KnowledgeBase, spec: Spec, _given: Conditions) -> Limits:
    model = model_of(spec, LowLevelModel)
    parts = both(model.saturation, "saturation"), both(model.ground_drop, "ground_drop")
    low, nominal, high = over(lambda v, d: float(switching.low_level_v(v, d)), *parts)
    trail = (
        TrailLine("Transistor that is on", model.saturation.text, parts[0], "V", spec.source),
        TrailLine("Drop of the ground", model.ground_drop.text, parts[1], "V", spec.source),
        TrailLine(
            "Level seen from battery negative", "V = V_sat + V_ground", (low, nominal, high), "V",
            "Kirchhoff's voltage law",
        ),
    )  # fmt: skip
    return Limits(low, nominal, high, trail)


def _square_mean(kb: KnowledgeBase, spec: Spec, _given: Conditions) -> Limits:
    model = model_of(spec, SquareMeanModel)
    levels = both(model.high, "high"), both(model.low, "low")
    duty = shares(both(model.duty, "duty"))
    turn, line = _over_the_turn(kb, spec, model, duty)
    low, nominal, high = switching.mean_level_band(*levels, turn)
    trail = (
        TrailLine(
            "Levels and duty",
            f"high {model.high.text}, low {model.low.text}, duty {model.duty.text}",
            (), "", spec.source,
        ),
        *line,
        TrailLine(
            "Mean, as a DC meter shows it", "V = V_high·d + V_low·(1 − d)", (low, nominal, high),
            "V", "arithmetic mean",
        ),
    )  # fmt: skip
    return Limits(low, nominal, high, trail)


def _over_the_turn(
    kb: KnowledgeBase, spec: Spec, model: SquareMeanModel, duty: tuple[float, float, float]
) -> tuple[tuple[float, float, float], tuple[TrailLine, ...]]:
    """Give the duty of a whole turn, the missing teeth counted, and its line of the working."""
    if model.wheel is None:
        return duty, ()
    wheel = wheel_of(kb, model.wheel)
    low, nominal, high = (
        float(
            switching.revolution_duty(d, wheel.positions, wheel.missing, model.over_gap == "high")
        )
        for d in duty
    )
    name = kb.get("components", model.wheel, Component).title
    line = TrailLine(
        f"Duty of a whole turn of {name}, {model.over_gap} over its gap",
        f"d = ({wheel.positions - wheel.missing}·d_tooth + {wheel.missing}·g) / {wheel.positions}",
        (low, nominal, high), "", "arithmetic mean",
    )  # fmt: skip
    return (low, nominal, high), (line,)


def _current_sensor(_kb: KnowledgeBase, spec: Spec, _given: Conditions) -> Limits:
    model = model_of(spec, CurrentSensorModel)
    parts = both(model.shunt, "shunt"), both(model.level, "level")

    def volts(shunt_ohm: float, amp: float) -> float:
        return float(switching.current_sensor_levels_v(shunt_ohm, amp, amp)[0])

    low, nominal, high = over(volts, *parts)
    trail = (
        TrailLine("Resistor in series", model.shunt.text, parts[0], "ohm", spec.source),
        TrailLine("Current at this level", model.level.text, parts[1], "A", spec.source),
        TrailLine("Volts over the resistor", "V = I·R", (low, nominal, high), "V", "Ohm's law"),
    )
    return Limits(low, nominal, high, trail)


MODELS: dict[str, ModelUse] = {
    "pull_up": ModelUse(
        About(
            "High level of a switching output", "V = V_pu·R_meter / (R_pu + R_meter)",
            "voltages to 36 V", "Kirchhoff's laws",
            "Leakage of the transistor that is off, and a second load on the line.",
        ),
        _pull_up, gives="voltage", unit="V",
    ),
    "low_level": ModelUse(
        About(
            "Low level of a switching output", "V = V_sat + V_ground",
            "voltages to 36 V", "Kirchhoff's voltage law",
            "A pull-up of another size than the sensor's maker allows.",
        ),
        _low_level, gives="voltage", unit="V",
    ),
    "square_mean": ModelUse(
        About(
            "Mean of a square wave",
            "V = V_high·d + V_low·(1 − d); with a wheel d = ((n − m)·d_tooth + m·g) / n",
            "many periods within the meter's averaging, above some 20 Hz; with missing teeth many "
            "turns", "arithmetic mean",
            "The missing teeth of a wheel that the record does not name.",
        ),
        _square_mean, gives="voltage", unit="V",
    ),
    "current_sensor": ModelUse(
        About(
            "Two-level current sensor", "V = I·R",
            "resistors to 1000 ohm, beyond which the sensor is starved", "Ohm's law",
            "An ohm test of an active sensor: it proves nothing and can harm it.",
        ),
        _current_sensor, gives="voltage", unit="V",
    ),
}  # fmt: skip
