"""A reading as a person writes it down, and what the instrument does to it."""

from __future__ import annotations

from dataclasses import dataclass

from generator.expected.engine import CannotExpect
from generator.expected.models import quantity_of
from generator.physics.meters import (
    MeterAccuracy,
    combined_u,
    nulled_ohm,
    rectangular_u,
    un_nulled_ohm,
    unloaded_v,
)
from generator.quantities import Unit, WrittenError
from generator.quantities.typed import read_typed
from generator.records.kinds.instruments import Meter, MeterRange
from generator.records.kinds.knowledge import Tool
from generator.records.kinds.models import LoadedPickupModel, PickupModel
from generator.records.kinds.things import Spec

# Two test leads in good order, ohm (practice), where a record says nothing of them.
LEADS_OHM = (0.1, 0.5)

FUNCTIONS = {
    "resistance": "resistance", "current": "current", "frequency": "frequency", "ratio": "duty",
    "temperature": "temperature", "pressure": "pressure", "rotational speed": "speed",
    "time": "time", "length": "length",
}  # fmt: skip
"""Quantity to what the dial is set to; voltage depends on the spec."""


@dataclass(frozen=True, slots=True)
class Reading:
    """A reading.

    Parameters
    ----------
    text : str
        As it was written.
    value : float or None
        In the base unit; None where there is no figure.
    over_range : bool
        Whether the meter showed that it is beyond its range.
    impossible : bool
        Whether no part can read it, whatever its state.
    """

    text: str
    value: float | None
    over_range: bool = False
    impossible: bool = False


@dataclass(frozen=True, slots=True)
class Measured:
    """A reading with what the instrument does to it taken off.

    Parameters
    ----------
    value : float
        Corrected figure, in the base unit.
    u : float
        Its standard uncertainty; 0 where nobody said which instrument it was.
    leads_share : float
        Share of the variance that un-nulled leads cause.
    range : MeterRange or None
        The range it was read on.
    """

    value: float
    u: float
    leads_share: float = 0.0
    range: MeterRange | None = None


def read(text: str, unit: Unit) -> Reading:
    """Read `850`, `0.85k`, `850 Ω`, `1,2 kohm` or `OL`, as :mod:`generator.quantities.typed` says.

    Parameters
    ----------
    text : str
        The reading; a bare number is in the unit the spec shows.
    unit : Unit
        That unit.

    Raises
    ------
    WrittenError
        If it is no single value of the spec's quantity.
    """
    try:
        found = read_typed(text, unit)
    except WrittenError as wrong:
        if wrong.fault == "impossible":
            return Reading(text, None, impossible=True)
        raise
    return Reading(text, found.value, over_range=found.over_range)


def function_of(spec: Spec) -> str:
    """Give what the dial of a meter is set to for a spec."""
    quantity = quantity_of(spec)
    if quantity == "voltage":
        alternating = isinstance(spec.model, (PickupModel, LoadedPickupModel))
        return "ac_volts" if alternating or "rms" in spec.quantity.lower() else "dc_volts"
    return FUNCTIONS.get(quantity, "")


def meter_of(tool: Tool) -> Meter:
    """Give what a tool's record says of its errors."""
    if tool.meter is None:
        raise CannotExpect(
            f"the record of {tool.id} says nothing of its errors", "add meter with its ranges"
        )
    return tool.meter


def ranges_for(meter: Meter, spec: Spec) -> list[MeterRange]:
    """Give the ranges that can read a spec, smallest first."""
    wanted = function_of(spec), quantity_of(spec)
    found = [r for r in meter.ranges if (r.function, r.up_to.quantity) == wanted]
    return sorted(found, key=top_of)


def top_of(one: MeterRange) -> float:
    """Give the greatest reading of a range, in the base unit."""
    return float(one.up_to.only)


def measured(
    spec: Spec, value: float, tool: Tool | None, nulled: bool | None = None
) -> Measured | None:
    """Give a reading with its uncertainty, or None where it is beyond every range.

    Parameters
    ----------
    spec : Spec
        What was read.
    value : float
        Figure on the display, in the base unit.
    tool : Tool or None
        The instrument; None judges the bare figure.
    nulled : bool, optional
        Whether the leads were taken off; the tool's record says it otherwise.

    Raises
    ------
    CannotExpect
        If the instrument cannot read this at all.
    """
    if tool is None:
        return Measured(value, 0.0)
    meter = meter_of(tool)
    ranges = ranges_for(meter, spec)
    if not ranges:
        raise CannotExpect(
            f"{tool.id} has no range for {function_of(spec).replace('_', ' ') or 'this'}",
            "name an instrument that has one",
        )
    on = next((r for r in ranges if abs(value) <= top_of(r)), None)
    if on is None:
        return None
    accuracy = MeterAccuracy(on.percent, on.counts, on.digit.only)
    if on.function == "resistance":
        return _ohm(value, meter, accuracy, on, nulled)
    return _loaded(spec, value, meter, accuracy, on)


def _ohm(
    value: float, meter: Meter, accuracy: MeterAccuracy, on: MeterRange, nulled: bool | None
) -> Measured:
    if meter.leads_nulled if nulled is None else nulled:
        ohm, u = nulled_ohm(value, 0.0, accuracy)
        return Measured(ohm, u, 0.0, on)
    leads = meter.leads
    low, high = LEADS_OHM
    if leads is not None and leads.low is not None and leads.high is not None:
        low, high = leads.low, leads.high
    ohm, u = un_nulled_ohm(value, (low, high), accuracy)
    share = (rectangular_u((high - low) / 2) / u) ** 2 if u else 0.0
    return Measured(ohm, u, share, on)


def _loaded(
    spec: Spec, value: float, meter: Meter, accuracy: MeterAccuracy, on: MeterRange
) -> Measured:
    u = accuracy.standard_uncertainty(value)
    source, load = spec.circuit_resistance, meter.input_resistance
    if not on.function.endswith("volts") or source is None or load is None or load.low is None:
        return Measured(value, u, 0.0, on)
    ends = [end for end in (source.low, source.high) if end is not None]
    found = [unloaded_v(value, end, load.low) for end in ends]
    middle, half = (min(found) + max(found)) / 2, (max(found) - min(found)) / 2
    return Measured(middle, combined_u(u, rectangular_u(half)), 0.0, on)
