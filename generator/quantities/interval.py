"""A condition as a closed interval: one figure, a range, or all that is usual."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Interval:
    """A closed interval in the base unit of its quantity.

    Parameters
    ----------
    low, high : float
        Ends, `low` not above `high`.
    """

    low: float
    high: float

    def __post_init__(self) -> None:
        if not self.low <= self.high:
            raise ValueError(f"{self.low} to {self.high} is not an interval")

    @classmethod
    def of(cls, value: float) -> Interval:
        """Give the interval of one figure."""
        return cls(value, value)

    @property
    def single(self) -> bool:
        """Whether it is one figure."""
        return self.low == self.high

    @property
    def middle(self) -> float:
        """The figure half way."""
        return (self.low + self.high) / 2
