"""Vehicles, components, circuits and specs: what is there and what is right for it."""

from __future__ import annotations

from typing import Literal

from pydantic import Field, model_validator
from pydantic_core import PydanticCustomError

from generator.records.kinds import facts
from generator.records.kinds.base import (
    AnyValue,
    CircuitId,
    ComponentId,
    Current,
    Date,
    Length,
    LongText,
    Pressure,
    Ratio,
    Record,
    Resistance,
    Shape,
    SourceOrPractice,
    SpecId,
    Speed,
    Temperature,
    Text,
    VehicleId,
    Voltage,
)
from generator.records.kinds.models import Model, PlainModel


class EngineFitted(Shape):
    """The engine of a vehicle."""

    code: Text = Field(description="As stamped on the block.")
    fuel: Literal["petrol", "diesel"] = Field(description="petrol or diesel.")
    hybrid: bool = Field(default=False, description="true where a traction battery helps it.")
    layout: Text = Field(description="Cylinders, size, valve drive.")


class Vehicle(Record):
    """A vehicle the manual covers."""

    maker: Text = Field(description="The maker.")
    years: Text = Field(description="Model years, as 2014 to 2019.")
    engine: EngineFitted = Field(description="What is under the bonnet.")
    supply: Literal["12 V", "24 V", "48 V"] = Field(description="Low-voltage supply class.")
    tell_apart: LongText = Field(description="How to tell this engine at the vehicle.")
    data_plate: Text = Field(description="Where the data plate is.")
    systems: list[Text] = Field(default_factory=list, description="Systems fitted.")
    reserved: list[Text] = Field(
        default_factory=list, description="Work on this vehicle that only a named role may do."
    )


class Pin(Shape):
    """One cavity of a connector."""

    pin: int = Field(ge=1, le=200, description="Number moulded beside the cavity.")
    carries: Text = Field(description="What runs here.")
    colour: Text = Field(description="Wire colour in words.")


class Connector(Shape):
    """A connector, seen from the side a probe goes in."""

    rows: list[list[int]] = Field(
        min_length=1, description="Pin numbers row by row, as seen looking into the part."
    )
    keyway: Literal["top", "bottom", "left", "right"] = Field(description="Side of the keyway.")
    pins: list[Pin] = Field(min_length=1, description="Each pin.")
    lock: Text | None = Field(default=None, description="How it is locked and released.")


class Location(Shape):
    """Where a component sits."""

    zone: Literal[
        "flywheel_end", "crank_pulley", "beside_block", "timing_drive",
        "engine_bay", "under_vehicle", "cabin", "boot", "wheel_area",
    ] = Field(description="Zone of the vehicle.")  # fmt: skip
    words: Text = Field(description="Where exactly, in words.")
    side: Literal["above", "below"] = Field(description="From where it is reached.")


class Wheel(Shape):
    """A toothed wheel that a sensor reads."""

    positions: int = Field(ge=2, le=400, description="Evenly spaced positions, gaps included.")
    missing: int = Field(ge=0, le=10, description="Teeth left out as the reference mark.")


class Component(Record):
    """A part that can fail, be tested or be in the way."""

    fitted_to: list[VehicleId] = Field(min_length=1, description="Vehicles that have it.")
    abbreviation: Text | None = Field(default=None, description="As the trade abbreviates it.")
    does: LongText = Field(description="What it does.")
    fails: list[Text] = Field(default_factory=list, description="How it fails.")
    energies: list[facts.Energy] = Field(
        min_length=1, description="What it can do to a person or a vehicle; [none] if nothing."
    )
    location: Location = Field(description="Where it sits.")
    near: list[facts.Energy] = Field(
        default_factory=list, description="Energies within reach of hands at this part."
    )
    guard: bool = Field(
        default=False, description="true where it keeps hands or tools from harm, as a cover."
    )
    connector: Connector | None = Field(default=None, description="Its connector.")
    circuit: CircuitId | None = Field(default=None, description="The circuit that feeds it.")
    wheel: Wheel | None = Field(default=None, description="If it is a toothed wheel.")
    reads: ComponentId | None = Field(default=None, description="The wheel it reads.")


class Node(Shape):
    """One stop on a wire's way."""

    kind: Literal["battery", "fuse", "relay", "splice", "connector", "module", "part", "ground"] = (
        Field(description="What it is.")
    )
    name: Text = Field(description="Its name on the vehicle.")
    rating: Current | None = Field(default=None, description="A fuse's rating.")
    pin: Text | None = Field(default=None, description="Its pin there.")
    shared_with: list[Text] = Field(
        default_factory=list, description="What else hangs on this fuse, splice or ground."
    )


class Line(Shape):
    """One wire from end to end."""

    carries: Text = Field(description="supply, signal, ground or screen.")
    colour: Text = Field(description="Wire colour in words.")
    way: list[Node] = Field(min_length=2, description="From the feed to the end, in order.")


class Circuit(Record):
    """How a component is fed, read and grounded."""

    applies_to: list[VehicleId] = Field(min_length=1, description="The vehicles it holds for.")
    lines: list[Line] = Field(min_length=1, description="Each wire.")
    note: LongText | None = Field(default=None, description="What a mechanic should know of it.")


class Conditions(Shape):
    """The conditions under which a written value holds."""

    temperature: Temperature | None = Field(default=None, description="The part's own.")
    engine_speed: Speed | None = Field(
        default=None, description="Speed of the crankshaft; at a road wheel, the wheel's own."
    )
    supply: Voltage | None = Field(default=None, description="Voltage at the part's supply pin.")
    gap: Length | None = Field(default=None, description="Air gap.")
    current: Current | None = Field(default=None, description="Current in the circuit.")
    altitude: Length | None = Field(default=None, description="Height above the sea, in metres.")
    air_pressure: Pressure | None = Field(
        default=None, description="Air pressure at the place, not the sea-level figure."
    )
    sea_level_pressure: Pressure | None = Field(
        default=None, description="The day's pressure as the weather report gives it."
    )
    manifold_pressure: Pressure | None = Field(
        default=None, description="Absolute pressure in the manifold."
    )
    measured_pressure: Pressure | None = Field(
        default=None, description="Pressure at the sensor that is measured."
    )
    ambient: Temperature | None = Field(default=None, description="Temperature of the air.")
    state_of_charge: Ratio | None = Field(default=None, description="State of charge.")
    travel: Ratio | None = Field(default=None, description="Share of a pedal's or flap's travel.")
    air_ratio: Ratio | None = Field(
        default=None, description="Air over what the fuel needs: 97 % is a lambda of 0.97."
    )
    state: Text | None = Field(default=None, description="Anything else, in words.")


class Built(Shape):
    """A range of build dates."""

    since: Date | None = Field(default=None, description="First day, as 2016-05-01.")
    until: Date | None = Field(default=None, description="Last day.")

    @model_validator(mode="after")
    def _in_order(self) -> Built:
        if self.since is not None and self.until is not None and self.since > self.until:
            raise PydanticCustomError(
                "build-range", "the build range runs backwards",
                {"hint": "write the earlier day under since"},
            )  # fmt: skip
        return self


class Spec(Record):
    """A value with its unit, conditions, standing and source."""

    applies_to: list[VehicleId] = Field(min_length=1, description="The vehicles it holds for.")
    component: ComponentId = Field(description="The part it belongs to.")
    quantity: Text = Field(description="What is measured: resistance, voltage, torque …")
    standing: Literal["vehicle_value", "plausibility_band"] = Field(
        description="A vehicle's own value gives a verdict; a band over all designs never does."
    )
    value: AnyValue | None = Field(default=None, description="As a person writes it.")
    at: Conditions = Field(description="The conditions under which the value holds.")
    model: Model = Field(
        default_factory=lambda: PlainModel(name="plain"), description="How it follows conditions."
    )
    places: int = Field(
        default=0, ge=0, le=4, description="Decimals the meter shows in the written unit."
    )
    unit: Text | None = Field(default=None, description="Unit to show where no value is written.")
    method: Text = Field(description="Where and how it is measured.")
    source: SourceOrPractice = Field(
        description="A source record, or common-practice where nobody can name a document."
    )
    where: Text | None = Field(default=None, description="Page, table or clause of the source.")
    band: SpecId | None = Field(default=None, description="Plausibility band over all designs.")
    overrides: SpecId | None = Field(
        default=None, description="The more general spec that this one stands in for."
    )
    engines: list[Text] = Field(
        default_factory=list, description="Only for these engine codes; empty means all."
    )
    built: Built | None = Field(default=None, description="Only for vehicles built in this range.")
    circuit_resistance: Resistance | None = Field(
        default=None, description="Resistance of the circuit the meter looks into, if it is high."
    )
