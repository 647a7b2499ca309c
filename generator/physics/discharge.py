"""How long a battery lasts: standing drain, and Peukert's law in both of its printed forms."""

from __future__ import annotations

import numpy as np

from generator.physics.domain import Number, plain, within

_INFINITE = float("inf")


def drain_days(
    capacity_ah: Number, drain_a: Number, from_charge: float = 1.0, to_charge: float = 0.5
) -> Number:
    """Give how long a standing drain takes to lower a battery to a given charge.

    Parameters
    ----------
    capacity_ah : float or ndarray
        Capacity, Ah; above zero.
    drain_a : float or ndarray
        Mean current with the vehicle asleep, A; above zero.
    from_charge, to_charge : float, optional
        State of charge at the start and at the end, 0 to 1.

    Returns
    -------
    float or ndarray
        Time, days.

    Raises
    ------
    OutsideRange
        For a value that cannot be, or an end above the start.

    Notes
    -----
    t = C·Δs/I. No Peukert correction: the currents lie far below the rating current, where that
    law would promise more than the rated charge. Self-discharge, some 0.1 to 0.3 % a day, is left
    out, so beyond a month the true time is shorter.
    """
    within("capacity", capacity_ah, 1e-3, _INFINITE, "Ah")
    within("drain", drain_a, 1e-6, _INFINITE, "A")
    within("state of charge at the start", from_charge, 0.0, 1.0, "")
    within("state of charge at the end", to_charge, 0.0, from_charge, "")
    share = from_charge - to_charge
    return plain(np.asarray(capacity_ah, dtype=float) * share / np.asarray(drain_a) / 24.0)


def peukert_hours_rated(
    rated_ah: Number, rated_hours: Number, current_a: Number, exponent: float
) -> Number:
    """Give a battery's discharge time by Peukert's law in its rated form.

    Parameters
    ----------
    rated_ah : float or ndarray
        Capacity when discharged in `rated_hours`, Ah.
    rated_hours : float or ndarray
        Time the capacity is rated for, h; 20 for vehicle batteries.
    current_a : float or ndarray
        Constant current, A; not below the rating current.
    exponent : float
        Peukert's exponent, 1 to 1.6; about 1.1 to 1.3 for a sound battery (practice).

    Returns
    -------
    float or ndarray
        Time, h.

    Raises
    ------
    OutsideRange
        For a value beyond those. Below the rating current the law is not used.

    Notes
    -----
    t = H·(C/(I·H))^k. Two definitions are in print; this one gives the rated time at the rated
    current. See :func:`peukert_hours_one_ampere` for the other.
    """
    within("capacity", rated_ah, 1e-3, _INFINITE, "Ah")
    within("rated time", rated_hours, 1e-3, _INFINITE, "h")
    within("exponent", exponent, 1.0, 1.6, "")
    hours = np.asarray(rated_hours, dtype=float)
    ratio = np.asarray(rated_ah, dtype=float) / (np.asarray(current_a, dtype=float) * hours)
    within("rating current over current", ratio, 0.0, 1.0 + 1e-12, "")
    return plain(hours * ratio**exponent)


def peukert_hours_one_ampere(peukert_ah: Number, current_a: Number, exponent: float) -> Number:
    """Give a battery's discharge time by Peukert's law in its one-ampere form.

    Parameters
    ----------
    peukert_ah : float or ndarray
        Peukert capacity: Ah at a discharge of 1 A. It is **not** the capacity on the label.
    current_a : float or ndarray
        Constant current, A, above zero.
    exponent : float
        Peukert's exponent, 1 to 1.6.

    Returns
    -------
    float or ndarray
        Time, h.

    Raises
    ------
    OutsideRange
        For a value beyond those.

    Notes
    -----
    t = C_p/I^k, W. Peukert (1897). C_p = H·(C/H)^k turns a rated capacity into this form's.
    """
    within("Peukert capacity", peukert_ah, 1e-3, _INFINITE, "Ah")
    within("current", current_a, 1e-3, _INFINITE, "A")
    within("exponent", exponent, 1.0, 1.6, "")
    return plain(
        np.asarray(peukert_ah, dtype=float) / np.asarray(current_a, dtype=float) ** exponent
    )
