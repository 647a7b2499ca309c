"""A spec and the conditions of the day: the reading to expect, and the working."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import contextmanager

from generator.expected.models import MODELS, ModelUse, quantity_of
from generator.expected.places import field_of
from generator.expected.result import CONDITIONS, BadSpec, Conditions, Expectation
from generator.physics.domain import OutsideRange
from generator.quantities import Interval, Unit, base_unit, unit_named
from generator.records.kinds.things import Spec
from generator.records.knowledge_base import KnowledgeBase


class CannotExpect(ValueError):
    """No reading can be given, and why.

    Attributes
    ----------
    hint : str
        The smallest mend.
    path : tuple
        The field of the spec that stands in the way; empty where it is the question.
    """

    def __init__(self, message: str, hint: str, path: tuple[str | int, ...] = ()) -> None:
        self.hint = hint
        self.path = path
        super().__init__(message)


def unit_of(spec: Spec) -> Unit:
    """Give the unit a spec is shown in.

    Raises
    ------
    CannotExpect
        If the record writes neither a value nor a known unit, or one of another quantity than
        the model's.
    """
    quantity = quantity_of(spec)
    if spec.value is not None:
        written: Unit = spec.value.unit
        if written.quantity != quantity:
            raise CannotExpect(
                f"the model {spec.model.name} is about {quantity}, but {spec.value.text} is "
                f"{written.quantity}",
                "write the value in the right unit, or name another model", ("value",),
            )  # fmt: skip
        return written
    name = spec.unit or MODELS[spec.model.name].unit
    if not name and quantity:
        return base_unit(quantity)
    unit = unit_named(name)
    if unit is None:
        path = ("unit",) if spec.unit else ("model",)
        raise CannotExpect(
            f"the unit `{name}` is not known" if name else "the spec has no value and no unit",
            "write a value, as 860 ohm ± 10 %", path,
        )  # fmt: skip
    if unit.quantity != quantity:
        raise CannotExpect(
            f"the model {spec.model.name} gives {quantity}, but {unit.symbol} is a unit of "
            f"{unit.quantity}",
            f"use a unit of {quantity}", ("unit",),
        )  # fmt: skip
    return unit


def expect(kb: KnowledgeBase, spec: Spec, conditions: Conditions | None = None) -> Expectation:
    """Give the limits of a spec under the conditions of the day.

    Parameters
    ----------
    kb : KnowledgeBase
        The manual, checked.
    spec : Spec
        The value asked for.
    conditions : mapping, optional
        Condition names to intervals in base units. A condition the model needs and nobody
        states takes its usual range, and `assumed` says so. A plausibility band is never
        corrected: it takes no conditions.

    Returns
    -------
    Expectation
        Unrounded limits and the working.

    Raises
    ------
    CannotExpect
        For a condition the spec does not follow, or one beyond the model's range.
    """
    use, stated = MODELS[spec.model.name], dict(conditions or {})
    with _refusals(spec):
        unit = unit_of(spec)
        usual = use.usual(kb, spec)
        _refuse_strangers(spec, use, usual, stated)
        given, assumed = _given(use, usual, stated)
        limits = use.limits(kb, spec, given)
    return Expectation(
        spec, limits.low, limits.nominal, limits.high, unit, given, assumed, limits.trail
    )


def table(kb: KnowledgeBase, spec: Spec) -> Sequence[Expectation]:
    """Give the rows a mechanic meets: one expectation for each set of usual conditions."""
    with _refusals(spec):
        found = MODELS[spec.model.name].rows(kb, spec)
    return [expect(kb, spec, row) for row in found]


def needs(kb: KnowledgeBase, spec: Spec) -> Conditions:
    """Give the conditions a spec follows, each with its usual range."""
    with _refusals(spec):
        return MODELS[spec.model.name].usual(kb, spec)


@contextmanager
def _refusals(spec: Spec) -> Iterator[None]:
    """Turn every way in which a model refuses into the one error of this room."""
    try:
        yield
    except CannotExpect:
        raise
    except OutsideRange as beyond:
        path = field_of(spec, beyond.value, ("model",))
        raise CannotExpect(_beyond(beyond), f"stay within {_span(beyond)}", path) from None
    except BadSpec as wrong:
        raise CannotExpect(str(wrong), wrong.hint, wrong.path) from None
    except ValueError as wrong:
        raise CannotExpect(str(wrong), "check the model's figures", ("model",)) from None


def _refuse_strangers(
    spec: Spec, use: ModelUse, usual: Conditions, stated: Conditions
) -> None:
    if spec.standing == "plausibility_band" and spec.model.name != "plain":
        raise CannotExpect(
            "a plausibility band is never corrected for conditions", "give it the model plain",
            ("model", "name"),
        )  # fmt: skip
    known = {*usual, *use.may, *(n for n, other in use.instead.items() if other in usual)}
    for name in stated:
        if name not in known:
            follows = ", ".join(sorted(known)) or "nothing: it holds as it is written"
            what = "is no condition" if name not in CONDITIONS else "does not change this value"
            raise CannotExpect(f"{name} {what}", f"{spec.id} follows {follows}")
    for name, other in use.instead.items():
        twice = [n for n in (other, *use.may) if n in stated]
        if name in stated and twice:
            raise CannotExpect(
                f"{name} and {twice[0]} say the same thing twice", "state one of them"
            )


def _given(
    use: ModelUse, usual: Conditions, stated: Conditions
) -> tuple[Conditions, tuple[str, ...]]:
    """Give the conditions to work with, and the names of those nobody stated."""
    replaced = {use.instead[name] for name in stated if name in use.instead}
    wanted = [name for name in usual if name not in replaced]
    given: dict[str, Interval] = {name: stated.get(name, usual[name]) for name in wanted}
    given |= {name: interval for name, interval in stated.items() if name not in given}
    return given, tuple(name for name in wanted if name not in stated)


def _beyond(beyond: OutsideRange) -> str:
    unit = "" if beyond.unit == "" else f" {beyond.unit}"
    return f"{beyond.name} {beyond.value:g}{unit} is outside {_span(beyond)}"


def _span(beyond: OutsideRange) -> str:
    unit = "" if beyond.unit == "" else f" {beyond.unit}"
    if beyond.high == float("inf"):
        return f"{beyond.low:g}{unit} and more"
    return f"{beyond.low:g} to {beyond.high:g}{unit}"
