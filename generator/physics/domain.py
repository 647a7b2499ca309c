"""Where a model holds, and the one error for stepping outside."""

from __future__ import annotations

from typing import Any

import numpy as np


class OutsideRange(ValueError):
    """A model was asked beyond the range its source covers.

    Attributes
    ----------
    name : str
        What was out of range, in words a reader knows ("temperature").
    value : float
        The first offending value, in `unit`.
    low, high : float
        The closed range of validity, in `unit`.
    unit : str
        The SI (or stated) unit of the three numbers.
    """

    def __init__(self, name: str, value: float, low: float, high: float, unit: str) -> None:
        self.name = name
        self.value = value
        self.low = low
        self.high = high
        self.unit = unit
        super().__init__(f"{name} {value:g} {unit} is outside {low:g} to {high:g} {unit}")


def within(name: str, value: Any, low: float, high: float, unit: str) -> None:
    """Raise unless every element of `value` lies in the closed range.

    Parameters
    ----------
    name : str
        What the value is, for the error.
    value : float or ndarray
        The value or values to test, in `unit`.
    low, high : float
        Closed range of validity; an infinity leaves that side open.
    unit : str
        Unit of all numbers.

    Raises
    ------
    OutsideRange
        At the first element outside the range; not-a-number counts as outside.
    """
    values = np.atleast_1d(np.asarray(value, dtype=float))
    bad = values[~((values >= low) & (values <= high))]
    if bad.size:
        raise OutsideRange(name, float(bad.flat[0]), low, high, unit)


# A float or an array of floats. `Any`, because arithmetic on the union of the two tells a type
# checker nothing that its reader could use.
Number = Any


def plain(value: Number) -> Number:
    """Give a Python float for a single number and an array for an array.

    Parameters
    ----------
    value : float or ndarray
        What a formula gave; numpy makes scalars of its own even from plain floats.

    Returns
    -------
    float or ndarray
        The same value as a float if it has no dimension, else as an array of floats.
    """
    values = np.asarray(value, dtype=float)
    return float(values) if values.ndim == 0 else values


def spread(*values: Number) -> tuple[Number, Number]:
    """Give the least and the greatest of some values, element by element.

    Parameters
    ----------
    *values : float or ndarray
        What a monotonic model gives at each corner of its inputs' ranges.

    Returns
    -------
    tuple of (float or ndarray)
        Least, greatest.
    """
    corners = np.stack(np.broadcast_arrays(*(np.asarray(v, dtype=float) for v in values)))
    return plain(corners.min(axis=0)), plain(corners.max(axis=0))
