"""Conformance and guarded limits against scipy and the published guides."""

from __future__ import annotations

import pytest
from scipy import optimize, stats

from generator.physics.deciding import (
    conformance_probability,
    decision_limits,
    guard_band,
    judge_interval,
    normal_below,
)
from generator.physics.meters import MeterAccuracy
from tests.published.checks import Check, assert_well_founded, table

INF = float("inf")
SCIPY = "scipy.stats.norm"
GUARDS = (
    "printed list of guard bands and their greatest risk: 0.83 U below 5 % (ISO 14253-1), "
    "U below 2.5 % (ILAC-G8), 1.5 U below 0.16 %, 3 U below 1 ppm"
)
JCGM = "JCGM 106:2012 arithmetic, inputs from memory"


def _scipy(reading: float, u: float, low: float, high: float) -> Check:
    inputs = {"reading": reading, "u": u, "low": low, "high": high}

    def by_scipy() -> float:
        below_high = stats.norm.cdf(high, loc=reading, scale=u)
        return float(below_high - stats.norm.cdf(low, loc=reading, scale=u))

    return Check(inputs, by_scipy, 1e-12, "L", SCIPY)


def _below(z: float) -> Check:
    return Check({"z": z}, lambda: stats.norm.cdf(z), 1e-15, "L", SCIPY)


def risk_with_guard(multiple_of_u: float) -> float:
    """Probability of wrong acceptance for a reading at a limit guarded by a multiple of U = 2u."""
    return 1.0 - conformance_probability(-2.0 * multiple_of_u, 1.0, -INF, 0.0)


def _guard(risk: float) -> Check:
    inputs = {"u": 0.5, "risk": risk}
    return Check(inputs, lambda: 0.5 * stats.norm.ppf(1.0 - risk), 1e-12, "L", SCIPY)


def _at_limit(multiple: float, probability: float) -> Check:
    source = "closed form: Φ(2r) at a limit guarded by r·U"
    return Check({"multiple_of_u": multiple}, 1.0 - probability, 1e-5, "C", source)


PROBABILITY = [
    _scipy(860.0, 12.0, 774.0, 946.0),
    _scipy(941.0, 12.0, 774.0, 946.0),
    _scipy(700.0, 30.0, 774.0, 946.0),
    _scipy(12.4, 0.048, 12.4, INF),
    _scipy(0.6, 0.118, -INF, 0.5),
    _scipy(1.0, 5.0, 0.9, 1.1),
    Check({"reading": -5.47, "u": 0.05, "low": -INF, "high": -5.40}, 0.9192, 5e-5, "C", JCGM),
    Check({"reading": 509.7, "u": 8.6, "low": 490.0, "high": INF}, 0.9890, 5e-5, "C", JCGM),
]
BELOW = [_below(z) for z in (-8.0, -1.6449, 0.0, 0.5, 3.0)]
GUARD = [
    *(_guard(risk) for risk in (0.2, 0.05, 0.025, 0.001)),
    Check({"u": 1.0, "risk": 0.05}, 2.0 * 0.8224, 1e-4, "C", "r = 0.8224 of U = 2u"),
]
RISK = [
    _at_limit(0.0, 0.5),
    _at_limit(0.5, 0.84134),
    _at_limit(0.8224, 0.95),
    _at_limit(1.0, 0.97725),
    Check({"multiple_of_u": 0.83}, 0.05, 0.0020, "P", GUARDS),
    Check({"multiple_of_u": 1.0}, 0.025, 0.0025, "P", GUARDS),
    Check({"multiple_of_u": 1.5}, 0.0016, 0.0003, "P", GUARDS),
    Check({"multiple_of_u": 3.0}, 1e-6, 1e-6, "P", GUARDS),
]


@pytest.mark.parametrize(
    ("model", "check"),
    table(conformance_probability, PROBABILITY)
    + table(normal_below, BELOW)
    + table(guard_band, GUARD)
    + table(risk_with_guard, RISK),
)
def test_probabilities_agree_with_the_world(model, check):
    """Conformance, guard bands and risks agree with scipy and the published figures."""
    check.hold(model)


METER = MeterAccuracy(0.9, 2.0, 1.0)
"""An ohm range with a last digit of 1 ohm."""


def _by_scipy(limit: float, sign: float, risk: float) -> float:
    """Reading at which one limit is met with probability 1 − risk, sought by scipy."""
    z = stats.norm.ppf(1.0 - risk)

    def missing(reading: float) -> float:
        u = (abs(reading) * 0.009 + 2.0) / 3.0**0.5
        return float(sign * (reading - limit) / u - z)

    return float(optimize.brentq(missing, limit, limit + sign * 200.0, xtol=1e-12))


def test_decision_limits_agree_with_scipy():
    """For a wide band each of the four readings is where scipy's root finder puts it."""
    found = decision_limits(774.0, 946.0, METER.standard_uncertainty, 0.05)
    assert found.surely_low == pytest.approx(_by_scipy(774.0, -1.0, 0.05), abs=1e-6)
    assert found.accept_from == pytest.approx(_by_scipy(774.0, 1.0, 0.05), abs=1e-6)
    assert found.accept_to == pytest.approx(_by_scipy(946.0, -1.0, 0.05), abs=1e-6)
    assert found.surely_high == pytest.approx(_by_scipy(946.0, 1.0, 0.05), abs=1e-6)


@pytest.mark.parametrize(
    ("reading", "verdict"),
    [
        (860.0, "in"),
        (946.0, "cannot_tell"),
        (960.0, "high"),
        (760.0, "low"),
        (951.0, "cannot_tell"),
    ],
)
def test_the_verdict_follows_the_probability(reading, verdict):
    """At 860 ± 10 %, u = 6: verdicts where scipy's probability exceeds 95 %, none between."""
    below = stats.norm.cdf(774.0, loc=reading, scale=6.0)
    above = stats.norm.sf(946.0, loc=reading, scale=6.0)
    probable = {"low": below, "high": above, "in": 1.0 - below - above}
    sure = [name for name, share in probable.items() if share >= 0.95]
    assert (sure or ["cannot_tell"]) == [verdict]
    assert judge_interval(reading, 6.0, 774.0, 946.0).verdict == verdict


def test_the_tables_are_well_founded():
    """Each model rests on at least three printed or library values."""
    for rows in (PROBABILITY, BELOW, GUARD, RISK):
        assert_well_founded(rows)
