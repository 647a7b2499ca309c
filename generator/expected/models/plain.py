"""Written values that follow nothing, printed curves, and torques."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from generator.expected.models.use import (
    About,
    ModelUse,
    Three,
    as_written,
    figures,
    model_of,
    scaled,
    written,
)
from generator.expected.result import CONDITIONS, BadSpec, Conditions, Limits, TrailLine
from generator.physics.curves import TabulatedCurve
from generator.physics.fasteners import plausible_torque_band_nm, wrench_setting_nm
from generator.quantities import Interval, Written, base_unit
from generator.records.kinds.models import CurveModel, TorqueModel, WrenchModel
from generator.records.kinds.things import Spec
from generator.records.knowledge_base import KnowledgeBase

MANY_ROWS = 12
"""Rows of a printed curve that a page shows; a longer table is thinned."""


def _plain(_kb: KnowledgeBase, spec: Spec, _given: Conditions) -> Limits:
    value = written(spec)
    return Limits(value.low, value.nominal, value.high, (as_written(spec),))


def _torque(_kb: KnowledgeBase, spec: Spec, _given: Conditions) -> Limits:
    value = written(spec)
    band = plausible_torque(spec)
    check = TrailLine(
        "Where a torque for this thread can lie at all; a check for misprints, never a source",
        "K·d·F, from K 0.10 at 15 % to K 0.35 at 110 % of the proof load", (band[0], band[2]),
        "N·m", "ISO 898-1",
    )  # fmt: skip
    return Limits(value.low, value.nominal, value.high, (check, as_written(spec)))


def plausible_torque(spec: Spec) -> Three:
    """Give the span beyond which a spec's torque is probably a misprint, N·m."""
    model = model_of(spec, TorqueModel)
    return plausible_torque_band_nm(
        model.diameter.only * 1000, model.pitch.only * 1000, model.strength
    )


def _wrench(_kb: KnowledgeBase, spec: Spec, _given: Conditions) -> Limits:
    model, value = model_of(spec, WrenchModel), written(spec)

    def setting(torque_nm: float) -> float:
        return float(
            wrench_setting_nm(torque_nm, model.wrench.only, model.extension.only, model.angle)
        )

    low, nominal, high = scaled(value, setting)
    trail = (
        as_written(spec),
        TrailLine(
            f"Wrench {model.wrench.text}, extension {model.extension.text}, {model.angle:g}°",
            "share of the torque to set", (setting(1.0),), "", spec.source,
        ),
        TrailLine(
            "Setting of the wrench", "T_set = T·L / (L + E·cos θ)", figures(low, nominal, high),
            "N·m", "moments about the fastener",
        ),
    )  # fmt: skip
    return Limits(low, nominal, high, trail)


def curve_quantity(model: CurveModel) -> str:
    """Give the quantity of a curve's values."""
    first: Written = model.rows[0].value
    return first.quantity


def _sides(model: CurveModel) -> tuple[list[float], dict[str, list[float]]]:
    """Give the rows as columns: where, and each side that every row has."""
    wanted = CONDITIONS[model.over].quantity
    at: list[float] = []
    columns: dict[str, list[float]] = {"low": [], "nominal": [], "high": []}
    for index, row in enumerate(model.rows):
        if row.at.quantity != wanted:
            raise BadSpec(
                f"{row.at.text} is {row.at.quantity}, but {model.over} is {wanted}",
                f"write it in {CONDITIONS[model.over].unit}", ("model", "rows", index, "at"),
            )  # fmt: skip
        if row.value.quantity != curve_quantity(model):
            raise BadSpec(
                f"{row.value.text} is {row.value.quantity}, not {curve_quantity(model)}",
                "write every row in units of one quantity", ("model", "rows", index, "value"),
            )  # fmt: skip
        if at and row.at.nominal is not None and row.at.nominal <= at[-1]:
            raise BadSpec(
                f"{row.at.text} does not lie above the row before it", "sort the rows",
                ("model", "rows", index, "at"),
            )  # fmt: skip
        if row.at.form != "exact":
            raise BadSpec(
                f"{row.at.text} is a range where one value is needed", "write one value",
                ("model", "rows", index, "at"),
            )  # fmt: skip
        at.append(row.at.only)
        for side, column in columns.items():
            figure = getattr(row.value, side)
            if figure is not None:
                column.append(figure)
    return at, {side: column for side, column in columns.items() if len(column) == len(at)}


def _curve(_kb: KnowledgeBase, spec: Spec, given: Conditions) -> Limits:
    model = model_of(spec, CurveModel)
    at, columns = _sides(model)
    if not columns:
        raise BadSpec(
            "the rows have no side in common", "write every row in one form", ("model", "rows")
        )
    span = given[model.over]
    unit = base_unit(curve_quantity(model)).symbol
    x_unit = base_unit(CONDITIONS[model.over].quantity).symbol

    def side(name: str, place: int) -> float | None:
        if name not in columns:
            return None
        curve = TabulatedCurve(
            at, columns[name], model.interpolation,
            name="value", x_name=model.over.replace("_", " "), x_unit=x_unit, y_unit=unit,
        )  # fmt: skip
        return float(curve.band(span.middle, (span.high - span.low) / 2)[place])

    low, nominal, high = side("low", 0), side("nominal", 1), side("high", 2)
    trail = (
        TrailLine(
            "Rows around these conditions", f"{len(at)} printed rows, {model.interpolation}",
            _around(at, span), x_unit, spec.source,
        ),
        TrailLine(
            "Limits read between the rows",
            "y = y1 + (y2 − y1)·(x − x1) / (x2 − x1)" if model.interpolation == "linear"
            else "ln y = ln y1 + (ln y2 − ln y1)·(x − x1) / (x2 − x1)",
            figures(low, nominal, high), unit, "arithmetic",
        ),
    )  # fmt: skip
    return Limits(low, nominal, high, trail)


def _around(at: list[float], span: Interval) -> tuple[float, ...]:
    below = [x for x in at if x <= span.low]
    above = [x for x in at if x >= span.high]
    return figures(below[-1] if below else None, above[0] if above else None)


def _curve_usual(_kb: KnowledgeBase, spec: Spec) -> Conditions:
    model = model_of(spec, CurveModel)
    at, _ = _sides(model)
    return {model.over: Interval(at[0], at[-1])}


def _curve_breaks(spec: Spec) -> Mapping[str, Sequence[float]]:
    model = model_of(spec, CurveModel)
    return {model.over: _sides(model)[0]}


def _curve_rows(_kb: KnowledgeBase, spec: Spec) -> Sequence[Conditions]:
    model = model_of(spec, CurveModel)
    at, _ = _sides(model)
    step = -(-len(at) // MANY_ROWS)
    return [{model.over: Interval.of(x)} for x in at[::step]]


MODELS: dict[str, ModelUse] = {
    "plain": ModelUse(
        About(
            "Plain band", "the limits as they are written", "any conditions the record states",
            "the record's own source",
            "Anything that changes with the conditions of the day: then it needs another model.",
        ),
        _plain, value=True,
    ),
    "curve": ModelUse(
        About(
            "Printed curve",
            "straight between two rows, in the value or in its logarithm, as the record says",
            "from the first row to the last and nowhere else",
            "the record's own source",
            "What happens between rows that lie far apart: the rows are what the maker states.",
        ),
        _curve, usual=_curve_usual, rows=_curve_rows, breaks=_curve_breaks,
    ),
    "torque": ModelUse(
        About(
            "Torque, held against its thread",
            "the written limits; beside them the span K·d·F from K 0.10 at 15 % to K 0.35 at "
            "110 % of the proof load, As = π/4·(d − 0.9382·P)²",
            "metric threads of 1.6 to 39 mm, classes 4.6 to 12.9",
            "ISO 898-1",
            "Which torque is right. A torque comes from the maker's data alone; the span catches "
            "a slip of a unit or a decimal point and nothing else.",
        ),
        _torque, gives="torque", value=True,
    ),
    "wrench_setting": ModelUse(
        About(
            "Torque wrench with an offset extension",
            "T_set = T·L / (L + E·cos θ)",
            "the hand at the middle of the grip; the extension must not reach back to the hand",
            "moments about the fastener",
            "A straight extension on the drive's own axis, which changes nothing, and torque "
            "plus angle.",
        ),
        _wrench, gives="torque", value=True,
    ),
}  # fmt: skip
