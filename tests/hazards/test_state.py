"""The carried state: what acts do, what `sets` adds, what is undone."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.hazards.effects import DIMENSIONS, FIXED, SAFEST_FIRST
from generator.hazards.state import (
    FullState,
    after,
    contradictions,
    differences,
    during,
    rank,
    standing,
)
from generator.records.kinds import facts
from generator.records.kinds.facts import Action
from generator.records.kinds.work import State, Step
from tests.hazards.build import step

PARTS = ("sensor", "module", "fan-guard", "heavy")

states = st.builds(
    FullState,
    **{
        name: st.sampled_from(type(getattr(FullState(), name))) for name in DIMENSIONS
    },
)  # fmt: skip
steps = st.builds(
    lambda action, parts, opens, sets: step(action, acts_on=parts, opens=opens, sets=sets),
    st.sampled_from(Action),
    st.lists(st.sampled_from(PARTS), unique=True, max_size=3),
    st.lists(st.sampled_from(facts.Opens), unique=True, max_size=2),
    st.none()
    | st.fixed_dictionaries(
        {}, optional={name: st.sampled_from(words) for name, words in SAFEST_FIRST.items()}
    ),
)


def test_every_dimension_of_a_record_is_carried() -> None:
    """Each dimension a record can speak of, with each of its words, has its rank here."""
    assert set(DIMENSIONS) == set(State.model_fields)
    for name, words in SAFEST_FIRST.items():
        assert set(words) == {str(word) for word in type(getattr(FullState(), name))}
        assert words[-1] == "unknown"


def test_a_vehicle_on_arrival() -> None:
    """It has just been driven in: hot, switched off, under pressure, nothing written down."""
    said = standing().words
    assert said == {
        "engine": "stopped", "engine_heat": "hot", "ignition": "key_off",
        "battery": "connected", "high_voltage": "not_fitted", "support": "ground",
        "fuel_pressure": "held", "coolant_pressure": "held", "brake_pressure": "held",
        "refrigerant": "held", "air_suspension": "held", "stored_spring": "held",
        "parking_brake": "set", "selector": "neutral_or_park", "ventilation": "unknown",
        "codes": "unsaved",
    }  # fmt: skip
    assert standing(high_voltage=True).words["high_voltage"] == "live"


@given(states, steps)
def test_while_a_step_is_done_it_is_never_safer_than_before_or_after(
    state: FullState, one: Step
) -> None:
    """In each dimension the state during a step is at least as bad as on either side of it."""
    then, meanwhile = after(state, one), during(state, one)
    for name in DIMENSIONS:
        worst = max(rank(name, state.word(name)), rank(name, then.word(name)))
        assert rank(name, meanwhile.word(name)) >= worst
    assert meanwhile.undone.apart >= state.undone.apart | then.undone.apart


@given(states, steps)
def test_an_act_does_what_its_name_says(state: FullState, one: Step) -> None:
    """Whatever `sets` says, what an act does by its nature is so afterwards."""
    then = after(state, one)
    for name, allowed in FIXED.get(one.action, {}).items():
        assert then.word(name) in allowed


@given(states, steps)
def test_what_is_set_is_so_unless_it_is_reported(state: FullState, one: Step) -> None:
    """Each word of `sets` holds after the step, or is given as a contradiction."""
    then, against = after(state, one), contradictions(one)
    for name in DIMENSIONS:
        said = getattr(one.sets, name) if one.sets else None
        if said is not None:
            assert (then.word(name) is said) != (name in against)


@given(states, steps)
def test_a_step_leaves_the_rest_alone(state: FullState, one: Step) -> None:
    """A plain look that sets and opens nothing changes nothing."""
    look = step("look", acts_on=one.acts_on)
    assert after(state, look) == state
    assert during(state, look) == state


@given(states, st.lists(st.sampled_from(PARTS), unique=True, min_size=1))
def test_undoing_and_restoring_cancel(state: FullState, parts: list[str]) -> None:
    """Unplug and plug, remove and fit, loosen and tighten, leads in and out: back to before."""
    for undo, restore in (
        ("unplug", "plug"), ("remove", "fit"), ("loosen", "tighten"),
        ("connect_leads", "disconnect_leads"),
    ):  # fmt: skip
        apart = after(state, step(undo, acts_on=parts), {"fan-guard"})
        assert apart.undone.ways
        assert after(apart, step(restore, acts_on=parts), {"fan-guard"}) == state


@pytest.mark.parametrize(
    ("action", "before", "changes"),
    [
        ("key_on", {}, {"ignition": "key_on"}),
        ("key_on", {"fuel_pressure": "relieved"}, {"ignition": "key_on", "fuel_pressure": "held"}),
        ("crank", {}, {"ignition": "key_on"}),
        ("start_engine", {"engine_heat": "cold"},
         {"engine": "running", "ignition": "key_on", "engine_heat": "hot"}),
        ("stop_engine", {"engine": "running", "ignition": "key_on"},
         {"engine": "stopped", "ignition": "key_off"}),
        ("key_off", {"engine": "running", "ignition": "key_on"},
         {"engine": "stopped", "ignition": "key_off"}),
        ("disconnect_battery", {}, {"battery": "disconnected"}),
        ("connect_battery", {"battery": "disconnected"}, {"battery": "connected"}),
        ("raise_on_lift", {}, {"support": "lift"}),
        ("raise_on_jack", {}, {"support": "jack_only"}),
        ("set_on_stands", {"support": "jack_only"}, {"support": "stands"}),
        ("lower_to_ground", {"support": "lift"}, {"support": "ground"}),
        ("relieve_fuel_pressure", {}, {"fuel_pressure": "relieved"}),
        ("save_codes", {}, {"codes": "saved"}),
        ("clear_codes", {"codes": "saved"}, {"codes": "cleared"}),
        ("measure", {}, {}),
    ],
)  # fmt: skip
def test_what_acts_change(action: str, before: dict[str, str], changes: dict[str, str]) -> None:
    """Each act changes what it changes at a real vehicle, and nothing else (from memory)."""
    state = standing(State.model_validate(before, strict=False))
    changed = differences(state, after(state, step(action)))
    assert {name: word for name, (_was, word) in changed.items()} == changes


def test_an_engine_cranks_only_while_it_is_cranked() -> None:
    """During the act it cranks; afterwards it stands, and the key is left on."""
    state = standing()
    assert during(state, step("crank")).engine is facts.Engine.CRANKING
    assert after(state, step("crank")).engine is facts.Engine.STOPPED


def test_a_hybrid_is_ready_once_started() -> None:
    """Starting a vehicle with a high-voltage system leaves it ready to drive."""
    then = after(standing(high_voltage=True), step("start_engine"))
    assert then.ignition is facts.Ignition.READY


def test_opening_a_system_lets_its_pressure_out() -> None:
    """The pressure is there while it is opened, and gone afterwards."""
    one, state = step("loosen", opens=["fuel_low"]), standing()
    assert during(state, one).fuel_pressure is facts.Pressure.HELD
    assert after(state, one).fuel_pressure is facts.Pressure.RELIEVED


def joints(*acts: tuple[str, list[str]]) -> Any:
    """Give what is unplugged after some acts."""
    state = standing()
    for action, parts in acts:
        state = after(state, step(action, acts_on=parts))
    return state.undone.unplugged


def test_a_harness_with_two_plugs_apart() -> None:
    """Joining one of its two plugs leaves the other apart."""
    both = [("unplug", ["sensor", "harness"]), ("unplug", ["module", "harness"])]
    assert joints(*both) == {"sensor", "module", "harness"}
    assert joints(*both, ("plug", ["module", "harness"])) == {"sensor", "harness"}


def test_leads_of_two_instruments_on_one_part() -> None:
    """Taking the thermometer off leaves the meter's leads in."""
    state = standing()
    for action, tools in (
        ("connect_leads", ["multimeter"]), ("connect_leads", ["thermometer"]),
        ("disconnect_leads", ["thermometer"]),
    ):  # fmt: skip
        state = after(state, step(action, acts_on=["sensor"], tools=tools))
    assert state.undone.leads == {"sensor"}
    off = step("disconnect_leads", acts_on=["sensor"], tools=["multimeter"])
    assert not after(state, off).undone.ways
