"""Temperature sensors."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from generator.records.kinds.base import (
    Resistance,
    Shape,
)
from generator.records.kinds.models.single import (
    OneRatio,
    OneResistance,
    OneTemperature,
)


class Point(Shape):
    """One row of a temperature sensor's table."""

    temperature: OneTemperature = Field(description="Temperature of the sensor.")
    resistance: Resistance = Field(description="Resistance there; a range where one is printed.")


class ThermistorPointsModel(Shape):
    """A thermistor known by three points of its table; computed."""

    name: Literal["thermistor_points"] = Field(description="thermistor_points")
    points: list[Point] = Field(
        min_length=3, max_length=3, description="Three rows, far apart, in any order."
    )
    tolerance: OneRatio | None = Field(
        default=None, description="Of its resistance, where the rows print no limits."
    )


class ThermistorBetaModel(Shape):
    """A thermistor known by one resistance and its beta; computed, over a narrow range."""

    name: Literal["thermistor_beta"] = Field(description="thermistor_beta")
    resistance: Resistance = Field(description="At the reference temperature.")
    reference: OneTemperature = Field(description="The reference temperature.")
    beta: Annotated[float, Field(ge=500, le=10000)] = Field(description="Beta in kelvin, as 3977.")
    coldest: OneTemperature = Field(description="Coldest temperature that beta holds for.")
    hottest: OneTemperature = Field(description="Hottest temperature that beta holds for.")


class ThermistorTableModel(Shape):
    """A thermistor known by its printed table; computed, straight in the logarithm."""

    name: Literal["thermistor_table"] = Field(description="thermistor_table")
    points: list[Point] = Field(min_length=2, max_length=60, description="The rows, cold to hot.")


class PlatinumModel(Shape):
    """A platinum sensor; computed from its curve and class."""

    name: Literal["platinum"] = Field(description="platinum")
    at_zero: OneResistance = Field(description="Resistance at 0 °C: 100 ohm for a Pt100.")
    curve: Literal["iec-60751", "tcr-3750", "tcr-3770"] = Field(
        description="Which curve this part follows: its data sheet says."
    )
    tolerance_class: Literal["AA", "A", "B", "C"] = Field(description="Its tolerance class.")
    coldest: OneTemperature = Field(description="Coldest temperature it meets.")
    hottest: OneTemperature = Field(description="Hottest temperature it meets.")


class ColdSoakModel(Shape):
    """A temperature in the live data after a night's rest: the air's, within a spread; computed."""

    name: Literal["cold_soak"] = Field(description="cold_soak")
    within: Annotated[float, Field(gt=0, le=20)] = Field(
        description="How far the sensor may lie from the air, in kelvin."
    )
