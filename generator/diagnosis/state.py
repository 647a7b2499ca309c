"""Where a search stands, and what each test would do to it.

A state is the tests made, those of them that pointed, and what set-up the last one left. The mass
of a fault is its probability times that of everything seen so far given the fault, so that
nothing is ever divided: expected minutes weighted by mass add up over branches.
"""

from __future__ import annotations

from functools import cached_property
from operator import mul
from typing import NamedTuple

from generator.diagnosis.model import NOTHING, Search

Mass = tuple[float, ...]
NO_TEST = -1


class State(NamedTuple):
    """Where a search stands.

    Parameters
    ----------
    done, pointed : int
        Bit sets of the tests made, and of those among them that pointed at their faults.
    last : int
        The last test made, or NO_TEST.
    mass : tuple of float
        For each fault, its probability together with all that was seen.
    """

    done: int
    pointed: int
    last: int
    mass: Mass


class Board:
    """A search, laid out by index so that a state is cheap.

    Parameters
    ----------
    search : Search
        The faults and the tests.
    """

    def __init__(self, search: Search) -> None:
        self.search = search
        number = {fault.name: n for n, fault in enumerate(search.faults)}
        index = {probe.id: n for n, probe in enumerate(search.probes)}
        self.index = index
        self.minutes = [probe.minutes for probe in search.probes]
        self._proves = [{number[f]: s for f, s in p.proves.items()} for p in search.probes]
        self._points = [{number[f]: s for f, s in p.points.items()} for p in search.probes]
        self._false = [1 - probe.specificity for probe in search.probes]
        self._wrong = [probe.wrong_minutes for probe in search.probes]
        self.after = [sum(1 << index[a] for a in probe.after) for probe in search.probes]
        self._first = [0] * len(index)
        for first, second in search.precedence:
            self._first[index[second]] |= 1 << index[first]
        self.shows = [
            sum(1 << n for n in (*a, *b)) for a, b in zip(self._proves, self._points, strict=True)
        ]
        self._uncovers = [
            bool(wrong and falsely and proves)
            for wrong, falsely, proves in zip(self._wrong, self._false, self._proves, strict=True)
        ]
        self._others = [
            [n for n in range(len(search.faults)) if not shows >> n & 1] for shows in self.shows
        ]
        self._bits = [1 << n for n in range(len(search.faults))]
        self._useful: dict[tuple[int, int], int] = {}
        self._allowed: dict[tuple[int, int], list[int]] = {}
        self._clear = [self._factors(n, pointed=False) for n in range(len(index))]
        self._pointed = [self._factors(n, pointed=True) for n in range(len(index))]
        groups: dict[frozenset[str], int] = {}
        self.group = [groups.setdefault(p.leaves, len(groups)) for p in search.probes]
        self._saved = [[self._saving(a, b) for b in range(len(index))] for a in range(len(index))]

    @cached_property
    def topological(self) -> list[int]:
        """The tests, each behind all that it waits for."""
        order: list[int] = []
        placed = 0
        waiting = list(range(len(self.minutes)))
        while waiting:
            free = [j for j in waiting if not (self.after[j] | self._first[j]) & ~placed]
            order += free
            placed |= sum(1 << j for j in free)
            waiting = [j for j in waiting if j not in free]
        return order

    def start(self) -> State:
        """Give the state before any test."""
        total = sum(fault.weight for fault in self.search.faults)
        return State(0, 0, NO_TEST, tuple(fault.weight / total for fault in self.search.faults))

    def finished(self, state: State) -> bool:
        """Say whether nothing is left to do: no test can show what may still be there."""
        return self.concluded(state) or not self.allowed(state)

    def concluded(self, state: State) -> bool:
        """Say whether one fault alone is left, where that is conclusion enough."""
        return self.search.concludes_last and sum(m > NOTHING for m in state.mass) <= 1

    def useful(self, state: State) -> int:
        """Give the bit set of tests that can still show something, and of what they wait for."""
        alive = 0
        for bit, m in zip(self._bits, state.mass, strict=True):
            if m > NOTHING:
                alive |= bit
        key = (state.done, alive)
        if key not in self._useful:
            wanted = sum(1 << j for j, s in enumerate(self.shows) if s & alive) & ~state.done
            for j in reversed(self.topological):
                if wanted >> j & 1:
                    wanted |= self.after[j] & ~state.done
            self._useful[key] = wanted
        return self._useful[key]

    def allowed(self, state: State) -> list[int]:
        """Give the tests that may come next."""
        key = (state.done, self.useful(state))
        found = self._allowed.get(key)
        if found is None:
            done, useful = key
            found = self._allowed[key] = [
                j for j in range(len(self.minutes))
                if useful >> j & 1
                and not self.after[j] & ~done
                and not self._first[j] & useful
            ]  # fmt: skip
        return found

    def waits_for(self, j: int, useful: int) -> int:
        """Give the bit set of tests that must be made before one, as long as they are useful."""
        return self.after[j] | (self._first[j] & useful)

    def saved(self, last: int, j: int) -> float:
        """Give the minutes saved by set-up that the last test may leave for this one."""
        return 0.0 if last == NO_TEST else self._saved[last][j]

    def step_cost(self, state: State, j: int) -> float:
        """Give the minutes of a test times the mass that pays them, false alarms included."""
        total = sum(state.mass)
        cost = total * (self.minutes[j] - self.saved(state.last, j))
        if self._uncovers[j]:
            others = sum([state.mass[n] for n in self._others[j]])
            cost += others * self._false[j] * self._wrong[j]
        return cost

    def clear(self, state: State, j: int) -> State:
        """Give the state after a test that showed nothing."""
        factors = self._clear[j]
        mass = tuple(map(mul, state.mass, factors))
        return State(state.done | 1 << j, state.pointed, j, mass)

    def points(self, j: int) -> bool:
        """Say whether a test can show a fault without proving it."""
        return bool(self._points[j])

    def pointed(self, state: State, j: int) -> State:
        """Give the state after a test that pointed at its faults."""
        factors = self._pointed[j]
        mass = tuple(map(mul, state.mass, factors))
        return State(state.done | 1 << j, state.pointed | 1 << j, j, mass)

    def _factors(self, j: int, *, pointed: bool) -> Mass:
        """Give the probability, under each fault, that a test shows nothing, or that it points."""
        proves, points = self._proves[j], self._points[j]
        # A test that proves anything gives its false alarms as condemnations, which the check
        # after the repair uncovers; one that only points gives false pointers.
        falsely = self._false[j] if points and not proves else 0.0
        found = []
        for n in range(len(self.search.faults)):
            if n in points:
                found.append(points[n] if pointed else 1 - points[n])
            elif n in proves:
                found.append(0.0 if pointed else 1 - proves[n])
            else:
                found.append(falsely if pointed else 1 - falsely)
        return tuple(found)

    def _saving(self, first: int, second: int) -> float:
        shared = self.search.probes[first].leaves & self.search.probes[second].takes
        minutes = sum(self.search.setup_minutes.get(name, 0.0) for name in shared)
        # The reading itself always takes its time, however set-up was judged.
        return min(minutes, self.minutes[second] / 2)
