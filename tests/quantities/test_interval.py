"""Intervals: closed, ordered, one figure or a stretch."""

from __future__ import annotations

import math

import pytest

from generator.quantities import Interval


def test_interval() -> None:
    """An interval knows whether it is one figure, and its middle."""
    assert Interval.of(5).single and Interval.of(5).middle == 5
    assert not Interval(1, 3).single and Interval(1, 3).middle == 2


@pytest.mark.parametrize(("low", "high"), [(2, 1), (math.nan, 1), (1, math.nan)])
def test_no_interval(low: float, high: float) -> None:
    """Inverted limits and limits that are no numbers make no interval."""
    with pytest.raises(ValueError, match="not an interval"):
        Interval(low, high)
