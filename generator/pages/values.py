"""A spec as a page shows it: limits under the conditions of the day, and how they came about."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from generator.expected import CONDITIONS, Expectation, TrailLine, table
from generator.pages import routes
from generator.pages.book import Book, LinkTo
from generator.pages.strings import say
from generator.quantities import Unit, Written, base_unit, convert, figure, show_range, unit_named
from generator.quantities.show import places_for
from generator.records.kinds.base import COMMON_PRACTICE
from generator.records.kinds.things import Conditions, Spec

SECOND_UNITS = {
    "°C": "°F", "N·m": "lbf·ft", "mm": "in", "kPa": "psi", "bar": "psi", "km/h": "mph",
}  # fmt: skip
"""Units shown beside the written one, for readers who think in them; computed, never typed."""

CONDITION_UNITS = {"temperature": "°C", "engine_speed": "rpm", "supply": "V", "gap": "mm"}


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
        headline=spec.value.text if spec.value else _headline(rows, unit),
        headline_second=_second_text(spec.value) if spec.value else "",
        unit=unit.symbol,
        conditions=conditions_text(spec.at),
        rows=rows if needs else (),
        has_low=any(row.low for row in rows),
        has_nominal=any(row.nominal for row in rows),
        has_high=any(row.high for row in rows),
        condition_name=say(f"value.condition.{needs[0]}") if needs else "",
        is_band=spec.standing == "plausibility_band",
        band=band.value.text if band and band.value else "",
        source=source,
        source_text=text,
        vehicles=book.vehicles(spec.applies_to),
        working=_working(expectations),
        expectations=expectations,
    )


def conditions_text(at: Conditions) -> str:
    """Give the conditions a value was written for, in words."""
    parts = [
        f"{known.asks} {getattr(at, name).text}"
        for name, known in CONDITIONS.items()
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
        f"{_plain(_in_shown_unit(name, interval.low))} {CONDITION_UNITS[name]}"
        for name, interval in expectation.conditions.items()
    )


def _condition_second(expectation: Expectation) -> str:
    at = expectation.conditions.get("temperature")
    if at is None:
        return ""
    fahrenheit = _converted(at.low, base_unit("temperature"), "°F")
    return f"{figure(fahrenheit, 0)} °F"


def _in_shown_unit(name: str, value: float) -> float:
    return _converted(value, base_unit(CONDITIONS[name].quantity), CONDITION_UNITS[name])


def _converted(value: float, source: Unit, symbol: str) -> float:
    target = unit_named(symbol)
    if target is None:
        raise KeyError(symbol)
    return convert(value, source, target)


def _plain(value: float) -> str:
    return figure(value, 0 if float(value).is_integer() else 1)


def _headline(rows: tuple[Row, ...], unit: Unit) -> str:
    """Give the reading of a computed value: its one row, or nothing where rows differ."""
    if len(rows) != 1:
        return say("value.computed")
    row = rows[0]
    return f"{row.low} to {row.high} {unit.symbol}"


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
    low, high = show_range(parts.get("low"), parts.get("high"), places)
    if not low:
        return f"{say('value.at_most')} {high} {symbol}"
    if not high:
        return f"{say('value.at_least')} {low} {symbol}"
    return f"{low} to {high} {symbol}"


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
    for spec in specs:
        groups.setdefault(book.vehicles(spec.applies_to), []).append(value_view(book, spec))
    return groups
