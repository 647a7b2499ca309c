"""Properties of switched coils."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.physics.coils import (
    coil_current_a,
    coil_energy_j,
    dwell_s,
    release_current_a,
    release_s,
    switch_peak_v,
    time_constant_s,
)
from generator.physics.domain import OutsideRange

COIL = (14.0, 0.6, 4e-3)
TIMES = st.floats(0.0, 0.05)


@given(TIMES, TIMES)
def test_current_rises_towards_its_final_value(first_s, second_s):
    """Current never falls while the coil is on, nor passes V/R."""
    low_s, high_s = sorted((first_s, second_s))
    low, high = coil_current_a(low_s, *COIL), coil_current_a(high_s, *COIL)
    assert 0.0 <= low <= high <= 14.0 / 0.6


@given(st.floats(0.0, 23.0))
def test_dwell_is_the_inverse_of_the_rise(current_a):
    """The current after the dwell for a current is that current."""
    assert coil_current_a(dwell_s(current_a, *COIL), *COIL) == pytest.approx(current_a, abs=1e-9)


@given(st.floats(8.0, 16.0), st.floats(8.0, 16.0))
def test_a_low_supply_lengthens_the_dwell_more_than_in_proportion(first_v, second_v):
    """Dwell falls as supply rises, and faster than its inverse."""
    low_v, high_v = sorted((first_v, second_v))
    slow, fast = dwell_s(7.0, low_v, 0.6, 4e-3), dwell_s(7.0, high_v, 0.6, 4e-3)
    assert slow >= fast
    assert slow * low_v >= fast * high_v * (1.0 - 1e-12)


@given(st.floats(0.01, 20.0), st.floats(0.5, 400.0), st.floats(0.5, 400.0))
def test_a_higher_clamp_lets_go_sooner(current_a, first_v, second_v):
    """Release is shorter the higher the clamp, and never longer than without resistance."""
    low_v, high_v = sorted((first_v, second_v))
    slow, fast = (release_s(current_a, v, 0.6, 4e-3) for v in (low_v, high_v))
    assert slow >= fast
    assert fast <= 4e-3 * current_a / high_v * (1.0 + 1e-12)


@given(st.floats(0.01, 20.0), st.floats(0.5, 400.0))
def test_the_current_is_gone_when_the_release_is_over(current_a, clamp_v):
    """The falling current reaches nought at the release time, and stays there."""
    gone_s = release_s(current_a, clamp_v, 0.6, 4e-3)
    assert release_current_a(gone_s, current_a, clamp_v, 0.6, 4e-3) == pytest.approx(0.0, abs=1e-6)
    assert release_current_a(2.0 * gone_s, current_a, clamp_v, 0.6, 4e-3) == 0.0
    assert release_current_a(0.0, current_a, clamp_v, 0.6, 4e-3) == pytest.approx(current_a)


def test_one_time_constant_is_63_percent():
    """After L/R the current stands at 1 − 1/e of its final value (closed form)."""
    tau_s = time_constant_s(0.6, 4e-3)
    assert coil_current_a(tau_s, *COIL) == pytest.approx(14.0 / 0.6 * (1.0 - 1.0 / np.e))


@pytest.mark.parametrize(
    ("call", "name"),
    [
        (lambda: coil_current_a(-1e-3, *COIL), "time"),
        (lambda: coil_current_a(1e-3, 500.0, 0.6, 4e-3), "supply"),
        (lambda: coil_current_a(1e-3, 14.0, 0.0, 4e-3), "coil resistance"),
        (lambda: coil_current_a(1e-3, 14.0, 0.6, 0.0), "coil inductance"),
        (lambda: dwell_s(14.0 / 0.6, *COIL), "current"),
        (lambda: release_s(1.0, 0.0, 0.6, 4e-3), "clamp"),
        (lambda: release_s(-1.0, 1.0, 0.6, 4e-3), "current"),
        (lambda: release_current_a(-1.0, 1.0, 1.0, 0.6, 4e-3), "time"),
        (lambda: switch_peak_v(14.0, 2000.0), "flyback voltage"),
        (lambda: coil_energy_j(1.0, -1.0), "coil inductance"),
    ],
)
def test_beyond_the_range_is_an_error(call, name):
    """Each quantity out of range raises, and the error names it."""
    with pytest.raises(OutsideRange) as caught:
        call()
    assert caught.value.name == name


def test_floats_stay_floats_and_arrays_stay_arrays():
    """One number in gives one Python float out; an array gives an array."""
    values = (
        coil_current_a(1e-3, 14, 1, 0.004),
        dwell_s(7, *COIL),
        release_s(7, 386, 0.6, 4e-3),
        release_current_a(1e-6, 7, 386, 0.6, 4e-3),
        time_constant_s(1, 0.004),
        coil_energy_j(7, 4e-3),
        switch_peak_v(14, 386),
    )
    assert all(type(value) is float for value in values)
    assert coil_current_a(np.array([0.0, 1e-3]), *COIL).shape == (2,)
