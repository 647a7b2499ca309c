"""Every model from the text of a record to a figure that the world gives."""

from __future__ import annotations

import pytest

from generator.expected import MODELS
from tests.published.checks import Check
from tests.published.rows import battery, circuits, coils, engine, speed, temperature
from tests.published.rows.asking import answer

ROWS: list[Check] = [
    row for room in (coils, speed, temperature, circuits, battery, engine) for row in room.ROWS
]


def model_of(check: Check) -> str:
    """Give the model that a row asks."""
    return str(check.inputs["asked"].spec.model.name)


@pytest.mark.parametrize("check", ROWS, ids=model_of)
def test_a_record_gives_the_figure_of_the_world(check: Check) -> None:
    """Shows that the text of a record comes out as the figure an outside source gives."""
    check.hold(answer)


def test_every_model_is_asked() -> None:
    """Shows that no model a record may name goes without a figure from outside."""
    assert {model_of(check) for check in ROWS} == set(MODELS)
