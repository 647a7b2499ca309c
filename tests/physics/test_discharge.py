"""Properties of standing drain and Peukert's law."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.physics.discharge import drain_days, peukert_hours_one_ampere, peukert_hours_rated
from generator.physics.domain import OutsideRange

CAPACITIES = st.floats(20.0, 200.0)
EXPONENTS = st.floats(1.0, 1.6)


@given(CAPACITIES, EXPONENTS)
def test_the_rated_current_lasts_the_rated_time(rated_ah, exponent):
    """Whatever the exponent, the rated current lasts the rated hours."""
    hours = peukert_hours_rated(rated_ah, 20.0, rated_ah / 20.0, exponent)
    assert hours == pytest.approx(20.0)


@given(CAPACITIES, EXPONENTS, st.floats(1.0, 40.0))
def test_the_two_forms_agree_through_the_peukert_capacity(rated_ah, exponent, times):
    """With C_p = H·(C/H)^k both definitions give the same time."""
    current_a = times * rated_ah / 20.0
    peukert_ah = 20.0 * (rated_ah / 20.0) ** exponent
    one = peukert_hours_one_ampere(peukert_ah, current_a, exponent)
    assert peukert_hours_rated(rated_ah, 20.0, current_a, exponent) == pytest.approx(one)


@given(CAPACITIES, EXPONENTS, st.floats(1.0, 40.0))
def test_a_faster_discharge_never_yields_more_charge(rated_ah, exponent, times):
    """Above the rated current no more than the rated charge comes out."""
    current_a = times * rated_ah / 20.0
    hours = peukert_hours_rated(rated_ah, 20.0, current_a, exponent)
    assert hours * current_a <= rated_ah * (1.0 + 1e-9)


@given(CAPACITIES, st.floats(0.001, 1.0), st.floats(0.0, 1.0))
def test_drains_add_up(capacity_ah, drain_a, middle):
    """Draining to a charge between and on from there takes as long as in one go."""
    first = drain_days(capacity_ah, drain_a, 1.0, middle)
    second = drain_days(capacity_ah, drain_a, middle, 0.0)
    assert first + second == pytest.approx(drain_days(capacity_ah, drain_a, 1.0, 0.0))


def test_floats_stay_floats_and_arrays_stay_arrays():
    """One number in gives one Python float out; an array gives an array."""
    assert type(drain_days(60, 0.05)) is float
    assert drain_days(60.0, np.array([0.02, 0.05])).shape == (2,)
    assert type(peukert_hours_rated(100, 20, 10, 1.2)) is float


@pytest.mark.parametrize(
    ("call", "name"),
    [
        (lambda: drain_days(0.0, 0.05), "capacity"),
        (lambda: drain_days(60.0, 0.0), "drain"),
        (lambda: drain_days(60.0, 0.05, 1.2), "state of charge at the start"),
        (lambda: drain_days(60.0, 0.05, 0.5, 0.6), "state of charge at the end"),
        (lambda: peukert_hours_rated(100.0, 20.0, 1.0, 1.2), "rating current over current"),
        (lambda: peukert_hours_rated(100.0, 20.0, 10.0, 2.0), "exponent"),
        (lambda: peukert_hours_rated(0.0, 20.0, 10.0, 1.2), "capacity"),
        (lambda: peukert_hours_rated(100.0, 0.0, 10.0, 1.2), "rated time"),
        (lambda: peukert_hours_one_ampere(100.0, 0.0, 1.2), "current"),
        (lambda: peukert_hours_one_ampere(0.0, 5.0, 1.2), "Peukert capacity"),
        (lambda: peukert_hours_one_ampere(100.0, 5.0, 0.9), "exponent"),
    ],
)
def test_beyond_the_range_is_an_error(call, name):
    """Each quantity out of range raises, and the error names it."""
    with pytest.raises(OutsideRange) as caught:
        call()
    assert caught.value.name == name
