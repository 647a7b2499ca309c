"""What a reading needs to know of the instrument that gave it."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field, model_validator
from pydantic_core import PydanticCustomError

from generator.records.kinds.base import FIGURE, AnyValue, Resistance, Shape, Voltage


class MeterRange(Shape):
    """One range of an instrument and how far its reading may be from the truth."""

    function: Literal[
        "resistance", "dc_volts", "ac_volts", "current", "frequency", "duty", "temperature",
        "pressure", "speed", "time", "length",
    ] = Field(description="What the dial is set to.")  # fmt: skip
    up_to: AnyValue = Field(description="Greatest reading of the range, as 2 kohm.")
    digit: AnyValue = Field(description="One count of the last digit, as 1 ohm.")
    percent: Annotated[float, Field(ge=0, le=50)] = Field(
        description="Accuracy: percent of the reading, as 0.8."
    )
    counts: Annotated[float, Field(ge=0, le=1000)] = Field(
        description="Accuracy: counts of the last digit, as 2."
    )

    @model_validator(mode="after")
    def _one_quantity(self) -> MeterRange:
        if self.up_to.quantity != self.digit.quantity:
            raise PydanticCustomError(
                "meter-range", "the range and its last digit measure different things",
                {"hint": "write both in units of one quantity"},
            )  # fmt: skip
        return self


class Meter(Shape):
    """What a reading needs to know of the instrument that gave it."""

    ranges: list[MeterRange] = Field(min_length=1, description="Each range.")
    input_resistance: Resistance | None = Field(
        default=None, description="On its voltage ranges, as 10 Mohm."
    )
    ac_reading: Literal["true_rms", "average", "peak"] = Field(
        default="true_rms", description="How it forms an AC reading."
    )
    ac_coupling: Literal["ac", "dc"] = Field(
        default="ac", description="Whether its AC ranges take the mean off first."
    )
    leads: Resistance | None = Field(
        default=None, description="Resistance of its leads, as 0.1 to 0.4 ohm."
    )
    leads_nulled: bool = Field(
        default=False, description="true where the leads are taken off before every reading."
    )


class Screen(Shape):
    """What an oscilloscope can show."""

    divisions_across: int = Field(default=10, ge=4, le=20, description="Divisions of time.")
    divisions_up: int = Field(default=8, ge=4, le=20, description="Divisions of voltage.")
    input_limit: Voltage = Field(description="Greatest voltage at its input, peak.")
    probes: list[Annotated[Literal[10, 20, 100], FIGURE]] = Field(
        default_factory=list, description="Ratios of the probes at hand, besides 1 to 1."
    )
