"""What a meter shows of a waveform: true RMS, average-responding, peak and mean."""

from __future__ import annotations

from typing import Literal, get_args

import numpy as np
from numpy.typing import NDArray

from generator.physics.domain import within

Response = Literal["true-rms", "average", "peak", "mean"]
Coupling = Literal["ac", "dc"]

# RMS over rectified mean of a sine, π/(2·√2) = 1.11072: the factor to which an
# average-responding meter is scaled (closed form).
SINE_FORM_FACTOR = float(np.pi / (2.0 * np.sqrt(2.0)))


def meter_reading(
    samples: NDArray[np.float64], response: Response, coupling: Coupling = "ac"
) -> float:
    """Give what an ideal meter shows of a waveform.

    Parameters
    ----------
    samples : ndarray, shape (n,)
        Equally spaced samples over a whole number of periods, in volts or amperes.
    response : {"true-rms", "average", "peak", "mean"}
        How the meter forms its reading: root of the mean square; rectified mean scaled to read
        the RMS of a sine; greatest absolute value; plain mean (a DC range).
    coupling : {"ac", "dc"}, optional
        Whether the mean is taken off first. Handheld meters couple their AC ranges "ac"; a
        "mean" is only of use with "dc".

    Returns
    -------
    float
        Reading, in the unit of the samples.

    Raises
    ------
    OutsideRange
        For fewer than two samples.
    ValueError
        For a response or coupling that does not exist.

    Notes
    -----
    The samples must resolve the waveform: for a square wave of duty d the error is of the order
    of the sampling step over the period. A real meter also has a bandwidth and a limit on the
    crest factor (commonly 3 at full scale), which this ideal one lacks.

    References
    ----------
    IEC 60050-103, mean, rectified mean and root-mean-square value; form factor.
    """
    values = np.asarray(samples, dtype=float)
    within("samples", values.size, 2, float("inf"), "samples")
    if coupling not in get_args(Coupling):
        raise ValueError(f"no coupling {coupling!r}")
    if coupling == "ac":
        values = values - values.mean()
    if response == "true-rms":
        return float(np.sqrt(np.mean(values**2)))
    if response == "average":
        return float(SINE_FORM_FACTOR * np.mean(np.abs(values)))
    if response == "peak":
        return float(np.max(np.abs(values)))
    if response == "mean":
        return float(np.mean(values))
    raise ValueError(f"no response {response!r}")


def crest_factor(samples: NDArray[np.float64], coupling: Coupling = "ac") -> float:
    """Give the ratio of peak to RMS value, which says whether a true-RMS meter can cope.

    Parameters
    ----------
    samples : ndarray, shape (n,)
        As for :func:`meter_reading`; not all alike under "ac" coupling.
    coupling : {"ac", "dc"}, optional
        As for :func:`meter_reading`.

    Returns
    -------
    float
        Peak over RMS, dimensionless, at least 1.

    Raises
    ------
    OutsideRange
        If the waveform has no RMS value to divide by.
    """
    rms = meter_reading(samples, "true-rms", coupling)
    within("RMS value", rms, float(np.finfo(float).tiny), float("inf"), "V")
    return meter_reading(samples, "peak", coupling) / rms
