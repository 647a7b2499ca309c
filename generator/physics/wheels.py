"""The toothed wheel that a speed sensor looks at: tooth rate, and where the teeth are."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from generator.physics.domain import Number, plain, within

# Above the fastest shaft that carries a toothed wheel, a turbocharger's left out (practice).
SPEED_MAX_RPM = 30_000.0
# More positions than any pulse wheel on a road vehicle; encoder rings reach a hundred (practice).
POSITIONS_MAX = 1000
# A figure or a meter's reading needs at least this many samples a tooth to keep the peak within
# 2 % (a sine sampled 16 times a period misses its peak by at most 1 − cos(π/16) = 1.9 %).
SAMPLES_PER_POSITION = 16


def check_wheel(positions: Number, missing: int = 0) -> None:
    """Raise unless a wheel has that many positions and keeps at least one tooth.

    Parameters
    ----------
    positions : int
        Tooth positions of the full wheel (60 for a 60−2 wheel).
    missing : int, optional
        Neighbouring positions without a tooth (2 for a 60−2 wheel).

    Raises
    ------
    OutsideRange
        If either is out of range.
    """
    within("tooth positions", positions, 1, POSITIONS_MAX, "positions")
    within("missing teeth", missing, 0, positions - 1, "teeth")


def tooth_frequency_hz(speed_rpm: Number, positions: int) -> Number:
    """Give the frequency of the teeth passing, away from the gap.

    Parameters
    ----------
    speed_rpm : float or ndarray
        Speed of the wheel, revolutions a minute.
    positions : int
        Tooth positions of the full wheel, the missing ones included.

    Returns
    -------
    float or ndarray
        Frequency, Hz.

    Raises
    ------
    OutsideRange
        For a speed outside 0 to 30 000 rpm or a wheel that cannot be.

    Notes
    -----
    f = positions·n/60. It is what an oscilloscope shows between two neighbouring teeth; a counter
    shows :func:`counted_frequency_hz`.
    """
    check_wheel(positions)
    within("speed", speed_rpm, 0.0, SPEED_MAX_RPM, "rpm")
    return plain(positions * np.asarray(speed_rpm, dtype=float) / 60.0)


def counted_frequency_hz(speed_rpm: Number, positions: int, missing: int) -> Number:
    """Give the mean frequency that a counter shows, counting only teeth that are there.

    Parameters
    ----------
    speed_rpm : float or ndarray
        Speed of the wheel, revolutions a minute.
    positions : int
        Tooth positions of the full wheel.
    missing : int
        Positions without a tooth.

    Returns
    -------
    float or ndarray
        Mean frequency over whole revolutions, Hz.

    Raises
    ------
    OutsideRange
        For a speed or a wheel that cannot be.

    Notes
    -----
    f = (positions − missing)·n/60, for a counter whose gate spans many revolutions; one that times
    single periods jumps between the tooth frequency and the gap's.
    """
    check_wheel(positions, missing)
    return tooth_frequency_hz(speed_rpm, positions - missing)


def speed_rpm_from_counted(frequency_hz: Number, positions: int, missing: int = 0) -> Number:
    """Give the speed from a counter's mean frequency.

    Parameters
    ----------
    frequency_hz : float or ndarray
        Counted frequency, Hz.
    positions, missing : int
        The wheel, as in :func:`counted_frequency_hz`.

    Returns
    -------
    float or ndarray
        Speed of the wheel, revolutions a minute.

    Raises
    ------
    OutsideRange
        If the speed found is outside 0 to 30 000 rpm, or for a wheel that cannot be.
    """
    check_wheel(positions, missing)
    speed_rpm = plain(60.0 * np.asarray(frequency_hz, dtype=float) / (positions - missing))
    within("speed", speed_rpm, 0.0, SPEED_MAX_RPM, "rpm")
    return speed_rpm


def gap_pitches(missing: int) -> int:
    """Give the distance across the gap from tooth to tooth, in pitches.

    Parameters
    ----------
    missing : int
        Neighbouring positions without a tooth.

    Returns
    -------
    int
        One more than the teeth missing: three for a 60−2 wheel, two for a 36−1.
    """
    within("missing teeth", missing, 0, POSITIONS_MAX, "teeth")
    return missing + 1


def sample_positions(positions: int, missing: int, samples: int) -> NDArray[np.float64]:
    """Give the middles of equal steps over one revolution, counted in tooth pitches.

    Parameters
    ----------
    positions, missing : int
        The wheel; its missing teeth are the last positions of the revolution.
    samples : int
        Number of steps; at least 16 a position, so that a peak is not lost between two.

    Returns
    -------
    ndarray, shape (samples,)
        Wheel angle in pitches, 0 to `positions`.

    Raises
    ------
    OutsideRange
        For a wheel that cannot be or too few samples.
    """
    check_wheel(positions, missing)
    within("samples", samples, SAMPLES_PER_POSITION * positions, 10_000_000, "samples")
    return (np.arange(samples, dtype=np.float64) + 0.5) * np.float64(positions / samples)
