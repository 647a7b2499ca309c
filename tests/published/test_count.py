"""How much of the world stands behind the models: enough of it, and not one table copied."""

from __future__ import annotations

import importlib
from collections import Counter
from functools import cache
from pathlib import Path

import pytest

from tests.published.checks import INDEPENDENT_ROWS, ROWS_PER_PUBLISHED_TABLE, Check

HERE = Path(__file__).parent
PHYSICS = HERE.parents[1] / "generator" / "physics"

# Rows from a library or a page that the whole project has to rest on.
INDEPENDENT_IN_ALL = 150

# What holds no model of its own: ranges, and curves that test_thermistors holds.
NO_MODEL = {"__init__", "domain", "thermistor_curves"}

# Rooms whose tables stand in the file of another.
TABLES_OF = {"charging": "battery"}


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


def outside(rows: tuple[Check, ...]) -> list[Check]:
    """Give the rows that an independent library printed or a published page shows."""
    return [row for row in rows if row.mark in ("L", "P")]


MODELS = sorted(path.stem for path in PHYSICS.glob("*.py") if path.stem not in NO_MODEL)


@pytest.mark.parametrize("model", MODELS)
def test_every_model_rests_on_outside_values(model: str) -> None:
    """Shows at least three values from a library or a page for each room of physics."""
    assert len(outside(checks_of(f"test_{TABLES_OF.get(model, model)}"))) >= INDEPENDENT_ROWS


def test_there_are_enough_outside_values_and_no_table_gives_most() -> None:
    """Shows 150 and more values, no page counted for more than twelve of them."""
    files = sorted(path.stem for path in HERE.glob("test_*.py") if path.stem != "test_count")
    rows = [row for name in files for row in outside(checks_of(name))]
    by_page = Counter(row.source for row in rows if row.mark == "P")
    counted = sum(min(n, ROWS_PER_PUBLISHED_TABLE) for n in by_page.values())
    counted += sum(row.mark == "L" for row in rows)
    assert counted >= INDEPENDENT_IN_ALL


def test_every_row_names_its_source() -> None:
    """Shows that no value stands without saying where it can be found again."""
    files = sorted(path.stem for path in HERE.glob("test_*.py") if path.stem != "test_count")
    assert all(row.source.strip() for name in files for row in checks_of(name))
