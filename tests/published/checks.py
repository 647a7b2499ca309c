"""The shared row of a table of outside values, and how a model is held to it.

A row says where its number comes from. No expected number may come from the code under test:
that is the one rule that gives these tables any worth.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Literal

import pytest

Mark = Literal["L", "P", "C", "M", "practice"]

# The most rows that one published table may give: a copied table proves the copying.
ROWS_PER_PUBLISHED_TABLE = 12
# The fewest rows of a model that an independent library or a published page has to give.
INDEPENDENT_ROWS = 3


@dataclass(frozen=True)
class Check:
    """One value from outside that a model has to reproduce.

    Parameters
    ----------
    inputs : mapping of str to value
        Keyword arguments of the model, in its own units.
    expected : float or callable
        The value from outside; a callable without arguments asks an independent library now.
    tolerance : float
        Largest allowed absolute difference, in the unit of `expected`.
    mark : {"L", "P", "C", "M", "practice"}
        Independent library, published page, closed-form arithmetic, memory, common practice.
    source : str
        Where the value can be found again.
    """

    inputs: Mapping[str, Any]
    expected: float | Callable[[], float]
    tolerance: float
    mark: Mark
    source: str

    def wanted(self) -> float:
        """The expected value, asked of its library where it is a live one."""
        return float(self.expected() if callable(self.expected) else self.expected)

    def hold(self, model: Callable[..., Any]) -> None:
        """Fail unless `model` gives the expected value within the tolerance."""
        got = float(model(**self.inputs))
        wanted = self.wanted()
        assert abs(got - wanted) <= self.tolerance, (
            f"{model.__name__}({dict(self.inputs)}) gave {got!r}, "
            f"{self.source} [{self.mark}] gives {wanted!r} ± {self.tolerance:g}"
        )


def table(model: Callable[..., Any], rows: Sequence[Check]) -> list[Any]:
    """Rows of one model as parameters (``model, check``) for :func:`pytest.mark.parametrize`."""
    return [
        pytest.param(model, row, id=f"{model.__name__}-{number}-{row.mark}")
        for number, row in enumerate(rows, start=1)
    ]


def assert_well_founded(rows: Sequence[Check], independent: int = INDEPENDENT_ROWS) -> None:
    """Fail unless the rows of one model rest on enough, and not on too much, of the world.

    Parameters
    ----------
    rows : sequence of Check
        All rows of one model (a model may be several functions that invert each other).
    independent : int, optional
        How many rows must be marked "L" or "P".
    """
    outside = [row for row in rows if row.mark in ("L", "P")]
    assert len(outside) >= independent, f"only {len(outside)} rows from a library or a page"
    assert all(row.source.strip() for row in rows), "a row without a source"
    printed = Counter(row.source for row in rows if row.mark == "P")
    assert all(n <= ROWS_PER_PUBLISHED_TABLE for n in printed.values()), printed
