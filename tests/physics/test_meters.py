"""Properties of meters, loading and leads."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.physics.dividers import metered_v
from generator.physics.domain import OutsideRange
from generator.physics.meters import (
    MeterAccuracy,
    combined_u,
    nulled_ohm,
    rectangular_u,
    un_nulled_ohm,
    unloaded_v,
)

METER = MeterAccuracy(0.9, 2.0, 0.1)


@given(st.floats(-50.0, 50.0), st.floats(0.0, 1e7), st.floats(1e6, 1e8))
def test_the_voltage_before_loading_is_found_back(open_v, source_ohm, meter_ohm):
    """Loading a source and undoing it is the identity."""
    shown_v = metered_v(open_v, source_ohm, meter_ohm)
    if source_ohm <= 10.0 * meter_ohm:
        assert unloaded_v(shown_v, source_ohm, meter_ohm) == pytest.approx(open_v, abs=1e-9)


@given(st.floats(0.0, 1000.0), st.floats(0.0, 1000.0))
def test_a_larger_reading_is_less_certain(first, second):
    """Half-width and uncertainty rise with the reading and never fall below the counts."""
    low, high = sorted((first, second))
    assert METER.half_width(low) <= METER.half_width(high)
    assert METER.half_width(low) >= METER.counts_half_width
    assert METER.half_width(-high) == METER.half_width(high)


@given(st.lists(st.floats(0.0, 100.0), min_size=1, max_size=5))
def test_combined_uncertainty_lies_between_the_largest_and_the_sum(parts):
    """Independent parts combine to no less than the largest and no more than their sum."""
    assert max(parts) * (1 - 1e-12) <= combined_u(*parts) <= sum(parts) * (1 + 1e-12)


@given(st.floats(0.5, 50.0), st.floats(0.0, 0.5))
def test_leads_are_taken_off_either_way(reading_ohm, leads_ohm):
    """Nulled or known to within nothing, the leads' resistance comes off the reading."""
    nulled, nulled_u = nulled_ohm(reading_ohm, leads_ohm, METER)
    known, known_u = un_nulled_ohm(reading_ohm, (leads_ohm, leads_ohm), METER)
    assert nulled == pytest.approx(reading_ohm - leads_ohm)
    assert known == pytest.approx(reading_ohm - leads_ohm)
    # Nulling takes a second reading, with counts of its own.
    assert nulled_u >= 2.0**0.5 * rectangular_u(METER.counts_half_width) - 1e-12
    assert known_u == pytest.approx(METER.standard_uncertainty(reading_ohm))


@given(st.floats(0.0, 1.0), st.floats(0.0, 1.0))
def test_vaguer_leads_make_a_vaguer_result(low_ohm, width_ohm):
    """The less is known of the leads, the larger the uncertainty."""
    _, vague = un_nulled_ohm(2.0, (low_ohm, low_ohm + width_ohm), METER)
    _, known = un_nulled_ohm(2.0, (low_ohm, low_ohm), METER)
    assert vague >= known


@pytest.mark.parametrize(
    ("call", "name"),
    [
        (lambda: rectangular_u(-1.0), "half-width"),
        (lambda: combined_u(1.0, -1.0), "uncertainty"),
        (lambda: MeterAccuracy(-0.1, 2.0, 0.1), "percent of reading"),
        (lambda: MeterAccuracy(0.1, -2.0, 0.1), "counts"),
        (lambda: MeterAccuracy(0.1, 2.0, 0.0), "resolution"),
        (lambda: unloaded_v(1.0, 1e9, 1e7), "source resistance"),
        (lambda: unloaded_v(1.0, 1e3, 0.0), "meter resistance"),
        (lambda: nulled_ohm(0.2, 0.3, METER), "reading"),
        (lambda: un_nulled_ohm(1.0, (0.5, 0.1), METER), "least lead resistance"),
    ],
)
def test_beyond_the_range_is_an_error(call, name):
    """Each quantity out of range raises, and the error names it."""
    with pytest.raises(OutsideRange) as caught:
        call()
    assert caught.value.name == name
