"""How far a meter's reading may be from the truth, and what loading and leads do to it."""

from __future__ import annotations

import math
from dataclasses import dataclass

from generator.physics.dividers import lead_corrected_ohm
from generator.physics.domain import within

_INFINITE = float("inf")


def rectangular_u(half_width: float) -> float:
    """Give the standard uncertainty of a value known only to lie between two ends.

    Parameters
    ----------
    half_width : float
        Half the distance of the ends, not negative.

    Returns
    -------
    float
        Standard uncertainty, in the same unit.

    Raises
    ------
    OutsideRange
        For a negative half-width.

    Notes
    -----
    u = a/√3: every value between the ends is as likely as any other.

    References
    ----------
    JCGM 100:2008, Guide to the expression of uncertainty in measurement, 4.3.7.
    """
    within("half-width", half_width, 0.0, _INFINITE, "")
    return half_width / math.sqrt(3.0)


def combined_u(*parts: float) -> float:
    """Give the standard uncertainty of a sum of independent parts.

    Parameters
    ----------
    *parts : float
        Standard uncertainty of each, in one unit, not negative.

    Returns
    -------
    float
        Root of the sum of squares.

    Raises
    ------
    OutsideRange
        For a negative part.

    References
    ----------
    JCGM 100:2008, 5.1.2.
    """
    within("uncertainty", parts, 0.0, _INFINITE, "")
    return math.hypot(*parts)


@dataclass(frozen=True)
class MeterAccuracy:
    """A meter's stated accuracy on one range: ±(percent of reading + counts).

    Attributes
    ----------
    percent_of_reading : float
        Percent, 0 to 50.
    counts : float
        Counts of the last digit, not negative.
    resolution : float
        What one count of the last digit is on that range, in the unit of the reading, above zero.

    Raises
    ------
    OutsideRange
        For a value beyond those.

    Notes
    -----
    Accuracy as stated holds for the meter's temperature span and until its next calibration.
    """

    percent_of_reading: float
    counts: float
    resolution: float

    def __post_init__(self) -> None:
        within("percent of reading", self.percent_of_reading, 0.0, 50.0, "%")
        within("counts", self.counts, 0.0, 1e6, "counts")
        within("resolution", self.resolution, 1e-15, _INFINITE, "")

    @property
    def counts_half_width(self) -> float:
        """The part of the error that does not depend on the reading."""
        return self.counts * self.resolution

    def half_width(self, reading: float) -> float:
        """Give how far a reading may be from the truth.

        Parameters
        ----------
        reading : float
            What the meter shows.

        Returns
        -------
        float
            Half-width a, in the unit of the reading: |y|·percent/100 + counts·resolution.
        """
        return abs(reading) * self.percent_of_reading / 100.0 + self.counts_half_width

    def standard_uncertainty(self, reading: float) -> float:
        """Give the standard uncertainty of a reading.

        Parameters
        ----------
        reading : float
            What the meter shows.

        Returns
        -------
        float
            a/√3, as :func:`rectangular_u`.
        """
        return rectangular_u(self.half_width(reading))


def unloaded_v(reading_v: float, source_ohm: float, meter_ohm: float) -> float:
    """Give the voltage that was there before the meter loaded it.

    Parameters
    ----------
    reading_v : float
        What the meter shows, V.
    source_ohm : float
        Resistance of the circuit seen from the meter (Thévenin), ohm, not negative.
    meter_ohm : float
        Input resistance of the meter, ohm, above zero.

    Returns
    -------
    float
        Voltage, V.

    Raises
    ------
    OutsideRange
        For a resistance beyond those, or a source of more than ten times the meter: then the
        correction is all there is.

    Notes
    -----
    V = V_m·(1 + R_s/R_m), the inverse of :func:`generator.physics.dividers.metered_v`.
    """
    within("meter resistance", meter_ohm, 1e-6, _INFINITE, "ohm")
    within("source resistance", source_ohm, 0.0, 10.0 * meter_ohm, "ohm")
    return reading_v * (1.0 + source_ohm / meter_ohm)


def nulled_ohm(
    reading_ohm: float, leads_reading_ohm: float, meter: MeterAccuracy
) -> tuple[float, float]:
    """Give a resistance, and its uncertainty, where the leads were measured and taken off.

    Parameters
    ----------
    reading_ohm : float
        Reading on the part, ohm.
    leads_reading_ohm : float
        Reading of the same meter on the same range with the tips together, ohm.
    meter : MeterAccuracy
        Accuracy on that range.

    Returns
    -------
    tuple of float
        Resistance and its standard uncertainty, ohm.

    Raises
    ------
    OutsideRange
        If the reading is below that of the leads.

    Notes
    -----
    The percentage is one and the same error in both readings and counts on the difference; the
    counts err in each by themselves and are combined as independent.
    """
    ohm = float(lead_corrected_ohm(reading_ohm, leads_reading_ohm))
    counts_u = rectangular_u(meter.counts_half_width)
    percent_u = rectangular_u(ohm * meter.percent_of_reading / 100.0)
    return ohm, combined_u(percent_u, counts_u, counts_u)


def un_nulled_ohm(
    reading_ohm: float, leads_ohm: tuple[float, float], meter: MeterAccuracy
) -> tuple[float, float]:
    """Give a resistance, and its uncertainty, where the leads were not taken off.

    Parameters
    ----------
    reading_ohm : float
        Reading on the part through the leads, ohm.
    leads_ohm : tuple of float
        Least and greatest resistance the leads may have, ohm (0.1 to 0.5 in practice).
    meter : MeterAccuracy
        Accuracy on that range.

    Returns
    -------
    tuple of float
        Resistance and its standard uncertainty, ohm. The resistance may come out below zero: the
        reading is then all leads.

    Raises
    ------
    OutsideRange
        If the leads' limits are not in order.

    Notes
    -----
    Known to lie between two ends, the leads' resistance is taken off at its middle and adds a
    rectangular uncertainty. On a part of half an ohm it decides nothing: null the leads, or
    measure the drop under load.
    """
    within("least lead resistance", leads_ohm[0], 0.0, leads_ohm[1], "ohm")
    middle, half = (leads_ohm[0] + leads_ohm[1]) / 2.0, (leads_ohm[1] - leads_ohm[0]) / 2.0
    return reading_ohm - middle, combined_u(
        meter.standard_uncertainty(reading_ohm), rectangular_u(half)
    )
