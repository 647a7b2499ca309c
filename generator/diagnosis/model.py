"""The search for one fault, as plain numbers: what can be wrong, and what can find it.

One fault is present. A test either shows it or misses it, independently of the other tests once
the fault is given. What a test shows either *proves* the fault (it condemns the part) or only
*points* at a few (another test must follow).
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from math import isfinite

NOTHING = 1e-12
"""A share below this counts as none: rounding, not doubt."""


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing that can be wrong.

    Parameters
    ----------
    name : str
        Its name.
    weight : float
        How often it is this, against the others; not negative.
    """

    name: str
    weight: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Probe:
    """A test, as far as its place in an order goes.

    Parameters
    ----------
    id : str
        Its name.
    minutes : float
        Its time from a restored vehicle to a restored vehicle.
    proves : mapping of str to float
        Fault to the share of such faults that it condemns, 0 to 1.
    points : mapping of str to float
        Fault to the share of such faults that it shows without proving them.
    specificity : float
        Share of vehicles without any of its faults on which it shows nothing.
    wrong_minutes : float
        Work thrown away when it condemns a good part.
    after : frozenset of str
        Tests that must be made before it.
    leaves, takes : frozenset of str
        Set-ups that may stay as they are after it, and that it can take over from the test before.
    """

    id: str
    minutes: float
    proves: Mapping[str, float] = field(default_factory=dict)
    points: Mapping[str, float] = field(default_factory=dict)
    specificity: float = 1.0
    wrong_minutes: float = 0.0
    after: frozenset[str] = frozenset()
    leaves: frozenset[str] = frozenset()
    takes: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True, kw_only=True)
class Search:
    """Everything that decides the order of tests.

    Parameters
    ----------
    faults : tuple of Fault
        What can be wrong; exactly one is.
    probes : tuple of Probe
        What can find it.
    setup_minutes : mapping of str to float
        What a set-up and its undoing take together.
    precedence : frozenset of (str, str)
        Pairs of tests: if both are made, the first is made first.
    concludes_last : bool
        Whether the only fault left is taken as proved without its test. A shop never does that;
        it is here because the published rule depends on it.

    Raises
    ------
    ValueError
        For figures out of range, names that are not there or not unique, and an order of tests
        that nobody could follow.
    """

    faults: tuple[Fault, ...]
    probes: tuple[Probe, ...]
    setup_minutes: Mapping[str, float] = field(default_factory=dict)
    precedence: frozenset[tuple[str, str]] = frozenset()
    concludes_last: bool = False

    def __post_init__(self) -> None:
        names = [fault.name for fault in self.faults]
        ids = [probe.id for probe in self.probes]
        for what, found in (("fault", names), ("test", ids)):
            if len(set(found)) != len(found):
                raise ValueError(f"a {what} is there twice")
        weights = [fault.weight for fault in self.faults]
        if any(not isfinite(w) or w < 0 for w in weights) or sum(weights) <= 0:
            raise ValueError("the weights must be finite, not negative, and not all nought")
        for probe in self.probes:
            _check(probe, set(names), set(ids))
        for pair in self.precedence:
            if not set(pair) <= set(ids):
                raise ValueError(f"{pair} names a test that is not there")
        if circular(self.probes, self.precedence):
            raise ValueError("the tests wait for each other")


def _check(probe: Probe, names: set[str], ids: set[str]) -> None:
    shares = [*probe.proves.values(), *probe.points.values()]
    if not isfinite(probe.minutes) or probe.minutes <= 0:
        raise ValueError(f"{probe.id} must take some minutes")
    if any(not 0 < share <= 1 for share in shares):
        raise ValueError(f"{probe.id} shows a share outside 0 to 1")
    if not 0 < probe.specificity <= 1 or not 0 <= probe.wrong_minutes < float("inf"):
        raise ValueError(f"{probe.id} has a specificity or a cost that cannot be")
    if set(probe.proves) & set(probe.points):
        raise ValueError(f"{probe.id} both proves a fault and only points at it")
    if not (set(probe.proves) | set(probe.points)) <= names or not probe.after <= ids:
        raise ValueError(f"{probe.id} names something that is not there")


def circular(probes: Iterable[Probe], precedence: Iterable[tuple[str, str]] = ()) -> bool:
    """Say whether tests wait for each other in a circle."""
    before = {probe.id: set(probe.after) for probe in probes}
    for first, second in precedence:
        before[second].add(first)
    while before:
        free = [id_ for id_, waits in before.items() if not waits & before.keys()]
        if not free:
            return True
        for id_ in free:
            del before[id_]
    return False
