"""A 12 V lead-acid battery: rest voltage and limits under load."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.physics.curves import TabulatedCurve
from generator.physics.domain import Number, plain, within

# Cells in series of a 12 V battery.
CELLS = 6


@dataclass(frozen=True)
class BatteryKind:
    """How one kind of battery rests.

    Attributes
    ----------
    name : str
        The name that records use.
    rest : TabulatedCurve
        Rest voltage of six cells in V over state of charge (0 to 1), at 26.7 °C.
    spread_v : float
        How far a sound battery of this kind may lie from the curve either way, V.
    """

    name: str
    rest: TabulatedCurve
    spread_v: float


def _rest(*volts: float) -> TabulatedCurve:
    names = {"name": "rest voltage", "x_name": "state of charge", "y_unit": "V"}
    return TabulatedCurve((0.0, 0.25, 0.5, 0.75, 1.0), volts, "linear", **names)


_KINDS = (
    # A battery maker's published table, 12.65 V or a density of 1.265 as full, at 26.7 °C; spread
    # ±0.05 V as published with it.
    BatteryKind("flooded", _rest(11.89, 12.06, 12.24, 12.45, 12.65), 0.05),
    # Practice: an enhanced flooded battery is filled a little denser than a plain one, 0.05 V up.
    BatteryKind("efb", _rest(11.94, 12.11, 12.29, 12.50, 12.70), 0.10),
    # A published table of absorbed-glass-mat batteries; others in print differ by up to 0.15 V,
    # which is the spread.
    BatteryKind("agm", _rest(11.80, 12.00, 12.30, 12.60, 12.90), 0.15),
)

KINDS: dict[str, BatteryKind] = {kind.name: kind for kind in _KINDS}

# Temperature the rest tables hold at, °C (80 °F).
REST_REF_C = 26.7
# Rise of a lead-acid cell's electromotive force with temperature near full charge, V/K (H. Bode,
# Lead-Acid Batteries, 1977, from memory: about 0.2 mV/K).
EMF_V_PER_K = 0.2e-3
# Temperatures of a battery at which a rest voltage is read as a state of charge, °C: below it the
# voltage takes days to settle.
REST_MIN_C, REST_MAX_C = 0.0, 50.0

# Least voltage at the end of 15 s at half the cold-cranking current, V over °C (long-standing
# practice, printed in steps of 10 °F; it is kept level above 21 °C).
_LOAD_BANK = TabulatedCurve(
    (-17.8, -12.2, -6.7, -1.1, 4.4, 10.0, 15.6, 21.1, 50.0),
    (8.5, 8.7, 8.9, 9.1, 9.3, 9.4, 9.5, 9.6, 9.6),
    name="load-bank limit", x_name="battery temperature", x_unit="°C", y_unit="V",
)  # fmt: skip
# Least voltage while the starter turns a sound engine, V over °C (practice: 9.6 V in the warm,
# 8 V in a hard frost, which needs more torque for longer).
_CRANKING = TabulatedCurve(
    (-18.0, 21.0, 50.0), (8.0, 9.6, 9.6),
    name="cranking minimum", x_name="battery temperature", x_unit="°C", y_unit="V",
)  # fmt: skip


def battery_kind(kind: str) -> BatteryKind:
    """Give the kind of battery of that name.

    Parameters
    ----------
    kind : {"flooded", "efb", "agm"}
        A key of `KINDS`.

    Returns
    -------
    BatteryKind

    Raises
    ------
    ValueError
        For a name that is not in the table.
    """
    if kind not in KINDS:
        raise ValueError(f"no kind of battery {kind!r}; known are {', '.join(KINDS)}")
    return KINDS[kind]


def _rest_shift_v(temp_c: Number) -> Number:
    within("battery temperature", temp_c, REST_MIN_C, REST_MAX_C, "°C")
    return CELLS * EMF_V_PER_K * (np.asarray(temp_c, dtype=float) - REST_REF_C)


def rest_voltage_band_v(
    charge: Number, kind: str = "flooded", temp_c: Number = REST_REF_C
) -> tuple[Number, Number, Number]:
    """Give the voltage of a battery at rest from its state of charge.

    Parameters
    ----------
    charge : float or ndarray
        State of charge, 0 to 1.
    kind : {"flooded", "efb", "agm"}, optional
        Kind of battery.
    temp_c : float or ndarray, optional
        Temperature of the battery, 0 to 50 °C.

    Returns
    -------
    tuple of (float or ndarray)
        Low, nominal and high voltage, V.

    Raises
    ------
    OutsideRange
        For a state of charge or a temperature beyond its range.
    ValueError
        For an unknown kind.

    Notes
    -----
    Straight between the rows of a printed table, plus 1.2 mV/K. Printed corrections for
    temperature disagree, some even in sign, because they convert hydrometer corrections; the
    thermodynamic one is used, and is smaller than the spread. "At rest" means some hours without
    charge or load and the surface charge taken off.
    """
    battery = battery_kind(kind)
    nominal = plain(np.asarray(battery.rest.at(charge)) + _rest_shift_v(temp_c))
    return nominal - battery.spread_v, nominal, nominal + battery.spread_v


def state_of_charge_band(
    rest_v: Number, kind: str = "flooded", temp_c: Number = REST_REF_C
) -> tuple[Number, Number, Number]:
    """Give the state of charge of a battery from its voltage at rest.

    Parameters
    ----------
    rest_v : float or ndarray
        Voltage at rest, V.
    kind : {"flooded", "efb", "agm"}, optional
        Kind of battery.
    temp_c : float or ndarray, optional
        Temperature of the battery, 0 to 50 °C.

    Returns
    -------
    tuple of (float or ndarray)
        Low, nominal and high state of charge, 0 to 1.

    Raises
    ------
    OutsideRange
        If the voltage lies beyond the table by more than the spread. Above it is a surface
        charge or another kind of battery; below it the battery is flat or has lost a cell, and
        no state of charge describes it.
    ValueError
        For an unknown kind.

    Notes
    -----
    The inverse of :func:`rest_voltage_band_v`. It tells the charge, not the health: a worn-out
    battery may rest at 12.6 V.
    """
    battery = battery_kind(kind)
    volts = np.asarray(rest_v, dtype=float) - _rest_shift_v(temp_c)
    empty_v, full_v = battery.rest.at(0.0), battery.rest.at(1.0)
    within("rest voltage", volts, empty_v - battery.spread_v, full_v + battery.spread_v, "V")
    shifts = (-battery.spread_v, 0.0, battery.spread_v)
    low, nominal, high = (battery.rest.inverse(np.clip(volts + s, empty_v, full_v)) for s in shifts)
    return low, nominal, high


def load_bank_limit_v(temp_c: Number) -> Number:
    """Give the least voltage of a sound battery on a load bank.

    Parameters
    ----------
    temp_c : float or ndarray
        Temperature of the battery, −17.8 to 50 °C.

    Returns
    -------
    float or ndarray
        Voltage, V, at the end of 15 s at half the cold-cranking current.

    Raises
    ------
    OutsideRange
        For a temperature beyond the table.

    Notes
    -----
    For a 12 V battery at least three quarters charged. It is **not** a limit for cranking the
    engine, whose current is another: see :func:`cranking_minimum_v`. Practice, not a standard.
    """
    return _LOAD_BANK.at(temp_c)


def load_bank_current_a(cold_cranking_a: Number) -> Number:
    """Give the current to set on a load bank.

    Parameters
    ----------
    cold_cranking_a : float or ndarray
        Cold-cranking rating printed on the battery, A; EN and SAE ratings differ a little.

    Returns
    -------
    float or ndarray
        Half of it, A.

    Raises
    ------
    OutsideRange
        For a rating outside 50 to 3000 A.
    """
    within("cold-cranking rating", cold_cranking_a, 50.0, 3000.0, "A")
    return plain(np.asarray(cold_cranking_a, dtype=float) / 2.0)


def cranking_minimum_v(temp_c: Number) -> Number:
    """Give the least voltage to expect at a battery while the starter turns the engine.

    Parameters
    ----------
    temp_c : float or ndarray
        Temperature of the battery and the engine, −18 to 50 °C.

    Returns
    -------
    float or ndarray
        Voltage, V, once the engine turns steadily; the first dip is deeper and short.

    Raises
    ------
    OutsideRange
        For a temperature beyond the table.

    Notes
    -----
    Practice only, and over all engines: a lower reading is suspect, not a verdict on the battery,
    because a tight engine or a faulty starter pulls it down as well. It is **not** the load-bank
    limit, whose current is known.
    """
    return _CRANKING.at(temp_c)
