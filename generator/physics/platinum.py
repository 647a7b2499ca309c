"""Platinum resistance sensors: the IEC 60751 curve, two curves of other coefficient, classes."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.physics.domain import Number, plain, within


@dataclass(frozen=True)
class PlatinumCurve:
    """A Callendar-Van Dusen curve: R/R0 = 1 + a·t + b·t² + c·(t − 100)·t³, c below 0 °C only.

    Attributes
    ----------
    name : str
        The name that records use.
    a, b, c : float
        Coefficients, 1/°C, 1/°C², 1/°C⁴.
    low_c, high_c : float
        Temperatures between which it holds, °C.
    """

    name: str
    a: float
    b: float
    c: float
    low_c: float
    high_c: float


_CURVES = (
    # IEC 60751: A, B, C and the range −200 to 850 °C.
    PlatinumCurve("iec-60751", 3.9083e-3, -5.775e-7, -4.183e-12, -200.0, 850.0),
    # Two makers' printed sheets of thin-film sensors of 3750 ppm/K give these three; a film sensor
    # is not trusted below −50 or above 600 °C (practice).
    PlatinumCurve("tcr-3750", 3.8102e-3, -6.01888e-7, -6.0e-12, -50.0, 600.0),
    # Exhaust-gas parts of about 3770 ppm/K, from memory of makers' sheets; 1.9 % below IEC 60751
    # at 850 °C. A sheet found in print gave A = 3.92e-3, which is 3860 ppm/K and so a misprint.
    PlatinumCurve("tcr-3770", 3.8285e-3, -5.85e-7, 0.0, 0.0, 900.0),
)

CURVES: dict[str, PlatinumCurve] = {curve.name: curve for curve in _CURVES}

# IEC 60751: deviation at 0 °C in K, growth per kelvin from 0 °C, and the range of a wire-wound
# thermometer of that class, °C (2022 edition; the 1995 edition let A run to 650 and B to 850 °C).
_CLASSES = {
    "AA": (0.10, 0.0017, -50.0, 250.0),
    "A": (0.15, 0.0020, -100.0, 450.0),
    "B": (0.30, 0.0050, -196.0, 600.0),
    "C": (0.60, 0.0100, -196.0, 600.0),
}


def platinum_curve(name: str) -> PlatinumCurve:
    """Give the curve of that name.

    Parameters
    ----------
    name : str
        A key of `CURVES`.

    Returns
    -------
    PlatinumCurve

    Raises
    ------
    ValueError
        For a name that is not in the table.
    """
    try:
        return CURVES[name]
    except KeyError:
        raise ValueError(f"no curve {name!r}; known are {', '.join(CURVES)}") from None


def _ratio(curve: PlatinumCurve, temp_c: Number) -> Number:
    t = np.asarray(temp_c, dtype=float)
    return 1.0 + curve.a * t + curve.b * t**2 + np.where(t < 0.0, curve.c * (t - 100.0) * t**3, 0.0)


def platinum_ohm(temp_c: Number, r0_ohm: float, curve: str = "iec-60751") -> Number:
    """Give the resistance of a platinum sensor at a temperature.

    Parameters
    ----------
    temp_c : float or ndarray
        Temperature of the sensor, °C.
    r0_ohm : float
        Resistance at 0 °C, ohm: 100 for a Pt100, 200 for a Pt200.
    curve : str, optional
        A key of `CURVES`. The same Pt200 may follow one or another: the record says which.

    Returns
    -------
    float or ndarray
        Resistance, ohm.

    Raises
    ------
    OutsideRange
        Beyond the curve's range.
    ValueError
        For an unknown curve.

    Notes
    -----
    Callendar-Van Dusen, as in :class:`PlatinumCurve`.

    References
    ----------
    IEC 60751, Industrial platinum resistance thermometers and platinum temperature sensors.
    """
    chosen = platinum_curve(curve)
    within("resistance at 0 °C", r0_ohm, 1e-3, 1e6, "ohm")
    within("temperature", temp_c, chosen.low_c, chosen.high_c, "°C")
    return plain(r0_ohm * _ratio(chosen, temp_c))


def platinum_temp_c(ohm: Number, r0_ohm: float, curve: str = "iec-60751") -> Number:
    """Give the temperature of a platinum sensor from its resistance.

    Parameters
    ----------
    ohm : float or ndarray
        Resistance, ohm.
    r0_ohm : float
        Resistance at 0 °C, ohm.
    curve : str, optional
        A key of `CURVES`.

    Returns
    -------
    float or ndarray
        Temperature, °C.

    Raises
    ------
    OutsideRange
        If the resistance lies beyond those of the curve's range.
    ValueError
        For an unknown curve.

    Notes
    -----
    Above 0 °C the root of the quadratic; below it that root is within 3 K and Newton's method on
    the full curve takes it to rounding in four steps.
    """
    chosen = platinum_curve(curve)
    within("resistance at 0 °C", r0_ohm, 1e-3, 1e6, "ohm")
    low_ohm, high_ohm = (r0_ohm * float(_ratio(chosen, t)) for t in (chosen.low_c, chosen.high_c))
    slack_ohm = 1e-9 * r0_ohm
    within("resistance", ohm, low_ohm - slack_ohm, high_ohm + slack_ohm, "ohm")
    ratio = np.asarray(ohm, dtype=float) / r0_ohm
    a, b, c = chosen.a, chosen.b, chosen.c
    t = (-a + np.sqrt(a**2 - 4.0 * b * (1.0 - ratio))) / (2.0 * b)
    for _ in range(4):
        slope = a + 2.0 * b * t + np.where(t < 0.0, c * (4.0 * t**3 - 300.0 * t**2), 0.0)
        t = t - (_ratio(chosen, t) - ratio) / slope
    return plain(t)


def platinum_tolerance_k(temp_c: Number, tolerance_class: str = "B") -> Number:
    """Give the deviation that a class allows at a temperature.

    Parameters
    ----------
    temp_c : float or ndarray
        Temperature, °C.
    tolerance_class : {"AA", "A", "B", "C"}, optional
        Class of the thermometer.

    Returns
    -------
    float or ndarray
        Largest deviation either way, K.

    Raises
    ------
    OutsideRange
        Beyond the range in which the class is defined for a wire-wound thermometer.
    ValueError
        For an unknown class.

    Notes
    -----
    Class A: 0.15 + 0.002·|t|; class B: 0.30 + 0.005·|t|. A film sensor's ranges are narrower (B:
    −50 to 500 °C).

    References
    ----------
    IEC 60751:2022, table 2.
    """
    try:
        at_zero_k, growth, low_c, high_c = _CLASSES[tolerance_class]
    except KeyError:
        known = ", ".join(_CLASSES)
        raise ValueError(f"no class {tolerance_class!r}; known are {known}") from None
    within("temperature", temp_c, low_c, high_c, "°C")
    return plain(at_zero_k + growth * np.abs(np.asarray(temp_c, dtype=float)))


def platinum_band(
    temp_c: Number,
    r0_ohm: float,
    tolerance_class: str = "B",
    temp_tolerance_k: float = 0.0,
    curve: str = "iec-60751",
) -> tuple[Number, Number, Number]:
    """Give the limits of a platinum sensor's resistance at a temperature.

    Parameters
    ----------
    temp_c : float or ndarray
        Temperature, °C.
    r0_ohm : float
        Resistance at 0 °C, ohm.
    tolerance_class : {"AA", "A", "B", "C"}, optional
        Class of the sensor.
    temp_tolerance_k : float, optional
        How far the true temperature may lie either way, K.
    curve : str, optional
        A key of `CURVES`; makers state the classes for other curves too.

    Returns
    -------
    tuple of (float or ndarray)
        Low, nominal and high resistance, ohm.

    Raises
    ------
    OutsideRange
        Where the temperature with its tolerance leaves the curve or the class.

    Notes
    -----
    Resistance rises with temperature, and t ± the class's deviation rises with t, so the limits lie
    at the ends. Exact, but for the curve being followed past its end by the deviation itself.
    """
    within("temperature tolerance", temp_tolerance_k, 0.0, float("inf"), "K")
    chosen = platinum_curve(curve)
    cold_c, warm_c = temp_c - temp_tolerance_k, temp_c + temp_tolerance_k
    for end_c in (cold_c, warm_c):
        within("temperature", end_c, chosen.low_c, chosen.high_c, "°C")
    return (
        plain(r0_ohm * _ratio(chosen, cold_c - platinum_tolerance_k(cold_c, tolerance_class))),
        platinum_ohm(temp_c, r0_ohm, curve),
        plain(r0_ohm * _ratio(chosen, warm_c + platinum_tolerance_k(warm_c, tolerance_class))),
    )
