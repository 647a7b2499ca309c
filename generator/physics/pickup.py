"""Inductive (variable-reluctance) pickups: rate, amplitude, shape and load."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from generator.physics.domain import Number, plain, within
from generator.physics.wheels import (
    counted_frequency_hz,
    gap_pitches,
    sample_positions,
    tooth_frequency_hz,
)

__all__ = [
    "counted_frequency_hz",
    "gap_factor",
    "gap_pitches",
    "load_factor",
    "loaded_pickup_volts",
    "pickup_band",
    "pickup_volts",
    "pickup_waveform",
    "tooth_frequency_hz",
]

# How far above its reference speed a pickup is taken as proportional (practice): at five times
# 200 rpm on 60 positions, 0.5 H and 860 Ω into 10 kΩ, the inductance has cost 4 %.
SPEED_RATIO_MAX = 5.0

# Spread of the flux that one tooth sends through the pole, as a share of the pitch (practice):
# it gives a near-sine between teeth and the higher swing that pickups show at the gap's edges.
TOOTH_SPREAD_PITCHES = 0.3

# Air gaps over which the exponential law is used, m (practice: pickups run at 0.2 to 3 mm).
GAP_MIN_M, GAP_MAX_M = 0.0, 5e-3


def pickup_volts(ref_v: Number, ref_rpm: float, speed_rpm: Number) -> Number:
    """Give a pickup's voltage at a speed from its voltage at another.

    Parameters
    ----------
    ref_v : float or ndarray
        Voltage at `ref_rpm`, V; RMS, peak or peak to peak, and the result is of the same kind.
    ref_rpm : float
        Speed of the reference reading, revolutions a minute; above zero.
    speed_rpm : float or ndarray
        Speed wanted, 0 to 5 times `ref_rpm`.

    Returns
    -------
    float or ndarray
        Voltage, V.

    Raises
    ------
    OutsideRange
        For a speed beyond five times the reference, where coil and load roll the voltage off:
        :func:`loaded_pickup_volts` holds there.

    Notes
    -----
    Faraday: e = dΦ/dt, so e_pk = 2πf·NΦ₁ with f proportional to speed; V = V_ref·n/n_ref. Gap,
    wheel, load and meter are those of the reference reading.

    References
    ----------
    IEC 60050-121-11-28, Faraday law.
    """
    within("reference voltage", ref_v, 0.0, float("inf"), "V")
    within("reference speed", ref_rpm, 1e-3, float("inf"), "rpm")
    within("speed", speed_rpm, 0.0, SPEED_RATIO_MAX * ref_rpm, "rpm")
    return plain(ref_v * (np.asarray(speed_rpm, dtype=float) / ref_rpm))


def pickup_band(
    low_v: float,
    nominal_v: float,
    high_v: float,
    ref_rpm: float,
    speed_rpm: Number,
    speed_tolerance_rpm: float = 0.0,
) -> tuple[Number, Number, Number]:
    """Give the limits of a pickup's voltage at a speed from its limits at the reference speed.

    Parameters
    ----------
    low_v, nominal_v, high_v : float
        Limits and nominal voltage at `ref_rpm`, V, in rising order.
    ref_rpm : float
        Speed at which they are stated, revolutions a minute.
    speed_rpm : float or ndarray
        Speed wanted, revolutions a minute.
    speed_tolerance_rpm : float, optional
        How far the true speed may lie either way, revolutions a minute.

    Returns
    -------
    tuple of (float or ndarray)
        Low, nominal and high voltage, V.

    Raises
    ------
    OutsideRange
        As :func:`pickup_volts` over the whole of the speed's tolerance, or for limits out of
        order.

    Notes
    -----
    The voltage rises with the reference and with the speed, so the band is exact.
    """
    within("low limit", low_v, 0.0, nominal_v, "V")
    within("high limit", high_v, nominal_v, float("inf"), "V")
    within("speed tolerance", speed_tolerance_rpm, 0.0, float("inf"), "rpm")
    return (
        pickup_volts(low_v, ref_rpm, speed_rpm - speed_tolerance_rpm),
        pickup_volts(nominal_v, ref_rpm, speed_rpm),
        pickup_volts(high_v, ref_rpm, speed_rpm + speed_tolerance_rpm),
    )


def gap_factor(gap_m: Number, ref_gap_m: float, pitch_m: float) -> Number:
    """Give the share of its voltage that a pickup keeps when the air gap changes.

    Parameters
    ----------
    gap_m : float or ndarray
        Air gap, m.
    ref_gap_m : float
        Air gap of the reference reading, m.
    pitch_m : float
        Distance from tooth to tooth along the rim, m.

    Returns
    -------
    float or ndarray
        Factor on the voltage; 1 at the reference gap, above 1 below it.

    Raises
    ------
    OutsideRange
        For a gap outside 0 to 5 mm or a pitch outside 1 mm to 100 mm.

    Notes
    -----
    exp(−2π·(g − g_ref)/λ). A magnetic field that repeats every λ along a surface falls away from
    it as exp(−2πg/λ) (Laplace's equation); magnetic recording knows it as the spacing loss, 54.6 dB
    a wavelength. For a pickup it is an estimate: the pole's width, saturation and the
    harmonics of square teeth all bend it. Good for a direction and a size, never for a limit.

    References
    ----------
    R. L. Wallace, The reproduction of magnetically recorded signals, Bell System Technical
    Journal 30 (1951) 1145.
    """
    within("air gap", gap_m, GAP_MIN_M, GAP_MAX_M, "m")
    within("reference air gap", ref_gap_m, GAP_MIN_M, GAP_MAX_M, "m")
    within("tooth pitch", pitch_m, 1e-3, 0.1, "m")
    return plain(np.exp(-2.0 * np.pi * (np.asarray(gap_m, dtype=float) - ref_gap_m) / pitch_m))


def load_factor(frequency_hz: Number, coil_ohm: float, coil_h: float, load_ohm: float) -> Number:
    """Give the share of the induced voltage that reaches a resistive load.

    Parameters
    ----------
    frequency_hz : float or ndarray
        Frequency, Hz.
    coil_ohm : float
        Resistance of the coil, ohm.
    coil_h : float
        Inductance of the coil, H.
    load_ohm : float
        Input resistance of the control unit and the meter in parallel, ohm; infinity for none.

    Returns
    -------
    float or ndarray
        Factor, 0 to 1.

    Raises
    ------
    OutsideRange
        For a negative frequency, resistance or inductance, or a load of nothing.

    Notes
    -----
    |R_load/(R_coil + R_load + jωL)|, a linear coil; cable capacitance is left out, which holds
    below about a tenth of the coil's resonance. As ωL outgrows the resistances the factor falls
    as fast as the induced voltage rises, and the output levels off.
    """
    within("frequency", frequency_hz, 0.0, float("inf"), "Hz")
    within("coil resistance", coil_ohm, 0.0, float("inf"), "ohm")
    within("coil inductance", coil_h, 0.0, float("inf"), "H")
    within("load resistance", load_ohm, 1e-3, float("inf"), "ohm")
    frequency = np.asarray(frequency_hz, dtype=float)
    # Divided through by the load, so that an infinite load gives exactly one.
    resistive = 1.0 + coil_ohm / load_ohm
    reactive = 2.0 * np.pi * frequency * coil_h / load_ohm
    return plain(1.0 / np.hypot(resistive, reactive))


def loaded_pickup_volts(
    ref_v: Number,
    ref_rpm: float,
    speed_rpm: Number,
    positions: int,
    coil_ohm: float,
    coil_h: float,
    load_ohm: float,
) -> Number:
    """Give a loaded pickup's voltage at any speed from its loaded voltage at another.

    Parameters
    ----------
    ref_v : float or ndarray
        Voltage across the load at `ref_rpm`, V.
    ref_rpm : float
        Speed of that reading, revolutions a minute; above zero.
    speed_rpm : float or ndarray
        Speed wanted, revolutions a minute.
    positions : int
        Tooth positions of the wheel.
    coil_ohm, coil_h, load_ohm : float
        As for :func:`load_factor`.

    Returns
    -------
    float or ndarray
        Voltage across the load, V.

    Raises
    ------
    OutsideRange
        As :func:`load_factor` and :func:`tooth_frequency_hz`.

    Notes
    -----
    V = V_ref·(n/n_ref)·k(f)/k(f_ref), k from :func:`load_factor`; the fundamental alone.
    """
    within("reference voltage", ref_v, 0.0, float("inf"), "V")
    within("reference speed", ref_rpm, 1e-3, float("inf"), "rpm")
    coil = (coil_ohm, coil_h, load_ohm)
    now = load_factor(tooth_frequency_hz(speed_rpm, positions), *coil)
    then = load_factor(tooth_frequency_hz(ref_rpm, positions), *coil)
    return plain(ref_v * (np.asarray(speed_rpm, dtype=float) / ref_rpm) * (now / then))


def _flux_slope(offset_pitches: NDArray[np.float64]) -> NDArray[np.float64]:
    """Slope of one tooth's bell-shaped flux, at distances from its middle in pitches."""
    scaled = offset_pitches / TOOTH_SPREAD_PITCHES
    return -scaled * np.exp(-0.5 * scaled**2)


def pickup_waveform(positions: int, missing: int, samples: int) -> NDArray[np.float64]:
    """Give the shape of a pickup's voltage over one revolution, for a figure.

    Parameters
    ----------
    positions : int
        Tooth positions of the full wheel; at least 2.
    missing : int
        Neighbouring positions without a tooth, at the end of the revolution.
    samples : int
        Samples over the revolution; at least 16 a position.

    Returns
    -------
    ndarray, shape (samples,)
        Voltage over the peak voltage of an undisturbed tooth: ±1 away from the gap.

    Raises
    ------
    OutsideRange
        For a wheel that cannot be or too few samples.

    Notes
    -----
    Each tooth sends a bell-shaped flux through the pole (Gaussian, standard deviation 0.3
    pitch); the voltage is the slope of their sum. Between teeth that is a sine within 1 %;
    beside the gap one swing stands above the rest, because no neighbour holds the flux up, and
    across it the voltage stays near nought. The shape is typical, not that of a certain sensor,
    and which half wave leads depends on how the two wires are connected.
    """
    within("tooth positions", positions, 2, float("inf"), "positions")
    angle = sample_positions(positions, missing, samples)
    # Four pitches away a tooth adds less than 1e-30. Neighbours are counted by position round
    # the wheel, so that one of two positions wraps rightly.
    reach = np.arange(-4, 5)
    tooth = np.floor(angle)[:, None] + reach
    offset = angle[:, None] - (tooth + 0.5)
    present = np.mod(tooth, positions) < positions - missing
    slope = np.sum(np.where(present, _flux_slope(offset), 0.0), axis=1)
    fine = np.linspace(0.0, 1.0, 2001)
    undisturbed = _flux_slope(fine[:, None] - (reach + 0.5)).sum(axis=1)
    return np.asarray(slope / np.max(np.abs(undisturbed)), dtype=np.float64)
