"""Ways to choose the next test: exactly, by looking ahead, by ratio, or as people do it."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from generator.diagnosis.model import NOTHING
from generator.diagnosis.state import Board, State

Choose = Callable[[State], int]
"""Gives the test to make next; asked only where one is allowed."""

EXACT_STATES = 20_000
"""Size up to which the search is exact: about half a second for one order on a small machine."""

TRIED = 4
"""Tests that looking ahead tries at each place, of each ratio's best. All of them, measured on the
largest orders, took four times the time and gave the same minutes within 0.2 %."""

POINTED_AHEAD = 1
"""Pointing tests behind which looking ahead ends: what comes then is rare, and goes by ratio."""


class TooLarge(ValueError):
    """The exact search would take too long."""


def expected_minutes(board: Board, choose: Choose, state: State | None = None) -> float:
    """Give the expected minutes until the fault is proved, or nothing is left to test.

    Parameters
    ----------
    board : Board
        The search.
    choose : callable
        The way the next test is chosen.
    state : State, optional
        Where the search stands; its start where none is given.

    Returns
    -------
    float
        Minutes, weighted by the mass of the state: at the start, plain minutes.

    Notes
    -----
    For independent tests of one fault that show it for certain this is Σ (1 − Σ earlier p)·c.

    References
    ----------
    Kadane, J. B. & Simon, H. A. (1977). Optimal strategies for a class of constrained sequential
    problems. *Annals of Statistics* 5, 237.
    """
    here = board.start() if state is None else state
    total = 0.0
    while sum(here.mass) > NOTHING and not board.finished(here):
        j = choose(here)
        total += board.step_cost(here, j)
        if board.points(j):
            total += expected_minutes(board, choose, board.pointed(here, j))
        here = board.clear(here, j)
    return total


def clear_line(board: Board, choose: Choose, state: State | None = None) -> list[State]:
    """Give the states passed while no test shows anything, from a state or the start on."""
    states = [board.start() if state is None else state]
    while sum(states[-1].mass) > NOTHING and not board.finished(states[-1]):
        states.append(board.clear(states[-1], choose(states[-1])))
    return states


class Exact:
    """The best choice everywhere, by dynamic programming over what is done.

    Parameters
    ----------
    board : Board
        The search.
    limit : int
        Number of states above which to give up.

    Raises
    ------
    TooLarge
        Where there are more states than the limit.

    Notes
    -----
    The recursion over sets of jobs done is Held & Karp's, here with branches where a test points.

    References
    ----------
    Held, M. & Karp, R. M. (1962). A dynamic programming approach to sequencing problems.
    *Journal of the SIAM* 10, 196.
    """

    def __init__(self, board: Board, limit: int = EXACT_STATES) -> None:
        self.board = board
        self._limit = limit
        self._best: dict[tuple[int, int, int], tuple[float, int]] = {}
        self.minutes = self._value(board.start())

    def __call__(self, state: State) -> int:
        """Give the best next test."""
        self._value(state)
        return self._best[self._key(state)][1]

    def _key(self, state: State) -> tuple[int, int, int]:
        group = -1 if state.last < 0 else self.board.group[state.last]
        return (state.done, state.pointed, group)

    def _value(self, state: State) -> float:
        key = self._key(state)
        known = self._best.get(key)
        if known is not None:
            return known[0]
        board = self.board
        if sum(state.mass) <= NOTHING or board.concluded(state):
            return 0.0
        allowed = board.allowed(state)
        if not allowed:
            return 0.0
        if len(self._best) >= self._limit:
            raise TooLarge(f"more than {self._limit} states")
        self._best[key] = (0.0, -1)  # holds the place, so that the count is of states begun
        best = (float("inf"), -1)
        for j in allowed:
            value = board.step_cost(state, j) + self._value(board.clear(state, j))
            if board.points(j):
                value += self._value(board.pointed(state, j))
            if value < best[0] - NOTHING:
                best = (value, j)
        self._best[key] = best
        return best[0]


class ByRatio:
    """Most doubt settled a minute first; a test that waits for others counts with them.

    For independent perfect tests of one fault this is p/c, and no order is better.

    Parameters
    ----------
    board : Board
        The search.
    pointing : float
        What doubt that is only pointed at counts for, against doubt that is settled.

    References
    ----------
    Heckerman, D., Breese, J. S. & Rommelse, K. (1995). Decision-theoretic troubleshooting.
    *Communications of the ACM* 38(3), 49. For tests that can overlook what they look for: Chew,
    M. C. (1967). A sequential search procedure. *Annals of Mathematical Statistics* 38, 494.
    """

    def __init__(self, board: Board, pointing: float = 1.0) -> None:
        self.board = board
        self._pointing = pointing

    def __call__(self, state: State) -> int:
        """Give the first test of the block with the best ratio."""
        return self.ranked(state)[0]

    def ranked(self, state: State) -> list[int]:
        """Give the first tests of all blocks, that with the best ratio first, each once."""
        board = self.board
        alive = sum(1 << n for n, m in enumerate(state.mass) if m > NOTHING)
        useful = board.useful(state)
        ranks: list[tuple[float, float, int, int]] = []
        for j in range(len(board.minutes)):
            if not useful >> j & 1 or not board.shows[j] & alive:
                continue
            block = self._block(state, j, useful)
            settled, cost, here = 0.0, 0.0, state
            for k in block:
                before = sum(here.mass)
                cost += board.step_cost(here, k) / before if before > NOTHING else 0.0
                after = board.clear(here, k)
                settled += before - sum(after.mass)
                if board.points(k) and self._pointing != 1:
                    settled -= (1 - self._pointing) * sum(board.pointed(here, k).mass)
                here = after
            # The block's own minutes break a tie: the shorter first. Rounded, since the same state
            # reached by another way carries other last digits, and must get the same answer.
            share = settled / sum(state.mass)
            ranks.append((round(-share / cost, 9), round(cost, 9), j, block[0]))
        if not ranks:  # only tests that wait for nothing and show nothing are left
            return board.allowed(state)
        return list(dict.fromkeys(first for *_, first in sorted(ranks)))

    def _block(self, state: State, j: int, useful: int) -> list[int]:
        """Give a test behind everything that must still come before it."""
        board = self.board
        wanted = 1 << j
        for k in reversed(board.topological):
            if wanted >> k & 1:
                wanted |= board.waits_for(k, useful) & ~state.done
        return [k for k in board.topological if wanted >> k & 1]


class LookAhead:
    """Try the best few tests first, finish by ratio, and take the best: one step of improvement.

    It finishes by whichever of two ratios is better from there: one counts what is only pointed
    at as settled, one as not. Never worse than going by either from the start.

    Parameters
    ----------
    board : Board
        The search.

    References
    ----------
    Bertsekas, D. P., Tsitsiklis, J. N. & Wu, C. (1997). Rollout algorithms for combinatorial
    optimization. *Journal of Heuristics* 3, 245.
    """

    def __init__(self, board: Board) -> None:
        self.board = board
        self._bases = [ByRatio(board), ByRatio(board, pointing=0.0)]
        self._known: dict[tuple[int, tuple[int, int, int]], float] = {}
        self._chosen: dict[tuple[int, int, int], int] = {}

    def __call__(self, state: State) -> int:
        """Give the test that is best when the rest goes by ratio."""
        if state.pointed.bit_count() > POINTED_AHEAD:
            better = min(range(len(self._bases)), key=lambda n: round(self._finish(state, n), 9))
            return self._bases[better](state)
        key = (state.done, state.pointed, state.last)
        if key not in self._chosen:
            tried = {j for base in self._bases for j in base.ranked(state)[:TRIED]}
            self._chosen[key] = min(tried, key=lambda j: (round(self._after(state, j), 9), j))
        return self._chosen[key]

    def _after(self, state: State, j: int) -> float:
        board = self.board
        value = board.step_cost(state, j) + self._rest(board.clear(state, j))
        return value + self._rest(board.pointed(state, j)) if board.points(j) else value

    def _rest(self, state: State) -> float:
        """Give the expected minutes when the rest goes by the better ratio."""
        return min(self._finish(state, n) for n in range(len(self._bases)))

    def _finish(self, state: State, n: int) -> float:
        board = self.board
        if sum(state.mass) <= NOTHING or board.finished(state):
            return 0.0
        key = (n, (state.done, state.pointed, state.last))
        if key not in self._known:
            j = self._bases[n](state)
            value = board.step_cost(state, j) + self._finish(board.clear(state, j), n)
            if board.points(j):
                value += self._finish(board.pointed(state, j), n)
            self._known[key] = value
        return self._known[key]


class InThisOrder:
    """A fixed list; a test that waits for others has them made first.

    Parameters
    ----------
    board : Board
        The search.
    ids : iterable of str
        Tests, first one first; those not named come last.
    """

    def __init__(self, board: Board, ids: Iterable[str]) -> None:
        self.board = board
        named = [board.index[id_] for id_ in ids if id_ in board.index]
        rest = [j for j in range(len(board.minutes)) if j not in named]
        self._order = [*dict.fromkeys(named), *rest]

    def __call__(self, state: State) -> int:
        """Give the first test of the list that still tells something, or what it waits for."""
        useful = self.board.useful(state)
        wanted = next(j for j in self._order if useful >> j & 1)
        while waits := self.board.waits_for(wanted, useful) & ~state.done:
            wanted = next(j for j in self._order if waits >> j & 1)
        return wanted


def best_choice(board: Board, limit: int = EXACT_STATES) -> tuple[Choose, str]:
    """Give the best way that can be had in time, and its name: ratio, exact or look_ahead."""
    if is_simple(board):
        return ByRatio(board), "ratio"
    try:
        return Exact(board, limit), "exact"
    except TooLarge:
        return LookAhead(board), "look_ahead"


def is_simple(board: Board) -> bool:
    """Say whether p/c is exact: each test alone, for one fault, each fault by one test."""
    search = board.search
    shown = [name for probe in search.probes for name in (*probe.proves, *probe.points)]
    return (
        not search.concludes_last
        and not search.precedence
        and len(shown) == len(set(shown)) == len(search.probes)
        and all(
            len(probe.proves) == 1
            and not probe.after
            and (probe.specificity == 1 or not probe.wrong_minutes)
            for probe in search.probes
        )
        and not any(a.leaves & b.takes for a in search.probes for b in search.probes if a != b)
    )
