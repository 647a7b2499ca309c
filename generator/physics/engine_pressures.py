"""Compression, leak-down and fuel pressure, with the air of the day taken into account."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from generator.physics.atmosphere import SEA_LEVEL_PA
from generator.physics.domain import Number, plain, within

_INFINITE = float("inf")
# Pressure of the air at any place a road leads to and in any weather, Pa (ISO 2533 at 6000 m,
# 47 181 Pa, less a deep low; greatest sea-level pressure on record).
AIR_MIN_PA, AIR_MAX_PA = 40_000.0, 110_000.0


def compression_at_pa(
    gauge_pa: Number, station_pa: Number, reference_pa: Number = SEA_LEVEL_PA
) -> Number:
    """Give the cranking compression to expect under another air pressure.

    Parameters
    ----------
    gauge_pa : float or ndarray
        Gauge pressure stated under the reference pressure, Pa, not negative.
    station_pa : float or ndarray
        Air pressure at the place, Pa (never the sea-level figure).
    reference_pa : float or ndarray, optional
        Air pressure the figure was stated under, Pa.

    Returns
    -------
    float or ndarray
        Gauge pressure, Pa.

    Raises
    ------
    OutsideRange
        For a pressure that cannot be.

    Notes
    -----
    The cylinder multiplies the absolute pressure it starts from by a factor r that does not
    depend on that pressure, so the gauge shows p·(r − 1): proportional to the air pressure.
    Cranking speed, throttle and temperature must be alike. Correct a limit this way only where its
    maker states it for sea level; comparing cylinders with each other needs no correction.
    """
    within("compression", gauge_pa, 0.0, 1e7, "Pa")
    within("air pressure", station_pa, AIR_MIN_PA, AIR_MAX_PA, "Pa")
    within("reference pressure", reference_pa, AIR_MIN_PA, AIR_MAX_PA, "Pa")
    return plain(np.asarray(gauge_pa, dtype=float) * station_pa / reference_pa)


def compression_band_pa(
    gauge_pa: tuple[float, float, float],
    station_pa: tuple[Number, Number, Number],
    reference_pa: float = SEA_LEVEL_PA,
) -> tuple[Number, Number, Number]:
    """Give the limits of the compression at a place.

    Parameters
    ----------
    gauge_pa : tuple of float
        Low, nominal and high gauge pressure under the reference pressure, Pa.
    station_pa : tuple of (float or ndarray)
        Low, nominal and high air pressure at the place, Pa.
    reference_pa : float, optional
        Air pressure the figures were stated under, Pa.

    Returns
    -------
    tuple of (float or ndarray)
        Low, nominal and high gauge pressure, Pa.

    Raises
    ------
    OutsideRange
        As :func:`compression_at_pa`.

    Notes
    -----
    Rising in both: exact.
    """
    pairs = zip(gauge_pa, station_pa, strict=True)
    low, nominal, high = (compression_at_pa(gauge, air, reference_pa) for gauge, air in pairs)
    return low, nominal, high


def weakest_share(cylinders_pa: Sequence[float]) -> float:
    """Give the weakest cylinder's compression as a share of the strongest one's.

    Parameters
    ----------
    cylinders_pa : sequence of float
        Gauge pressure of each cylinder, in one unit, above zero; at least two.

    Returns
    -------
    float
        Share, 0 to 1. Air pressure and gauge scale drop out of it.

    Raises
    ------
    OutsideRange
        For fewer than two cylinders or a pressure not above zero.
    """
    within("cylinders", len(cylinders_pa), 2, _INFINITE, "cylinders")
    within("compression", cylinders_pa, float(np.finfo(float).tiny), _INFINITE, "Pa")
    return float(min(cylinders_pa) / max(cylinders_pa))


def leak_down_share(supply_pa: Number, cylinder_pa: Number) -> Number:
    """Give the leakage that a two-gauge leak-down tester shows.

    Parameters
    ----------
    supply_pa : float or ndarray
        Gauge pressure before the tester's orifice, in any unit, above zero.
    cylinder_pa : float or ndarray
        Gauge pressure behind it, in the same unit, 0 to the supply.

    Returns
    -------
    float or ndarray
        Share of the supply pressure that is lost, 0 to 1.

    Raises
    ------
    OutsideRange
        For pressures that cannot be.

    Notes
    -----
    s = (p1 − p2)/p1. It is a reading of that tester, not a share of a flow: another orifice
    gives another figure for the same cylinder, so it compares cylinders and is held only against
    limits stated for the same kind of tester.
    """
    within("supply pressure", supply_pa, 1e-9, _INFINITE, "Pa")
    supply, cylinder = np.asarray(supply_pa, dtype=float), np.asarray(cylinder_pa, dtype=float)
    share = (supply - cylinder) / supply
    within("leakage", share, 0.0, 1.0, "")
    return plain(share)


def rail_gauge_pa(
    regulator_pa: Number, manifold_pa: Number, station_pa: Number, referenced: bool
) -> Number:
    """Give the fuel pressure that a gauge on the rail shows.

    Parameters
    ----------
    regulator_pa : float or ndarray
        Pressure that the regulator holds above its reference, Pa.
    manifold_pa : float or ndarray
        Absolute pressure in the manifold, Pa; the air pressure with the engine at rest.
    station_pa : float or ndarray
        Air pressure at the place, Pa.
    referenced : bool
        Whether the regulator's spring chamber is piped to the manifold (else to the outside air).

    Returns
    -------
    float or ndarray
        Gauge pressure, Pa.

    Raises
    ------
    OutsideRange
        For a pressure that cannot be.

    Notes
    -----
    Referenced: p = p_reg + p_man − p_air, so pulling the hose off at idle raises it by the
    manifold vacuum. Not referenced: p = p_reg, whatever the manifold does.
    """
    within("regulator pressure", regulator_pa, 0.0, 1e6, "Pa")
    within("manifold pressure", manifold_pa, 1e3, 5e5, "Pa")
    within("air pressure", station_pa, AIR_MIN_PA, AIR_MAX_PA, "Pa")
    if not referenced:
        return plain(np.asarray(regulator_pa, dtype=float) + 0.0 * np.asarray(manifold_pa))
    return plain(np.asarray(regulator_pa, dtype=float) + manifold_pa - station_pa)


def rail_gauge_band_pa(
    regulator_pa: tuple[float, float, float],
    manifold_pa: tuple[float, float, float],
    station_pa: tuple[float, float, float],
    referenced: bool,
) -> tuple[float, float, float]:
    """Give the limits of the fuel pressure on a gauge.

    Parameters
    ----------
    regulator_pa, manifold_pa, station_pa : tuple of float
        Low, nominal and high value of each, Pa, as for :func:`rail_gauge_pa`.
    referenced : bool
        As for :func:`rail_gauge_pa`.

    Returns
    -------
    tuple of float
        Low, nominal and high gauge pressure, Pa.

    Raises
    ------
    OutsideRange
        As :func:`rail_gauge_pa`.

    Notes
    -----
    Rising with regulator and manifold, falling with the air pressure: exact if the three are
    independent.
    """
    corners = ((0, 2), (1, 1), (2, 0))
    low, nominal, high = (
        rail_gauge_pa(regulator_pa[up], manifold_pa[up], station_pa[down], referenced)
        for up, down in corners
    )
    return low, nominal, high


def injector_difference_pa(rail_gauge: Number, manifold_pa: Number, station_pa: Number) -> Number:
    """Give the pressure that drives fuel through a port injector.

    Parameters
    ----------
    rail_gauge : float or ndarray
        Gauge pressure of the rail, Pa.
    manifold_pa, station_pa : float or ndarray
        Absolute pressure in the manifold and of the outside air, Pa.

    Returns
    -------
    float or ndarray
        Difference, Pa.

    Raises
    ------
    OutsideRange
        For a pressure that cannot be.

    Notes
    -----
    Δp = p_gauge + p_air − p_man: constant with a referenced regulator, greater by the vacuum
    without one.
    """
    within("rail pressure", rail_gauge, 0.0, 1e6, "Pa")
    within("manifold pressure", manifold_pa, 1e3, 5e5, "Pa")
    within("air pressure", station_pa, AIR_MIN_PA, AIR_MAX_PA, "Pa")
    return plain(np.asarray(rail_gauge, dtype=float) + station_pa - manifold_pa)
