"""Air, compression, fuel pressure and the oxygen cell."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from generator.records.kinds.base import (
    Ratio,
    Shape,
)
from generator.records.kinds.models.single import (
    OnePressure,
    OneVoltage,
)


class StationPressureModel(Shape):
    """Pressure of the air at the place; computed from its height and the weather's spread."""

    name: Literal["station_pressure"] = Field(description="station_pressure")


class KeyOnPressureModel(Shape):
    """What a manifold pressure sensor should read, key on and engine at rest; computed."""

    name: Literal["key_on_pressure"] = Field(description="key_on_pressure")
    tolerance: OnePressure = Field(description="Error of the sensor either way.")


class CompressionModel(Shape):
    """Compression on a gauge, from the written value under a stated air pressure."""

    name: Literal["compression"] = Field(description="compression")
    stated_at: OnePressure = Field(description="Air pressure its maker states it for.")


class LeakDownModel(Shape):
    """Second gauge of a leak-down tester, from the share that may be lost; computed."""

    name: Literal["leak_down"] = Field(description="leak_down")
    supply: OnePressure = Field(description="What the first gauge is set to.")
    loss: Ratio = Field(description="Share that may be lost, on this kind of tester.")


class FuelPressureModel(Shape):
    """Fuel pressure on a gauge, from the regulator's written pressure."""

    name: Literal["fuel_pressure"] = Field(description="fuel_pressure")
    referenced: bool = Field(description="true where the regulator is piped to the manifold.")


class OxygenCellModel(Shape):
    """Voltage of a switching oxygen sensor; computed, and never one value near the jump."""

    name: Literal["oxygen_cell"] = Field(description="oxygen_cell")
    fuel: Literal["petrol", "iso-octane", "ethanol", "methane"] = Field(description="The fuel.")
    aged: OneVoltage | None = Field(
        default=None, description="How much less a used sensor may give when rich, as 0.1 V."
    )
