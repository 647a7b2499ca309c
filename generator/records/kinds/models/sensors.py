"""Speed and position sensors."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from generator.records.kinds.base import (
    ComponentId,
    Current,
    Ratio,
    Resistance,
    Shape,
    SpecId,
    Voltage,
)
from generator.records.kinds.models.single import (
    OneInductance,
    OneResistance,
    OneSpeed,
)


class PickupModel(Shape):
    """Volts of an inductive pickup: in proportion to speed from the written reading."""

    name: Literal["pickup_volts"] = Field(description="pickup_volts")
    slowest: OneSpeed = Field(description="Below this speed the proportion is not relied on.")
    fastest: OneSpeed = Field(description="Above this speed the coil's roll-off sets in.")


class LoadedPickupModel(Shape):
    """Volts of an inductive pickup with its coil and load: holds where proportion ends."""

    name: Literal["pickup_loaded"] = Field(description="pickup_loaded")
    slowest: OneSpeed = Field(description="Slowest speed asked about.")
    fastest: OneSpeed = Field(description="Fastest speed asked about.")
    wheel: ComponentId = Field(description="The wheel it reads.")
    coil: OneResistance = Field(description="Resistance of the coil.")
    inductance: OneInductance = Field(description="Inductance of the coil.")
    load: OneResistance = Field(description="Input of the control unit and meter, in parallel.")


class ToothRateModel(Shape):
    """Frequency of a toothed wheel; computed, so the spec has no written value."""

    name: Literal["tooth_rate"] = Field(description="tooth_rate")
    wheel: ComponentId = Field(description="The wheel.")


class PullUpModel(Shape):
    """High level of a switching output: the pull-up's voltage through its resistor."""

    name: Literal["pull_up"] = Field(description="pull_up")
    pull_up: Voltage = Field(description="Voltage behind the pull-up resistor.")
    resistor: Resistance = Field(description="The pull-up resistor.")
    meter: Resistance = Field(description="Input resistance of the instrument.")
    low_level: SpecId | None = Field(
        default=None, description="The spec of the low level, for the picture of the wave."
    )


class LowLevelModel(Shape):
    """Low level of a switching output, with what its ground lifts it by; computed."""

    name: Literal["low_level"] = Field(description="low_level")
    saturation: Voltage = Field(description="Across the transistor that is on.")
    ground_drop: Voltage = Field(description="Drop of the sensor's own ground.")


class SquareMeanModel(Shape):
    """Mean of a square wave, as a DC meter shows it."""

    name: Literal["square_mean"] = Field(description="square_mean")
    high: Voltage = Field(description="High level.")
    low: Voltage = Field(description="Low level.")
    duty: Ratio = Field(
        description="Share of the time at the high level, over a tooth and its gap."
    )
    wheel: ComponentId | None = Field(
        default=None,
        description="The wheel it reads: its missing teeth then count in the mean. None: the duty "
        "is of the whole turn.",
    )
    over_gap: Literal["high", "low"] = Field(
        default="high", description="Level at which the output rests over the missing teeth."
    )


class CurrentSensorModel(Shape):
    """One level of a two-level current sensor, as volts over a resistor; computed."""

    name: Literal["current_sensor"] = Field(description="current_sensor")
    shunt: Resistance = Field(description="The resistor in series with the sensor.")
    level: Current = Field(description="The sensor's current at this level.")
