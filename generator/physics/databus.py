"""The two-wire high-speed data bus: its terminations and its levels."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

import numpy as np

from generator.physics.domain import Number, plain, within

_INFINITE = float("inf")

State = Literal["recessive", "undefined", "dominant"]

# ISO 11898-2: termination at each end of the pair, least, nominal and greatest, ohm (nominal on
# published pages, limits from memory).
TERMINATION_OHM = (100.0, 120.0, 130.0)
# ISO 11898-2: a receiver takes a difference of at most 0.5 V as recessive, of at least 0.9 V as
# dominant (published transceiver sheets).
RECESSIVE_MAX_V, DOMINANT_MIN_V = 0.5, 0.9


@dataclass(frozen=True)
class PairLevels:
    """Voltages of both wires to ground in one state.

    Attributes
    ----------
    high_v, low_v : tuple of float
        Least, nominal and greatest voltage of the CAN-H and of the CAN-L wire, V.
    """

    high_v: tuple[float, float, float]
    low_v: tuple[float, float, float]


# ISO 11898-2, output of a 5 V transceiver into 60 ohm: nominal values from published pages,
# limits from memory. A 3.3 V transceiver rests lower, at about 2.3 V, within the same limits.
RECESSIVE = PairLevels((2.0, 2.5, 3.0), (2.0, 2.5, 3.0))
DOMINANT = PairLevels((2.75, 3.5, 4.5), (0.5, 1.5, 2.25))


def parallel_ohm(*ohms: Number) -> Number:
    """Give the resistance of resistors side by side.

    Parameters
    ----------
    *ohms : float or ndarray
        Each, ohm; 0 for a short circuit, infinity for an open one. At least one.

    Returns
    -------
    float or ndarray
        Resistance, ohm.

    Raises
    ------
    OutsideRange
        For none, or a negative resistance.

    Notes
    -----
    1/R = Σ 1/R_i.
    """
    within("resistors", len(ohms), 1, _INFINITE, "resistors")
    total = np.zeros(())
    for ohm in ohms:
        within("resistance", ohm, 0.0, _INFINITE, "ohm")
        with np.errstate(divide="ignore"):
            total = total + 1.0 / np.asarray(ohm, dtype=float)
    with np.errstate(divide="ignore"):
        return plain(1.0 / total)


def pair_resistance_band_ohm(
    terminations: int,
    each_ohm: tuple[float, float, float] = TERMINATION_OHM,
    others_ohm: float = _INFINITE,
) -> tuple[float, float, float]:
    """Give the resistance between the wires of a bus that is asleep.

    Parameters
    ----------
    terminations : int
        How many terminations are connected, 0 or more; a sound bus has two.
    each_ohm : tuple of float, optional
        Least, nominal and greatest resistance of one, ohm.
    others_ohm : float, optional
        All other units' input resistances in parallel, ohm: each is some tens of kilohm.

    Returns
    -------
    tuple of float
        Low, nominal and high resistance, ohm.

    Raises
    ------
    OutsideRange
        For a negative number or resistance.

    Notes
    -----
    Rising in every resistance: exact. To be read with the battery disconnected or the bus asleep:
    a live bus puts a voltage across the meter and the reading is worthless.
    """
    within("terminations", terminations, 0, 100, "terminations")
    low, nominal, high = (
        float(parallel_ohm(others_ohm, *([ohm] * terminations))) for ohm in each_ohm
    )
    return low, nominal, high


def terminations_found(
    pair_ohm: float, each_ohm: tuple[float, float, float] = TERMINATION_OHM
) -> int | None:
    """Say how many terminations a resistance between the wires speaks for.

    Parameters
    ----------
    pair_ohm : float
        Resistance between CAN-H and CAN-L with the bus asleep, ohm, not negative.
    each_ohm : tuple of float, optional
        Least, nominal and greatest resistance of one termination, ohm.

    Returns
    -------
    int or None
        1 to 4 if the reading fits that number, 0 if it is far above one termination, None if it
        fits none: a short circuit, a poor contact, or a unit that loads the pair.

    Raises
    ------
    OutsideRange
        For a negative reading.

    Notes
    -----
    Some buses end in other values or one unit holds both ends: the vehicle's own data win.
    """
    within("resistance", pair_ohm, 0.0, _INFINITE, "ohm")
    for count in range(1, 5):
        low, _, high = pair_resistance_band_ohm(count, each_ohm)
        if low <= pair_ohm <= high:
            return count
    # Ten times one termination: the units' own inputs alone, some kilohm.
    return 0 if pair_ohm >= 10.0 * each_ohm[1] else None


def pair_state(high_v: float, low_v: float) -> State:
    """Say what a receiver makes of the two voltages.

    Parameters
    ----------
    high_v, low_v : float
        Voltage of CAN-H and CAN-L to ground at one instant, V, −27 to 40 V.

    Returns
    -------
    {"recessive", "undefined", "dominant"}
        "undefined" between the two thresholds.

    Raises
    ------
    OutsideRange
        Beyond what a transceiver's pins bear.

    Notes
    -----
    Only the difference counts; a receiver bears a common shift of −2 to 7 V.
    """
    within("voltage", [high_v, low_v], -27.0, 40.0, "V")
    difference_v = high_v - low_v
    if difference_v <= RECESSIVE_MAX_V:
        return "recessive"
    return "dominant" if difference_v >= DOMINANT_MIN_V else "undefined"


def mean_pair_v(
    dominant_share: Number, rest_v: float = 2.5, swing_v: float = 1.0
) -> tuple[Number, Number]:
    """Give what a slow DC meter shows on each wire of a working bus.

    Parameters
    ----------
    dominant_share : float or ndarray
        Share of the time the bus is dominant, 0 (silent) to 1.
    rest_v : float, optional
        Recessive voltage of both wires, V.
    swing_v : float, optional
        How far each wire moves when dominant, V.

    Returns
    -------
    tuple of (float or ndarray)
        Mean voltage of CAN-H and of CAN-L, V.

    Raises
    ------
    OutsideRange
        For a share, rest or swing that cannot be.

    Notes
    -----
    Means of square waves: V_H = V_r + s·ΔV, V_L = V_r − s·ΔV. Their sum stays 2·V_r at any
    traffic: that is the sturdy check; a single mean proves little, and messages need an
    oscilloscope.
    """
    within("dominant share", dominant_share, 0.0, 1.0, "")
    within("recessive voltage", rest_v, RECESSIVE.high_v[0], RECESSIVE.high_v[2], "V")
    within("swing", swing_v, 0.0, 2.0, "V")
    shift = np.asarray(dominant_share, dtype=float) * swing_v
    return plain(rest_v + shift), plain(rest_v - shift)
