"""Data bus, heaters and fasteners."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from generator.records.kinds.base import (
    Ratio,
    Resistance,
    Shape,
)
from generator.records.kinds.models.single import (
    OneLength,
)


class BusTerminationModel(Shape):
    """Resistance between the two wires of a sleeping data bus; computed."""

    name: Literal["bus_termination"] = Field(description="bus_termination")
    terminations: Annotated[int, Field(ge=1, le=4)] = Field(description="How many it has.")
    each: Resistance = Field(description="One of them, with its limits.")


class BusMeanModel(Shape):
    """Mean of one wire of a working data bus on a DC meter; computed."""

    name: Literal["bus_mean"] = Field(description="bus_mean")
    wire: Literal["high", "low"] = Field(description="high or low.")
    dominant: Ratio = Field(description="Share of the time the bus is dominant, as 5 to 40 %.")


class HeaterModel(Shape):
    """Current of a heater or glow plug; computed from its supply and its cold resistance."""

    name: Literal["heater_current"] = Field(description="heater_current")
    cold: Resistance = Field(description="Resistance cold.")
    settled_ratio: Annotated[list[float], Field(min_length=3, max_length=3)] | None = Field(
        default=None,
        description="First over settled current, least, usual and most; none: the first current.",
    )


class TorqueModel(Shape):
    """A written torque, held against its thread: a check for a misprint, never a source."""

    name: Literal["torque"] = Field(description="torque")
    diameter: OneLength = Field(description="Nominal diameter of the thread.")
    pitch: OneLength = Field(description="Its pitch.")
    strength: Literal["4.6", "4.8", "5.6", "5.8", "6.8", "8.8", "9.8", "10.9", "12.9"] = Field(
        description="As marked on the head."
    )


class WrenchModel(Shape):
    """What to set on a torque wrench that carries an offset extension, from the written torque."""

    name: Literal["wrench_setting"] = Field(description="wrench_setting")
    wrench: OneLength = Field(description="From its square drive to the middle of the grip.")
    extension: OneLength = Field(description="From the square drive to the fastener.")
    angle: Annotated[float, Field(ge=-180, le=180)] = Field(
        default=0.0, description="Between the two, degrees; 0 straight on."
    )
