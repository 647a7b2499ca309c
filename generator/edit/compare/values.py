"""Expected values, old and new: limits in their unit, and the readings that are judged anew."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from generator.edit.compare.effects import Effect, Sort
from generator.expected import Expectation, table
from generator.pages.strings import say
from generator.pages.systems import condition_text
from generator.quantities import figure
from generator.quantities.show import places_for
from generator.records.kinds.things import Spec
from generator.records.knowledge_base import KnowledgeBase

DIGITS = 4
"""Significant digits in a comparison: one more than most tables show."""


@dataclass(frozen=True, slots=True)
class Line:
    """The limits under one set of conditions, in the unit to show; an open side has None."""

    low: float | None
    nominal: float | None
    high: float | None
    unit: str

    @property
    def text(self) -> str:
        """The limits as a reader would say them."""
        low, high = shown(self.low), shown(self.high)
        if low and high:
            return f"{low} to {high} {self.unit}"
        if low or high:
            return f"{'at least' if low else 'at most'} {low or high} {self.unit}"
        return "no limits"


def shown(value: float | None) -> str:
    """Give a figure as a comparison shows it, "" for an open side."""
    return "" if value is None else figure(value, places_for(value, DIGITS))


def lines(kb: KnowledgeBase, spec: Spec) -> dict[str, Line]:
    """Give the limits of a value by the conditions they hold for, in words."""
    return {_conditions(one): _line(one) for one in table(kb, spec)}


def _line(one: Expectation) -> Line:
    return Line(
        one.shown(one.low), one.shown(one.nominal), one.shown(one.high), one.unit.symbol
    )  # fmt: skip


def _conditions(one: Expectation) -> str:
    return ", ".join(
        f"{say(f'value.condition.{name}').lower()} {condition_text(name, at).first}"
        for name, at in one.conditions.items()
    )


def effects(
    spec: Spec, before: Mapping[str, Line], after: Mapping[str, Line], judges: bool
) -> Iterator[Effect]:  # fmt: skip
    """Give the effects of a value that is in both versions.

    Parameters
    ----------
    spec : Spec
        The value as it is after the change.
    before, after : mapping
        Its limits by conditions.
    judges : bool
        Whether a reading is judged by it; a plausibility band judges nothing.
    """
    changed = [at for at in after if at in before and before[at] != after[at]]
    if not changed and list(before) == list(after):
        return
    if not changed:
        what = "the conditions it is shown for"
        yield _effect(spec, what, "; ".join(before), "; ".join(after))
        return
    for at in (changed[0], *changed[1:][-1:]):
        old, new = before[at], after[at]
        yield _effect(spec, at or "limits", old.text, f"{new.text}{_percent(old, new)}")
    if judges:
        yield from _flips(spec, changed[0], before[changed[0]], after[changed[0]])


def _effect(spec: Spec, what: str, before: str, after: str) -> Effect:
    return Effect(Sort.VALUE, spec.key, spec.title, what, before, after)


def _percent(old: Line, new: Line) -> str:
    if old.unit != new.unit:
        return ""
    pairs = [("low", old.low, new.low), ("high", old.high, new.high)]
    said = [
        f"{name} {100 * (b - a) / abs(a):+.1f} %"
        for name, a, b in pairs
        if a is not None and b is not None and a != b and a != 0
    ]
    return f" ({', '.join(said)})" if said else ""


def _flips(spec: Spec, at: str, old: Line, new: Line) -> Iterator[Effect]:
    """Give the readings that are judged otherwise: those between an old limit and the new one."""
    if old.unit != new.unit:
        return
    for side, a, b, inside_above in (
        ("low", old.low, new.low, True), ("high", old.high, new.high, False)
    ):  # fmt: skip
        if a is None or b is None or a == b:
            continue
        was_in = (b > a) == inside_above
        words = f"a reading from {shown(min(a, b))} to {shown(max(a, b))} {old.unit}"
        before, after = ("in limits", side) if was_in else (side, "in limits")
        yield Effect(
            Sort.VERDICT, spec.key, spec.title, f"{words}{' at ' + at if at else ''}", before, after
        )  # fmt: skip
