"""The voltage that charges a 12 V lead-acid battery, against its temperature."""

from __future__ import annotations

import numpy as np

from generator.physics.battery import CELLS
from generator.physics.domain import Number, plain, within

_INFINITE = float("inf")
# Lead-acid charging: −3 mV per kelvin and cell about 25 °C (published recommendation of battery
# makers).
CHARGE_V_PER_K = -3.0e-3
CHARGE_REF_C = 25.0


def charging_voltage_v(
    set_v: Number, temp_c: Number, v_per_k_cell: float = CHARGE_V_PER_K
) -> Number:
    """Give the charging voltage that suits a battery's temperature.

    Parameters
    ----------
    set_v : float or ndarray
        Voltage at 25 °C, 12 to 16 V.
    temp_c : float or ndarray
        Temperature of the battery, −30 to 60 °C.
    v_per_k_cell : float, optional
        Change per kelvin and cell, V; −3 mV as published, some regulators use −2 to −5 mV.

    Returns
    -------
    float or ndarray
        Voltage, V.

    Raises
    ------
    OutsideRange
        For a voltage, temperature or coefficient beyond those.

    Notes
    -----
    U = U25 + 6·c·(t − 25). A charging system run by a control unit moves its voltage with load,
    braking and charge, and may sit well outside 13.5 to 14.8 V without fault.
    """
    within("voltage at 25 °C", set_v, 12.0, 16.0, "V")
    within("battery temperature", temp_c, -30.0, 60.0, "°C")
    within("coefficient", v_per_k_cell, -6e-3, 0.0, "V/K")
    return plain(set_v + CELLS * v_per_k_cell * (np.asarray(temp_c, dtype=float) - CHARGE_REF_C))


def charging_band_v(
    low_v: float, nominal_v: float, high_v: float, temp_c: Number
) -> tuple[Number, Number, Number]:
    """Give the limits of a charging voltage at a battery's temperature.

    Parameters
    ----------
    low_v, nominal_v, high_v : float
        Limits at 25 °C, V, in rising order.
    temp_c : float or ndarray
        Temperature of the battery, °C.

    Returns
    -------
    tuple of (float or ndarray)
        Low, nominal and high voltage, V.

    Raises
    ------
    OutsideRange
        As :func:`charging_voltage_v`, or if the limits are not in order.
    """
    within("low limit", low_v, 0.0, nominal_v, "V")
    within("high limit", high_v, nominal_v, _INFINITE, "V")
    low, nominal, high = (charging_voltage_v(v, temp_c) for v in (low_v, nominal_v, high_v))
    return low, nominal, high
