"""The range check and the helpers that every model shares."""

from __future__ import annotations

import numpy as np
import pytest

from generator.physics.domain import OutsideRange, plain, spread, within


def test_the_error_says_what_how_much_and_between_what():
    """The error carries name, value, limits and unit, and says them in one line."""
    with pytest.raises(OutsideRange) as caught:
        within("temperature", np.array([20.0, 300.0]), -50.0, 200.0, "°C")
    error = caught.value
    assert (error.name, error.value, error.low, error.high) == ("temperature", 300.0, -50.0, 200.0)
    assert str(error) == "temperature 300 °C is outside -50 to 200 °C"


def test_the_ends_of_a_range_belong_to_it_and_not_a_number_does_not():
    """A closed range holds its ends; not-a-number is outside every range."""
    within("speed", [0.0, 10.0], 0.0, 10.0, "rpm")
    with pytest.raises(OutsideRange):
        within("speed", float("nan"), 0.0, float("inf"), "rpm")


def test_single_numbers_come_out_plain():
    """A number without a dimension becomes a Python float, an array stays one."""
    assert type(plain(np.float64(1.5))) is float and type(plain(1)) is float
    assert plain(np.array([1, 2])).dtype == np.float64


def test_a_spread_is_taken_element_by_element():
    """Least and greatest are found for each element, numbers and arrays mixed."""
    low, high = spread(np.array([1.0, 5.0]), 3.0)
    assert low.tolist() == [1.0, 3.0] and high.tolist() == [3.0, 5.0]
    assert spread(2.0, 1.0) == (1.0, 2.0)
