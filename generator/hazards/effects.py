"""What acts do to the state of a vehicle, as tables."""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum

from generator.records.kinds import facts
from generator.records.kinds.facts import Action

SAFEST_FIRST: Mapping[str, tuple[str, ...]] = {
    "engine": ("stopped", "cranking", "running", "unknown"),
    "engine_heat": ("cold", "warm", "hot", "unknown"),
    "ignition": ("key_off", "key_on", "ready", "unknown"),
    "battery": ("disconnected", "connected", "unknown"),
    "high_voltage": ("not_fitted", "proved_dead", "isolated", "live", "unknown"),
    "support": ("ground", "lift", "stands", "jack_only", "unknown"),
    "fuel_pressure": ("relieved", "held", "unknown"),
    "coolant_pressure": ("relieved", "held", "unknown"),
    "brake_pressure": ("relieved", "held", "unknown"),
    "refrigerant": ("relieved", "held", "unknown"),
    "air_suspension": ("relieved", "held", "unknown"),
    "stored_spring": ("relieved", "held", "unknown"),
    "parking_brake": ("set", "released", "unknown"),
    "selector": ("neutral_or_park", "in_gear", "unknown"),
    "ventilation": ("extraction", "open_air", "closed_bay", "unknown"),
    "codes": ("cleared", "saved", "unsaved", "unknown"),
}
"""Each dimension's words, from the safest to the one that counts as worst."""

DIMENSIONS = tuple(SAFEST_FIRST)

FIXED: Mapping[Action, Mapping[str, tuple[StrEnum, ...]]] = {
    Action.KEY_ON: {"ignition": (facts.Ignition.KEY_ON, facts.Ignition.READY)},
    Action.KEY_OFF: {"ignition": (facts.Ignition.KEY_OFF,), "engine": (facts.Engine.STOPPED,)},
    Action.CRANK: {"engine": (facts.Engine.STOPPED,)},
    Action.START_ENGINE: {"engine": (facts.Engine.RUNNING,)},
    Action.STOP_ENGINE: {"engine": (facts.Engine.STOPPED,)},
    Action.SAVE_CODES: {"codes": (facts.Codes.SAVED,)},
    Action.CLEAR_CODES: {"codes": (facts.Codes.CLEARED,)},
    Action.DISCONNECT_BATTERY: {"battery": (facts.Battery.DISCONNECTED,)},
    Action.CONNECT_BATTERY: {"battery": (facts.Battery.CONNECTED,)},
    Action.RAISE_ON_LIFT: {"support": (facts.Support.LIFT,)},
    Action.RAISE_ON_JACK: {"support": (facts.Support.JACK_ONLY,)},
    Action.SET_ON_STANDS: {"support": (facts.Support.STANDS,)},
    Action.LOWER_TO_GROUND: {"support": (facts.Support.GROUND,)},
    Action.RELIEVE_FUEL_PRESSURE: {"fuel_pressure": (facts.Pressure.RELIEVED,)},
}
"""What an act does by its nature: the first word, or another listed one if `sets` names it."""

_RUNS = {
    "engine_heat": facts.EngineHeat.HOT,
    "fuel_pressure": facts.Pressure.HELD,
    "coolant_pressure": facts.Pressure.HELD,
    "brake_pressure": facts.Pressure.HELD,
}
"""What a running engine brings back: heat and pressures."""

USUAL: Mapping[Action, Mapping[str, StrEnum]] = {
    Action.KEY_ON: {
        "fuel_pressure": facts.Pressure.HELD,
        "brake_pressure": facts.Pressure.HELD,
    },
    Action.CRANK: {
        "ignition": facts.Ignition.KEY_ON,
        "fuel_pressure": facts.Pressure.HELD,
        "brake_pressure": facts.Pressure.HELD,
    },
    Action.START_ENGINE: {"ignition": facts.Ignition.KEY_ON, **_RUNS},
    Action.STOP_ENGINE: {"ignition": facts.Ignition.KEY_OFF},
    Action.DRIVE: {
        "engine": facts.Engine.RUNNING,
        "ignition": facts.Ignition.KEY_ON,
        "support": facts.Support.GROUND,
        "parking_brake": facts.ParkingBrake.SET,
        "selector": facts.Selector.NEUTRAL_OR_PARK,
        **_RUNS,
    },
    Action.REGENERATE: {
        "engine": facts.Engine.RUNNING,
        "ignition": facts.Ignition.KEY_ON,
        **_RUNS,
    },
    Action.TOW: {
        "parking_brake": facts.ParkingBrake.SET,
        "selector": facts.Selector.NEUTRAL_OR_PARK,
    },
}
"""What usually comes with an act; `sets` may say otherwise."""

WHILE: Mapping[Action, Mapping[str, StrEnum]] = {
    Action.CRANK: {"engine": facts.Engine.CRANKING},
    Action.DRIVE: {
        "parking_brake": facts.ParkingBrake.RELEASED,
        "selector": facts.Selector.IN_GEAR,
    },
    Action.TOW: {"parking_brake": facts.ParkingBrake.RELEASED},
}
"""What holds only while the act lasts."""

EMPTIED: Mapping[facts.Opens, str] = {
    facts.Opens.FUEL_LOW: "fuel_pressure",
    facts.Opens.FUEL_HIGH: "fuel_pressure",
    facts.Opens.COOLANT: "coolant_pressure",
    facts.Opens.BRAKE_HYDRAULIC: "brake_pressure",
    facts.Opens.REFRIGERANT: "refrigerant",
}
"""The pressure that is gone once a system has been opened."""
