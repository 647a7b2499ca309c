"""Dividers, and what meter and leads do to a reading."""

from __future__ import annotations

import numpy as np

from generator.physics.domain import Number, plain, within

# Highest voltage these low-voltage circuits are asked about, V: above it other rules apply
# (60 V DC is the limit of voltage class A in ISO 6469-3, from memory).
LOW_VOLTAGE_MAX_V = 60.0
# Input resistance of a common digital multimeter on its voltage ranges, ohm (practice).
METER_OHM = 10e6
_INFINITE = float("inf")


def divider_v(
    supply_v: Number, upper_ohm: Number, lower_ohm: Number, load_ohm: Number = _INFINITE
) -> Number:
    """Give the voltage across the lower arm of a divider.

    Parameters
    ----------
    supply_v : float or ndarray
        Voltage across both arms, V.
    upper_ohm : float or ndarray
        Upper arm, ohm: the pull-up in the control unit of a sensor circuit; above zero.
    lower_ohm : float or ndarray
        Lower arm, ohm: the sensor; 0 for a short circuit, infinity for an open one.
    load_ohm : float or ndarray, optional
        What else hangs on the tap: a meter; ohm, above zero.

    Returns
    -------
    float or ndarray
        Voltage, V.

    Raises
    ------
    OutsideRange
        For a voltage outside 0 to 60 V or a resistance that is negative (the upper arm and the
        load: or zero).

    Notes
    -----
    V = V_s·G_u/(G_u + G_l + G_load), Millman's theorem in conductances, which an open lower arm
    leaves finite.
    """
    within("supply", supply_v, 0.0, LOW_VOLTAGE_MAX_V, "V")
    within("upper arm", upper_ohm, 1e-6, _INFINITE, "ohm")
    within("lower arm", lower_ohm, 0.0, _INFINITE, "ohm")
    within("load", load_ohm, 1e-6, _INFINITE, "ohm")
    upper = np.asarray(upper_ohm, dtype=float)
    with np.errstate(divide="ignore"):
        below = upper / np.asarray(lower_ohm, dtype=float) + upper / np.asarray(
            load_ohm, dtype=float
        )
    return plain(supply_v / (1.0 + below))


def divider_lower_ohm(out_v: Number, supply_v: float, upper_ohm: float) -> Number:
    """Give the lower arm of a divider from its voltage.

    Parameters
    ----------
    out_v : float or ndarray
        Voltage across the lower arm, V; from 0 to below the supply.
    supply_v : float
        Voltage across both arms, V.
    upper_ohm : float
        Upper arm, ohm.

    Returns
    -------
    float or ndarray
        Lower arm, ohm.

    Raises
    ------
    OutsideRange
        If the voltage is not below the supply: that is an open circuit, not a resistance.
    """
    within("supply", supply_v, 1e-6, LOW_VOLTAGE_MAX_V, "V")
    within("upper arm", upper_ohm, 1e-6, _INFINITE, "ohm")
    within("voltage", out_v, 0.0, float(np.nextafter(supply_v, 0.0)), "V")
    volts = np.asarray(out_v, dtype=float)
    return plain(upper_ohm * volts / (supply_v - volts))


def divider_band(
    supply_v: tuple[float, float, float],
    upper_ohm: tuple[float, float, float],
    lower_ohm: tuple[Number, Number, Number],
    load_ohm: float = _INFINITE,
) -> tuple[Number, Number, Number]:
    """Give the limits of a divider's voltage from those of its parts.

    Parameters
    ----------
    supply_v, upper_ohm : tuple of float
        Low, nominal and high supply in V and upper arm in ohm.
    lower_ohm : tuple of (float or ndarray)
        Low, nominal and high lower arm, ohm: a sensor's band.
    load_ohm : float, optional
        As for :func:`divider_v`.

    Returns
    -------
    tuple of (float or ndarray)
        Low, nominal and high voltage, V.

    Raises
    ------
    OutsideRange
        As :func:`divider_v`.

    Notes
    -----
    The voltage rises with the supply and the lower arm and falls with the upper: exact.
    """
    return (
        divider_v(supply_v[0], upper_ohm[2], lower_ohm[0], load_ohm),
        divider_v(supply_v[1], upper_ohm[1], lower_ohm[1], load_ohm),
        divider_v(supply_v[2], upper_ohm[0], lower_ohm[2], load_ohm),
    )


def metered_v(open_v: Number, source_ohm: Number, meter_ohm: float = METER_OHM) -> Number:
    """Give what a voltmeter shows of a source that has a resistance.

    Parameters
    ----------
    open_v : float or ndarray
        Voltage with nothing connected, V.
    source_ohm : float or ndarray
        Resistance of the source seen from the meter (Thévenin), ohm.
    meter_ohm : float, optional
        Input resistance of the meter, ohm; above zero.

    Returns
    -------
    float or ndarray
        Reading, V.

    Raises
    ------
    OutsideRange
        For a voltage beyond ±60 V or a resistance that cannot be.

    Notes
    -----
    V = V_open·R_m/(R_m + R_s). A 10 MΩ meter shows nearly full voltage through a corroded
    joint that can feed no lamp: test such a circuit under load.
    """
    within("voltage", open_v, -LOW_VOLTAGE_MAX_V, LOW_VOLTAGE_MAX_V, "V")
    within("source resistance", source_ohm, 0.0, _INFINITE, "ohm")
    within("meter resistance", meter_ohm, 1e-6, _INFINITE, "ohm")
    return plain(open_v / (1.0 + np.asarray(source_ohm, dtype=float) / meter_ohm))


def lead_corrected_ohm(reading_ohm: Number, leads_ohm: float) -> Number:
    """Take the resistance of the test leads off an ohmmeter's reading.

    Parameters
    ----------
    reading_ohm : float or ndarray
        Reading on the part, ohm.
    leads_ohm : float
        Reading with the probe tips held together, ohm.

    Returns
    -------
    float or ndarray
        Resistance of the part, ohm.

    Raises
    ------
    OutsideRange
        If the reading is below that of the leads alone: contact was better then than now, and
        the difference says nothing.

    Notes
    -----
    Two-wire measurement: leads and part in series. Leads are some 0.1 Ω to 0.3 Ω (practice), as
    much as an ignition primary or a cable.
    """
    within("lead resistance", leads_ohm, 0.0, _INFINITE, "ohm")
    within("reading", reading_ohm, leads_ohm, _INFINITE, "ohm")
    return plain(np.asarray(reading_ohm, dtype=float) - leads_ohm)


def lead_drop_v(current_a: Number, lead_ohm: Number) -> Number:
    """Give the voltage that a lead takes from what it feeds.

    Parameters
    ----------
    current_a : float or ndarray
        Current, A.
    lead_ohm : float or ndarray
        Resistance of the lead, there and back if both count, ohm.

    Returns
    -------
    float or ndarray
        Voltage, V.

    Raises
    ------
    OutsideRange
        For a negative resistance.

    Notes
    -----
    Ohm's law; without current there is no drop to find, so the current is always stated.
    """
    within("lead resistance", lead_ohm, 0.0, _INFINITE, "ohm")
    return plain(np.asarray(current_a, dtype=float) * lead_ohm)
