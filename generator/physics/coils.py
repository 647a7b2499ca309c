"""Coils that are switched: rise, dwell and release."""

from __future__ import annotations

import numpy as np

from generator.physics.domain import Number, plain, within

# Highest supply of a 12 V or 24 V vehicle, a boosted injector stage included, V (practice).
COIL_SUPPLY_MAX_V = 120.0
# Highest clamp of a coil driver, V (practice: ignition drivers clamp at 300 to 450 V).
CLAMP_MAX_V = 1000.0
_INFINITE = float("inf")


def _check_coil(coil_ohm: Number, coil_h: Number) -> None:
    within("coil resistance", coil_ohm, 1e-6, _INFINITE, "ohm")
    within("coil inductance", coil_h, 1e-9, _INFINITE, "H")


def time_constant_s(coil_ohm: Number, coil_h: Number) -> Number:
    """Give the time constant of a coil.

    Parameters
    ----------
    coil_ohm : float or ndarray
        Resistance of the whole loop, ohm; above zero.
    coil_h : float or ndarray
        Inductance, H; above zero.

    Returns
    -------
    float or ndarray
        L/R, s: the time to 63.2 % of the final current.

    Raises
    ------
    OutsideRange
        For a resistance or an inductance that cannot be.
    """
    _check_coil(coil_ohm, coil_h)
    return plain(np.asarray(coil_h, dtype=float) / coil_ohm)


def coil_current_a(
    time_s: Number, supply_v: float, coil_ohm: float, coil_h: float, initial_a: float = 0.0
) -> Number:
    """Give the current in a coil some time after it was switched on.

    Parameters
    ----------
    time_s : float or ndarray
        Time since switching on, s.
    supply_v : float
        Voltage across the loop, V: the supply less the drop of the switch.
    coil_ohm : float
        Resistance of the whole loop, ohm.
    coil_h : float
        Inductance, H.
    initial_a : float, optional
        Current at switching on, A.

    Returns
    -------
    float or ndarray
        Current, A.

    Raises
    ------
    OutsideRange
        For a negative time, a supply outside 0 to 120 V, or a coil that cannot be.

    Notes
    -----
    i = V/R + (i0 − V/R)·exp(−t·R/L), for a constant inductance: until the core saturates or a
    plunger moves, either of which bends the curve.
    """
    within("time", time_s, 0.0, _INFINITE, "s")
    within("supply", supply_v, 0.0, COIL_SUPPLY_MAX_V, "V")
    tau_s = time_constant_s(coil_ohm, coil_h)
    final_a = supply_v / coil_ohm
    # expm1 keeps its figures for the first instants, where 1 − exp would lose them.
    risen = -np.expm1(-np.asarray(time_s, dtype=float) / tau_s)
    return plain(initial_a + (final_a - initial_a) * risen)


def dwell_s(current_a: Number, supply_v: float, coil_ohm: float, coil_h: float) -> Number:
    """Give the time a coil needs to reach a current.

    Parameters
    ----------
    current_a : float or ndarray
        Current wanted, A; below supply_v/coil_ohm.
    supply_v, coil_ohm, coil_h : float
        As for :func:`coil_current_a`.

    Returns
    -------
    float or ndarray
        Time, s.

    Raises
    ------
    OutsideRange
        For a current that the loop never reaches.

    Notes
    -----
    t = −(L/R)·ln(1 − I·R/V). A low supply lengthens it more than in proportion, which is why a
    weak battery costs spark before it costs starter speed.
    """
    within("supply", supply_v, 1e-6, COIL_SUPPLY_MAX_V, "V")
    tau_s = time_constant_s(coil_ohm, coil_h)
    within("current", current_a, 0.0, float(np.nextafter(supply_v / coil_ohm, 0.0)), "A")
    share = np.asarray(current_a, dtype=float) * coil_ohm / supply_v
    return plain(-tau_s * np.log1p(-share))


def release_s(current_a: Number, clamp_v: float, coil_ohm: float, coil_h: float) -> Number:
    """Give the time a switched-off coil needs to lose its current into a clamp.

    Parameters
    ----------
    current_a : float or ndarray
        Current at switching off, A.
    clamp_v : float
        Voltage that opposes the current around the loop, V: a flyback diode's 0.7 V; for a clamp
        from the switched side to ground, the clamp's voltage less the supply's.
    coil_ohm, coil_h : float
        The coil.

    Returns
    -------
    float or ndarray
        Time, s.

    Raises
    ------
    OutsideRange
        For a clamp outside 0 to 1000 V, or a coil that cannot be.

    Notes
    -----
    L·di/dt = −V_c − i·R, hence t = (L/R)·ln(1 + I·R/V_c); for V_c well above I·R it is L·I/V_c.
    Eddy currents in a solid core hold its force longer than its current.
    """
    within("current", current_a, 0.0, _INFINITE, "A")
    within("clamp", clamp_v, 1e-3, CLAMP_MAX_V, "V")
    tau_s = time_constant_s(coil_ohm, coil_h)
    return plain(tau_s * np.log1p(np.asarray(current_a, dtype=float) * coil_ohm / clamp_v))


def release_current_a(
    time_s: Number, current_a: float, clamp_v: float, coil_ohm: float, coil_h: float
) -> Number:
    """Give the current of a switched-off coil that empties into a clamp.

    Parameters
    ----------
    time_s : float or ndarray
        Time since switching off, s.
    current_a : float
        Current at switching off, A.
    clamp_v, coil_ohm, coil_h : float
        As for :func:`release_s`.

    Returns
    -------
    float or ndarray
        Current, A; zero once it has run out.

    Raises
    ------
    OutsideRange
        As :func:`release_s`.
    """
    within("time", time_s, 0.0, _INFINITE, "s")
    within("current", current_a, 0.0, _INFINITE, "A")
    within("clamp", clamp_v, 1e-3, CLAMP_MAX_V, "V")
    tau_s = time_constant_s(coil_ohm, coil_h)
    floor_a = clamp_v / coil_ohm
    falling = (current_a + floor_a) * np.exp(-np.asarray(time_s, dtype=float) / tau_s) - floor_a
    return plain(np.maximum(falling, 0.0))


def switch_peak_v(supply_v: Number, flyback_v: Number) -> Number:
    """Give the voltage at the switched side of a coil while it releases.

    Parameters
    ----------
    supply_v : float or ndarray
        Supply, V.
    flyback_v : float or ndarray
        Voltage that the coil drives against its supply, V: 0.7 V with a flyback diode across it.

    Returns
    -------
    float or ndarray
        Voltage to ground, V.

    Raises
    ------
    OutsideRange
        For a voltage that cannot be.

    Notes
    -----
    Kirchhoff's voltage law, for a coil fed from the supply and switched to ground.
    """
    within("supply", supply_v, 0.0, COIL_SUPPLY_MAX_V, "V")
    within("flyback voltage", flyback_v, 0.0, CLAMP_MAX_V, "V")
    return plain(np.asarray(supply_v, dtype=float) + flyback_v)


def coil_energy_j(current_a: Number, coil_h: Number) -> Number:
    """Give the energy in a coil.

    Parameters
    ----------
    current_a : float or ndarray
        Current, A.
    coil_h : float or ndarray
        Inductance, H; not negative.

    Returns
    -------
    float or ndarray
        L·I²/2, J.

    Raises
    ------
    OutsideRange
        For a negative inductance.
    """
    within("coil inductance", coil_h, 0.0, _INFINITE, "H")
    return plain(0.5 * coil_h * np.asarray(current_a, dtype=float) ** 2)
