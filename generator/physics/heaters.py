"""Self-regulating heaters and glow plugs: cold resistance, first and settled current."""

from __future__ import annotations

import numpy as np

from generator.physics.domain import Number, plain, within

# Supply of a 12 V or 24 V vehicle, V (ISO 16750-2 jump start of a 24 V system, from memory: 36 V).
HEATER_SUPPLY_MAX_V = 36.0
# First over settled current: PTC heaters and glow plugs about 1.5 to 5 (practice; a printed sheet
# of a PTC heater gives 2.3). Beyond 20 it is another kind of part.
CURRENT_RATIO_MAX = 20.0


def initial_current_a(supply_v: Number, cold_ohm: Number) -> Number:
    """Give the current of a heater at the moment it is switched on.

    Parameters
    ----------
    supply_v : float or ndarray
        Voltage at the heater's terminals, V.
    cold_ohm : float or ndarray
        Resistance of the cold heater, ohm; above zero.

    Returns
    -------
    float or ndarray
        Current, A.

    Raises
    ------
    OutsideRange
        For a supply outside 0 to 36 V or a resistance not above zero.

    Notes
    -----
    Ohm's law. It lasts a fraction of a second to some seconds: a meter that samples three times
    a second may miss it.
    """
    within("supply", supply_v, 0.0, HEATER_SUPPLY_MAX_V, "V")
    within("cold resistance", cold_ohm, 1e-6, float("inf"), "ohm")
    return plain(np.asarray(supply_v, dtype=float) / cold_ohm)


def settled_current_a(initial_a: Number, ratio: Number) -> Number:
    """Give the current of a heater once it regulates itself.

    Parameters
    ----------
    initial_a : float or ndarray
        Current at switching on, A.
    ratio : float or ndarray
        First over settled current, dimensionless, 1 to 20; the part's own figure.

    Returns
    -------
    float or ndarray
        Current, A.

    Raises
    ------
    OutsideRange
        For a current or a ratio that cannot be.

    Notes
    -----
    I = I0/k at one supply and one cooling. The cold resistance limit says nothing about the hot
    part: a heater within it may still not settle, and only the falling current shows that.
    """
    within("initial current", initial_a, 0.0, float("inf"), "A")
    within("current ratio", ratio, 1.0, CURRENT_RATIO_MAX, "")
    return plain(np.asarray(initial_a, dtype=float) / ratio)


def settled_ohm(cold_ohm: Number, ratio: Number) -> Number:
    """Give the resistance of a heater once it regulates itself.

    Parameters
    ----------
    cold_ohm : float or ndarray
        Resistance of the cold heater, ohm; above zero.
    ratio : float or ndarray
        First over settled current at one supply, dimensionless, 1 to 20.

    Returns
    -------
    float or ndarray
        Resistance, ohm.

    Raises
    ------
    OutsideRange
        For a resistance or a ratio that cannot be.

    Notes
    -----
    R = k·R_cold, Ohm's law at one supply. An ohmmeter cannot find it: the part cools too fast.
    """
    within("cold resistance", cold_ohm, 1e-6, float("inf"), "ohm")
    within("current ratio", ratio, 1.0, CURRENT_RATIO_MAX, "")
    return plain(np.asarray(cold_ohm, dtype=float) * ratio)


def heater_current_band(
    supply_v: tuple[float, float, float],
    cold_ohm: tuple[float, float, float],
    ratio: tuple[float, float, float] = (1.0, 1.0, 1.0),
) -> tuple[float, float, float]:
    """Give the limits of a heater's current.

    Parameters
    ----------
    supply_v, cold_ohm : tuple of float
        Low, nominal and high supply in V and cold resistance in ohm.
    ratio : tuple of float, optional
        Low, nominal and high ratio of first to settled current; ones for the first current.

    Returns
    -------
    tuple of float
        Low, nominal and high current, A.

    Raises
    ------
    OutsideRange
        As :func:`initial_current_a` and :func:`settled_current_a`.

    Notes
    -----
    The current rises with the supply and falls with resistance and ratio: exact if the three are
    independent; a real PTC part draws less than in proportion from a higher supply once hot.
    """
    corners = ((0, 2), (1, 1), (2, 0))
    low, nominal, high = (
        settled_current_a(initial_current_a(supply_v[up], cold_ohm[down]), ratio[down])
        for up, down in corners
    )
    return low, nominal, high
