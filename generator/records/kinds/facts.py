"""The closed vocabulary of a step: what is done, where, near what, and the state it leaves.

Cautions follow from these words alone, so an author cannot forget one by writing calm prose.
"unknown" is allowed almost everywhere and counts as hazardous.
"""

from __future__ import annotations

from enum import StrEnum
from typing import Any


class Word(StrEnum):
    """A closed vocabulary; strict records still take its words as the text they are."""

    @classmethod
    def __get_pydantic_core_schema__(cls, source: Any, handler: Any) -> Any:
        """Let text stand for a word: YAML has no enumerations."""
        schema = handler(source)
        schema["strict"] = False
        return schema


class Action(Word):
    """What the step does; some actions change the state of the vehicle by themselves."""

    LOOK = "look"
    ASK = "ask"
    READ = "read"
    RECORD = "record"
    WAIT = "wait"
    KEY_ON = "key_on"
    KEY_OFF = "key_off"
    CRANK = "crank"
    START_ENGINE = "start_engine"
    STOP_ENGINE = "stop_engine"
    DRIVE = "drive"
    SAVE_CODES = "save_codes"
    CLEAR_CODES = "clear_codes"
    COMMAND = "command"
    PROGRAM = "program"
    DISCONNECT_BATTERY = "disconnect_battery"
    CONNECT_BATTERY = "connect_battery"
    UNPLUG = "unplug"
    PLUG = "plug"
    REMOVE = "remove"
    FIT = "fit"
    LOOSEN = "loosen"
    TIGHTEN = "tighten"
    CLEAN = "clean"
    ADJUST = "adjust"
    MOVE_HARNESS = "move_harness"
    HEAT = "heat"
    COOL = "cool"
    CONNECT_LEADS = "connect_leads"
    DISCONNECT_LEADS = "disconnect_leads"
    MEASURE = "measure"
    LOAD_CIRCUIT = "load_circuit"
    TURN_BY_HAND = "turn_by_hand"
    RAISE_ON_LIFT = "raise_on_lift"
    RAISE_ON_JACK = "raise_on_jack"
    SET_ON_STANDS = "set_on_stands"
    LOWER_TO_GROUND = "lower_to_ground"
    RELIEVE_FUEL_PRESSURE = "relieve_fuel_pressure"
    DRAIN = "drain"
    FILL = "fill"
    CHARGE_BATTERY = "charge_battery"
    JUMP_START = "jump_start"
    CUT_AND_JOIN = "cut_and_join"
    INFLATE = "inflate"
    REGENERATE = "regenerate"
    TOW = "tow"
    CARRY_OUT = "carry_out"


class Place(Word):
    """Where the person's body and hands are."""

    AWAY = "away"
    BENCH = "bench"
    DRIVER_SEAT = "driver_seat"
    CABIN = "cabin"
    BESIDE_VEHICLE = "beside_vehicle"
    ENGINE_BAY = "engine_bay"
    UNDER_VEHICLE = "under_vehicle"
    WHEEL_AREA = "wheel_area"
    PIT = "pit"
    UNKNOWN = "unknown"


class Energy(Word):
    """What a component can do to a person or to a vehicle: its hazard classes."""

    NONE = "none"
    LOW_VOLTAGE_SIGNAL = "low_voltage_signal"
    LOW_VOLTAGE_SUPPLY = "low_voltage_supply"
    LV_BATTERY = "lv_battery"
    HIGH_VOLTAGE = "high_voltage"
    IGNITION_SECONDARY = "ignition_secondary"
    PYROTECHNIC = "pyrotechnic"
    ROTATING = "rotating"
    ELECTRIC_FAN = "electric_fan"
    HOT_SURFACE = "hot_surface"
    HOT_FLUID = "hot_fluid"
    FUEL_LOW = "fuel_low"
    FUEL_HIGH = "fuel_high"
    FUEL_GAS = "fuel_gas"
    REFRIGERANT = "refrigerant"
    SPRING = "spring"
    BRAKE_HYDRAULIC = "brake_hydraulic"
    AIR_SUSPENSION = "air_suspension"
    HEAVY = "heavy"
    SHARP = "sharp"
    MODULE = "module"
    TIMING_DRIVE = "timing_drive"
    STRONG_MAGNET = "strong_magnet"
    SUPPLY_48_V = "supply_48_v"
    MAIN_TERMINAL = "main_terminal"
    LITHIUM_BATTERY = "lithium_battery"
    INJECTOR_DRIVE = "injector_drive"
    INDUCTIVE_KICK = "inductive_kick"
    LAMP_BALLAST = "lamp_ballast"
    GAS_STRUT = "gas_strut"
    TENSIONER = "tensioner"
    DRIVELINE = "driveline"
    ROAD_WHEEL = "road_wheel"
    INFLATED_TYRE = "inflated_tyre"
    FRICTION_DUST = "friction_dust"
    ELECTRIC_PARKING_BRAKE = "electric_parking_brake"
    POWER_CLOSURE = "power_closure"
    DRIVER_ASSIST = "driver_assist"
    UNKNOWN = "unknown"


class Opens(Word):
    """What a step opens, so that something can come out."""

    FUEL_LOW = "fuel_low"
    FUEL_HIGH = "fuel_high"
    FUEL_TANK = "fuel_tank"
    COOLANT = "coolant"
    ENGINE_OIL = "engine_oil"
    GEARBOX_OIL = "gearbox_oil"
    BRAKE_HYDRAULIC = "brake_hydraulic"
    REFRIGERANT = "refrigerant"
    GAS_FUEL = "gas_fuel"
    ELECTRICAL_COVER = "electrical_cover"
    NOTHING = "nothing"
    UNKNOWN = "unknown"


class Measures(Word):
    """What a measuring step reads."""

    RESISTANCE = "resistance"
    INSULATION = "insulation"
    VOLTAGE = "voltage"
    CURRENT = "current"
    WAVEFORM = "waveform"
    LENGTH = "length"
    TEMPERATURE = "temperature"
    PRESSURE = "pressure"
    DATA = "data"
    UNKNOWN = "unknown"


class Condition(Word):
    """What is out of the ordinary about what a step acts on."""

    DAMAGED = "damaged"
    FLOODED = "flooded"
    BURNT = "burnt"
    FROZEN = "frozen"
    LEAKING_FUEL = "leaking_fuel"
    OIL_IN_INTAKE = "oil_in_intake"
    SINGLE_USE_FASTENER = "single_use_fastener"


class Engine(Word):
    """What the engine does."""

    STOPPED = "stopped"
    CRANKING = "cranking"
    RUNNING = "running"
    UNKNOWN = "unknown"


class EngineHeat(Word):
    """How hot the engine is."""

    COLD = "cold"
    WARM = "warm"
    HOT = "hot"
    UNKNOWN = "unknown"


class Ignition(Word):
    """Key or start button."""

    KEY_OFF = "key_off"
    KEY_ON = "key_on"
    READY = "ready"
    UNKNOWN = "unknown"


class Battery(Word):
    """The low-voltage battery's negative terminal."""

    CONNECTED = "connected"
    DISCONNECTED = "disconnected"
    UNKNOWN = "unknown"


class HighVoltage(Word):
    """The high-voltage system of a hybrid or electric vehicle."""

    NOT_FITTED = "not_fitted"
    LIVE = "live"
    ISOLATED = "isolated"
    PROVED_DEAD = "proved_dead"
    UNKNOWN = "unknown"


class Support(Word):
    """What carries the vehicle."""

    GROUND = "ground"
    JACK_ONLY = "jack_only"
    STANDS = "stands"
    LIFT = "lift"
    UNKNOWN = "unknown"


class Pressure(Word):
    """Whether a system still holds pressure."""

    HELD = "held"
    RELIEVED = "relieved"
    UNKNOWN = "unknown"


class ParkingBrake(Word):
    """The parking brake."""

    SET = "set"
    RELEASED = "released"
    UNKNOWN = "unknown"


class Selector(Word):
    """Gear selector."""

    NEUTRAL_OR_PARK = "neutral_or_park"
    IN_GEAR = "in_gear"
    UNKNOWN = "unknown"


class Ventilation(Word):
    """Where the exhaust goes."""

    OPEN_AIR = "open_air"
    EXTRACTION = "extraction"
    CLOSED_BAY = "closed_bay"
    UNKNOWN = "unknown"


class Codes(Word):
    """Whether fault codes and freeze frame are written down."""

    UNSAVED = "unsaved"
    SAVED = "saved"
    CLEARED = "cleared"
    UNKNOWN = "unknown"


class Finding(Word):
    """What a test can find; a test on a number has most of them, a test by eye a few."""

    IN_LIMITS = "in_limits"
    LOW = "low"
    HIGH = "high"
    OPEN = "open"
    SHORTED = "shorted"
    ERRATIC = "erratic"
    CHANGES_WHEN_MOVED = "changes_when_moved"
    COMPLAINT_ABSENT = "complaint_absent"
    CANNOT_TELL = "cannot_tell"
    AS_EXPECTED = "as_expected"
    FAULT_SEEN = "fault_seen"
    FLAT_HIGH = "flat_high"
    FLAT_LOW = "flat_low"
    PULSES_MISSING = "pulses_missing"
    IS_A = "is_a"


class Verdict(Word):
    """What an outcome says about a part."""

    CONDEMNS = "condemns"
    CLEARS = "clears"
    NEITHER = "neither"


class Circumstance(Word):
    """When a complaint shows, as the owner tells it."""

    HOT = "hot"
    COLD = "cold"
    WET = "wet"
    UNDER_LOAD = "under_load"
    OVER_BUMPS = "over_bumps"


class CameBack(Word):
    """Whether a repaired vehicle came back with the same complaint."""

    STAYED_AWAY = "stayed_away"
    CAME_BACK = "came_back"
    TOO_EARLY = "too_early"
