"""What every model says of itself, and the arithmetic of limits that they share."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import product
from typing import TypeVar

from generator.expected.result import BadSpec, Conditions, Limits, TrailLine
from generator.quantities import Interval, Written, base_unit
from generator.records.kinds.base import Shape
from generator.records.kinds.things import Spec
from generator.records.knowledge_base import KnowledgeBase

M = TypeVar("M", bound=Shape)

Three = tuple[float, float, float]
"""Low, nominal and high."""


@dataclass(frozen=True, slots=True)
class About:
    """What the method page says of a model.

    Parameters
    ----------
    title : str
        The model in a few words.
    formula : str
        The formula with its symbols.
    holds : str
        The range it is used in.
    source : str
        Where the formula stands.
    omits : str
        What it does not cover.
    """

    title: str
    formula: str
    holds: str
    source: str
    omits: str


def _none(_kb: KnowledgeBase, _spec: Spec) -> Conditions:
    return {}


def _no_breaks(_spec: Spec) -> Mapping[str, Sequence[float]]:
    return {}


def _one_row(_kb: KnowledgeBase, _spec: Spec) -> Sequence[Conditions]:
    return ({},)


@dataclass(frozen=True, slots=True)
class ModelUse:
    """One model: what it needs, what it takes for granted and how it works.

    Parameters
    ----------
    about : About
        For the method page.
    limits : callable
        Knowledge base, spec and conditions to limits with their trail.
    gives : str
        Quantity of the result; empty where the written value says it.
    unit : str
        Unit shown where the record writes none.
    value : bool
        Whether the spec writes a value that the model works from.
    usual : callable
        The conditions it needs, each with its usual range.
    rows : callable
        The rows a mechanic meets.
    reference : tuple of str
        Conditions that the written value has to state.
    may : tuple of str
        Conditions it takes where they are stated and can do without.
    instead : mapping
        Conditions that may be stated in place of one it needs.
    breaks : callable
        Where within a condition a limit may turn or leap: the ends alone do not tell there.
    jumps : bool
        Whether a limit leaps somewhere, so that no line may be drawn through it.
    """

    about: About
    limits: Callable[[KnowledgeBase, Spec, Conditions], Limits]
    gives: str = ""
    unit: str = ""
    value: bool = False
    usual: Callable[[KnowledgeBase, Spec], Conditions] = _none
    rows: Callable[[KnowledgeBase, Spec], Sequence[Conditions]] = _one_row
    reference: tuple[str, ...] = ()
    may: tuple[str, ...] = ()
    instead: dict[str, str] = field(default_factory=dict)
    breaks: Callable[[Spec], Mapping[str, Sequence[float]]] = _no_breaks
    jumps: bool = False


def written(spec: Spec) -> Written:
    """Give the value that a model works from."""
    if spec.value is None:
        raise BadSpec(
            f"the model {spec.model.name} works from a written value, and there is none",
            "write it, as value: 860 ohm ± 10 %",
        )
    value: Written = spec.value
    return value


def as_written(spec: Spec) -> TrailLine:
    """Give the trail's first line: what the author wrote."""
    value = written(spec)
    figures = tuple(v for v in (value.low, value.nominal, value.high) if v is not None)
    unit = base_unit(value.quantity).symbol
    return TrailLine("Written value", value.text, figures, unit, spec.source)


def both(value: Written, *path: str | int) -> Three:
    """Give low, nominal and high of a parameter; the middle where no nominal is written."""
    if value.low is None or value.high is None:
        raise BadSpec(
            f"{value.text} leaves one side open", "write both limits", ("model", *path)
        )
    middle = (value.low + value.high) / 2 if value.nominal is None else value.nominal
    return value.low, middle, value.high


def ends(interval: Interval) -> Three:
    """Give low, middle and high of a condition."""
    return interval.low, interval.middle, interval.high


def shares(three: Three) -> Three:
    """Turn percent into shares."""
    return three[0] / 100, three[1] / 100, three[2] / 100


def exactly(value: float) -> Three:
    """Give a figure without a spread."""
    return value, value, value


def over(function: Callable[..., float], *inputs: Three) -> Three:
    """Give the limits of a function that is monotonic in each input.

    Notes
    -----
    Monotonic in each input with the others held, it takes its extremes over a box at corners:
    exact. The nominal is that of the nominals.
    """
    corners = [float(function(*at)) for at in product(*((i[0], i[2]) for i in inputs))]
    return min(corners), float(function(*(i[1] for i in inputs))), max(corners)


def scaled(value: Written, function: Callable[..., float], *inputs: Three) -> tuple[
    float | None, float | None, float | None
]:
    """Give the limits of a written value carried to other conditions; an open side stays open.

    Parameters
    ----------
    value : Written
        At its reference conditions.
    function : callable
        The value and each condition to the value there; monotonic in each.
    inputs : tuple of float
        Low, nominal and high of each condition.
    """
    low, nominal, high = (
        None if figure is None else over(function, exactly(figure), *inputs)
        for figure in (value.low, value.nominal, value.high)
    )
    return (
        None if low is None else low[0],
        None if nominal is None else nominal[1],
        None if high is None else high[2],
    )


def figures(*values: float | None) -> tuple[float, ...]:
    """Leave out what is open."""
    return tuple(value for value in values if value is not None)


def usual(**known: Interval) -> Callable[[KnowledgeBase, Spec], Conditions]:
    """Give the usual ranges; what the record writes under ``at`` goes before them."""

    def of(_kb: KnowledgeBase, spec: Spec) -> Conditions:
        return {name: stated(spec, name) or interval for name, interval in known.items()}

    return of


def always(**known: Interval) -> Callable[[KnowledgeBase, Spec], Conditions]:
    """Give the usual ranges, whatever the record states its value at."""

    def of(_kb: KnowledgeBase, _spec: Spec) -> Conditions:
        return known

    return of


def stated(spec: Spec, name: str) -> Interval | None:
    """Give a condition as the record writes it under ``at``, or None."""
    value: Written | None = getattr(spec.at, name)
    if value is None:
        return None
    if value.low is None or value.high is None:
        raise BadSpec(f"{value.text} leaves one side open", "write both limits", ("at", name))
    return Interval(value.low, value.high)


def reference(spec: Spec, name: str) -> float:
    """Give the one condition at which the value is written."""
    value: Written | None = getattr(spec.at, name)
    if value is None:
        raise BadSpec(f"the value's {name} is not stated", f"add {name}", ("at",))
    if value.form != "exact":
        raise BadSpec(
            f"{value.text} is a range where one value is needed", "write one value", ("at", name)
        )
    return value.only


def rows(
    ranges: Callable[[KnowledgeBase, Spec], Conditions], name: str, points: Sequence[float]
) -> Callable[[KnowledgeBase, Spec], Sequence[Conditions]]:
    """Give rows over one condition within its usual range, the others at their usual ranges."""

    def of(kb: KnowledgeBase, spec: Spec) -> Sequence[Conditions]:
        known = ranges(kb, spec)
        span = known[name]
        inside = [p for p in points if span.low <= p <= span.high]
        at = inside or sorted({span.low, span.high})
        return [{name: Interval.of(p), **{k: v for k, v in known.items() if k != name}} for p in at]

    return of


def model_of(spec: Spec, shape: type[M]) -> M:
    """Give the spec's model as its own shape."""
    if not isinstance(spec.model, shape):
        raise TypeError(f"{spec.key} has the model {spec.model.name}")
    return spec.model
