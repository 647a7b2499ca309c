"""A value that is hardly true of any vehicle."""

from __future__ import annotations

import pytest

from generator.checks import implausible_value
from tests.checks.manuals import edited, patched


@pytest.mark.parametrize(
    ("record", "fields", "marked"),
    [
        ("specs/inductive-winding", "value: 5 Mohm ± 10 %", "5 Mohm ± 10 %"),
        ("specs/inductive-winding", "value: 10 to 60 kohm", "10 to 60 kohm"),
        ("specs/inductive-output", "value: 900 V ± 30 %", "900 V ± 30 %"),
        ("specs/hall-bolt-torque", "value: 10 to 11000 N·m", "10 to 11000 N·m"),
        ("specs/engine-warm", "value: at least 1500 °C", "at least 1500 °C"),
        ("specs/hall-heat-test", "value: 90 to 2000 °C", "90 to 2000 °C"),
        ("specs/hall-supply", "value: 500 kV ± 1 %", "500 kV ± 1 %"),
    ],
)
def test_a_slip_of_the_pen_is_found(record: str, fields: str, marked: str) -> None:
    """Beyond what its quantity or its model can have, either end is enough."""
    assert patched(record, fields).found(implausible_value.problems) == [
        ("implausible-value", record, marked)
    ]


def test_a_figure_of_the_model_is_found_at_its_own_place() -> None:
    """A pull-up to five thousand volts is found under `model`."""
    manual = edited("specs/hall-high-level", "pull_up: 5 ± 0.25 V", "pull_up: 5 ± 0.25 kV")
    (found,) = implausible_value.problems(manual.kb)
    assert manual.marked(found) == "5 ± 0.25 kV"
    assert "0.001 to 0.05 kV is plausible" in found.message


def test_a_condition_is_held_against_its_quantity() -> None:
    """Twenty thousand degrees is no temperature of a part."""
    manual = edited("specs/inductive-winding", "temperature: 20 °C", "temperature: 20000 °C")
    assert [m for _, _, m in manual.found(implausible_value.problems)] == ["20000 °C"]


@pytest.mark.parametrize(
    ("record", "fields"),
    [
        ("specs/inductive-winding", "value: 0.3 ohm ± 10 %"),  # an injector
        ("specs/inductive-winding", "value: 12 kohm ± 20 %"),  # an ignition secondary
        ("specs/inductive-insulation", "value: at least 500 Mohm"),  # no winding
        ("specs/engine-warm", "value: at least -40 °C"),
    ],
)
def test_a_rare_value_is_none(record: str, fields: str) -> None:
    """What some vehicle has is plausible, and insulation may be as good as it likes."""
    assert not implausible_value.problems(patched(record, fields).kb)


@pytest.mark.parametrize("height", ["0 m", "1500 m", "5800 m"])
def test_a_height_is_no_length_of_a_part(height: str) -> None:
    """A place up a mountain is plausible, though no part is as long."""
    manual = edited("specs/inductive-winding", "temperature: 20 °C", f"altitude: {height}")
    assert not manual.found(implausible_value.problems)


@pytest.mark.parametrize("height", ["15000 m", "0 to 8000 m"])
def test_a_height_beyond_all_roads_is_found(height: str) -> None:
    """No vehicle is driven up there: the figure was in feet, or a digit slipped in."""
    manual = edited("specs/inductive-winding", "temperature: 20 °C", f"altitude: {height}")
    assert [m for _, _, m in manual.found(implausible_value.problems)] == [height]
