"""Deciding on a limit with an imperfect reading: in, below, above, or cannot tell."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from statistics import NormalDist
from typing import Literal

from generator.physics.domain import within

_INFINITE = float("inf")
_FINITE = 1e300

Verdict = Literal["in", "low", "high", "cannot_tell"]

# Risk of a wrong verdict that is accepted if none is stated: 5 %, the usual one-sided figure
# (ISO 14253-1).
USUAL_RISK = 0.05
# Halvings and doublings when a limit is sought: enough for any double.
_STEPS = 200


def normal_below(z: float) -> float:
    """Give the probability that a standard normal variable lies below a value.

    Parameters
    ----------
    z : float
        Value, in standard deviations; may be infinite.

    Returns
    -------
    float
        Probability, 0 to 1, with full relative accuracy in the lower tail.
    """
    return 0.5 * math.erfc(-z / math.sqrt(2.0))


def conformance_probability(reading: float, u: float, low: float, high: float) -> float:
    """Give the probability that the true value lies within limits.

    Parameters
    ----------
    reading : float
        Measured value, unrounded and corrected for what is known.
    u : float
        Its standard uncertainty, in the same unit, not negative.
    low, high : float
        Limits in the same unit; an infinity for an open side.

    Returns
    -------
    float
        Probability, 0 to 1.

    Raises
    ------
    OutsideRange
        For limits out of order, a negative uncertainty or a reading that is no number.

    Notes
    -----
    p = Φ((T_U − y)/u) − Φ((T_L − y)/u): a normal distribution about the reading, nothing known
    before. With u = 0 it is 1 from limit to limit, both included, else 0.

    References
    ----------
    JCGM 106:2012, The role of measurement uncertainty in conformity assessment, 7.4 and 7.5.
    """
    return _shares(reading, u, low, high)[1]


def _shares(reading: float, u: float, low: float, high: float) -> tuple[float, float, float]:
    """Probabilities that the true value lies below, within and above the limits."""
    within("reading", reading, -_FINITE, _FINITE, "")
    within("uncertainty", u, 0.0, _FINITE, "")
    within("high limit", high, low, _INFINITE, "")
    within("low limit", low, -_INFINITE, high, "")
    if u == 0.0:
        below, above = float(reading < low), float(reading > high)
        return below, 1.0 - below - above, above
    to_low, to_high = (low - reading) / u, (high - reading) / u
    below, above = normal_below(to_low), normal_below(-to_high)
    # From the tail on the reading's far side: a difference of two near-ones loses its digits.
    inside = normal_below(-to_low) - above if to_low > 0.0 else normal_below(to_high) - below
    return below, max(inside, 0.0), above


@dataclass(frozen=True)
class Judgement:
    """What a reading says about a limit.

    Attributes
    ----------
    verdict : {"in", "low", "high", "cannot_tell"}
        "low" and "high" say on which side of the limits the true value lies.
    below, inside, above : float
        Probability that the true value lies below, within and above the limits; together 1.
    """

    verdict: Verdict
    below: float
    inside: float
    above: float

    @property
    def probability(self) -> float:
        """Probability that the verdict is right; of conformance where it cannot tell."""
        return {"low": self.below, "high": self.above}.get(self.verdict, self.inside)


def judge_interval(
    reading: float, u: float, low: float, high: float, risk: float = USUAL_RISK
) -> Judgement:
    """Say whether a true value lies within limits, if the reading can tell.

    Parameters
    ----------
    reading : float
        Measured value, **unrounded**: a displayed value rounded to a limit turns verdicts over.
    u : float
        Its standard uncertainty, in the same unit; 0 judges the bare figure.
    low, high : float
        Limits in the same unit, both belonging to the interval; an infinity for an open side.
    risk : float, optional
        Greatest probability of a wrong verdict, above 0 and below 0.5.

    Returns
    -------
    Judgement

    Raises
    ------
    OutsideRange
        As :func:`conformance_probability`, or for a risk beyond that range.

    Notes
    -----
    A verdict is given where its probability is at least 1 − risk; as 1 − risk is above one half,
    at most one can be. Where the interval is narrow against u, no reading can be "in": the meter
    does not suit the limit.

    References
    ----------
    JCGM 106:2012, 8 (acceptance intervals, guarded acceptance and guarded rejection).
    """
    _check_risk(risk)
    below, inside, above = _shares(reading, u, low, high)
    verdict: Verdict = "cannot_tell"
    # What the arithmetic of a probability loses must not undo a verdict at a guarded limit.
    enough = 1.0 - risk - 1e-12
    if inside >= enough:
        verdict = "in"
    elif below >= enough:
        verdict = "low"
    elif above >= enough:
        verdict = "high"
    return Judgement(verdict, below, inside, above)


def guard_band(u: float, risk: float = USUAL_RISK) -> float:
    """Give how far inside a single limit a reading must lie to be accepted.

    Parameters
    ----------
    u : float
        Standard uncertainty, not negative.
    risk : float, optional
        Greatest probability of a wrong acceptance, above 0 and below 0.5.

    Returns
    -------
    float
        Guard band w, in the unit of u.

    Raises
    ------
    OutsideRange
        For an uncertainty or a risk beyond those.

    Notes
    -----
    w = z(1 − risk)·u; written as r·U with U = 2u it is r = z/2: 0.8224 for 5 %, 1 for 2.3 %.

    References
    ----------
    JCGM 106:2012, 8.3.2.
    """
    _check_risk(risk)
    within("uncertainty", u, 0.0, _FINITE, "")
    return NormalDist().inv_cdf(1.0 - risk) * u


@dataclass(frozen=True)
class DecisionLimits:
    """Readings at which the verdict changes.

    Attributes
    ----------
    surely_low : float or None
        At or below this reading the true value is below the limits; None where there is no lower
        limit, or no reading shows it.
    accept_from, accept_to : float or None
        Readings from one to the other are "in"; infinite on an open side; both None where the
        meter does not suit the limits and no reading is.
    surely_high : float or None
        At or above this reading the true value is above the limits.
    """

    surely_low: float | None
    accept_from: float | None
    accept_to: float | None
    surely_high: float | None


def decision_limits(
    low: float, high: float, u_of: Callable[[float], float], risk: float = USUAL_RISK
) -> DecisionLimits:
    """Give the readings at which the verdict of :func:`judge_interval` changes.

    Parameters
    ----------
    low, high : float
        Limits; an infinity for an open side, but not both.
    u_of : callable
        Standard uncertainty of a reading, as `MeterAccuracy.standard_uncertainty`: above zero,
        and changing by less than half as fast as the reading.
    risk : float, optional
        As for :func:`judge_interval`.

    Returns
    -------
    DecisionLimits

    Raises
    ------
    OutsideRange
        For limits out of order or both open, or a risk beyond its range.

    Notes
    -----
    Found by bisection on the probabilities themselves, so a comparison with these four figures
    gives the same verdict as the probabilities do: what a page can ship and a script compare.

    References
    ----------
    JCGM 106:2012, 8.
    """
    _check_risk(risk)
    within("high limit", high, low, _INFINITE, "")
    within("closed limits", sum(map(math.isfinite, (low, high))), 1, 2, "limits")
    enough = 1.0 - risk

    def shares(reading: float) -> tuple[float, float, float]:
        return _shares(reading, u_of(reading), low, high)

    def outward(start: float, sign: float, share: int) -> float | None:
        """The reading nearest to `start`, on that side of it, with enough of that share."""
        step = u_of(start)
        for _ in range(_STEPS):
            if shares(start + sign * step)[share] >= enough:
                return _edge(start, start + sign * step, lambda y: shares(y)[share] >= enough)
            step *= 2.0
            if step > 1e6 * (abs(start) + u_of(start)):
                return None
        return None

    surely_low = outward(low, -1.0, 0) if math.isfinite(low) else None
    surely_high = outward(high, 1.0, 2) if math.isfinite(high) else None
    if not math.isfinite(high):
        accept_from = outward(low, 1.0, 1)
        return DecisionLimits(
            surely_low, accept_from, _INFINITE if accept_from is not None else None, None
        )
    if not math.isfinite(low):
        accept_to = outward(high, -1.0, 1)
        return DecisionLimits(
            None, -_INFINITE if accept_to is not None else None, accept_to, surely_high
        )
    best = _peak(low, high, lambda y: shares(y)[1])
    if shares(best)[1] < enough:
        return DecisionLimits(surely_low, None, None, surely_high)
    accept_from = _edge(low, best, lambda y: shares(y)[1] >= enough)
    accept_to = _edge(high, best, lambda y: shares(y)[1] >= enough)
    return DecisionLimits(surely_low, accept_from, accept_to, surely_high)


def _check_risk(risk: float) -> None:
    within("risk", risk, 1e-9, 0.499, "")


def _edge(outside: float, inside: float, holds: Callable[[float], bool]) -> float:
    """Last reading, coming from `inside`, at which a condition still holds."""
    for _ in range(_STEPS):
        middle = (outside + inside) / 2.0
        outside, inside = (outside, middle) if holds(middle) else (middle, inside)
    return inside


def _peak(low: float, high: float, share: Callable[[float], float]) -> float:
    """Reading between two at which a share with a single peak is greatest (ternary search)."""
    for _ in range(_STEPS):
        third = (high - low) / 3.0
        left, right = low + third, high - third
        low, high = (left, high) if share(left) < share(right) else (low, right)
    return (low + high) / 2.0
