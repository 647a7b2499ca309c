"""Windings and switched coils."""

from __future__ import annotations

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
    reference,
    rows,
    scaled,
    usual,
    written,
)
from generator.expected.result import BadSpec, Conditions, Limits, TrailLine
from generator.physics import actuators, coils, windings
from generator.quantities import Interval
from generator.records.kinds.models import (
    CoilCurrentModel,
    CoilDwellModel,
    CoilFlybackModel,
    CoilRiseModel,
    InjectorDutyModel,
    WindingModel,
)
from generator.records.kinds.things import Spec
from generator.records.knowledge_base import KnowledgeBase

WINDING_ROWS_C = (-20.0, 0.0, 20.0, 40.0, 60.0, 80.0, 100.0)
"""Temperatures of a part beside an engine, from a winter's night to a hot stop (practice)."""

SUPPLY_ROWS_V = (9.0, 10.5, 12.0, 13.5, 14.5)
"""Supplies from hard cranking to charging (practice)."""

DUTY_ROWS_RPM = (800.0, 2000.0, 4000.0, 6000.0)
"""From idle to the fastest a petrol car's engine usually turns (practice)."""


def _winding(_kb: KnowledgeBase, spec: Spec, given: Conditions) -> Limits:
    model, value = model_of(spec, WindingModel), written(spec)
    at_c, ref_c = given["temperature"], reference(spec, "temperature")
    fixed_ohm = 0.0 if model.suppressor is None else model.suppressor.only
    if value.low is not None and fixed_ohm > value.low:
        raise BadSpec(
            f"the suppressor of {fixed_ohm:g} ohm is more than the whole of {value.text}",
            "check both figures", ("model", "suppressor"),
        )  # fmt: skip

    def ohm(ref_ohm: float, temp_c: float) -> float:
        metal = windings.winding_ohm(ref_ohm - fixed_ohm, temp_c, ref_c, model.material)
        return float(metal) + fixed_ohm

    low, nominal, high = scaled(value, ohm, ends(at_c))
    alpha = float(windings.temperature_coefficient_per_k(ref_c, model.material))
    factors = tuple(1 + alpha * (temp_c - ref_c) for temp_c in sorted({at_c.low, at_c.high}))
    source = "IEC 60028" if model.material == "copper" else "IEC 60889"
    what = "Limits at that temperature"
    if fixed_ohm:
        what += f", of which {fixed_ohm:g} ohm keep their value"
    trail = (
        as_written(spec),
        TrailLine(
            f"Temperature coefficient of {model.material} at {ref_c:g} °C", "α", (alpha,), "1/K",
            source,
        ),
        TrailLine(
            "Factor for the part's temperature", f"1 + α·(t − {ref_c:g} °C)", factors, "", source
        ),
        TrailLine(
            what, "R = R_ref·(1 + α·(t − t_ref))", figures(low, nominal, high), "ohm",
            "NBS Handbook 100 (1966)",
        ),
    )  # fmt: skip
    return Limits(low, nominal, high, trail)


def _current(_kb: KnowledgeBase, spec: Spec, given: Conditions) -> Limits:
    model = model_of(spec, CoilCurrentModel)
    on_s = model.on_time.only
    limit_a = float("inf") if model.limit is None else model.limit.only

    def peak_a(supply_v: float, ohm: float, henry: float) -> float:
        return float(actuators.injector_peak_a(on_s, supply_v, ohm, henry, limit_a))

    coil = both(model.resistance, "resistance"), both(model.inductance, "inductance")
    low, nominal, high = over(peak_a, ends(given["supply"]), *coil)
    trail = (
        TrailLine("Pulse", model.on_time.text, (on_s,), "s", spec.source),
        TrailLine("Resistance of the loop", model.resistance.text, coil[0], "ohm", spec.source),
        TrailLine("Inductance", model.inductance.text, coil[1], "H", spec.source),
        TrailLine(
            "Current at the end of the pulse", "i = V/R·(1 − exp(−t·R/L)), no more than the driver "
            "holds", (low, nominal, high), "A", "Kirchhoff's laws",
        ),
    )  # fmt: skip
    return Limits(low, nominal, high, trail)


def _dwell(_kb: KnowledgeBase, spec: Spec, given: Conditions) -> Limits:
    model = model_of(spec, CoilDwellModel)
    current = both(model.current, "current")
    coil = both(model.resistance, "resistance"), both(model.inductance, "inductance")

    def dwell_s(amp: float, supply_v: float, ohm: float, henry: float) -> float:
        return float(coils.dwell_s(amp, supply_v, ohm, henry))

    low, nominal, high = over(dwell_s, current, ends(given["supply"]), *coil)
    trail = (
        TrailLine("Current to reach", model.current.text, current, "A", spec.source),
        TrailLine("Resistance of the loop", model.resistance.text, coil[0], "ohm", spec.source),
        TrailLine("Inductance", model.inductance.text, coil[1], "H", spec.source),
        TrailLine(
            "Time to reach it", "t = −(L/R)·ln(1 − I·R/V)", (low, nominal, high), "s",
            "Kirchhoff's laws",
        ),
    )  # fmt: skip
    return Limits(low, nominal, high, trail)


def _flyback(_kb: KnowledgeBase, spec: Spec, given: Conditions) -> Limits:
    model = model_of(spec, CoilFlybackModel)
    flyback = both(model.flyback, "flyback")

    def peak_v(supply_v: float, drive_v: float) -> float:
        return float(coils.switch_peak_v(supply_v, drive_v))

    low, nominal, high = over(peak_v, ends(given["supply"]), flyback)
    trail = (
        TrailLine(
            "What the coil drives against its supply", model.flyback.text, flyback, "V", spec.source
        ),
        TrailLine(
            "Peak at the switched side", "V = V_supply + V_flyback", (low, nominal, high), "V",
            "Kirchhoff's voltage law",
        ),
    )  # fmt: skip
    return Limits(low, nominal, high, trail)


def _rise(_kb: KnowledgeBase, spec: Spec, _given: Conditions) -> Limits:
    model = model_of(spec, CoilRiseModel)
    coil = both(model.resistance, "resistance"), both(model.inductance, "inductance")
    low, nominal, high = over(lambda ohm, h: float(coils.time_constant_s(ohm, h)), *coil)
    trail = (
        TrailLine("Resistance of the loop", model.resistance.text, coil[0], "ohm", spec.source),
        TrailLine("Inductance", model.inductance.text, coil[1], "H", spec.source),
        TrailLine(
            "Time to 63 % of the final current", "τ = L/R", (low, nominal, high), "s",
            "Kirchhoff's laws",
        ),
    )  # fmt: skip
    return Limits(low, nominal, high, trail)


def _injector_duty(_kb: KnowledgeBase, spec: Spec, given: Conditions) -> Limits:
    model = model_of(spec, InjectorDutyModel)
    on_s = both(model.on_time, "on_time")
    if model.on_time.quantity != "time":
        raise BadSpec(
            f"{model.on_time.text} is {model.on_time.quantity}, not a time",
            "write it in ms", ("model", "on_time"),
        )  # fmt: skip

    def percent(pulse_s: float, speed_rpm: float) -> float:
        return 100.0 * float(actuators.injector_duty(pulse_s, speed_rpm, model.turns_per_pulse))

    low, nominal, high = over(percent, on_s, ends(given["engine_speed"]))
    trail = (
        TrailLine("Pulse", model.on_time.text, on_s, "s", spec.source),
        TrailLine(
            "Share of the time it is on", f"d = t_on·n / (60·{model.turns_per_pulse})",
            (low, nominal, high), "%", "arithmetic",
        ),
    )  # fmt: skip
    return Limits(low, nominal, high, trail)


_BY_SUPPLY = usual(supply=Interval(SUPPLY_ROWS_V[0], SUPPLY_ROWS_V[-1]))
_BY_TEMPERATURE = always(temperature=Interval(WINDING_ROWS_C[0], WINDING_ROWS_C[-1]))
_BY_SPEED = usual(engine_speed=Interval(DUTY_ROWS_RPM[0], DUTY_ROWS_RPM[-1]))
_SUPPLY_ROWS = rows(_BY_SUPPLY, "supply", SUPPLY_ROWS_V)

MODELS: dict[str, ModelUse] = {
    "winding": ModelUse(
        About(
            "Winding against temperature", "R = R_ref·(1 + α·(t − t_ref))",
            "−50 to 200 °C of the winding itself, copper or aluminium",
            "IEC 60028; NBS Handbook 100 (1966)",
            "Shorted turns that only show under voltage, insulation, and the air's temperature "
            "taken for the part's.",
        ),
        _winding, gives="resistance", value=True, usual=_BY_TEMPERATURE,
        rows=rows(_BY_TEMPERATURE, "temperature", WINDING_ROWS_C), reference=("temperature",),
    ),
    "coil_current": ModelUse(
        About(
            "Current of a switched coil", "i = V/R·(1 − exp(−t·R/L))",
            "supplies to 120 V, a constant inductance", "Kirchhoff's laws",
            "Saturation of the core and a moving plunger, which bend the curve.",
        ),
        _current, gives="current", unit="A", usual=_BY_SUPPLY, rows=_SUPPLY_ROWS,
    ),
    "coil_dwell": ModelUse(
        About(
            "Dwell of an ignition coil", "t = −(L/R)·ln(1 − I·R/V)",
            "currents the loop can reach, V/R at most", "Kirchhoff's laws",
            "Saturation of the core, and control units that hold the current by other means.",
        ),
        _dwell, gives="time", unit="ms", usual=_BY_SUPPLY, rows=_SUPPLY_ROWS,
    ),
    "coil_flyback": ModelUse(
        About(
            "Peak at a switched coil", "V = V_supply + V_flyback",
            "clamps to 1000 V", "Kirchhoff's voltage law",
            "Ringing above the clamp, and the secondary of an ignition coil.",
        ),
        _flyback, gives="voltage", unit="V", usual=_BY_SUPPLY, rows=_SUPPLY_ROWS,
    ),
    "coil_rise": ModelUse(
        About(
            "Time constant of a coil", "τ = L/R", "a constant inductance", "Kirchhoff's laws",
            "Eddy currents in a solid core, which slow the field more than the current.",
        ),
        _rise, gives="time", unit="ms",
    ),
    "injector_duty": ModelUse(
        About(
            "Duty of an injector", "d = t_on·n / (60·k)",
            "pulses shorter than their period", "arithmetic",
            "Fuel quantity: dead time and pressure decide that.",
        ),
        _injector_duty, gives="ratio", unit="%", usual=_BY_SPEED,
        rows=rows(_BY_SPEED, "engine_speed", DUTY_ROWS_RPM),
    ),
}  # fmt: skip
