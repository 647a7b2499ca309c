"""Properties of batteries at rest, under load and on charge."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.physics.battery import (
    KINDS,
    cranking_minimum_v,
    load_bank_current_a,
    load_bank_limit_v,
    rest_voltage_band_v,
    state_of_charge_band,
)
from generator.physics.charging import charging_band_v, charging_voltage_v
from generator.physics.domain import OutsideRange

KIND = st.sampled_from(sorted(KINDS))
CHARGES = st.floats(0.0, 1.0)
TEMPS = st.floats(0.0, 50.0)


@given(KIND, CHARGES, TEMPS)
def test_charge_to_voltage_and_back(kind, charge, temp_c):
    """The nominal voltage gives the charge back, and the band of the charge contains it."""
    _, volts, _ = rest_voltage_band_v(charge, kind, temp_c)
    low, nominal, high = state_of_charge_band(volts, kind, temp_c)
    assert nominal == pytest.approx(charge, abs=1e-9)
    assert 0.0 <= low <= nominal <= high <= 1.0


@given(KIND, CHARGES, TEMPS, st.floats(-1.0, 1.0))
def test_every_battery_of_the_kind_is_taken_in(kind, charge, temp_c, share):
    """Any voltage within the spread gives a band of charge that contains the true charge."""
    low_v, _, high_v = rest_voltage_band_v(charge, kind, temp_c)
    volts = (low_v + high_v) / 2.0 + share * 0.999 * (high_v - low_v) / 2.0
    low, _, high = state_of_charge_band(volts, kind, temp_c)
    assert low - 1e-9 <= charge <= high + 1e-9


@given(KIND, CHARGES, CHARGES, TEMPS)
def test_the_voltage_rises_with_charge(kind, first, second, temp_c):
    """A fuller battery never rests lower."""
    low, high = sorted((first, second))
    assert rest_voltage_band_v(low, kind, temp_c)[1] <= rest_voltage_band_v(high, kind, temp_c)[1]


def test_a_glass_mat_battery_rests_higher_when_full_than_a_flooded_one():
    """Full AGM and EFB rest above flooded, so a flooded table overrates them."""
    full = {kind: rest_voltage_band_v(1.0, kind)[1] for kind in KINDS}
    assert full["agm"] > full["efb"] > full["flooded"]


@given(st.floats(-17.8, 50.0), st.floats(-17.8, 50.0))
def test_limits_under_load_do_not_fall_with_warmth(first_c, second_c):
    """Both limits under load are higher, or alike, in the warm, and they are two limits."""
    low_c, high_c = sorted((first_c, second_c))
    assert load_bank_limit_v(low_c) <= load_bank_limit_v(high_c)
    assert cranking_minimum_v(low_c) <= cranking_minimum_v(high_c)


def test_the_two_limits_are_kept_apart():
    """In the cold the cranking minimum is lower than the load-bank limit."""
    assert cranking_minimum_v(-15.0) < load_bank_limit_v(-15.0) - 0.3


@given(st.floats(13.0, 15.0), st.floats(-30.0, 60.0))
def test_a_cold_battery_is_charged_higher(set_v, temp_c):
    """Charging voltage falls with temperature and is the set one at 25 °C."""
    assert charging_voltage_v(set_v, 25.0) == set_v
    rise_v = charging_voltage_v(set_v, temp_c) - set_v
    assert rise_v >= 0.0 if temp_c <= 25.0 else rise_v <= 0.0


def test_the_charging_band_moves_as_one():
    """All three limits move by the same voltage, and an array gives arrays."""
    low, nominal, high = charging_band_v(13.5, 14.2, 14.8, np.array([-10.0, 25.0]))
    assert np.allclose(nominal - low, 0.7) and np.allclose(high - nominal, 0.6)
    assert nominal[0] - nominal[1] == pytest.approx(35.0 * 0.018)


def test_floats_stay_floats():
    """One number in gives one Python float out."""
    assert all(type(v) is float for v in rest_voltage_band_v(0.6, "agm", 10))
    assert all(type(v) is float for v in state_of_charge_band(12.5))
    assert type(load_bank_limit_v(5)) is float
    assert type(charging_voltage_v(14.4, 5)) is float
    assert rest_voltage_band_v(np.array([0.2, 0.8]))[0].shape == (2,)


@pytest.mark.parametrize(
    ("call", "name"),
    [
        (lambda: rest_voltage_band_v(1.1), "state of charge"),
        (lambda: rest_voltage_band_v(0.5, "flooded", -5.0), "battery temperature"),
        (lambda: state_of_charge_band(12.9), "rest voltage"),
        (lambda: state_of_charge_band(11.5), "rest voltage"),
        (lambda: state_of_charge_band(13.4, "agm"), "rest voltage"),
        (lambda: load_bank_limit_v(-25.0), "battery temperature"),
        (lambda: cranking_minimum_v(60.0), "battery temperature"),
        (lambda: load_bank_current_a(10.0), "cold-cranking rating"),
        (lambda: charging_voltage_v(24.0, 25.0), "voltage at 25 °C"),
        (lambda: charging_voltage_v(14.4, 80.0), "battery temperature"),
        (lambda: charging_voltage_v(14.4, 20.0, 3e-3), "coefficient"),
        (lambda: charging_band_v(14.5, 14.2, 14.8, 25.0), "low limit"),
        (lambda: charging_band_v(13.5, 14.2, 14.0, 25.0), "high limit"),
    ],
)
def test_beyond_the_range_is_an_error(call, name):
    """Each quantity out of range raises, and the error names it."""
    with pytest.raises(OutsideRange) as caught:
        call()
    assert caught.value.name == name


def test_an_unknown_kind_is_refused():
    """A kind that is not known is an error that lists those that are."""
    with pytest.raises(ValueError, match="lithium"):
        rest_voltage_band_v(0.5, "lithium")
