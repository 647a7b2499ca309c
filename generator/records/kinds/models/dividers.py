"""Dividers, transducers and printed curves."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from generator.records.kinds.base import (
    AnyValue,
    Resistance,
    Shape,
    SpecId,
)
from generator.records.kinds.models.single import (
    OnePressure,
    OneRatio,
    OneResistance,
)


class DividerModel(Shape):
    """Voltage at a sensor fed through a resistor in the control unit; computed."""

    name: Literal["divider"] = Field(description="divider")
    upper: Resistance = Field(description="The resistor in the control unit.")
    sensor: SpecId = Field(description="The spec of the sensor's resistance.")
    meter: OneResistance | None = Field(default=None, description="Input of the instrument.")


class PotentiometerModel(Shape):
    """Voltage of a potentiometer's wiper; computed."""

    name: Literal["potentiometer"] = Field(description="potentiometer")
    track: Resistance = Field(description="Resistance of the track.")
    load: OneResistance | None = Field(default=None, description="What the wiper feeds, to ground.")
    tolerance: OneRatio = Field(description="Of the travel, either way.")


class TransducerModel(Shape):
    """Voltage of a pressure sensor whose output is a share of its supply; computed."""

    name: Literal["transducer"] = Field(description="transducer")
    from_pressure: OnePressure = Field(description="Least pressure it measures.")
    from_share: OneRatio = Field(description="Share of the supply it gives there.")
    to_pressure: OnePressure = Field(description="Greatest pressure it measures.")
    to_share: OneRatio = Field(description="Share of the supply it gives there.")
    tolerance: OnePressure = Field(description="Its error either way.")


class CurveRow(Shape):
    """One row of a printed curve."""

    at: AnyValue = Field(description="The condition, as 20 °C.")
    value: AnyValue = Field(description="The value there, with its limits.")


class CurveModel(Shape):
    """A curve given row by row; computed between its rows and nowhere else."""

    name: Literal["curve"] = Field(description="curve")
    over: Literal[
        "temperature", "engine_speed", "supply", "gap", "current", "travel", "measured_pressure",
        "state_of_charge", "altitude",
    ] = Field(description="The condition it follows.")  # fmt: skip
    interpolation: Literal["linear", "log-linear"] = Field(
        description="Between rows: the value straight, or its logarithm."
    )
    rows: list[CurveRow] = Field(min_length=2, max_length=60, description="Rising in `at`.")
