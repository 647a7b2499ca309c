"""Plain bands, and curves given as a table, with the way to read between its rows stated."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal, get_args

import numpy as np

from generator.physics.domain import Number, plain, spread, within

_INFINITE = float("inf")

Interpolation = Literal["linear", "log-linear"]


@dataclass(frozen=True)
class PlainBand:
    """Limits that hold as written, whatever the conditions.

    Attributes
    ----------
    low, high : float or None
        Closed limits, in one unit; None leaves that side open.
    nominal : float or None
        Middle value, where one is stated.

    Raises
    ------
    OutsideRange
        If the values are not in rising order.
    ValueError
        If neither limit is given: that is no band.
    """

    low: float | None
    high: float | None
    nominal: float | None = None

    def __post_init__(self) -> None:
        if self.low is None and self.high is None:
            raise ValueError("a band needs at least one limit")
        low, high = self.limits()
        within("high limit", high, low, _INFINITE, "")
        if self.nominal is not None:
            within("nominal value", self.nominal, low, high, "")

    def limits(self) -> tuple[float, float]:
        """Give both limits as numbers.

        Returns
        -------
        tuple of float
            Low and high; an infinity for an open side.
        """
        low = -_INFINITE if self.low is None else self.low
        high = _INFINITE if self.high is None else self.high
        return low, high

    def contains(self, value: float) -> bool:
        """Say whether a value lies within the limits, which belong to the band themselves.

        Parameters
        ----------
        value : float
            In the unit of the limits, unrounded.

        Returns
        -------
        bool
        """
        low, high = self.limits()
        return low <= value <= high


@dataclass(frozen=True)
class TabulatedCurve:
    """A curve through the rows of a table.

    Attributes
    ----------
    x, y : sequence of float
        Rows, `x` strictly rising; at least two. Kept as tuples of floats.
    interpolation : {"linear", "log-linear"}
        Between two rows: `y` straight in `x`, or the logarithm of `y` straight in `x`. The second
        is for tables whose `y` falls or rises by about the same factor from row to row, as the
        resistance of an NTC thermistor does.
    name, x_name : str, optional
        What the curve gives, and over what, for the errors.
    x_unit, y_unit : str, optional
        Units, for the errors.

    Raises
    ------
    OutsideRange
        For fewer than two rows, rows that do not rise, or (log-linear) a `y` not above zero.
    ValueError
        For columns of unequal length or an interpolation that does not exist.

    Notes
    -----
    It holds from its first row to its last and nowhere else. For an NTC table with rows 10 K
    apart, log-linear reads up to some 0.3 % high between rows, linear some 2 % (β = 3435 K near
    room temperature, more in the cold): the rows, not the interpolation, are what the maker states.
    """

    x: Sequence[float]
    y: Sequence[float]
    interpolation: Interpolation = "linear"
    name: str = "value"
    x_name: str = "input"
    x_unit: str = ""
    y_unit: str = ""

    def __post_init__(self) -> None:
        if self.interpolation not in get_args(Interpolation):
            raise ValueError(f"no interpolation {self.interpolation!r}")
        if len(self.x) != len(self.y):
            raise ValueError(f"{len(self.x)} inputs but {len(self.y)} values")
        object.__setattr__(self, "x", tuple(float(value) for value in self.x))
        object.__setattr__(self, "y", tuple(float(value) for value in self.y))
        within("rows", len(self.x), 2, _INFINITE, "rows")
        tiny = float(np.finfo(float).tiny)
        within(f"step of {self.x_name}", np.diff(self.x), tiny, _INFINITE, self.x_unit)
        least = tiny if self.interpolation == "log-linear" else -_INFINITE
        within(self.name, self.y, least, _INFINITE, self.y_unit)

    @property
    def rising(self) -> bool | None:
        """True if every row is above the one before, False if every one below, None if neither."""
        steps = np.diff(self.y)
        if (steps > 0.0).all():
            return True
        return False if (steps < 0.0).all() else None

    def at(self, x: Number) -> Number:
        """Give the value.

        Parameters
        ----------
        x : float or ndarray
            In `x_unit`.

        Returns
        -------
        float or ndarray
            Value, in `y_unit`; exactly the table's at its rows.

        Raises
        ------
        OutsideRange
            Beyond the first or the last row.
        """
        within(self.x_name, x, self.x[0], self.x[-1], self.x_unit)
        if self.interpolation == "linear":
            return plain(np.interp(x, self.x, self.y))
        found = np.exp(np.interp(x, self.x, np.log(self.y)))
        # A row has to come back as printed, not as the exponential of its logarithm.
        rows = np.searchsorted(self.x, x).clip(0, len(self.x) - 1)
        return plain(np.where(np.asarray(self.x)[rows] == x, np.asarray(self.y)[rows], found))

    def inverse(self, y: Number) -> Number:
        """Give where the curve has a value.

        Parameters
        ----------
        y : float or ndarray
            In `y_unit`.

        Returns
        -------
        float or ndarray
            Input, in `x_unit`.

        Raises
        ------
        OutsideRange
            For a value the table does not reach.
        ValueError
            If the curve turns or stands still, so that a value may belong to several inputs.
        """
        if self.rising is None:
            raise ValueError(f"{self.name} turns: a value does not tell its {self.x_name}")
        ends = sorted((self.y[0], self.y[-1]))
        within(self.name, y, ends[0], ends[1], self.y_unit)
        order = slice(None) if self.rising else slice(None, None, -1)
        if self.interpolation == "linear":
            return plain(np.interp(y, self.y[order], self.x[order]))
        return plain(np.interp(np.log(y), np.log(self.y[order]), self.x[order]))

    def band(
        self, x: Number, x_tolerance: float = 0.0, tolerance: float = 0.0
    ) -> tuple[Number, Number, Number]:
        """Give the limits where the input and the table are known only so well.

        Parameters
        ----------
        x : float or ndarray
            In `x_unit`.
        x_tolerance : float, optional
            How far the true input may lie either way, in `x_unit`.
        tolerance : float, optional
            Tolerance of the table's values, as a share of each, 0 to 1.

        Returns
        -------
        tuple of (float or ndarray)
            Low, nominal and high value, in `y_unit`.

        Raises
        ------
        OutsideRange
            Where the input with its tolerance leaves the table.

        Notes
        -----
        Between rows the curve is monotonic, so its extremes over an interval lie at the ends or
        at a row inside: exact, also for a curve that turns.
        """
        within(f"tolerance of {self.x_name}", x_tolerance, 0.0, _INFINITE, self.x_unit)
        within("tolerance", tolerance, 0.0, 1.0, "")
        middle = np.asarray(x, dtype=float)
        low_x, high_x = middle - x_tolerance, middle + x_tolerance
        places = (low_x, high_x, *(np.clip(row, low_x, high_x) for row in self.x))
        values = [self.at(place) for place in places]
        low, high = spread(*(v * f for v in values for f in (1.0 - tolerance, 1.0 + tolerance)))
        return low, self.at(x), high
