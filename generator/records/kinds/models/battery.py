"""The 12 V battery."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from generator.records.kinds.base import (
    Charge,
    Shape,
)
from generator.records.kinds.models.single import (
    OneCharge,
    OneCurrent,
    OneDuration,
    OneRatio,
)

BatteryKind = Literal["flooded", "efb", "agm"]


class BatteryRestModel(Shape):
    """Battery voltage at rest against its charge; computed from its kind."""

    name: Literal["battery_rest"] = Field(description="battery_rest")
    battery: BatteryKind = Field(description="flooded, efb or agm.")


class LoadBankModel(Shape):
    """Least voltage on a load bank at half the cold-cranking current; computed (practice)."""

    name: Literal["battery_load_bank"] = Field(description="battery_load_bank")
    cold_cranking: OneCurrent = Field(description="The rating on the battery.")


class CrankingModel(Shape):
    """Least battery voltage while the starter turns the engine; computed (practice)."""

    name: Literal["battery_cranking"] = Field(description="battery_cranking")


class ChargingModel(Shape):
    """Charging voltage against the battery's temperature, from the written value at 25 °C."""

    name: Literal["battery_charging"] = Field(description="battery_charging")


class StandingDrainModel(Shape):
    """Days until a standing drain has taken a battery down; computed."""

    name: Literal["standing_drain"] = Field(description="standing_drain")
    capacity: OneCharge = Field(description="Capacity on the label.")
    from_charge: OneRatio = Field(description="State of charge at the start, as 100 %.")
    to_charge: OneRatio = Field(description="State of charge at the end, as 50 %.")


class DischargeModel(Shape):
    """Hours a battery feeds a load, by Peukert's law in its rated form; computed."""

    name: Literal["battery_discharge"] = Field(description="battery_discharge")
    capacity: Charge = Field(description="Capacity on the label.")
    rated_time: OneDuration = Field(description="Time that capacity is rated for, as 20 h.")
    exponent: Annotated[float, Field(ge=1, le=1.6)] = Field(description="Peukert's exponent.")
