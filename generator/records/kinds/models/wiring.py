"""Cables and the voltage they take."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field, model_validator
from pydantic_core import PydanticCustomError

from generator.records.kinds.base import (
    Shape,
    Text,
)
from generator.records.kinds.models.single import (
    OneArea,
    OneLength,
    OneResistance,
)


class Cable(Shape):
    """One conductor by its size and length."""

    area: OneArea | None = Field(default=None, description="Nominal section of a class 5 cable.")
    gauge: Annotated[int, Field(ge=-3, le=40)] | None = Field(
        default=None, description="American gauge, where the size is given so; 00 is -1."
    )
    length: OneLength = Field(description="Length of the conductor.")

    @model_validator(mode="after")
    def _one_size(self) -> Cable:
        if (self.area is None) == (self.gauge is None):
            raise PydanticCustomError(
                "cable-size", "a cable has either an area or a gauge",
                {"hint": "keep one of area and gauge"},
            )  # fmt: skip
        return self


class CableResistanceModel(Cable):
    """Resistance of a cable at its temperature; computed, an upper limit."""

    name: Literal["cable_resistance"] = Field(description="cable_resistance")


class CableDropModel(Cable):
    """Voltage along a cable under load; computed, an upper limit."""

    name: Literal["cable_drop"] = Field(description="cable_drop")


class Piece(Shape):
    """One piece of a circuit that the whole current flows through."""

    what: Text = Field(description="What the reader finds there.")
    cable: Cable | None = Field(default=None, description="A cable, by size and length.")
    resistance: OneResistance | None = Field(default=None, description="A joint or contact.")

    @model_validator(mode="after")
    def _one_kind(self) -> Piece:
        if (self.cable is None) == (self.resistance is None):
            raise PydanticCustomError(
                "piece-kind", "a piece is either a cable or a resistance",
                {"hint": "keep one of cable and resistance"},
            )  # fmt: skip
        return self


class DropBudgetModel(Shape):
    """Voltage that a whole circuit may lose, piece by piece; computed, an upper limit."""

    name: Literal["drop_budget"] = Field(description="drop_budget")
    pieces: list[Piece] = Field(min_length=1, max_length=20, description="In order, both ways.")
