"""Properties of compression, leak-down and fuel pressure."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.physics.domain import OutsideRange
from generator.physics.engine_pressures import (
    compression_at_pa,
    compression_band_pa,
    injector_difference_pa,
    leak_down_share,
    rail_gauge_band_pa,
    rail_gauge_pa,
    weakest_share,
)

AIR = st.floats(60_000.0, 105_000.0)
GAUGE = st.floats(1e5, 4e6)
VACUUM = st.floats(20_000.0, 200_000.0)


@given(GAUGE, AIR, AIR)
def test_compression_goes_there_and_back(gauge_pa, here_pa, there_pa):
    """Correcting to another air pressure and back is the identity, and less air gives less."""
    there = compression_at_pa(gauge_pa, there_pa, here_pa)
    assert compression_at_pa(there, here_pa, there_pa) == pytest.approx(gauge_pa)
    assert (there <= gauge_pa) == (there_pa <= here_pa) or there == pytest.approx(gauge_pa)


@given(GAUGE, AIR, st.floats(0.0, 0.3), st.floats(0.0, 1.0), st.floats(0.0, 1.0))
def test_the_compression_band_takes_in_what_lies_between(gauge_pa, air_pa, width, a, b):
    """Any compression within limits, under any air within limits, lies in the band."""
    limits = (gauge_pa * (1.0 - width), gauge_pa, gauge_pa * (1.0 + width))
    airs = (air_pa * 0.98, air_pa, air_pa * 1.02)
    low, nominal, high = compression_band_pa(limits, airs)
    some_pa = compression_at_pa(
        limits[0] + a * (limits[2] - limits[0]), airs[0] + b * (airs[2] - airs[0])
    )
    assert low <= nominal <= high
    assert low * (1 - 1e-12) <= some_pa <= high * (1 + 1e-12)


@given(st.lists(st.floats(1.0, 300.0), min_size=2, max_size=12), st.floats(0.1, 10.0))
def test_the_weakest_share_knows_neither_unit_nor_air(cylinders, scale):
    """Scaling every cylinder alike changes nothing; the share never exceeds 1."""
    share = weakest_share(cylinders)
    assert 0.0 < share <= 1.0
    assert weakest_share([scale * c for c in cylinders]) == pytest.approx(share)


@given(st.floats(1e5, 1e6), st.floats(0.0, 1.0))
def test_leakage_is_what_the_cylinder_does_not_hold(supply_pa, held):
    """Leakage and the share held make one."""
    assert leak_down_share(supply_pa, held * supply_pa) == pytest.approx(1.0 - held, abs=1e-12)


@given(st.floats(2e5, 6e5), VACUUM, AIR)
def test_a_referenced_regulator_keeps_the_difference(regulator_pa, manifold_pa, air_pa):
    """With a reference the injector sees the regulator's pressure, whatever the manifold does."""
    rail = rail_gauge_pa(regulator_pa, manifold_pa, air_pa, True)
    assert injector_difference_pa(rail, manifold_pa, air_pa) == pytest.approx(regulator_pa)


@given(st.floats(2e5, 6e5), VACUUM, AIR)
def test_without_a_reference_the_gauge_stands_still(regulator_pa, manifold_pa, air_pa):
    """Without a reference the gauge shows the regulator's pressure, the injector more by vacuum."""
    rail = rail_gauge_pa(regulator_pa, manifold_pa, air_pa, False)
    assert rail == regulator_pa
    difference = injector_difference_pa(rail, manifold_pa, air_pa)
    assert difference - regulator_pa == pytest.approx(air_pa - manifold_pa, abs=1e-6)


@given(st.booleans(), st.floats(0.0, 1.0), st.floats(0.0, 1.0), st.floats(0.0, 1.0))
def test_the_rail_band_takes_in_what_lies_between(referenced, a, b, c):
    """Any three values within their limits give a pressure in the band."""
    limits = ((2.9e5, 3e5, 3.1e5), (3e4, 3.5e4, 4e4), (9.8e4, 1e5, 1.04e5))
    low, nominal, high = rail_gauge_band_pa(*limits, referenced)
    regulator_pa, manifold_pa, air_pa = (
        lo + share * (hi - lo) for (lo, _, hi), share in zip(limits, (a, b, c), strict=True)
    )
    some_pa = rail_gauge_pa(regulator_pa, manifold_pa, air_pa, referenced)
    assert low <= nominal <= high
    assert low - 1e-6 <= some_pa <= high + 1e-6


def test_floats_stay_floats_and_arrays_stay_arrays():
    """One number in gives one Python float out; an array gives an array, with or without hose."""
    manifold_pa = np.array([3e4, 1e5])
    for referenced in (True, False):
        assert type(rail_gauge_pa(300_000, 35_000, 100_000, referenced)) is float
        assert rail_gauge_pa(3e5, manifold_pa, 1e5, referenced).shape == (2,)
    assert type(leak_down_share(100, 90)) is float
    assert type(compression_at_pa(1_200_000, 90_000)) is float


@pytest.mark.parametrize(
    ("call", "name"),
    [
        (lambda: compression_at_pa(-1.0, 1e5), "compression"),
        (lambda: compression_at_pa(1e6, 1013.0), "air pressure"),
        (lambda: compression_at_pa(1e6, 1e5, 0.0), "reference pressure"),
        (lambda: weakest_share([1e6]), "cylinders"),
        (lambda: weakest_share([1e6, 0.0]), "compression"),
        (lambda: leak_down_share(0.0, 0.0), "supply pressure"),
        (lambda: leak_down_share(80.0, 90.0), "leakage"),
        (lambda: rail_gauge_pa(-1.0, 1e5, 1e5, True), "regulator pressure"),
        (lambda: rail_gauge_pa(3e5, 0.0, 1e5, True), "manifold pressure"),
        (lambda: rail_gauge_pa(3e5, 1e5, 0.0, False), "air pressure"),
        (lambda: injector_difference_pa(-1.0, 1e5, 1e5), "rail pressure"),
    ],
)
def test_beyond_the_range_is_an_error(call, name):
    """Each quantity out of range raises, and the error names it."""
    with pytest.raises(OutsideRange) as caught:
        call()
    assert caught.value.name == name
