"""The state of the vehicle, whole, and how a step changes it.

A record speaks of the few dimensions it cares about; here every dimension has a word, so that
what was done four steps ago still counts. What is undone (unplugged, removed, loose, leads left
in, guards left off) is carried too.
"""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass, replace
from enum import StrEnum
from typing import Any

from generator.hazards.effects import DIMENSIONS, EMPTIED, FIXED, SAFEST_FIRST, USUAL, WHILE
from generator.hazards.undone import NOTHING, Undone
from generator.records.kinds import facts
from generator.records.kinds.facts import Action
from generator.records.kinds.work import State, Step


@dataclass(frozen=True, slots=True)
class FullState:
    """The state of the vehicle with every dimension said, and all that is undone.

    Parameters
    ----------
    engine, engine_heat, ignition, battery, high_voltage, support, fuel_pressure, \
coolant_pressure, brake_pressure, refrigerant, air_suspension, stored_spring, parking_brake, \
selector, ventilation, codes : StrEnum
        One word a dimension, as in the record's `State`.
    undone : Undone
        What is unplugged, removed, loose, with leads in or without its guard by now.
    """

    engine: facts.Engine = facts.Engine.STOPPED
    engine_heat: facts.EngineHeat = facts.EngineHeat.HOT
    ignition: facts.Ignition = facts.Ignition.KEY_OFF
    battery: facts.Battery = facts.Battery.CONNECTED
    high_voltage: facts.HighVoltage = facts.HighVoltage.UNKNOWN
    support: facts.Support = facts.Support.GROUND
    fuel_pressure: facts.Pressure = facts.Pressure.HELD
    coolant_pressure: facts.Pressure = facts.Pressure.HELD
    brake_pressure: facts.Pressure = facts.Pressure.HELD
    refrigerant: facts.Pressure = facts.Pressure.HELD
    air_suspension: facts.Pressure = facts.Pressure.HELD
    stored_spring: facts.Pressure = facts.Pressure.HELD
    parking_brake: facts.ParkingBrake = facts.ParkingBrake.SET
    selector: facts.Selector = facts.Selector.NEUTRAL_OR_PARK
    ventilation: facts.Ventilation = facts.Ventilation.UNKNOWN
    codes: facts.Codes = facts.Codes.UNSAVED
    undone: Undone = NOTHING

    def word(self, dimension: str) -> StrEnum:
        """Give the word of one dimension."""
        found: StrEnum = getattr(self, dimension)
        return found

    @property
    def words(self) -> dict[str, str]:
        """Every dimension with its word, in the order of the record's `State`."""
        return {name: str(self.word(name)) for name in DIMENSIONS}

    def overlaid(self, said: State | None) -> FullState:
        """Give this state with what a record says of it laid on top."""
        return replace(self, **said_words(said))


def said_words(said: State | None) -> dict[str, Any]:
    """Give the dimensions that a record's state speaks of, with their words."""
    if said is None:
        return {}
    return {name: getattr(said, name) for name in DIMENSIONS if getattr(said, name) is not None}


def standing(said: State | None = None, *, high_voltage: bool = False) -> FullState:
    """Give the state a vehicle is taken to be in on arrival.

    Parameters
    ----------
    said : State, optional
        What the manual's settings say of it.
    high_voltage : bool
        Whether any vehicle meant has a high-voltage system: it is then live.

    Notes
    -----
    Ventilation is unknown until somebody says where the exhaust goes, and the engine has just
    been driven in, so it is hot; both count against the reader until the job says otherwise.
    """
    fitted = facts.HighVoltage.LIVE if high_voltage else facts.HighVoltage.NOT_FITTED
    return replace(FullState(), high_voltage=fitted).overlaid(said)


_RANK = {(name, word): at for name, words in SAFEST_FIRST.items() for at, word in enumerate(words)}


def rank(dimension: str, word: str) -> int:
    """Give how hazardous a word of a dimension is, 0 for the safest."""
    return _RANK[dimension, word]


def worse(dimension: str, one: StrEnum, other: StrEnum) -> StrEnum:
    """Give the more hazardous of two words of a dimension."""
    return other if rank(dimension, other) > rank(dimension, one) else one


def after(state: FullState, step: Step, guards: Collection[str] = ()) -> FullState:
    """Give the state after a step.

    Parameters
    ----------
    state : FullState
        The state before it.
    step : Step
        What is done.
    guards : collection of str
        Ids of the components that are guards, so that one taken off is remembered.

    Notes
    -----
    The act's own effects come first, then what `sets` says. Where `sets` contradicts the act,
    the act wins here and :func:`contradictions` says so. A cranked engine leaves the key on.
    """
    words: dict[str, Any] = dict(USUAL.get(step.action, {}))
    runs = words.get("engine", facts.Engine.STOPPED) is not facts.Engine.STOPPED
    if (runs or step.action is Action.START_ENGINE) and fitted_with_high_voltage(state):
        words["ignition"] = facts.Ignition.READY
    words |= {EMPTIED[o]: facts.Pressure.RELIEVED for o in step.opens if o in EMPTIED}
    said = said_words(step.sets)
    words |= said
    for name, allowed in FIXED.get(step.action, {}).items():
        words[name] = said[name] if said.get(name) in allowed else allowed[0]
    undone = state.undone.after(step, guards)
    if undone is state.undone and all(state.word(name) is word for name, word in words.items()):
        return state  # most steps change nothing, and a copy costs as much as all the rest
    return replace(state, **words, undone=undone)


def during(state: FullState, step: Step, guards: Collection[str] = ()) -> FullState:
    """Give the state while a step is done: in each dimension the worse of before and after.

    An engine being stopped still runs under the hands that stop it, and a vehicle being raised
    is already a raised one.
    """
    then = after(state, step, guards)
    words: dict[str, Any] = {}
    if then is not state:
        words = {
            name: state.word(name)
            for name in DIMENSIONS
            if worse(name, then.word(name), state.word(name)) is not then.word(name)
        }
    for name, word in WHILE.get(step.action, {}).items():
        words[name] = worse(name, words.get(name, then.word(name)), word)
    if not words and then is state:
        return state
    return replace(then, **words, undone=state.undone | then.undone)


def fitted_with_high_voltage(state: FullState) -> bool:
    """Say whether the vehicle has, or may have, a high-voltage system."""
    return state.high_voltage is not facts.HighVoltage.NOT_FITTED


def contradictions(step: Step) -> dict[str, tuple[str, str]]:
    """Give what `sets` says against the nature of the act: dimension to (act's, said)."""
    said = said_words(step.sets)
    return {
        name: (str(allowed[0]), str(said[name]))
        for name, allowed in FIXED.get(step.action, {}).items()
        if name in said and said[name] not in allowed
    }


def differences(one: FullState, other: FullState) -> dict[str, tuple[str, str]]:
    """Give the dimensions in which two states differ, with the word of each."""
    return {
        name: (str(one.word(name)), str(other.word(name)))
        for name in DIMENSIONS
        if one.word(name) is not other.word(name)
    }
