"""A spec as a page shows it: limits under the conditions of the day, and how they came about."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from generator.expected import CONDITIONS, Expectation, TrailLine, family, table
from generator.pages import routes
from generator.pages.book import Book, LinkTo
from generator.pages.strings import say
from generator.quantities import (
    Interval,
    Unit,
    Written,
    base_unit,
    convert,
    figure,
    show_range,
    unit_named,
)
from generator.quantities.show import places_for
from generator.records.kinds.base import COMMON_PRACTICE
from generator.records.kinds.things import Conditions, Spec

SECOND_UNITS = {
    "°C": "°F", "N·m": "lbf·ft", "mm": "in", "kPa": "psi", "bar": "psi", "km/h": "mph",
}  # fmt: skip
"""Units shown beside the written one, for readers who think in them; computed, never typed."""


@dataclass(frozen=True, slots=True)
class Row:
    """One line of a table of limits; texts, with the unit beside."""

    condition: str
    low: str
    nominal: str
    high: str
    second: str


@dataclass(frozen=True, slots=True)
class Working:
    """One line of the trail."""

    what: str
    how: str
    figures: tuple[str, ...]
    source: str


@dataclass(frozen=True, slots=True)
class ValueView:
    """All that a page says about one value."""

    spec: Spec
    anchor: str
    headline: str
    headline_second: str
    unit: str
    conditions: str
    rows: tuple[Row, ...]
    has_low: bool
    has_nominal: bool
    has_high: bool
    condition_name: str
    is_band: bool
    band: str
    source: LinkTo | None
    source_text: str
    vehicles: str
    working: tuple[Working, ...]
    expectations: tuple[Expectation, ...]


def value_view(book: Book, spec: Spec) -> ValueView:
    """Give the view of a spec; its rows and its trail come from one computation."""
    expectations = tuple(table(book.kb, spec))
    unit = expectations[0].unit
    rows = tuple(_row(expectation, spec, unit) for expectation in expectations)
    needs = tuple(expectations[0].conditions)
    # A value that its model turns into another without asking anything is shown as computed.
    as_written = bool(needs) or _shows_what_was_written(expectations[0])
    band = book.kb.find("specs", spec.band, Spec)
    source = None
    if spec.source != COMMON_PRACTICE:
        source = book.links("sources", [spec.source])[0]
    text = say("value.practice") if source is None else source.title
    if spec.where:
        text = say("value.where", source=text, where=spec.where)
    return ValueView(
        spec=spec,
        anchor=routes.spec(spec.id),
        headline=spec.value.text if spec.value and as_written else _headline(rows, unit),
        headline_second=_second_text(spec.value) if spec.value and as_written else "",
        unit=unit.symbol,
        conditions=conditions_text(spec.at),
        rows=rows if needs else (),
        has_low=any(row.low for row in rows),
        has_nominal=any(row.nominal for row in rows),
        has_high=any(row.high for row in rows),
        condition_name=", ".join(say(f"value.condition.{name}") for name in needs),
        is_band=spec.standing == "plausibility_band",
        band=band.value.text if band and band.value else "",
        source=source,
        source_text=text,
        vehicles=holds_for(book, spec),
        working=_working(expectations),
        expectations=expectations,
    )


def holds_for(book: Book, spec: Spec) -> str:
    """Say which vehicles a value holds for, with engine and build range where it is narrower."""
    parts = [book.vehicles(spec.applies_to)]
    if spec.engines:
        parts.append(say("value.engines", codes=", ".join(spec.engines)))
    if spec.built and spec.built.since and spec.built.until:
        parts.append(say("value.built", since=spec.built.since, until=spec.built.until))
    elif spec.built and spec.built.since:
        parts.append(say("value.built_since", since=spec.built.since))
    elif spec.built and spec.built.until:
        parts.append(say("value.built_until", until=spec.built.until))
    return ", ".join(parts)


def with_overrides(book: Book, ids: Sequence[str]) -> list[Spec]:
    """Give specs and, after each, those that stand in for it on some vehicles."""
    found: dict[str, Spec] = {}
    for id_ in ids:
        spec = book.kb.get("specs", id_, Spec)
        for member in [spec, *family(book.kb, spec)]:
            found.setdefault(member.id, member)
    return list(found.values())


def _shows_what_was_written(one: Expectation) -> bool:
    value = one.spec.value
    return value is not None and (one.low, one.high) == (value.low, value.high)


def conditions_text(at: Conditions) -> str:
    """Give the conditions a value was written for, in words."""
    parts = [
        f"{say(f'value.condition.{name}').lower()} {getattr(at, name).text}"
        for name in CONDITIONS
        if getattr(at, name) is not None
    ]
    if at.state:
        parts.append(at.state)
    return "; ".join(parts)


def _row(expectation: Expectation, spec: Spec, unit: Unit) -> Row:
    low, high = expectation.shown(expectation.low), expectation.shown(expectation.high)
    nominal = expectation.shown(expectation.nominal)
    shown_low, shown_high = show_range(low, high, spec.places)
    return Row(
        condition=_condition_text(expectation),
        low=shown_low,
        nominal="" if nominal is None else figure(nominal, spec.places),
        high=shown_high,
        second=_condition_second(expectation),
    )


def _condition_text(expectation: Expectation) -> str:
    return ", ".join(
        _span_text(name, interval) for name, interval in expectation.conditions.items()
    )


def _span_text(name: str, interval: Interval) -> str:
    low = _plain(_in_shown_unit(name, interval.low))
    if interval.single:
        return f"{low} {CONDITIONS[name].unit}"
    high = _plain(_in_shown_unit(name, interval.high))
    return f"{low} to {high} {CONDITIONS[name].unit}"


def _condition_second(expectation: Expectation) -> str:
    at = expectation.conditions.get("temperature")
    if at is None or not at.single:
        return ""
    fahrenheit = _converted(at.low, base_unit("temperature"), "°F")
    return f"{figure(fahrenheit, 0)} °F"


def _in_shown_unit(name: str, value: float) -> float:
    return _converted(value, base_unit(CONDITIONS[name].quantity), CONDITIONS[name].unit)


def _converted(value: float, source: Unit, symbol: str) -> float:
    target = unit_named(symbol)
    if target is None:
        raise KeyError(symbol)
    return convert(value, source, target)


def _plain(value: float) -> str:
    """Give a condition with the digits a reader would say it with."""
    if float(value).is_integer():
        return figure(value, 0)
    text = figure(value, places_for(value, 3))
    return text.rstrip("0").rstrip(".") if "." in text else text


def _headline(rows: tuple[Row, ...], unit: Unit) -> str:
    """Give the reading of a computed value: its one row, or nothing where rows differ."""
    if len(rows) != 1:
        return say("value.computed")
    return _range_text(rows[0].low, rows[0].high, unit.symbol)


def _range_text(low: str, high: str, symbol: str) -> str:
    if not low:
        return f"{say('value.at_most')} {high} {symbol}"
    if not high:
        return f"{say('value.at_least')} {low} {symbol}"
    return f"{low} {symbol}" if low == high else f"{low} to {high} {symbol}"


def _second_text(value: Written) -> str:
    """Give a written value in the second unit, its digits no finer than the first's."""
    symbol = SECOND_UNITS.get(value.unit.symbol)
    if symbol is None:
        return ""
    source = base_unit(value.quantity)
    parts = {
        name: _converted(number, source, symbol)
        for name, number in (("low", value.low), ("mid", value.nominal), ("high", value.high))
        if number is not None
    }
    places = max(places_for(number, 2) for number in parts.values())
    if value.form == "exact":
        return f"{figure(parts['mid'], places)} {symbol}"
    return _range_text(*show_range(parts.get("low"), parts.get("high"), places), symbol)


def _working(expectations: tuple[Expectation, ...]) -> tuple[Working, ...]:
    """Lay the rows' trails side by side: one line of working, the figures of every row."""
    lines: list[Working] = []
    for index, first in enumerate(expectations[0].trail):
        across = [expectation.trail[index] for expectation in expectations]
        same = all(line.figures == first.figures for line in across)
        figures = (
            (_figures(first),)
            if same
            else tuple(
                f"{_condition_text(e)}: {_figures(line)}"
                for e, line in zip(expectations, across, strict=True)
            )
        )
        lines.append(Working(first.what, first.how, figures, first.source))
    return tuple(lines)


def _figures(line: TrailLine) -> str:
    texts = [figure(value, places_for(value, 5)) for value in line.figures]
    return f"{', '.join(texts)} {line.unit}".strip()


def values_by_vehicle(book: Book, specs: list[Spec]) -> Mapping[str, list[ValueView]]:
    """Group the views of specs by the vehicles they hold for, in the manual's order."""
    groups: dict[str, list[ValueView]] = {}
    for spec in with_overrides(book, [spec.id for spec in specs]):
        groups.setdefault(book.vehicles(spec.applies_to), []).append(value_view(book, spec))
    return groups
