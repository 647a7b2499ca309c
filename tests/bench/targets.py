"""What is promised of speed: ratios within one run, never seconds."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from itertools import pairwise
from math import log

from tests.bench.measure import Cost

Costs = Mapping[str, Mapping[int, Cost]]
"""What was measured, to size, to cost."""


@dataclass(frozen=True, slots=True)
class Target:
    """A ratio that is not to be exceeded.

    Parameters
    ----------
    what, of : str
        What is measured against what.
    most : float
        The greatest ratio.
    least_size : int
        The smallest size at which it is promised.
    """

    what: str
    of: str
    most: float
    least_size: int = 1000

    def ratio(self, costs: Costs, size: int) -> float | None:
        """Give the ratio at a size, in processor time; None where one of the two is missing."""
        ours, theirs = costs.get(self.what, {}).get(size), costs.get(self.of, {}).get(size)
        return ours.cpu_s / theirs.cpu_s if ours and theirs and theirs.cpu_s else None


TARGETS = (
    Target("build, all but the pages kept", "MkDocs with Material", 0.25),
    Target("build, all but the pages kept", "Hugo", 1.0),
    Target("build, a value that many pages show", "Hugo", 0.3, 5000),
    Target("build, a value that many pages show", "one page with Material", 3.0, 5000),
    Target("build, a leaf", "Hugo", 0.3, 5000),
    Target("build, a leaf", "one page with Material", 3.0, 5000),
    Target("build, nothing changed", "one page with Material", 1.5),
    Target("check, cold", "composing the YAML", 3.0),
    Target("check, nothing changed", "composing the YAML", 0.3, 10000),
)

GROWTH_FROM, MOST_GROWTH = 1000, 1.05
MOST_MIB, AT_SIZE = 300.0, 5000
MOST_REFRESH_S = {"save to refresh": 1.5, "save to refresh under MkDocs": 2.5}
REFRESHED = 1000
"""Records at which a save is to be seen so soon."""
MOST_FIGURE_MS = 25.0


def exponents(costs: Mapping[int, Cost]) -> dict[tuple[int, int], float]:
    """Give how cost grows with size between each two sizes: 1 is in proportion."""
    sizes = sorted(costs)
    return {
        (one, other): log(costs[other].cpu_s / costs[one].cpu_s) / log(other / one)
        for one, other in pairwise(sizes)
        if costs[one].cpu_s and costs[other].cpu_s
    }
