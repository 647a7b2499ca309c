"""Threads and bolts: stress area, proof load, and a check that a torque is not absurd.

**Nothing here gives a torque to tighten to.** Friction scatters a bolt's tension at one torque by
a third either way, joints differ, and many are tightened by angle. A torque comes from the
maker's data; what is computed here only catches a slip of a unit or a decimal point in it.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

import numpy as np

from generator.physics.domain import Number, plain, within

_INFINITE = float("inf")
# Sizes that ISO 898-1 covers, mm.
DIAMETER_MIN_MM, DIAMETER_MAX_MM = 1.6, 39.0

# ISO 261: coarse pitch of the preferred sizes, mm.
COARSE_PITCH_MM = {
    3.0: 0.5, 4.0: 0.7, 5.0: 0.8, 6.0: 1.0, 7.0: 1.0, 8.0: 1.25, 10.0: 1.5, 12.0: 1.75,
    14.0: 2.0, 16.0: 2.0, 18.0: 2.5, 20.0: 2.5, 22.0: 2.5, 24.0: 3.0, 27.0: 3.0, 30.0: 3.5,
    33.0: 3.5, 36.0: 4.0, 39.0: 4.0,
}  # fmt: skip


@dataclass(frozen=True)
class PropertyClass:
    """Strength of a bolt as marked on its head.

    Attributes
    ----------
    name : str
        The marking, "8.8".
    proof_mpa : float
        Stress under proof load up to M16, MPa.
    proof_large_mpa : float
        The same above M16, MPa.
    """

    name: str
    proof_mpa: float
    proof_large_mpa: float


# ISO 898-1:2013, tables 3, 5 and 7: stress under proof load, MPa (8.8 and 10.9 by way of
# published proof loads, the rest from memory).
_CLASSES = (
    PropertyClass("4.6", 225.0, 225.0),
    PropertyClass("4.8", 310.0, 310.0),
    PropertyClass("5.6", 280.0, 280.0),
    PropertyClass("5.8", 380.0, 380.0),
    PropertyClass("6.8", 440.0, 440.0),
    PropertyClass("8.8", 580.0, 600.0),
    PropertyClass("9.8", 650.0, 650.0),
    PropertyClass("10.9", 830.0, 830.0),
    PropertyClass("12.9", 970.0, 970.0),
)

CLASSES: dict[str, PropertyClass] = {entry.name: entry for entry in _CLASSES}

# Torque coefficient: waxed or coated to dry and rusty (practice; 0.2 for plain steel as received).
K_LOW, K_USUAL, K_HIGH = 0.10, 0.20, 0.35
# Tension aimed at, as a share of the proof load (practice: 75 %; light covers and soft gaskets far
# less, tightening to yield a little above it).
PROOF_SHARE_LOW, PROOF_SHARE_USUAL, PROOF_SHARE_HIGH = 0.15, 0.75, 1.10


def stress_area_m2(diameter_mm: Number, pitch_mm: Number) -> Number:
    """Give the stress area of a metric thread.

    Parameters
    ----------
    diameter_mm : float or ndarray
        Nominal diameter, 1.6 to 39 mm.
    pitch_mm : float or ndarray
        Pitch, mm, above zero and below a third of the diameter.

    Returns
    -------
    float or ndarray
        Area, m².

    Raises
    ------
    OutsideRange
        For a thread beyond those.

    Notes
    -----
    A = π/4·(d − 0.9382·P)².

    References
    ----------
    ISO 898-1, Mechanical properties of fasteners, 9.1.6.
    """
    within("diameter", diameter_mm, DIAMETER_MIN_MM, DIAMETER_MAX_MM, "mm")
    diameter, pitch = np.asarray(diameter_mm, dtype=float), np.asarray(pitch_mm, dtype=float)
    within("pitch over diameter", pitch / diameter, 1e-3, 1.0 / 3.0, "")
    return plain(np.pi / 4.0 * (diameter - 0.9382 * pitch) ** 2 * 1e-6)


def proof_load_n(diameter_mm: float, pitch_mm: float, property_class: str) -> float:
    """Give the load a bolt has to bear without lasting stretch.

    Parameters
    ----------
    diameter_mm, pitch_mm : float
        Thread, as for :func:`stress_area_m2`.
    property_class : str
        A key of `CLASSES`.

    Returns
    -------
    float
        Load, N.

    Raises
    ------
    OutsideRange
        For a thread out of range.
    ValueError
        For an unknown class.

    References
    ----------
    ISO 898-1, tables 5 and 7.
    """
    if property_class not in CLASSES:
        known = ", ".join(CLASSES)
        raise ValueError(f"no property class {property_class!r}; known are {known}")
    strength = CLASSES[property_class]
    # ISO 898-1 raises the stress of class 8.8 above M16, where the steel is another.
    proof_mpa = strength.proof_mpa if diameter_mm <= 16.0 else strength.proof_large_mpa
    return float(stress_area_m2(diameter_mm, pitch_mm) * proof_mpa * 1e6)


def torque_from_tension_nm(tension_n: Number, diameter_mm: Number, k: Number = K_USUAL) -> Number:
    """Give the torque that goes with a bolt's tension.

    **A plausibility check, not a torque to use.**

    Parameters
    ----------
    tension_n : float or ndarray
        Tension, N.
    diameter_mm : float or ndarray
        Nominal diameter, mm.
    k : float or ndarray, optional
        Torque coefficient, 0.05 to 0.5; it lumps all friction together.

    Returns
    -------
    float or ndarray
        Torque, N·m.

    Raises
    ------
    OutsideRange
        For a value beyond those.

    Notes
    -----
    T = K·d·F. K is known to a third at best, so the torque is too. Never tighten to a torque
    worked out from a bolt's size and grade: the maker's figure allows for the joint, this does not.
    """
    within("tension", tension_n, 0.0, _INFINITE, "N")
    within("diameter", diameter_mm, DIAMETER_MIN_MM, DIAMETER_MAX_MM, "mm")
    within("torque coefficient", k, 0.05, 0.5, "")
    return plain(np.asarray(tension_n, dtype=float) * diameter_mm * 1e-3 * k)


def plausible_torque_band_nm(
    diameter_mm: float, pitch_mm: float, property_class: str
) -> tuple[float, float, float]:
    """Give the span beyond which a stated torque is probably a misprint.

    **Outside is implausible; inside proves nothing, and no torque in it is one to use.**

    Parameters
    ----------
    diameter_mm, pitch_mm : float
        Thread.
    property_class : str
        A key of `CLASSES`.

    Returns
    -------
    tuple of float
        Least plausible, usual and greatest plausible torque, N·m.

    Raises
    ------
    OutsideRange, ValueError
        As :func:`proof_load_n`.

    Notes
    -----
    From K 0.10 at 15 % of the proof load to K 0.35 at 110 %: about a factor of 26, wide enough
    for any sound joint, and narrow enough to catch a usual torque printed with the unit of twelve
    times it (lbf·ft for lbf·in) or a lost decimal.
    """
    proof_n = proof_load_n(diameter_mm, pitch_mm, property_class)
    corners = (
        (PROOF_SHARE_LOW, K_LOW), (PROOF_SHARE_USUAL, K_USUAL), (PROOF_SHARE_HIGH, K_HIGH),
    )  # fmt: skip
    low, usual, high = (
        float(torque_from_tension_nm(share * proof_n, diameter_mm, k)) for share, k in corners
    )
    return low, usual, high


def torque_plausibility(
    torque_nm: float, diameter_mm: float, pitch_mm: float, property_class: str
) -> Literal["too low", "not implausible", "too high"]:
    """Say whether a stated torque could be meant. **It never says that a torque is right.**

    Parameters
    ----------
    torque_nm : float
        Torque as stated, N·m, above zero.
    diameter_mm, pitch_mm : float
        Thread.
    property_class : str
        A key of `CLASSES`.

    Returns
    -------
    {"too low", "not implausible", "too high"}

    Raises
    ------
    OutsideRange, ValueError
        As :func:`plausible_torque_band_nm`.
    """
    within("torque", torque_nm, float(np.finfo(float).tiny), _INFINITE, "N·m")
    low, _, high = plausible_torque_band_nm(diameter_mm, pitch_mm, property_class)
    if torque_nm < low:
        return "too low"
    return "too high" if torque_nm > high else "not implausible"


def wrench_setting_nm(
    target_nm: Number, wrench_m: float, extension_m: float, angle_deg: Number = 0.0
) -> Number:
    """Give what to set on a torque wrench that carries an offset extension.

    Parameters
    ----------
    target_nm : float or ndarray
        Torque wanted at the fastener, N·m.
    wrench_m : float
        From the wrench's square drive to the middle of its grip, m, above zero.
    extension_m : float
        From the square drive to the fastener, m, not negative.
    angle_deg : float or ndarray, optional
        Between extension and wrench, degrees: 0 straight on, 90 square across, 180 folded back.

    Returns
    -------
    float or ndarray
        Setting, N·m.

    Raises
    ------
    OutsideRange
        If the extension reaches back to the hand or beyond.

    Notes
    -----
    T_set = T·L/(L + E·cos θ), moments about the fastener. The hand must be at the middle of the
    grip. A straight extension along the drive's axis changes nothing.
    """
    within("torque", target_nm, 0.0, _INFINITE, "N·m")
    within("wrench length", wrench_m, 1e-6, _INFINITE, "m")
    within("extension", extension_m, 0.0, _INFINITE, "m")
    within("angle", angle_deg, -180.0, 180.0, "°")
    angle = np.radians(np.asarray(angle_deg, dtype=float))
    reach_m = wrench_m + extension_m * np.cos(angle)
    within("reach from fastener to hand", reach_m, 1e-6, _INFINITE, "m")
    return plain(np.asarray(target_nm, dtype=float) * wrench_m / reach_m)
