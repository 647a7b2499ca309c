"""The voltage that cables and joints take from a circuit, always at a stated current.

A drop without its current says nothing: every function here takes the current, and the budget
gives it back with the drops.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from generator.physics.dividers import lead_drop_v
from generator.physics.domain import Number, OutsideRange, plain, within

_INFINITE = float("inf")

# Common practice, from memory, not a standard: the greatest drop that is not yet suspect, V, at
# the working current of the circuit. The maker's own figure wins.
USUAL_DROP_LIMIT_V = {
    "starter feed": 0.5,
    "engine ground": 0.2,
    "switch or relay contact": 0.3,
    "joint": 0.1,
    "sensor ground": 0.05,
}


def cable_drop_v(current_a: Number, ohm_per_m: Number, length_m: Number) -> Number:
    """Give the voltage along one conductor.

    Parameters
    ----------
    current_a : float or ndarray
        Current, A.
    ohm_per_m : float or ndarray
        Resistance of the conductor at its temperature, ohm/m.
    length_m : float or ndarray
        Length of the conductor, m; count the way back too where it is a cable.

    Returns
    -------
    float or ndarray
        Voltage, V, with the sign of the current.

    Raises
    ------
    OutsideRange
        For a negative resistance or length.

    Notes
    -----
    U = I·R'·l (Ohm).
    """
    within("resistance per metre", ohm_per_m, 0.0, _INFINITE, "ohm/m")
    within("length", length_m, 0.0, _INFINITE, "m")
    return lead_drop_v(current_a, np.asarray(ohm_per_m, dtype=float) * length_m)


def joint_ohm(drop_v: Number, current_a: Number) -> Number:
    """Give the resistance of a joint, contact or cable from its drop under load.

    Parameters
    ----------
    drop_v : float or ndarray
        Voltage across it, V, not negative.
    current_a : float or ndarray
        Current through it at the same moment, A, above zero.

    Returns
    -------
    float or ndarray
        Resistance, ohm.

    Raises
    ------
    OutsideRange
        Without current: then there is no drop to find, whatever the joint is like.
    """
    within("drop", drop_v, 0.0, _INFINITE, "V")
    within("current", current_a, 1e-6, _INFINITE, "A")
    return plain(np.asarray(drop_v, dtype=float) / current_a)


@dataclass(frozen=True)
class Piece:
    """One piece of a circuit that the whole current flows through.

    Attributes
    ----------
    name : str
        What the reader finds there ("battery cable", "main relay contact").
    ohm : float
        Resistance at the temperature it works at, ohm.
    """

    name: str
    ohm: float


@dataclass(frozen=True)
class DropBudget:
    """What each piece of a circuit takes at one current.

    Attributes
    ----------
    current_a : float
        The current all drops belong to, A.
    drops_v : tuple of (str, float)
        Name of each piece and its drop, V, in the order of the circuit.
    total_v : float
        Sum of the drops, V.
    """

    current_a: float
    drops_v: tuple[tuple[str, float], ...]
    total_v: float

    def left_v(self, supply_v: float) -> float:
        """Give what is left for the consumer.

        Parameters
        ----------
        supply_v : float
            Voltage at the source under this current, V.

        Returns
        -------
        float
            Voltage, V.

        Raises
        ------
        OutsideRange
            If the pieces would take more than there is: that current cannot flow.
        """
        within("supply", supply_v, self.total_v, _INFINITE, "V")
        return supply_v - self.total_v


def drop_budget(pieces: Sequence[Piece], current_a: float) -> DropBudget:
    """Give the drop of every piece of a circuit and their sum.

    Parameters
    ----------
    pieces : sequence of Piece
        All that is in series with the consumer, both ways.
    current_a : float
        Current, A, not negative.

    Returns
    -------
    DropBudget

    Raises
    ------
    OutsideRange
        For a negative current or resistance; the error names the piece.

    Notes
    -----
    Kirchhoff's voltage law. A constant current is assumed: a lamp draws less as its voltage falls,
    so its true drops are a little smaller.
    """
    within("current", current_a, 0.0, _INFINITE, "A")
    for piece in pieces:
        if not piece.ohm >= 0.0:
            raise OutsideRange(f"resistance of {piece.name}", piece.ohm, 0.0, _INFINITE, "ohm")
    drops = tuple((piece.name, float(current_a * piece.ohm)) for piece in pieces)
    return DropBudget(float(current_a), drops, sum(drop for _, drop in drops))


def circuit_current_a(pieces: Sequence[Piece], supply_v: float, load_ohm: float) -> float:
    """Give the current of a circuit whose consumer is a resistance.

    Parameters
    ----------
    pieces : sequence of Piece
        All that is in series with the consumer.
    supply_v : float
        Voltage of the source, V.
    load_ohm : float
        Resistance of the consumer at work, ohm, above zero.

    Returns
    -------
    float
        Current, A.

    Raises
    ------
    OutsideRange
        For a voltage or resistance that cannot be.
    """
    within("supply", supply_v, 0.0, _INFINITE, "V")
    within("load", load_ohm, 1e-6, _INFINITE, "ohm")
    within("resistance", [piece.ohm for piece in pieces], 0.0, _INFINITE, "ohm")
    return float(supply_v / (load_ohm + sum(piece.ohm for piece in pieces)))
