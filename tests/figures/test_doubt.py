"""The doubt left against minutes."""

from __future__ import annotations

import itertools
from math import hypot

import pytest

from generator.figures import DoubtWords, doubt_curve
from tests.figures.reading import (
    drawn_with,
    level_ticks,
    parsed,
    scale_of,
    strokes,
    texts,
    upright_ticks,
)
from tests.figures.samples import DOUBT, MINUTES, doubt

WORDS = DoubtWords(title="t", desc="d", minutes_axis="minutes", doubt_axis="doubt, %")


def test_line_steps_through_the_points() -> None:
    """Read back against the tick labels: level while a test runs, then down to what it leaves."""
    root = parsed(doubt("f"))
    across, down = scale_of(level_ticks(root), False), scale_of(upright_ticks(root), True)
    (line,) = drawn_with(root, "trace")
    found = [(across.value_at(x), down.value_at(y)) for x, y in strokes(line.attrib["d"])[0]]
    wanted = [(0.0, 100.0)]
    for minute, before, after in zip(MINUTES[1:], DOUBT, DOUBT[1:], strict=False):
        wanted += [(minute, before), (minute, after)]
    for point, expected in zip(found, wanted, strict=True):
        assert point == pytest.approx(expected, abs=0.6)


def numbers(markup: str) -> list[tuple[str, float, float]]:
    """Give the ringed numbers with their places."""
    return [(t.text, t.x, t.y) for t in texts(parsed(markup)) if t.bold]


def test_points_are_numbered_in_order() -> None:
    """Six tests have the numbers one to six."""
    assert [text for text, _, _ in numbers(doubt("f"))] == ["1", "2", "3", "4", "5", "6"]


@pytest.mark.parametrize(
    "minutes",
    [[0.0, *(0.2 * k for k in range(1, 9)), 240.0], [0.0, *(10.0 * k for k in range(1, 10))]],
    ids=["bunched", "even"],
)
def test_rings_keep_clear(minutes: list[float]) -> None:
    """Numbers of tests that take seconds are still told apart."""
    left = [100.0 * 0.97**k for k in range(len(minutes))]
    found = numbers(doubt_curve("f", WORDS, minutes, left))
    for (_, ax, ay), (_, bx, by) in itertools.combinations(found, 2):
        assert hypot(ax - bx, ay - by) >= 17


def test_numbers_reach_two_digits() -> None:
    """Twelve tests fit."""
    minutes = [5.0 * k for k in range(13)]
    found = numbers(doubt_curve("f", WORDS, minutes, [100 - 8.0 * k for k in range(13)]))
    assert found[-1][0] == "12"


@pytest.mark.parametrize(
    ("minutes", "left", "message"),
    [
        ([0.0, 5.0], [100.0], "doubt has 1"),
        ([0.0, 5.0, 5.0], [100.0, 50.0, 20.0], "minutes"),
        ([0.0], [100.0], "minutes"),
        ([0.0, 5.0], [100.0, -1.0], "below nought"),
        ([0.0, 5.0], [100.0, float("nan")], "doubt"),
    ],
)
def test_what_cannot_be_drawn(minutes: list[float], left: list[float], message: str) -> None:
    """Bad numbers are refused with the name of the argument."""
    with pytest.raises(ValueError, match=message):
        doubt_curve("f", WORDS, minutes, left)
