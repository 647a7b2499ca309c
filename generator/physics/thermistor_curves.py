"""Curves of NTC thermistors: Steinhart-Hart and beta."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Protocol

import numpy as np

from generator.physics.domain import Number, plain, within

# 0 °C in kelvin (SI Brochure, 9th edition, 2.3.1).
ICE_POINT_K = 273.15
# Range in which oxide thermistors are used, °C (practice): beyond it no curve is believed.
NTC_MIN_C, NTC_MAX_C = -60.0, 300.0


# A table rounds its resistances, so the one it prints at an end may lie this far beyond it, K.
END_SLACK_K = 0.05


class ThermistorCurve(Protocol):
    """What every thermistor curve can do; resistance falls as temperature rises."""

    @property
    def low_c(self) -> float:
        """Lowest temperature the curve holds for, °C."""

    @property
    def high_c(self) -> float:
        """Highest temperature the curve holds for, °C."""

    def ohm(self, temp_c: Number) -> Number:
        """Resistance in ohm at `temp_c`, °C."""

    def temp_c(self, ohm: Number) -> Number:
        """Temperature in °C at a resistance of `ohm`."""


@dataclass(frozen=True)
class SteinhartHart:
    """The curve 1/T = a + b·ln R + c·(ln R)³, T in kelvin, R in ohm.

    Attributes
    ----------
    a, b, c : float
        Coefficients, 1/K.
    low_c, high_c : float
        Temperatures between which it holds, °C.

    Raises
    ------
    OutsideRange
        If the range leaves −60 to 300 °C or is empty.
    ValueError
        If resistance would not fall with temperature over the whole range.

    Notes
    -----
    Over 100 K or so the equation follows an oxide thermistor within some hundredths of a kelvin;
    how well beyond its fitted points, it does not say, so the range belongs to the curve.

    References
    ----------
    J. S. Steinhart and S. R. Hart, Calibration curves for thermistors, Deep-Sea Research 15
    (1968) 497.
    """

    a: float
    b: float
    c: float
    low_c: float
    high_c: float

    def __post_init__(self) -> None:
        within("curve's low end", self.low_c, NTC_MIN_C, NTC_MAX_C, "°C")
        within("curve's high end", self.high_c, self.low_c, NTC_MAX_C, "°C")
        logs = self._log_ohm(np.array([self.low_c, self.high_c]))
        # The slope of 1/T in ln R is least or greatest at an end, or where ln R passes nought.
        middle = 0.0 if logs.prod() < 0.0 else logs[0]
        falls = np.isfinite(logs).all() and (
            min(self.b + 3.0 * self.c * log**2 for log in (*logs, middle)) > 0.0
        )
        if not falls:
            raise ValueError("these coefficients do not make resistance fall with temperature")

    def _log_ohm(self, temp_c: Number) -> Number:
        # The cubic c·x³ + b·x + (a − 1/T) = 0 solved by its hyperbolic or, for c < 0, its sine
        # form: Cardano's cube roots cancel each other when c is small, these do not.
        offset = self.a - 1.0 / (np.asarray(temp_c, dtype=float) + ICE_POINT_K)
        # Coefficients that fit no thermistor give no number here and are refused by the caller.
        with np.errstate(all="ignore"):
            if self.c == 0.0:
                return -offset / np.float64(self.b)
            half = np.sqrt(np.float64(self.b) / (3.0 * abs(self.c)))
            bend = offset / (2.0 * abs(self.c) * half**3)
            if self.c > 0.0:
                return -2.0 * half * np.sinh(np.arcsinh(bend) / 3.0)
            return -2.0 * half * np.sin(np.arcsin(bend) / 3.0)

    def ohm(self, temp_c: Number) -> Number:
        """Give the resistance at a temperature.

        Parameters
        ----------
        temp_c : float or ndarray
            Temperature of the bead, °C.

        Returns
        -------
        float or ndarray
            Resistance, ohm.

        Raises
        ------
        OutsideRange
            Beyond the curve's range.
        """
        within("temperature", temp_c, self.low_c, self.high_c, "°C")
        return plain(np.exp(self._log_ohm(temp_c)))

    def temp_c(self, ohm: Number) -> Number:
        """Give the temperature at a resistance.

        Parameters
        ----------
        ohm : float or ndarray
            Resistance, ohm.

        Returns
        -------
        float or ndarray
            Temperature, °C.

        Raises
        ------
        OutsideRange
            If the resistance lies beyond those of the curve's range (0.05 K are let pass).
        """
        ends_c = np.array([self.high_c + END_SLACK_K, self.low_c - END_SLACK_K])
        least_ohm, most_ohm = np.exp(self._log_ohm(ends_c))
        within("resistance", ohm, least_ohm, most_ohm, "ohm")
        logs = np.log(np.asarray(ohm, dtype=float))
        return plain(1.0 / (self.a + self.b * logs + self.c * logs**3) - ICE_POINT_K)


@dataclass(frozen=True)
class Beta:
    """The curve R = R_ref·exp(β·(1/T − 1/T_ref)), T in kelvin.

    Attributes
    ----------
    ref_ohm : float
        Resistance at the reference temperature, ohm.
    beta_k : float
        The constant β, K.
    ref_c : float
        Reference temperature, °C.
    low_c, high_c : float
        Temperatures between which it holds, °C: those that β is stated between.

    Raises
    ------
    OutsideRange
        If a value cannot belong to an NTC thermistor.

    Notes
    -----
    β itself rises with temperature, so a value stated between 25 and 85 °C errs by 4 % of
    resistance at 0 °C and by over 10 % in a hard frost: prefer three points.

    References
    ----------
    IEC 60539-1, directly heated NTC thermistors (definition of the B-value; from memory).
    """

    ref_ohm: float
    beta_k: float
    ref_c: float = 25.0
    low_c: float = 25.0
    high_c: float = 85.0

    def __post_init__(self) -> None:
        within("reference resistance", self.ref_ohm, 1e-3, 1e9, "ohm")
        # Oxide thermistors: about 2000 to 5500 K (practice), with room either side.
        within("beta", self.beta_k, 500.0, 10_000.0, "K")
        within("curve's low end", self.low_c, NTC_MIN_C, NTC_MAX_C, "°C")
        within("curve's high end", self.high_c, self.low_c, NTC_MAX_C, "°C")
        within("reference temperature", self.ref_c, self.low_c, self.high_c, "°C")

    def _log_share(self, temp_c: Number) -> Number:
        kelvin = np.asarray(temp_c, dtype=float) + ICE_POINT_K
        return self.beta_k * (1.0 / kelvin - 1.0 / (self.ref_c + ICE_POINT_K))

    def ohm(self, temp_c: Number) -> Number:
        """Give the resistance at a temperature, as :meth:`SteinhartHart.ohm`."""
        within("temperature", temp_c, self.low_c, self.high_c, "°C")
        return plain(self.ref_ohm * np.exp(self._log_share(temp_c)))

    def temp_c(self, ohm: Number) -> Number:
        """Give the temperature at a resistance, as :meth:`SteinhartHart.temp_c`."""
        ends_c = np.array([self.high_c + END_SLACK_K, self.low_c - END_SLACK_K])
        least_ohm, most_ohm = self.ref_ohm * np.exp(self._log_share(ends_c))
        within("resistance", ohm, least_ohm, most_ohm, "ohm")
        share = np.log(np.asarray(ohm, dtype=float) / self.ref_ohm) / self.beta_k
        return plain(1.0 / (1.0 / (self.ref_c + ICE_POINT_K) + share) - ICE_POINT_K)
