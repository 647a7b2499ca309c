"""Ignition coils and injectors: resistance when warm, peak current, duty."""

from __future__ import annotations

import numpy as np

from generator.physics.coils import coil_current_a
from generator.physics.domain import Number, plain, within
from generator.physics.wheels import SPEED_MAX_RPM
from generator.physics.windings import winding_band


def ignition_band(
    low_ohm: float,
    nominal_ohm: float,
    high_ohm: float,
    temp_c: Number,
    temp_tolerance_k: float = 0.0,
    ref_c: float = 20.0,
    suppressor_ohm: float = 0.0,
) -> tuple[Number, Number, Number]:
    """Give the limits of an ignition primary or secondary at a temperature.

    Parameters
    ----------
    low_ohm, nominal_ohm, high_ohm : float
        Limits and nominal resistance at `ref_c`, ohm, any suppressor included.
    temp_c : float or ndarray
        Temperature of the coil, °C.
    temp_tolerance_k : float, optional
        How far the true temperature may lie either way, K.
    ref_c : float, optional
        Temperature at which the limits are stated, °C.
    suppressor_ohm : float, optional
        Part of it that is a built-in resistor and does not follow copper, ohm.

    Returns
    -------
    tuple of (float or ndarray)
        Low, nominal and high resistance, ohm.

    Raises
    ------
    OutsideRange
        As :func:`~generator.physics.windings.winding_band`, or for a suppressor above the low
        limit.

    Notes
    -----
    A secondary with a diode in it does not read on an ohmmeter at all: that is no fault.
    """
    within("suppressor", suppressor_ohm, 0.0, low_ohm, "ohm")
    low, nominal, high = winding_band(
        low_ohm - suppressor_ohm,
        nominal_ohm - suppressor_ohm,
        high_ohm - suppressor_ohm,
        temp_c,
        temp_tolerance_k,
        ref_c,
    )
    return low + suppressor_ohm, nominal + suppressor_ohm, high + suppressor_ohm


def injector_peak_a(
    on_time_s: Number,
    supply_v: float,
    coil_ohm: float,
    coil_h: float,
    limit_a: float = float("inf"),
) -> Number:
    """Give the current an injector reaches by the end of its pulse.

    Parameters
    ----------
    on_time_s : float or ndarray
        Length of the pulse, s.
    supply_v, coil_ohm, coil_h : float
        As for :func:`coil_current_a`; the resistance of the loop includes the driver.
    limit_a : float, optional
        Current at which the driver holds, A: a peak-and-hold driver's peak.

    Returns
    -------
    float or ndarray
        Peak current, A.

    Raises
    ------
    OutsideRange
        As :func:`coil_current_a`.
    """
    within("current limit", limit_a, 0.0, float("inf"), "A")
    risen = coil_current_a(on_time_s, supply_v, coil_ohm, coil_h)
    return plain(np.minimum(risen, limit_a))


def injector_duty(on_time_s: Number, speed_rpm: Number, turns_per_pulse: float = 2.0) -> Number:
    """Give the share of the time that an injector is switched on.

    Parameters
    ----------
    on_time_s : float or ndarray
        Length of the pulse, s.
    speed_rpm : float or ndarray
        Engine speed, revolutions a minute; above zero.
    turns_per_pulse : float, optional
        Crankshaft revolutions from pulse to pulse: 2 for a sequential four-stroke, 1 where all
        fire each revolution.

    Returns
    -------
    float or ndarray
        Duty, 0 to 1.

    Raises
    ------
    OutsideRange
        For a pulse longer than its period.

    Notes
    -----
    d = t_on·n/(60·k).
    """
    within("on-time", on_time_s, 0.0, float("inf"), "s")
    within("speed", speed_rpm, 1e-3, SPEED_MAX_RPM, "rpm")
    within("revolutions per pulse", turns_per_pulse, 0.5, 4.0, "")
    pulse_s = np.asarray(on_time_s, dtype=float)
    duty = plain(pulse_s * np.asarray(speed_rpm, dtype=float) / (60.0 * turns_per_pulse))
    within("duty", duty, 0.0, 1.0, "")
    return duty
