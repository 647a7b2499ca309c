"""NTC thermistors: curves through points of a table, and limits from tolerances."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from generator.physics.domain import Number, within
from generator.physics.thermistor_curves import (
    ICE_POINT_K,
    NTC_MAX_C,
    NTC_MIN_C,
    Beta,
    SteinhartHart,
    ThermistorCurve,
)

__all__ = [
    "Beta",
    "SteinhartHart",
    "ThermistorCurve",
    "beta_from_points",
    "steinhart_hart_fit",
    "thermistor_band",
    "thermistor_band_from_curves",
]


def steinhart_hart_fit(
    points: Sequence[tuple[float, float]], beyond_k: float = 0.0
) -> SteinhartHart:
    """Fit the Steinhart-Hart curve through three points of a sensor's table.

    Parameters
    ----------
    points : sequence of three (float, float)
        Temperature in °C and resistance in ohm, in any order.
    beyond_k : float, optional
        How far beyond its outer points the curve is to hold, K; the caller answers for it.

    Returns
    -------
    SteinhartHart
        The curve through the points, holding between the outer two, widened by `beyond_k`.

    Raises
    ------
    OutsideRange
        For temperatures, resistances or a widening that cannot be.
    ValueError
        If there are not three points, or resistance does not fall from each to the next.

    Notes
    -----
    Three linear equations in a, b, c. Points evenly spread over the wanted range fit best.

    References
    ----------
    Steinhart and Hart (1968), as in :class:`SteinhartHart`.
    """
    if len(points) != 3:
        raise ValueError(f"a fit takes three points, not {len(points)}")
    temps_c, ohms = np.array(sorted(points), dtype=float).T
    within("temperature", temps_c, NTC_MIN_C, NTC_MAX_C, "°C")
    within("resistance", ohms, 1e-3, 1e9, "ohm")
    within("widening", beyond_k, 0.0, 50.0, "K")
    if not (np.diff(temps_c) > 0.0).all() or not (np.diff(ohms) < 0.0).all():
        raise ValueError("resistance has to fall from each point to the next warmer one")
    logs = np.log(ohms)
    equations = np.column_stack([np.ones(3), logs, logs**3])
    a, b, c = np.linalg.solve(equations, 1.0 / (temps_c + ICE_POINT_K))
    low_c, high_c = float(temps_c[0]) - beyond_k, float(temps_c[2]) + beyond_k
    return SteinhartHart(float(a), float(b), float(c), low_c, high_c)


def beta_from_points(first: tuple[float, float], second: tuple[float, float]) -> Beta:
    """Give the beta curve through two points of a sensor's table.

    Parameters
    ----------
    first, second : tuple of (float, float)
        Temperature in °C and resistance in ohm; the first is the reference.

    Returns
    -------
    Beta
        The curve, holding between the two temperatures.

    Raises
    ------
    OutsideRange
        If the points do not make an NTC thermistor.

    Notes
    -----
    β = ln(R1/R2)/(1/T1 − 1/T2).
    """
    (ref_c, ref_ohm), (other_c, other_ohm) = first, second
    within("resistance", [ref_ohm, other_ohm], 1e-3, 1e9, "ohm")
    within("distance of the points", abs(other_c - ref_c), 1.0, NTC_MAX_C - NTC_MIN_C, "K")
    inverse = 1.0 / (ref_c + ICE_POINT_K) - 1.0 / (other_c + ICE_POINT_K)
    beta_k = float(np.log(ref_ohm / other_ohm) / inverse)
    return Beta(ref_ohm, beta_k, ref_c, min(ref_c, other_c), max(ref_c, other_c))


def thermistor_band(
    curve: ThermistorCurve,
    temp_c: Number,
    tolerance: float = 0.0,
    temp_tolerance_k: float = 0.0,
) -> tuple[Number, Number, Number]:
    """Give the limits of a thermistor's resistance at a temperature known only so well.

    Parameters
    ----------
    curve : ThermistorCurve
        Nominal curve.
    temp_c : float or ndarray
        Temperature, °C.
    tolerance : float, optional
        Tolerance of the part, as a share of its resistance, 0 to 1.
    temp_tolerance_k : float, optional
        How far the true temperature may lie either way, K.

    Returns
    -------
    tuple of (float or ndarray)
        Low, nominal and high resistance, ohm.

    Raises
    ------
    OutsideRange
        Where the temperature with its tolerance leaves the curve.

    Notes
    -----
    Resistance falls with temperature: the low limit belongs to the warm end. Exact.
    """
    within("tolerance", tolerance, 0.0, 1.0, "")
    return thermistor_band_from_curves(
        (curve, curve, curve), temp_c, temp_tolerance_k, (1.0 - tolerance, 1.0 + tolerance)
    )


def thermistor_band_from_curves(
    curves: tuple[ThermistorCurve, ThermistorCurve, ThermistorCurve],
    temp_c: Number,
    temp_tolerance_k: float = 0.0,
    factors: tuple[float, float] = (1.0, 1.0),
) -> tuple[Number, Number, Number]:
    """Give the limits where a table prints its own low and high values.

    Parameters
    ----------
    curves : tuple of three ThermistorCurve
        Fitted to the printed low, nominal and high values.
    temp_c : float or ndarray
        Temperature, °C.
    temp_tolerance_k : float, optional
        How far the true temperature may lie either way, K.
    factors : tuple of float, optional
        Further factors on the low and the high limit.

    Returns
    -------
    tuple of (float or ndarray)
        Low, nominal and high resistance, ohm.

    Raises
    ------
    OutsideRange
        Where the temperature with its tolerance leaves a curve.
    """
    within("temperature tolerance", temp_tolerance_k, 0.0, float("inf"), "K")
    low, nominal, high = curves
    return (
        low.ohm(temp_c + temp_tolerance_k) * factors[0],
        nominal.ohm(temp_c),
        high.ohm(temp_c - temp_tolerance_k) * factors[1],
    )
