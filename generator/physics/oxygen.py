"""The zirconia oxygen cell: its voltage, and how little it says near stoichiometry."""

from __future__ import annotations

import numpy as np

from generator.physics.domain import Number, plain, within
from generator.physics.stoichiometry import (
    AIR_OXYGEN,
    GAS_J_MOL_K,
    ICE_POINT_K,
    PETROL,
    Fuel,
    burnt_oxygen_fraction,
)

# CODATA 2018, exact to the digits given: Faraday constant, C/mol.
FARADAY_C_MOL = 96_485.33212
# Where a zirconia cell conducts well and is used, °C (practice: 350 °C to work at all).
CELL_MIN_C, CELL_MAX_C = 300.0, 1000.0
# Voltage at which control units take the mixture as crossing over, V (practice). It is a
# threshold between rich and lean, not the voltage at λ = 1, which is about 0.34 V at 600 °C.
SWITCH_THRESHOLD_V = 0.45
# Within this distance of λ = 1 the cell swings by hundreds of millivolts, and mixing, sensor
# dynamics and dissociation decide where: no single value is given there.
NO_VALUE_WITHIN = 0.005


def cell_voltage_v(
    oxygen_fraction: Number, cell_c: Number, reference_fraction: float = AIR_OXYGEN
) -> Number:
    """Give the voltage of a zirconia cell between a gas and reference air.

    Parameters
    ----------
    oxygen_fraction : float or ndarray
        Mole fraction of free oxygen at the measuring electrode, above 0, up to 1.
    cell_c : float or ndarray
        Temperature of the cell, 300 to 1000 °C.
    reference_fraction : float, optional
        Mole fraction of oxygen in the reference, at the same total pressure.

    Returns
    -------
    float or ndarray
        Voltage, V; positive where the gas holds less oxygen than the reference.

    Raises
    ------
    OutsideRange
        For a fraction or a temperature beyond those.

    Notes
    -----
    E = (R·T/4F)·ln(p_ref/p) (Nernst). Only for the open circuit: a cold cell has megohms inside
    and a meter pulls it down.

    References
    ----------
    W. C. Maskell, Inorganic solid state chemically sensitive devices, J. Phys. E 20 (1987) 1156
    (from memory).
    """
    within("oxygen fraction", oxygen_fraction, 1e-40, 1.0, "")
    within("reference oxygen fraction", reference_fraction, 1e-3, 1.0, "")
    within("cell temperature", cell_c, CELL_MIN_C, CELL_MAX_C, "°C")
    kelvin = np.asarray(cell_c, dtype=float) + ICE_POINT_K
    ratio = reference_fraction / np.asarray(oxygen_fraction, dtype=float)
    return plain(GAS_J_MOL_K * kelvin / (4.0 * FARADAY_C_MOL) * np.log(ratio))


def oxygen_fraction(
    cell_v: Number, cell_c: Number, reference_fraction: float = AIR_OXYGEN
) -> Number:
    """Give the free oxygen that a cell's voltage speaks for.

    Parameters
    ----------
    cell_v : float or ndarray
        Open-circuit voltage, V, −0.1 to 1.3.
    cell_c : float or ndarray
        Temperature of the cell, 300 to 1000 °C.
    reference_fraction : float, optional
        As for :func:`cell_voltage_v`.

    Returns
    -------
    float or ndarray
        Mole fraction of oxygen.

    Raises
    ------
    OutsideRange
        For a voltage or a temperature beyond those.

    Notes
    -----
    p = p_ref·exp(−4F·E/(R·T)). An error of 10 °C is about 1 % of E; near rich voltages that is a
    factor of 1.6 in p.
    """
    within("cell voltage", cell_v, -0.1, 1.3, "V")
    within("reference oxygen fraction", reference_fraction, 1e-3, 1.0, "")
    within("cell temperature", cell_c, CELL_MIN_C, CELL_MAX_C, "°C")
    kelvin = np.asarray(cell_c, dtype=float) + ICE_POINT_K
    exponent = -4.0 * FARADAY_C_MOL * np.asarray(cell_v, dtype=float) / (GAS_J_MOL_K * kelvin)
    return plain(reference_fraction * np.exp(exponent))


def _equilibrium_v(air_ratio: float, cell_c: float, fuel: Fuel) -> float:
    return float(cell_voltage_v(burnt_oxygen_fraction(air_ratio, cell_c, fuel), cell_c))


def exhaust_cell_v(air_ratio: float, cell_c: float, fuel: Fuel = PETROL) -> float:
    """Give the voltage of a switching oxygen sensor in exhaust clearly rich or clearly lean.

    Parameters
    ----------
    air_ratio : float
        λ, 0.9 to 3 and at least 0.005 from 1.
    cell_c : float
        Temperature of the cell, 500 to 900 °C.
    fuel : Fuel, optional
        Composition of the fuel.

    Returns
    -------
    float
        Voltage, V.

    Raises
    ------
    OutsideRange
        Beyond those; and within 0.005 of λ = 1, where no single value can honestly be given: ask
        :func:`exhaust_cell_band_v` there.

    Notes
    -----
    Nernst's equation on gas at equilibrium. Lean, the value is good to some millivolts; rich, a
    used sensor may read 50 to 100 mV less (practice), because its electrode does not bring the
    gas fully to equilibrium.
    """
    # 1.005 less 1 is a hair below 0.005 in binary.
    distance = abs(air_ratio - 1.0) + 1e-12
    within("distance of the air ratio from 1", distance, NO_VALUE_WITHIN, 2.1, "")
    return _equilibrium_v(air_ratio, cell_c, fuel)


def exhaust_cell_band_v(
    air_ratio: tuple[float, float], cell_c: tuple[float, float], fuel: Fuel = PETROL
) -> tuple[float, float]:
    """Give the limits of a switching sensor's voltage over a range of mixtures.

    Parameters
    ----------
    air_ratio : tuple of float
        Least and greatest λ, 0.9 to 3. An end within 0.005 of 1 is moved out to that distance,
        so the band takes in the whole of the jump.
    cell_c : tuple of float
        Least and greatest temperature of the cell, 500 to 900 °C.
    fuel : Fuel, optional
        Composition of the fuel.

    Returns
    -------
    tuple of float
        Low and high voltage, V. There is no nominal value: over the jump it would mean nothing.

    Raises
    ------
    OutsideRange
        For ends out of order or beyond those.

    Notes
    -----
    The voltage falls with λ. With temperature it rises on the lean side and falls on the rich
    one, so each limit is sought at both temperatures: exact.
    """
    lean, rich = max(air_ratio), min(air_ratio)
    within("high end less low end", air_ratio[1] - air_ratio[0], 0.0, 2.1, "")
    within("high end less low end", cell_c[1] - cell_c[0], 0.0, 400.0, "°C")
    if abs(lean - 1.0) < NO_VALUE_WITHIN:
        lean = 1.0 + NO_VALUE_WITHIN
    if abs(rich - 1.0) < NO_VALUE_WITHIN:
        rich = 1.0 - NO_VALUE_WITHIN
    low = min(_equilibrium_v(lean, end_c, fuel) for end_c in cell_c)
    high = max(_equilibrium_v(rich, end_c, fuel) for end_c in cell_c)
    return low, high
