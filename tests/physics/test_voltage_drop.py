"""Properties of voltage drops and drop budgets."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.physics.domain import OutsideRange
from generator.physics.voltage_drop import (
    Piece,
    cable_drop_v,
    circuit_current_a,
    drop_budget,
    joint_ohm,
)

OHMS = st.floats(0.0, 10.0)
CURRENTS = st.floats(0.001, 500.0)


@given(st.lists(OHMS, min_size=1, max_size=8), CURRENTS)
def test_the_total_is_the_sum_at_the_stated_current(ohms, current_a):
    """A budget gives every piece in order, its current, and the sum."""
    budget = drop_budget([Piece(f"piece {n}", ohm) for n, ohm in enumerate(ohms)], current_a)
    assert [name for name, _ in budget.drops_v] == [f"piece {n}" for n in range(len(ohms))]
    assert budget.total_v == pytest.approx(current_a * sum(ohms))
    assert budget.current_a == current_a


@given(st.lists(OHMS, min_size=1, max_size=5), st.floats(1.0, 30.0), st.floats(0.1, 100.0))
def test_the_drops_and_the_consumer_share_the_supply(ohms, supply_v, load_ohm):
    """At the circuit's own current, what the pieces leave is the consumer's current times it."""
    pieces = [Piece("piece", ohm) for ohm in ohms]
    current_a = circuit_current_a(pieces, supply_v, load_ohm)
    left_v = drop_budget(pieces, current_a).left_v(supply_v)
    assert left_v == pytest.approx(current_a * load_ohm, rel=1e-9)


@given(st.floats(1e-4, 10.0), CURRENTS)
def test_a_joint_is_found_back_from_its_drop(ohm, current_a):
    """Resistance to drop and back is the identity."""
    assert joint_ohm(cable_drop_v(current_a, ohm, 1.0), current_a) == pytest.approx(ohm)


def test_a_drop_takes_the_sign_of_the_current():
    """Measured against the current, the drop is negative."""
    assert cable_drop_v(-10.0, 8e-3, 5.0) == pytest.approx(-0.4)
    assert cable_drop_v(np.array([1.0, 2.0]), 8e-3, 5.0).shape == (2,)


@pytest.mark.parametrize(
    ("call", "name"),
    [
        (lambda: drop_budget([Piece("earth strap", -1.0)], 1.0), "resistance of earth strap"),
        (lambda: drop_budget([Piece("fuse", float("nan"))], 1.0), "resistance of fuse"),
        (lambda: drop_budget([], -1.0), "current"),
        (lambda: drop_budget([Piece("relay", 1.0)], 20.0).left_v(12.0), "supply"),
        (lambda: joint_ohm(0.1, 0.0), "current"),
        (lambda: joint_ohm(-0.1, 1.0), "drop"),
        (lambda: cable_drop_v(1.0, -1.0, 1.0), "resistance per metre"),
        (lambda: cable_drop_v(1.0, 1.0, -1.0), "length"),
        (lambda: circuit_current_a([], 12.0, 0.0), "load"),
        (lambda: circuit_current_a([Piece("x", -1.0)], 12.0, 1.0), "resistance"),
    ],
)
def test_beyond_the_range_is_an_error(call, name):
    """Each quantity out of range raises, and the error names it, or the piece."""
    with pytest.raises(OutsideRange) as caught:
        call()
    assert caught.value.name == name
