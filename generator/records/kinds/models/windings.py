"""Windings and coils, and the plain value that follows nothing."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from generator.records.kinds.base import (
    FIGURE,
    AnyValue,
    Current,
    Inductance,
    Resistance,
    Shape,
    Voltage,
)
from generator.records.kinds.models.single import (
    OneCurrent,
    OneDuration,
    OneResistance,
)


class PlainModel(Shape):
    """The value does not change with the conditions the reader meets."""

    name: Literal["plain"] = Field(description="plain")


class WindingModel(Shape):
    """A winding: resistance follows the temperature of its metal."""

    name: Literal["winding"] = Field(description="winding")
    material: Literal["copper", "aluminium"] = Field(description="The wire's metal.")
    suppressor: OneResistance | None = Field(
        default=None, description="A built-in resistor in series that does not follow the metal."
    )


class CoilCurrentModel(Shape):
    """Current of an injector or a coil at the end of its pulse; computed."""

    name: Literal["coil_current"] = Field(description="coil_current")
    resistance: Resistance = Field(description="Of the whole loop, driver included.")
    inductance: Inductance = Field(description="Of the coil.")
    on_time: OneDuration = Field(description="Length of the pulse.")
    limit: OneCurrent | None = Field(
        default=None, description="Current at which the driver holds, if it does."
    )


class CoilDwellModel(Shape):
    """Time a coil needs to reach its current; computed."""

    name: Literal["coil_dwell"] = Field(description="coil_dwell")
    resistance: Resistance = Field(description="Of the whole loop, driver included.")
    inductance: Inductance = Field(description="Of the coil.")
    current: Current = Field(description="Current at which the driver lets go.")


class CoilFlybackModel(Shape):
    """Peak at the switched side of a coil while it lets go; computed."""

    name: Literal["coil_flyback"] = Field(description="coil_flyback")
    flyback: Voltage = Field(description="What the coil drives against its supply: 0.7 V, or more.")


class CoilRiseModel(Shape):
    """Time constant of a coil: the time to 63 % of its final current; computed."""

    name: Literal["coil_rise"] = Field(description="coil_rise")
    resistance: Resistance = Field(description="Of the whole loop.")
    inductance: Inductance = Field(description="Of the coil.")


class InjectorDutyModel(Shape):
    """Share of the time that an injector is switched on; computed."""

    name: Literal["injector_duty"] = Field(description="injector_duty")
    on_time: AnyValue = Field(description="Length of the pulse, as 2.5 to 3.5 ms.")
    turns_per_pulse: Annotated[Literal[1, 2], FIGURE] = Field(
        default=2, description="Crankshaft turns from pulse to pulse: 2 if sequential."
    )
