"""How much of the world stands behind the models: enough of it, and not one table copied."""

from __future__ import annotations

import importlib
from collections import Counter
from collections.abc import Iterable
from functools import cache
from pathlib import Path

import pytest

from generator.expected import MODELS
from tests.published import test_records
from tests.published.checks import INDEPENDENT_ROWS, ROWS_PER_PUBLISHED_TABLE, Check

HERE = Path(__file__).parent
PHYSICS = HERE.parents[1] / "generator" / "physics"

# Rows from a library or a page that the whole project has to rest on.
INDEPENDENT_IN_ALL = 150

# What holds no model of its own: ranges, and curves that test_thermistors holds.
NO_MODEL = {"__init__", "domain", "thermistor_curves"}

# Rooms whose tables stand in the file of another.
TABLES_OF = {"charging": "battery"}

NO_TABLES = {"test_count", "test_records"}
FILES = sorted(path.stem for path in HERE.glob("test_*.py") if path.stem not in NO_TABLES)
ROOMS = sorted(path.stem for path in PHYSICS.glob("*.py") if path.stem not in NO_MODEL)


@cache
def checks_of(name: str) -> tuple[Check, ...]:
    """Give the rows of one file of tables, each once."""
    module = importlib.import_module(f"tests.published.{name}")
    found = {
        id(row): row
        for value in vars(module).values()
        if isinstance(value, (list, tuple))
        for row in value
        if isinstance(row, Check)
    }
    return tuple(found.values())


@cache
def of_models() -> dict[str, list[Check]]:
    """Give the rows of each model that a record may name, asked through a record's text."""
    found: dict[str, list[Check]] = {name: [] for name in MODELS}
    for row in test_records.ROWS:
        found[test_records.model_of(row)].append(row)
    return found


def of_rooms() -> list[Check]:
    """Give the rows that the rooms of physics are held to directly."""
    return [row for name in FILES for row in checks_of(name)]


def outside(rows: Iterable[Check]) -> list[Check]:
    """Give the rows that an independent library printed or a published page shows."""
    return [row for row in rows if row.mark in ("L", "P")]


@pytest.mark.parametrize("model", sorted(MODELS))
def test_every_model_of_a_record_rests_on_outside_values(model: str) -> None:
    """Shows three values and more for each model, from a library or a page and all different."""
    rows = outside(of_models()[model])
    different = {(row.inputs["asked"].side, row.wanted()) for row in rows}
    assert len(different) >= INDEPENDENT_ROWS


@pytest.mark.parametrize("room", ROOMS)
def test_every_room_of_physics_rests_on_outside_values(room: str) -> None:
    """Shows at least three values from a library or a page for each room of physics."""
    assert len(outside(checks_of(f"test_{TABLES_OF.get(room, room)}"))) >= INDEPENDENT_ROWS


def test_there_are_enough_outside_values() -> None:
    """Shows 150 and more figures; one held in a room and through a record counts once."""
    rows = outside((*of_rooms(), *test_records.ROWS))
    assert len({(row.source, round(row.wanted(), 9)) for row in rows}) >= INDEPENDENT_IN_ALL


@pytest.mark.parametrize("rows", [of_rooms(), test_records.ROWS], ids=["rooms", "records"])
def test_no_page_is_copied_row_by_row(rows: list[Check]) -> None:
    """Shows that no published table gives more than twelve rows, to the rooms or to the records."""
    by_page = Counter(row.source for row in rows if row.mark == "P")
    assert max(by_page.values()) <= ROWS_PER_PUBLISHED_TABLE, by_page.most_common(3)


def test_every_row_names_its_source() -> None:
    """Shows that no value stands without saying where it can be found again."""
    assert all(row.source.strip() for row in (*of_rooms(), *test_records.ROWS))
