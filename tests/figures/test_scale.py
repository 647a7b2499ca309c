"""Ticks, spacing and what a series has to be."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from generator.figures.scale import ascending, nice_ticks, same_length, spread, tick_text


@pytest.mark.parametrize(
    ("low", "high", "most", "ticks"),
    [
        (0, 100, 5, [0, 20, 40, 60, 80, 100]),
        (-40, 140, 6, [0, 50, 100]),
        (300, 396, 6, [300, 320, 340, 360, 380]),
        (0.0011, 0.0049, 5, [0.002, 0.003, 0.004]),
        (-2.6, 2.6, 6, [-2, -1, 0, 1, 2]),
    ],
)
def test_known_ticks(low: float, high: float, most: int, ticks: list[float]) -> None:
    """Steps of 1, 2 or 5 times a power of ten (worked by hand)."""
    assert nice_ticks(low, high, most) == pytest.approx(ticks)


@given(st.floats(-1e6, 1e6), st.floats(1e-3, 1e6), st.integers(2, 9))
def test_ticks_lie_within(low: float, width: float, most: int) -> None:
    """Ticks ascend, lie within the range and are at most one more than wanted."""
    ticks = nice_ticks(low, low + width, most)
    slack = 1e-6 * width + 1e-9 * abs(low)
    assert len(ticks) <= most + 1
    assert all(low - slack <= tick <= low + width + slack for tick in ticks)
    assert all(earlier < later for earlier, later in pairwise(ticks))


@pytest.mark.parametrize(
    ("value", "text"),
    [(1400.0, "1400"), (-20.0, "−20"), (0.5, "0.5"), (0.0, "0"), (1e6, "1000000")],
)
def test_tick_text(value: float, text: str) -> None:
    """A real minus sign and no needless noughts."""
    assert tick_text(value) == text


@given(st.lists(st.floats(0, 300), min_size=1, max_size=6), st.floats(1, 30))
def test_spread_keeps_apart(places: list[float], apart: float) -> None:
    """Labels keep their order and their distance, within bounds that hold them all."""
    places.sort()
    assume(apart * (len(places) - 1) <= 300)
    given_places = spread(places, apart, 0, 300)
    assert all(b - a >= apart - 1e-9 for a, b in pairwise(given_places))
    assert given_places[0] >= -1e-9
    assert given_places[-1] <= 300 + 1e-9


def test_spread_leaves_what_is_apart() -> None:
    """Labels with room stay where they are wanted."""
    assert spread([10.0, 50.0, 90.0], 14, 0, 100) == [10, 50, 90]


@pytest.mark.parametrize(
    "values", [[1.0], [1.0, 1.0], [2.0, 1.0], [1.0, float("nan")], [1.0, float("inf")]]
)
def test_series_must_ascend(values: list[float]) -> None:
    """Too few, level, falling or no numbers: refused by name."""
    with pytest.raises(ValueError, match="angle_deg"):
        ascending("angle_deg", values)


def test_series_must_be_as_long() -> None:
    """A series of another length is refused by both names."""
    with pytest.raises(ValueError, match="volts has 2 values, angle_deg has 3"):
        same_length("angle_deg", 3, volts=[1.0, 2.0])
