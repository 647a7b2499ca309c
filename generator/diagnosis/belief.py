"""What is known moves the odds: Bayes' rule on shares, and on counted cases."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from generator.diagnosis.model import NOTHING

PRIOR_CASES = 20.0
"""How many solved cases the shop's judgement counts for (judgement: a year's worth of one
complaint in a small shop)."""


@dataclass(frozen=True, slots=True)
class Update:
    """What one piece of evidence does.

    Parameters
    ----------
    shares : tuple of float
        Shares after it, adding up to 1.
    expected : float
        Probability of the evidence by the shares before it.
    contradicts : bool
        Whether it cannot be, by the shares before it; they are then left as they were.
    """

    shares: tuple[float, ...]
    expected: float
    contradicts: bool


def update(shares: Sequence[float], likelihoods: Sequence[float]) -> Update:
    """Weigh evidence by Bayes' rule.

    Parameters
    ----------
    shares : sequence of float, shape (n,)
        Shares of the causes before it, adding up to 1.
    likelihoods : sequence of float, shape (n,)
        Probability of the evidence under each cause, 0 to 1.

    Returns
    -------
    Update
        The shares after it; unchanged, and marked, where it cannot be.

    Raises
    ------
    ValueError
        For lengths that differ, or a probability outside 0 to 1.

    Notes
    -----
    share′ᵢ = shareᵢ·lᵢ / Σ share·l.
    """
    if len(shares) != len(likelihoods):
        raise ValueError("one likelihood for each share")
    if any(not 0 <= each <= 1 for each in likelihoods):
        raise ValueError("a likelihood lies between 0 and 1")
    joint = [share * each for share, each in zip(shares, likelihoods, strict=True)]
    expected = sum(joint)
    if expected <= NOTHING:
        return Update(tuple(shares), expected, True)
    return Update(tuple(each / expected for each in joint), expected, False)


def counted(
    weights: Sequence[float], counts: Sequence[int], prior_cases: float = PRIOR_CASES
) -> tuple[float, ...]:
    """Give weights after solved cases.

    Parameters
    ----------
    weights : sequence of float, shape (n,)
        The shop's judgement, not all nought.
    counts : sequence of int, shape (n,)
        Solved cases of each cause that stayed away.
    prior_cases : float
        How many cases the judgement counts for.

    Returns
    -------
    tuple of float
        Weights with the same total as before.

    Raises
    ------
    ValueError
        For lengths that differ, or weights that add up to nothing.

    Notes
    -----
    Mean of the Dirichlet posterior: with prior shares pᵢ worth N cases and nᵢ cases seen, the
    share is (N·pᵢ + nᵢ)/(N + Σn). Holds while cases are independent and the judgement was made
    before them.

    References
    ----------
    Gelman, A. et al. *Bayesian Data Analysis*, the multinomial model with its conjugate prior.
    """
    total = sum(weights)
    if len(weights) != len(counts) or total <= 0:
        raise ValueError("one count for each weight, and weights that add up to something")
    seen = prior_cases + sum(counts)
    return tuple(
        total * (prior_cases * weight / total + count) / seen
        for weight, count in zip(weights, counts, strict=True)
    )
