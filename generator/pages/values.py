"""A spec as a page shows it: limits under the conditions of the day, and how they came about."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from generator.expected import CONDITIONS, Expectation, TrailLine, family, table
from generator.pages import routes
from generator.pages.book import Book, LinkTo
from generator.pages.strings import say
from generator.pages.systems import (
    Both,
    System,
    condition_text,
    counterpart,
    limits_in,
    places_in,
    range_text,
    system_of,
    written_condition,
    written_text,
)
from generator.quantities import Unit, figure
from generator.quantities.show import places_for
from generator.records.kinds.base import COMMON_PRACTICE
from generator.records.kinds.things import Conditions, Spec


@dataclass(frozen=True, slots=True)
class Cells:
    """The limits of one row in one unit; texts, empty where a side is open."""

    low: str
    nominal: str
    high: str


@dataclass(frozen=True, slots=True)
class Row:
    """One line of a table of limits: in the unit of the record, and in the other system's."""

    conditions: tuple[Both, ...]
    low: str
    nominal: str
    high: str
    second: Cells | None

    @property
    def condition(self) -> str:
        """The conditions as they are asked for, on one line."""
        return ", ".join(text.first for text in self.conditions)


@dataclass(frozen=True, slots=True)
class Clause:
    """One condition a value was written for: what it is of, and how much."""

    of: str
    text: Both


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
    headline: Both
    unit: str
    second_unit: str
    system: System
    conditions: tuple[Clause, ...]
    rows: tuple[Row, ...]
    has_low: bool
    has_nominal: bool
    has_high: bool
    condition_name: str
    is_band: bool
    is_torque: bool
    band: Both
    source: LinkTo | None
    source_text: str
    vehicles: str
    working: tuple[Working, ...]
    expectations: tuple[Expectation, ...]


def value_view(book: Book, spec: Spec) -> ValueView:
    """Give the view of a spec; its rows and its trail come from one computation."""
    expectations = tuple(table(book.kb, spec))
    unit = expectations[0].unit
    second = counterpart(unit)
    rows = tuple(_row(expectation, spec, unit, second) for expectation in expectations)
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
        headline=(
            written_text(spec.value, spec.places)
            if spec.value and as_written
            else _headline(rows, unit, second)
        ),
        unit=unit.symbol,
        second_unit=second.symbol if second else "",
        system=system_of(unit),
        conditions=written_for(spec.at),
        rows=rows if needs else (),
        has_low=any(row.low for row in rows),
        has_nominal=any(row.nominal for row in rows),
        has_high=any(row.high for row in rows),
        condition_name=", ".join(say(f"value.condition.{name}") for name in needs),
        is_band=spec.standing == "plausibility_band",
        is_torque=unit.quantity == "torque",
        band=written_text(band.value, band.places) if band and band.value else Both(""),
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


def written_for(at: Conditions) -> tuple[Clause, ...]:
    """Give the conditions a value was written for, in words and in both systems."""
    found = [
        Clause(
            say(f"value.condition.{name}").lower(), written_condition(name, getattr(at, name))
        )
        for name in CONDITIONS
        if getattr(at, name) is not None
    ]
    return (*found, Clause("", Both(at.state))) if at.state else tuple(found)


def _row(expectation: Expectation, spec: Spec, unit: Unit, second: Unit | None) -> Row:
    sides = expectation.low, expectation.nominal, expectation.high
    return Row(
        _conditions(expectation),
        *limits_in(unit, *sides, spec.places),
        None
        if second is None
        else Cells(*limits_in(second, *sides, places_in(second, unit, spec.places))),
    )


def _conditions(expectation: Expectation) -> tuple[Both, ...]:
    return tuple(condition_text(name, at) for name, at in expectation.conditions.items())


def _headline(rows: tuple[Row, ...], unit: Unit, second: Unit | None) -> Both:
    """Give the reading of a computed value: its one row, or nothing where rows differ."""
    if len(rows) != 1:
        return Both(say("value.computed"))
    one = rows[0]
    first = range_text(one.low, one.high, unit.symbol)
    if second is None or one.second is None:
        return Both(first)
    return Both(
        first, range_text(one.second.low, one.second.high, second.symbol), system_of(unit)
    )


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
                f"{', '.join(at.first for at in _conditions(e))}: {_figures(line)}"
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
