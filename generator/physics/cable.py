"""Resistance of copper cables: American gauges, cross-sections and flexible cable limits."""

from __future__ import annotations

import numpy as np

from generator.physics.domain import Number, plain, within
from generator.physics.windings import winding_ohm

# IEC 60028: annealed copper, 1/58 ohm·mm²/m at 20 °C, in ohm·m.
COPPER_OHM_M = 1.7241e-8
# Gauges that ASTM B258 tabulates; 0000 is −3.
AWG_MIN, AWG_MAX = -3.0, 40.0
# Length added by twisting the strands of a cable: 2 % (ASTM B8 for concentric lay, from memory).
LAY_FACTOR_STRANDED = 1.02

# IEC 60228, table 3, flexible conductors of class 5, plain annealed copper: cross-section in mm²
# to greatest resistance at 20 °C in ohm/km. 0.5, 0.75, 1, 2.5, 6, 16, 25 and 35 mm² from a
# published page, the rest from memory.
CLASS_5_PLAIN_OHM_PER_KM = {
    0.5: 39.0, 0.75: 26.0, 1.0: 19.5, 1.5: 13.3, 2.5: 7.98, 4.0: 4.95, 6.0: 3.30, 10.0: 1.91,
    16.0: 1.21, 25.0: 0.780, 35.0: 0.554, 50.0: 0.386, 70.0: 0.272, 95.0: 0.206, 120.0: 0.161,
}  # fmt: skip
# The same table, tin-coated strands (from memory; held to a printed drop table by a test).
CLASS_5_TINNED_OHM_PER_KM = {
    0.5: 40.1, 0.75: 26.7, 1.0: 20.0, 1.5: 13.7, 2.5: 8.21, 4.0: 5.09, 6.0: 3.39, 10.0: 1.95,
    16.0: 1.24, 25.0: 0.795, 35.0: 0.565, 50.0: 0.393, 70.0: 0.277, 95.0: 0.210, 120.0: 0.164,
}  # fmt: skip


def awg_diameter_m(gauge: Number) -> Number:
    """Give the diameter of a solid wire of an American gauge.

    Parameters
    ----------
    gauge : float or ndarray
        Gauge number; 00 is −1, 000 is −2, 0000 is −3.

    Returns
    -------
    float or ndarray
        Diameter, m.

    Raises
    ------
    OutsideRange
        For a gauge outside −3 to 40.

    Notes
    -----
    d = 0.127 mm·92^((36 − n)/39), exact by definition.

    References
    ----------
    ASTM B258, Standard nominal diameters and cross-sectional areas of AWG sizes.
    """
    within("gauge", gauge, AWG_MIN, AWG_MAX, "AWG")
    return plain(0.127e-3 * 92.0 ** ((36.0 - np.asarray(gauge, dtype=float)) / 39.0))


def awg_ohm_per_m(gauge: Number, temp_c: Number = 20.0, lay_factor: float = 1.0) -> Number:
    """Give the nominal resistance of a copper wire of an American gauge.

    Parameters
    ----------
    gauge : float or ndarray
        As for :func:`awg_diameter_m`.
    temp_c : float or ndarray, optional
        Temperature of the copper, °C.
    lay_factor : float, optional
        Strand length over cable length: 1 for a solid wire, about 1.02 for a stranded one.

    Returns
    -------
    float or ndarray
        Resistance, ohm per metre of one conductor.

    Raises
    ------
    OutsideRange
        For a gauge, a temperature (−50 to 200 °C) or a lay factor (1 to 1.1) that cannot be.

    Notes
    -----
    R/l = ρ/(π·d²/4), ρ of IEC 60028; nominal, not a limit.
    """
    area_m2 = np.pi / 4.0 * np.asarray(awg_diameter_m(gauge)) ** 2
    return area_ohm_per_m(plain(area_m2 * 1e6), temp_c, lay_factor)


def area_ohm_per_m(area_mm2: Number, temp_c: Number = 20.0, lay_factor: float = 1.0) -> Number:
    """Give the resistance of a copper conductor of a true metal cross-section.

    Parameters
    ----------
    area_mm2 : float or ndarray
        Cross-section of the metal, mm², above zero.
    temp_c : float or ndarray, optional
        Temperature of the copper, °C.
    lay_factor : float, optional
        As for :func:`awg_ohm_per_m`.

    Returns
    -------
    float or ndarray
        Resistance, ohm per metre of one conductor.

    Raises
    ------
    OutsideRange
        As :func:`awg_ohm_per_m`.

    Notes
    -----
    A cable sold by its nominal cross-section is held to a resistance, not to an area: use
    :func:`class_5_ohm_per_m` for its limit, which lies 12 to 16 % above ρ/A.
    """
    within("cross-section", area_mm2, 1e-4, 1e4, "mm²")
    within("lay factor", lay_factor, 1.0, 1.1, "")
    per_m = COPPER_OHM_M * lay_factor / (np.asarray(area_mm2, dtype=float) * 1e-6)
    return winding_ohm(per_m, temp_c)


def class_5_ohm_per_m(nominal_mm2: float, temp_c: Number = 20.0, tinned: bool = False) -> Number:
    """Give the greatest resistance that a flexible cable of a nominal size may have.

    Parameters
    ----------
    nominal_mm2 : float
        Nominal cross-section, mm²; a size of the table.
    temp_c : float or ndarray, optional
        Temperature of the copper, °C.
    tinned : bool, optional
        Whether the strands are tin-coated.

    Returns
    -------
    float or ndarray
        Resistance, ohm per metre of one conductor.

    Raises
    ------
    OutsideRange
        For a temperature outside −50 to 200 °C.
    ValueError
        For a size that is not in the table.

    Notes
    -----
    Corrected as copper, 1 + 0.00393·(t − 20). The factor table printed with IEC 60228 rounds
    this to (230 + t)/250, which is 0.3 % higher at 80 °C; the copper form is used here.
    Road-vehicle cable (ISO 19642) has tables of its own, with limits some 5 % lower.

    References
    ----------
    IEC 60228, Conductors of insulated cables, table 3.
    """
    table = CLASS_5_TINNED_OHM_PER_KM if tinned else CLASS_5_PLAIN_OHM_PER_KM
    if nominal_mm2 not in table:
        sizes = ", ".join(f"{size:g}" for size in table)
        raise ValueError(f"no class 5 cable of {nominal_mm2:g} mm²; sizes are {sizes}")
    return winding_ohm(table[nominal_mm2] / 1000.0, temp_c)
