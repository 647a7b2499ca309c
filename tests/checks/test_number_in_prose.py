"""A figure with a unit typed into prose."""

from __future__ import annotations

import pytest

from generator.checks import number_in_prose
from tests.checks.manuals import edited

JOB = "procedures/set-gap-1-6"


@pytest.mark.parametrize(
    ("text", "figure"),
    [
        ("Tighten to 10 N·m.", "10 N·m"),
        ("Tighten to 10 Nm.", "10 Nm"),
        ("Set the gap to 0.6 to 1.2 mm.", "0.6 to 1.2 mm"),
        ("It should read 12.4 V or more.", "12.4 V"),
        ("It should read 12,4V.", "12,4V"),
        ("Wait 5 min.", "5 min"),
        ("Wait 5 minutes.", "5 minutes"),
        ("Heat it to 90 °C.", "90 °C"),
        ("Below −10 °C it is stiff.", "−10 °C"),
        ("Look for 860 ohms.", "860 ohms"),
        ("It draws 30 mA at rest.", "30 mA"),
        ("A duty of 50 % is right.", "50 %"),
    ],
)
def test_a_figure_is_found_in_whatever_way_it_is_written(text: str, figure: str) -> None:
    """Number, unit and nothing else."""
    assert list(number_in_prose.figures_in(text)) == [figure]


@pytest.mark.parametrize(
    "text",
    [
        "Back-probe pins 2 and 4 in plug P.",
        "Take fuse F18 out.",
        "On the Corrie 1.6 a tooth faces the bracket.",
        "Check the gap at 4 places.",
        "The five-volt feed.",
        "Code P0335 is stored.",
        "Wheel 36-1, seen from above.",
        "Step 3 A second look.".replace("A s", "a s"),
        "Version 2026-10-05.",
    ],
)
def test_names_numbers_and_counts_are_none(text: str) -> None:
    """Pins, engines, codes, dates and how many are no figures with a unit."""
    assert list(number_in_prose.figures_in(text)) == []


def test_it_is_found_in_the_words_of_a_step() -> None:
    """The text is marked, and the hint says where the figure belongs."""
    manual = edited(JOB, "Draw the gauge out and check", "Check for 0.6 mm, and check")
    (found,) = number_in_prose.problems(manual.kb)
    assert "Check for 0.6 mm" in manual.marked(found)
    assert "spec" in found.hint


def test_tools_values_and_settings_of_a_meter_hold_figures() -> None:
    """A tool's range, a method and a dial are no prose that somebody works by."""
    manual = edited("tools/torque-wrench", "Covers 2 to 20 N·m.", "Covers 1 to 25 N·m.")
    manual = edited("tests/battery-rest", "    setting: DC volts", "    setting: 20 V DC", manual)
    assert not number_in_prose.problems(manual.kb)
