"""Potentiometers and transducers whose output is a share of their supply."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.physics.dividers import LOW_VOLTAGE_MAX_V
from generator.physics.domain import Number, plain, spread, within

_INFINITE = float("inf")


def potentiometer_v(
    supply_v: Number, total_ohm: float, travel: Number, load_ohm: float = _INFINITE
) -> Number:
    """Give the wiper voltage of a linear potentiometer.

    Parameters
    ----------
    supply_v : float or ndarray
        Voltage across the track, V.
    total_ohm : float
        Resistance of the track, ohm; above zero.
    travel : float or ndarray
        Position of the wiper, 0 at the ground end to 1 at the supply end.
    load_ohm : float, optional
        What the wiper feeds, to ground, ohm; above zero.

    Returns
    -------
    float or ndarray
        Voltage, V.

    Raises
    ------
    OutsideRange
        For a travel outside 0 to 1, or as :func:`divider_v`.

    Notes
    -----
    V = V_s·x/(1 + x·(1 − x)·R/R_load). The load pulls down most near x = 2/3.
    """
    within("supply", supply_v, 0.0, LOW_VOLTAGE_MAX_V, "V")
    within("track resistance", total_ohm, 1e-6, _INFINITE, "ohm")
    within("load", load_ohm, 1e-6, _INFINITE, "ohm")
    within("travel", travel, 0.0, 1.0, "")
    x = np.asarray(travel, dtype=float)
    return plain(supply_v * x / (1.0 + x * (1.0 - x) * total_ohm / load_ohm))


@dataclass(frozen=True)
class RatiometricTransducer:
    """A sensor whose output is a straight line, as a share of its supply.

    Attributes
    ----------
    gain : float
        Share of the supply per unit of what is measured; not zero.
    offset : float
        Share of the supply where what is measured is zero.
    low, high : float
        Range of what is measured, in `unit`.
    unit : str
        Unit of what is measured, for the error text.

    Raises
    ------
    OutsideRange
        If the output would leave 0 to 1 times the supply within the range.
    """

    gain: float
    offset: float
    low: float
    high: float
    unit: str = ""

    def __post_init__(self) -> None:
        within("high end less low end", self.high - self.low, 0.0, _INFINITE, self.unit)
        within("gain", abs(self.gain), float(np.finfo(float).tiny), _INFINITE, "")
        ends = [self.gain * end + self.offset for end in (self.low, self.high)]
        within("share of the supply", ends, -1e-9, 1.0 + 1e-9, "")

    def volts(self, value: Number, supply_v: Number) -> Number:
        """Give the output.

        Parameters
        ----------
        value : float or ndarray
            What is measured, in `unit`.
        supply_v : float or ndarray
            Supply of the sensor, V.

        Returns
        -------
        float or ndarray
            Output, V: supply·(gain·value + offset).

        Raises
        ------
        OutsideRange
            Beyond the range of the transducer.
        """
        within("measured value", value, self.low, self.high, self.unit)
        within("supply", supply_v, 0.0, LOW_VOLTAGE_MAX_V, "V")
        return plain(supply_v * (self.gain * np.asarray(value, dtype=float) + self.offset))

    def value(self, out_v: Number, supply_v: float) -> Number:
        """Give what is measured, from the output.

        Parameters
        ----------
        out_v : float or ndarray
            Output, V.
        supply_v : float
            Supply at the time of the reading, V; above zero.

        Returns
        -------
        float or ndarray
            What is measured, in `unit`.

        Raises
        ------
        OutsideRange
            If it lies beyond the range of the transducer: a fault of the circuit, not a value.
        """
        within("supply", supply_v, 1e-6, LOW_VOLTAGE_MAX_V, "V")
        found = plain((np.asarray(out_v, dtype=float) / supply_v - self.offset) / self.gain)
        slack = 1e-9 * (self.high - self.low)
        within("measured value", found, self.low - slack, self.high + slack, self.unit)
        return found

    def band(
        self, value: Number, supply_v: tuple[float, float, float], tolerance: float = 0.0
    ) -> tuple[Number, Number, Number]:
        """Give the limits of the output.

        Parameters
        ----------
        value : float or ndarray
            What is measured, in `unit`.
        supply_v : tuple of float
            Low, nominal and high supply, V.
        tolerance : float, optional
            Error of the sensor either way, in `unit`.

        Returns
        -------
        tuple of (float or ndarray)
            Low, nominal and high output, V; never below 0 V or above the supply.

        Raises
        ------
        OutsideRange
            Beyond the range of the transducer.

        Notes
        -----
        The output is monotonic in what is measured and rises with the supply: exact.
        """
        within("tolerance", tolerance, 0.0, self.high - self.low, self.unit)
        nominal = self.volts(value, supply_v[1])
        middle = self.gain * np.asarray(value, dtype=float) + self.offset
        swing = abs(self.gain) * tolerance
        shares = [np.clip(middle + sign * swing, 0.0, 1.0) for sign in (-1.0, 1.0)]
        low, high = spread(*(v * share for v in supply_v[::2] for share in shares))
        return low, nominal, high
