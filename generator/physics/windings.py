"""Resistance of windings and wires against temperature."""

from __future__ import annotations

from dataclasses import dataclass

from generator.physics.domain import Number, plain, spread, within


@dataclass(frozen=True)
class Conductor:
    """A conductor whose resistance is linear in temperature.

    Attributes
    ----------
    name : str
        The name that records use.
    alpha_per_k : float
        Temperature coefficient of resistance at 20 °C, per kelvin.
    low_c, high_c : float
        Temperatures between which the straight line holds, °C.
    """

    name: str
    alpha_per_k: float
    low_c: float
    high_c: float


# The temperature at which every coefficient below is stated, °C (IEC 60028 and wire makers alike).
ALPHA_REF_C = 20.0

_CONDUCTORS = (
    # IEC 60028: annealed copper, constant-mass coefficient 0.00393 per K at 20 °C; NBS
    # Handbook 100 (1966) calls the relation linear over the ordinary range of use.
    Conductor("copper", 3.93e-3, -50.0, 200.0),
    # IEC 60889: hard-drawn aluminium wire, 0.00403 per K at 20 °C.
    Conductor("aluminium", 4.03e-3, -50.0, 200.0),
    # Modelica Standard Library, Electrical.Machines.Thermal.Constants: brass.
    Conductor("brass", 1.10e-3, -50.0, 150.0),
    # Modelica Standard Library, Electrical.Machines.Thermal.Constants: bronze.
    Conductor("bronze", 0.80e-3, -50.0, 150.0),
    # Printed factor table of Cr20Ni80 heating wire: 1.012 at 200 °C, 1.018 at 300, 1.025 at 400,
    # a line of 6.5e-5 per K within 0.001; above 400 °C the curve bends back.
    Conductor("nichrome", 6.5e-5, -50.0, 400.0),
    # The same table, Cr25Al5 heating wire: 1.005 at 200 °C, 1.008 at 300, a line within 0.001.
    Conductor("iron-chromium-aluminium", 2.8e-5, -50.0, 300.0),
    # T. R. Kuphaldt, Lessons in Electric Circuits, vol. I (DC), chapter 12: constantan (CuNi44).
    Conductor("constantan", -7.4e-5, -50.0, 150.0),
    # The same table: manganin, ±1.5e-5 per K, so a coefficient of zero within what is known.
    Conductor("manganin", 0.0, -50.0, 100.0),
)

CONDUCTORS: dict[str, Conductor] = {conductor.name: conductor for conductor in _CONDUCTORS}


def conductor(material: str) -> Conductor:
    """Give the conductor of that name.

    Parameters
    ----------
    material : str
        A key of `CONDUCTORS`.

    Returns
    -------
    Conductor

    Raises
    ------
    ValueError
        For a name that is not in the table.
    """
    try:
        return CONDUCTORS[material]
    except KeyError:
        known = ", ".join(CONDUCTORS)
        raise ValueError(f"no conductor {material!r}; known are {known}") from None


def temperature_coefficient_per_k(ref_c: Number, material: str = "copper") -> Number:
    """Give the temperature coefficient referred to another temperature than 20 °C.

    Parameters
    ----------
    ref_c : float or ndarray
        Reference temperature, °C.
    material : str, optional
        A key of `CONDUCTORS`.

    Returns
    -------
    float or ndarray
        Coefficient per kelvin of the resistance at `ref_c`.

    Raises
    ------
    OutsideRange
        If `ref_c` leaves the conductor's range.
    ValueError
        For an unknown material.

    Notes
    -----
    α_ref = α20 / (1 + α20·(t_ref − 20)): the slope in ohms is one and the same, its share of a
    larger resistance is smaller. Using the 20 °C figure at a reference of 25 °C errs by 2 %.

    References
    ----------
    NBS Handbook 100, Copper Wire Tables (1966).
    """
    wire = conductor(material)
    within("reference temperature", ref_c, wire.low_c, wire.high_c, "°C")
    return plain(wire.alpha_per_k / (1.0 + wire.alpha_per_k * (ref_c - ALPHA_REF_C)))


def winding_ohm(
    nominal_ohm: Number, temp_c: Number, ref_c: Number = 20.0, material: str = "copper"
) -> Number:
    """Give the resistance of a winding at a temperature.

    Parameters
    ----------
    nominal_ohm : float or ndarray
        Resistance at the reference temperature, ohm; not negative.
    temp_c : float or ndarray
        Temperature of the winding itself (not of the air), °C.
    ref_c : float or ndarray, optional
        Temperature at which `nominal_ohm` is stated, °C.
    material : str, optional
        A key of `CONDUCTORS`.

    Returns
    -------
    float or ndarray
        Resistance, ohm.

    Raises
    ------
    OutsideRange
        If a temperature leaves the conductor's range or the resistance is negative.
    ValueError
        For an unknown material.

    Notes
    -----
    R = R_ref·(1 + α_ref·(t − t_ref)), with α_ref from :func:`temperature_coefficient_per_k`; for
    copper this is (234.5 + t)/(234.5 + t_ref) to 1e-4. The table of factors printed with IEC 60228
    rounds the copper form to (230 + t)/250 and differs in the third figure; it is not used here.

    References
    ----------
    IEC 60028, International standard of resistance for copper.
    NBS Handbook 100, Copper Wire Tables (1966).
    """
    wire = conductor(material)
    within("resistance", nominal_ohm, 0.0, float("inf"), "ohm")
    within("temperature", temp_c, wire.low_c, wire.high_c, "°C")
    alpha = temperature_coefficient_per_k(ref_c, material)
    return plain(nominal_ohm * (1.0 + alpha * (temp_c - ref_c)))


def winding_band(
    low_ohm: float,
    nominal_ohm: float,
    high_ohm: float,
    temp_c: Number,
    temp_tolerance_k: float = 0.0,
    ref_c: float = 20.0,
    material: str = "copper",
) -> tuple[Number, Number, Number]:
    """Give the limits of a winding at a temperature from its limits at the reference.

    Parameters
    ----------
    low_ohm, nominal_ohm, high_ohm : float
        Limits and nominal value at the reference temperature, ohm, in rising order.
    temp_c : float or ndarray
        Temperature of the winding, °C.
    temp_tolerance_k : float, optional
        How far the true temperature may lie from `temp_c` either way, K.
    ref_c : float, optional
        Temperature at which the limits are stated, °C.
    material : str, optional
        A key of `CONDUCTORS`.

    Returns
    -------
    tuple of (float or ndarray)
        Low, nominal and high resistance, ohm.

    Raises
    ------
    OutsideRange
        If the limits are not in order, or as :func:`winding_ohm` over the whole of the
        temperature's tolerance.

    Notes
    -----
    Resistance is proportional to its reference value and monotonic in temperature, so the limits
    lie at the corners: the band is exact.
    """
    within("low limit", low_ohm, 0.0, nominal_ohm, "ohm")
    within("high limit", high_ohm, nominal_ohm, float("inf"), "ohm")
    within("temperature tolerance", temp_tolerance_k, 0.0, float("inf"), "K")
    ends_c = (temp_c - temp_tolerance_k, temp_c + temp_tolerance_k)
    low, _ = spread(*(winding_ohm(low_ohm, end_c, ref_c, material) for end_c in ends_c))
    _, high = spread(*(winding_ohm(high_ohm, end_c, ref_c, material) for end_c in ends_c))
    return low, winding_ohm(nominal_ohm, temp_c, ref_c, material), high


def winding_temp_c(
    ohm: Number, nominal_ohm: Number, ref_c: Number = 20.0, material: str = "copper"
) -> Number:
    """Give a winding's mean temperature from its resistance.

    Parameters
    ----------
    ohm : float or ndarray
        Resistance now, ohm.
    nominal_ohm : float or ndarray
        Resistance of the same winding at `ref_c`, ohm; above zero.
    ref_c : float or ndarray, optional
        Reference temperature, °C.
    material : str, optional
        A key of `CONDUCTORS`.

    Returns
    -------
    float or ndarray
        Temperature, °C.

    Raises
    ------
    OutsideRange
        If the temperature found leaves the conductor's range.
    ValueError
        For an unknown material, or one whose resistance does not tell its temperature.

    Notes
    -----
    The inverse of :func:`winding_ohm`. An error of 1 % in either resistance is about 2.5 K for
    copper, and over 100 K for a heating alloy, where the result means nothing.
    """
    wire = conductor(material)
    if wire.alpha_per_k == 0.0:
        raise ValueError(f"{material} keeps its resistance: it does not tell a temperature")
    within("reference resistance", nominal_ohm, 1e-9, float("inf"), "ohm")
    alpha = temperature_coefficient_per_k(ref_c, material)
    temp_c = plain(ref_c + (ohm / nominal_ohm - 1.0) / alpha)
    within("temperature", temp_c, wire.low_c, wire.high_c, "°C")
    return temp_c
