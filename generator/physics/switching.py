"""Switching speed and position sensors: levels, duty, what a DC meter shows, current outputs."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from generator.physics.domain import Number, plain, spread, within
from generator.physics.wheels import (
    check_wheel,
    counted_frequency_hz,
    sample_positions,
    tooth_frequency_hz,
)

__all__ = [
    "counted_frequency_hz",
    "current_sensor_levels_v",
    "duty_from_mean",
    "high_level_v",
    "low_level_v",
    "mean_level_band",
    "mean_level_v",
    "revolution_duty",
    "square_waveform",
    "tooth_frequency_hz",
]

# Highest supply that a road vehicle puts on a sensor, V: a 24 V system's 32 V (ISO 16750-2, from
# memory) and a little more.
SUPPLY_MAX_V = 36.0
# Two-wire active wheel-speed sensors switch between 7 mA and 14 mA (practice).
ACTIVE_LOW_A, ACTIVE_HIGH_A = 0.007, 0.014


def high_level_v(
    pull_up_v: Number, pull_up_ohm: float, load_ohm: float = float("inf"), leakage_a: float = 0.0
) -> Number:
    """Give the high level of an open-collector output with its transistor off.

    Parameters
    ----------
    pull_up_v : float or ndarray
        Voltage that the pull-up hangs on, V; it sits in the control unit and need not be the
        sensor's supply.
    pull_up_ohm : float
        Pull-up resistance, ohm; above zero.
    load_ohm : float, optional
        What loads the line to ground: a meter, a leak; ohm, above zero.
    leakage_a : float, optional
        Leakage of the transistor that is off, A.

    Returns
    -------
    float or ndarray
        High level, V.

    Raises
    ------
    OutsideRange
        For a voltage outside 0 to 36 V, a resistance not above zero, or a leakage that would
        draw the level below ground.

    Notes
    -----
    Node equation: (V_pu − V)/R_pu = V/R_load + I_leak.
    """
    within("pull-up voltage", pull_up_v, 0.0, SUPPLY_MAX_V, "V")
    within("pull-up resistance", pull_up_ohm, 1e-3, float("inf"), "ohm")
    within("load resistance", load_ohm, 1e-3, float("inf"), "ohm")
    least_v = float(np.min(pull_up_v))
    within("leakage", leakage_a, 0.0, least_v / pull_up_ohm, "A")
    return plain((pull_up_v - leakage_a * pull_up_ohm) / (1.0 + pull_up_ohm / load_ohm))


def low_level_v(saturation_v: Number, ground_drop_v: Number = 0.0) -> Number:
    """Give the low level of an open-collector output, seen from battery negative.

    Parameters
    ----------
    saturation_v : float or ndarray
        Voltage across the transistor that is on, V; the sensor maker's figure at the pull-up's
        current.
    ground_drop_v : float or ndarray, optional
        Drop of the sensor's own ground, V; it lifts the level.

    Returns
    -------
    float or ndarray
        Low level, V.

    Raises
    ------
    OutsideRange
        If either is outside 0 to 36 V.

    Notes
    -----
    Kirchhoff's voltage law: a high low level is as often a bad ground as a bad sensor.
    """
    within("saturation voltage", saturation_v, 0.0, SUPPLY_MAX_V, "V")
    within("ground drop", ground_drop_v, 0.0, SUPPLY_MAX_V, "V")
    return plain(np.asarray(saturation_v, dtype=float) + ground_drop_v)


def mean_level_v(high_v: Number, low_v: Number, duty: Number) -> Number:
    """Give the mean of a square wave, which a DC meter shows.

    Parameters
    ----------
    high_v, low_v : float or ndarray
        The two levels, V; the low one not above the high one.
    duty : float or ndarray
        Share of the time at the high level, 0 to 1.

    Returns
    -------
    float or ndarray
        Mean, V.

    Raises
    ------
    OutsideRange
        For a duty outside 0 to 1 or levels out of order.

    Notes
    -----
    V = V_hi·d + V_lo·(1 − d), for a meter that averages over many periods: below some 20 Hz a
    handheld one follows the edges instead.
    """
    within("duty", duty, 0.0, 1.0, "")
    within("high less low level", np.subtract(high_v, low_v), 0.0, float("inf"), "V")
    share = np.asarray(duty, dtype=float)
    return plain(high_v * share + low_v * (1.0 - share))


def mean_level_band(
    high_v: tuple[float, float, float],
    low_v: tuple[float, float, float],
    duty: tuple[float, float, float],
) -> tuple[float, float, float]:
    """Give the limits of a square wave's mean from those of its levels and duty.

    Parameters
    ----------
    high_v, low_v : tuple of float
        Low, nominal and high value of the high level and of the low level, V.
    duty : tuple of float
        Low, nominal and high value of the duty, 0 to 1.

    Returns
    -------
    tuple of float
        Low, nominal and high mean, V.

    Raises
    ------
    OutsideRange
        As :func:`mean_level_v`, at every corner.

    Notes
    -----
    The mean rises with both levels, and with duty while the high level is the higher: the
    limits lie at the corners.
    """
    corners = [mean_level_v(h, lo, d) for h in high_v[::2] for lo in low_v[::2] for d in duty[::2]]
    low, high = spread(*corners)
    return low, mean_level_v(high_v[1], low_v[1], duty[1]), high


def duty_from_mean(mean_v: Number, high_v: float, low_v: float) -> Number:
    """Give the duty of a square wave from its mean and its levels.

    Parameters
    ----------
    mean_v : float or ndarray
        Mean as a DC meter shows it, V; between the levels.
    high_v, low_v : float
        The two levels, V; the high one above the low one.

    Returns
    -------
    float or ndarray
        Share of the time at the high level, 0 to 1.

    Raises
    ------
    OutsideRange
        If the mean lies outside the levels, or the levels are one.
    """
    within("high less low level", high_v - low_v, 1e-9, float("inf"), "V")
    within("mean", mean_v, low_v, high_v, "V")
    return plain((np.asarray(mean_v, dtype=float) - low_v) / (high_v - low_v))


def revolution_duty(duty: Number, positions: int, missing: int, gap_high: bool = True) -> Number:
    """Give the duty over a whole revolution of a wheel with missing teeth.

    Parameters
    ----------
    duty : float or ndarray
        Share of one pitch at the high level where the teeth are, 0 to 1.
    positions, missing : int
        The wheel.
    gap_high : bool, optional
        Whether the output rests high over a missing tooth, as with a sensor that pulls its line
        low before a tooth.

    Returns
    -------
    float or ndarray
        Share of the revolution at the high level; what sets a DC meter's reading.

    Raises
    ------
    OutsideRange
        For a duty outside 0 to 1 or a wheel that cannot be.

    Notes
    -----
    d_rev = ((positions − missing)·d + missing·g)/positions, g being 1 or 0.
    """
    check_wheel(positions, missing)
    within("duty", duty, 0.0, 1.0, "")
    high_pitches = (positions - missing) * np.asarray(duty, dtype=float) + missing * gap_high
    return plain(high_pitches / positions)


def square_waveform(
    positions: int,
    missing: int,
    high_v: float,
    low_v: float,
    duty: float,
    samples: int,
    gap_high: bool = True,
) -> NDArray[np.float64]:
    """Give the square wave of a switching sensor over one revolution, for a figure.

    Parameters
    ----------
    positions, missing : int
        The wheel; its missing teeth are the last positions of the revolution.
    high_v, low_v : float
        The two levels, V.
    duty : float
        Share of one pitch at the high level where the teeth are, 0 to 1.
    samples : int
        Samples over the revolution; at least 16 a position.
    gap_high : bool, optional
        As for :func:`revolution_duty`.

    Returns
    -------
    ndarray, shape (samples,)
        Voltage, V.

    Raises
    ------
    OutsideRange
        For a wheel that cannot be, too few samples, a duty outside 0 to 1 or levels out of
        order.

    Notes
    -----
    Each pitch starts with its high part. Edges are ideal: a real one takes microseconds, which a
    figure of a revolution does not show.
    """
    within("duty", duty, 0.0, 1.0, "")
    within("high less low level", high_v - low_v, 0.0, float("inf"), "V")
    angle = sample_positions(positions, missing, samples)
    high = np.where(angle < positions - missing, np.mod(angle, 1.0) < duty, gap_high)
    return np.where(high, high_v, low_v)


def current_sensor_levels_v(
    shunt_ohm: Number, low_a: float = ACTIVE_LOW_A, high_a: float = ACTIVE_HIGH_A
) -> tuple[Number, Number]:
    """Give the two voltages of a two-level current sensor across a shunt.

    Parameters
    ----------
    shunt_ohm : float or ndarray
        Shunt in series with the sensor, ohm; above zero.
    low_a, high_a : float, optional
        The sensor's two currents, A; by default 7 mA and 14 mA.

    Returns
    -------
    tuple of (float or ndarray)
        Voltage at the low and at the high current, V.

    Raises
    ------
    OutsideRange
        For a shunt outside 0 to 1 kΩ, beyond which the sensor is starved of voltage, or
        currents out of order.

    Notes
    -----
    Ohm's law. The current is read on the live circuit; an ohmmeter on such a sensor
    proves nothing and can harm it.
    """
    within("shunt", shunt_ohm, 1e-3, 1000.0, "ohm")
    within("low current", low_a, 0.0, high_a, "A")
    shunt = np.asarray(shunt_ohm, dtype=float)
    return plain(shunt * low_a), plain(shunt * high_a)
