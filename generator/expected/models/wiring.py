"""Cables, joints and the voltage they take; every result is an upper limit."""

from __future__ import annotations

from generator.expected.models.use import (
    About,
    ModelUse,
    ends,
    model_of,
    over,
    rows,
    usual,
)
from generator.expected.result import BadSpec, Conditions, Limits, TrailLine
from generator.physics import cable, voltage_drop
from generator.physics.domain import OutsideRange, within
from generator.quantities import Interval
from generator.records.kinds.models import CableDropModel, CableResistanceModel, DropBudgetModel
from generator.records.kinds.models.wiring import Cable, Piece
from generator.records.kinds.things import Spec
from generator.records.knowledge_base import KnowledgeBase

CABLE_ROWS_C = (-20.0, 0.0, 20.0, 40.0, 60.0, 80.0, 100.0)
"""Temperatures of cables in a vehicle (practice)."""

# ASTM B258 lets a diameter lie 1 % under, which is 2 % of the section (from memory).
GAUGE_SLACK = 1.02

# A starter in a hard frost draws less than this, A (practice).
MOST_A = 3000.0


def ohm_per_m(one: Cable, temp_c: float, *path: str | int) -> float:
    """Give the greatest resistance a metre of a cable may have, ohm."""
    if one.gauge is not None:
        nominal = cable.awg_ohm_per_m(one.gauge, temp_c, cable.LAY_FACTOR_STRANDED)
        return float(nominal) * GAUGE_SLACK
    assert one.area is not None
    try:
        return float(cable.class_5_ohm_per_m(one.area.only, temp_c))
    except OutsideRange:
        raise
    except ValueError as unknown:
        raise BadSpec(
            str(unknown), "use a size of the table", ("model", *path, "area")
        ) from None


def _size(one: Cable) -> str:
    size = f"{one.gauge} AWG" if one.area is None else one.area.text
    return f"{size}, {one.length.text}"


def _source(one: Cable) -> str:
    return "ASTM B258 with 2 % for lay and 2 % for tolerance" if one.area is None else (
        "IEC 60228, class 5, plain copper"
    )


def _resistance(_kb: KnowledgeBase, spec: Spec, given: Conditions) -> Limits:
    model, at_c = model_of(spec, CableResistanceModel), given["temperature"]
    length_m = model.length.only
    _, _, high = over(lambda t: length_m * ohm_per_m(model, t), ends(at_c))
    trail = (
        TrailLine(f"Cable {_size(model)}", "greatest resistance a metre, 20 °C",
                  (ohm_per_m(model, 20.0),), "ohm/m", _source(model)),
        TrailLine("Of its length at its temperature", "R = R'·l·(1 + α·(t − 20 °C))", (high,),
                  "ohm", "IEC 60028"),
    )  # fmt: skip
    return Limits(None, None, high, trail)


def _drop(_kb: KnowledgeBase, spec: Spec, given: Conditions) -> Limits:
    model = model_of(spec, CableDropModel)
    length_m = model.length.only
    _check(given["current"])

    def drop_v(amp: float, temp_c: float) -> float:
        return float(voltage_drop.cable_drop_v(amp, ohm_per_m(model, temp_c), length_m))

    _, _, high = over(drop_v, ends(given["current"]), ends(given["temperature"]))
    trail = (
        TrailLine(f"Cable {_size(model)}", "greatest resistance a metre, 20 °C",
                  (ohm_per_m(model, 20.0),), "ohm/m", _source(model)),
        TrailLine("Current", "as stated", _both(given["current"]), "A", spec.source),
        TrailLine("Voltage along it", "U = I·R'·l·(1 + α·(t − 20 °C))", (high,), "V", "Ohm's law"),
    )  # fmt: skip
    return Limits(None, None, high, trail)


def _check(current: Interval) -> None:
    within("current", [current.low, current.high], 0.0, MOST_A, "A")


def _both(interval: Interval) -> tuple[float, ...]:
    return tuple(sorted({interval.low, interval.high}))


def _piece(piece: Piece, temp_c: float, index: int) -> voltage_drop.Piece:
    if piece.cable is not None:
        ohm = piece.cable.length.only * ohm_per_m(piece.cable, temp_c, "pieces", index, "cable")
    else:
        assert piece.resistance is not None
        ohm = piece.resistance.only
    return voltage_drop.Piece(piece.what, ohm)


def _budget(_kb: KnowledgeBase, spec: Spec, given: Conditions) -> Limits:
    model = model_of(spec, DropBudgetModel)

    def budget(amp: float, temp_c: float) -> voltage_drop.DropBudget:
        pieces = [_piece(piece, temp_c, n) for n, piece in enumerate(model.pieces)]
        return voltage_drop.drop_budget(pieces, amp)

    _check(given["current"])
    worst = budget(given["current"].high, given["temperature"].high)
    trail = (
        TrailLine("Current", "as stated", _both(given["current"]), "A", spec.source),
        *(TrailLine(name, "U = I·R", (drop,), "V", spec.source) for name, drop in worst.drops_v),
        TrailLine("Sum of the pieces", "Σ I·R", (worst.total_v,), "V", "Kirchhoff's voltage law"),
    )
    return Limits(None, None, worst.total_v, trail)


_HEAT = Interval(CABLE_ROWS_C[0], CABLE_ROWS_C[-1])
_BY_HEAT = usual(temperature=_HEAT)


def _loaded(kb: KnowledgeBase, spec: Spec) -> Conditions:
    if spec.at.current is None:
        raise BadSpec("a drop without its current says nothing", "add current under `at`", ("at",))
    return usual(temperature=_HEAT, current=Interval.of(0.0))(kb, spec)


_ROWS = rows(_loaded, "temperature", CABLE_ROWS_C)
MODELS: dict[str, ModelUse] = {
    "cable_resistance": ModelUse(
        About(
            "Resistance of a cable", "R = R'·l·(1 + α·(t − 20 °C))",
            "class 5 sizes of 0.5 to 120 mm² or gauges −3 to 40, −50 to 200 °C",
            "IEC 60228; ASTM B258; IEC 60028",
            "Joints, broken strands and road-vehicle cable of its own standard, whose limits lie "
            "some 5 % lower.",
        ),
        _resistance, gives="resistance", unit="mohm", usual=_BY_HEAT,
        rows=rows(_BY_HEAT, "temperature", CABLE_ROWS_C),
    ),
    "cable_drop": ModelUse(
        About(
            "Voltage along a cable", "U = I·R'·l·(1 + α·(t − 20 °C))",
            "as for the resistance of a cable, at a stated current", "Ohm's law; IEC 60228",
            "A drop without its current: it says nothing.",
        ),
        _drop, gives="voltage", unit="V", usual=_loaded, rows=_ROWS, reference=("current",),
    ),
    "drop_budget": ModelUse(
        About(
            "Drop budget of a circuit", "Σ I·R",
            "a constant current through pieces in series", "Kirchhoff's voltage law",
            "A lamp, which draws less as its voltage falls, so that its true drops are smaller.",
        ),
        _budget, gives="voltage", unit="V", usual=_loaded, rows=_ROWS, reference=("current",),
    ),
}  # fmt: skip
