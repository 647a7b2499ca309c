"""The walk: boxes where a hazard begins, reminders while it lasts, calls in place."""

from __future__ import annotations

import json
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.hazards import GuardedStep, Word, audit, gap, guard
from generator.records.kinds.facts import Action, Energy, Opens, Place
from generator.records.kinds.work import Job, State, Step
from tests.hazards.build import ids, job, manual, part, step

LOOK = step("look", "engine_bay")
START = step("start_engine", "driver_seat")
STOP = step("stop_engine", "driver_seat")


def story(*steps: Step, **fields: Any) -> list[GuardedStep]:
    """Give the guarded steps of a job."""
    one = job("story", *steps, **fields)
    return list(guard(manual(one), one).steps)


def boxed(rule: str, steps: list[GuardedStep]) -> str:
    """Give B for a box, r for a reminder and . for silence, step by step."""
    return "".join(
        "B" if rule in ids(one.boxes) else "r" if rule in [r.id for r in one.reminders] else "."
        for one in steps
    )


def test_a_state_gets_its_box_once_and_then_a_line() -> None:
    """The running engine is boxed at the first step in the bay, then only remembered."""
    assert boxed("running-engine", story(START, LOOK, LOOK, LOOK)) == ".Brr"


def test_a_state_that_begins_anew_gets_its_box_again() -> None:
    """Stopped and started again, the engine is boxed again."""
    steps = story(START, LOOK, LOOK, STOP, LOOK, START, LOOK)
    assert boxed("running-engine", steps) == ".Br...B"


def test_a_state_lasts_while_the_person_is_elsewhere() -> None:
    """Back from the driver's seat with the engine still running, a line is enough."""
    steps = story(START, LOOK, step("read", "driver_seat"), LOOK)
    assert boxed("running-engine", steps) == ".B.r"


def test_an_act_gets_its_box_every_time() -> None:
    """Cranking is boxed each time it is done."""
    crank = step("crank", "driver_seat")
    assert boxed("cranking", story(crank, crank, LOOK, crank)) == "BB.B"


def test_raised_four_steps_ago_still_counts() -> None:
    """Being under a vehicle that was raised long before carries the caution."""
    up = step("raise_on_lift", "beside_vehicle")
    below = step("look", "under_vehicle")
    steps = story(up, step("ask"), step("ask"), step("ask"), below, below, step("ask"), below)
    assert boxed("under-vehicle", steps) == "....Br.r"


def test_lowered_and_raised_again_is_boxed_again() -> None:
    """The raised vehicle of this morning is not the one of this afternoon."""
    up, down = step("raise_on_lift", "beside_vehicle"), step("lower_to_ground", "beside_vehicle")
    below = step("look", "under_vehicle")
    assert boxed("under-vehicle", story(up, below, below, down, up, below)) == ".Br..B"


def test_the_engine_that_is_being_stopped_still_counts() -> None:
    """The step that stops the engine still happens beside a running one."""
    steps = story(START, step("stop_engine", "engine_bay"), LOOK)
    assert boxed("running-engine", steps) == ".B."


def test_one_box_under_the_worst_word() -> None:
    """Several hazards share one box, worst first, and the box bears the worst word."""
    (one,) = story(step("disconnect_battery", "engine_bay"))
    (box,) = one.boxes
    assert box.word is Word.WARNING
    ranks = [line.word.rank for line in box.hazards]
    assert ranks == sorted(ranks)
    assert {line.word for line in box.hazards} > {Word.WARNING, Word.NOTICE}


def test_a_called_procedure_stands_in_place_and_hands_its_state_on() -> None:
    """Its steps are numbered under the step that calls it; what it leaves undone carries on."""
    inner = job("raise", step("raise_on_lift", "beside_vehicle"))
    outer = job(
        "outer", step("ask"), step("carry_out", call="raise"), step("look", "under_vehicle")
    )
    guarded = guard(manual(inner, outer), outer)
    assert [(s.number, s.anchor, s.record_key) for s in guarded.steps] == [
        ("1", "step-1", "procedures/outer"),
        ("2", "step-2", "procedures/outer"),
        ("2.1", "step-2-1", "procedures/raise"),
        ("3", "step-3", "procedures/outer"),
    ]
    assert guarded.steps[-1].state_before.support == "lift"
    assert "under-vehicle" in ids(guarded.steps[-1].boxes)
    assert guarded.left.support == "lift"


def test_procedures_that_call_each_other_come_to_an_end() -> None:
    """A circle of calls is walked once, so the engine always ends."""
    one = job("one", step("carry_out", call="two"))
    two = job("two", step("carry_out", call="one"))
    assert [s.number for s in guard(manual(one, two), one).steps] == ["1", "1.1"]


def test_entry_and_start_and_the_manual_s_own_standing_state() -> None:
    """A job begins in the standing state, under its entry, under what is known beyond it."""
    one = job("story", LOOK, entry={"engine_heat": "warm"})
    kb = manual(one, standing={"engine_heat": "cold", "ventilation": "extraction"})
    begun = guard(kb, one, State.model_validate({"battery": "disconnected"}, strict=False)).start
    assert (begun.engine_heat, begun.ventilation, begun.battery) == (
        "warm", "extraction", "disconnected",
    )  # fmt: skip


def test_a_job_for_several_vehicles_warns_for_the_worst_of_them() -> None:
    """A job that also holds for the hybrid carries the hybrid's cautions."""
    assert "hv-near" in ids(story(LOOK, applies_to=["petrol-car", "hybrid-car"])[0].boxes)


@pytest.mark.parametrize("missing", ["acts_on", "place", "energy", "component"])
def test_what_is_not_known_counts_as_hazardous(missing: str) -> None:
    """A fact left out or unknown gives every caution that any word for it would give."""
    known = step("unplug", "engine_bay", acts_on=["pyrotechnic"])
    blurred = {
        "acts_on": step("unplug", "engine_bay"),
        "place": step("unplug", "unknown", acts_on=["pyrotechnic"]),
        "energy": step("unplug", "engine_bay", acts_on=["riddle"]),
        "component": step("unplug", "engine_bay", acts_on=["nowhere-to-be-found"]),
    }[missing]
    riddle = part("riddle", "unknown")
    one, two = job("one", known), job("two", blurred)
    kb = manual(one, two, riddle)
    assert set(ids(guard(kb, one).steps[0].boxes)) <= set(ids(guard(kb, two).steps[0].boxes))


every_step = st.builds(
    lambda action, place, parts, near, opens: step(
        action, place, acts_on=parts, near=near, opens=opens
    ),
    st.sampled_from(Action),
    st.sampled_from(Place),
    st.lists(st.sampled_from([e.value.replace("_", "-") for e in Energy]), max_size=2),
    st.lists(st.sampled_from(Energy), max_size=2),
    st.lists(st.sampled_from(Opens), max_size=1),
)


@settings(max_examples=60)
@given(st.lists(every_step, min_size=1, max_size=8))
def test_a_reminder_never_stands_without_a_box_before_it(steps: list[Step]) -> None:
    """Whoever reads a reminder has passed the full box on the way."""
    met: set[str] = set()
    for one in story(*steps):
        assert {reminder.id for reminder in one.reminders} <= met
        met |= set(ids(one.boxes))
        assert len(one.boxes) <= 1


@settings(max_examples=60)
@given(st.lists(every_step, min_size=1, max_size=6), st.integers(0, 5))
def test_unknown_state_at_the_start_never_loses_a_caution(steps: list[Step], at: int) -> None:
    """Whatever state a step is in, the same step in an unknown state warns of no less."""
    one = job("story", *steps)
    kb = manual(one)
    unknown = State.model_validate(dict.fromkeys(State.model_fields, "unknown"), strict=False)
    known = guard(kb, one).steps[min(at, len(steps) - 1)]
    lone: Job = job("story", known.step)
    blurred = guard(manual(lone), lone, unknown).steps[0]
    warned = set(ids(known.boxes)) | {reminder.id for reminder in known.reminders}
    undone = {"guard-off", "leads-turning", "lead-on-raising", "fuel-crank-open",
              "ignition-apart", "catalyst", "srs-power-return", "brake-pedal-apart"}  # fmt: skip
    assert warned - undone <= set(ids(blurred.boxes))


def test_nobody_else_makes_a_guarded_step() -> None:
    """Without the engine's seal the constructors refuse, so pages cannot show a bare step."""
    one = job("story", LOOK)
    guarded = guard(manual(one), one)
    bare: Any = guarded.steps[0]
    whole: Any = guarded
    with pytest.raises(ValueError, match="seal"):
        replace(bare, boxes=())
    with pytest.raises(TypeError, match="only the hazard engine"):
        replace(bare, boxes=(), seal=object())
    with pytest.raises(TypeError, match="only the hazard engine"):
        replace(whole, steps=(), seal=object())


def test_the_summary_lists_each_hazard_once_worst_first() -> None:
    """The head of the page names every hazard that has a box, once."""
    one = job("story", step("crank", "driver_seat"), step("crank", "driver_seat"), LOOK)
    guarded = guard(manual(one), one)
    found = [line.id for line in guarded.summary]
    assert len(found) == len(set(found))
    assert set(found) == {id_ for s in guarded.steps for id_ in ids(s.boxes)}
    ranks = [line.word.rank for line in guarded.summary]
    assert ranks == sorted(ranks)


def test_reserved_work_says_who_may_do_it() -> None:
    """A step on live high voltage is reserved; a look in the bay of the hybrid is not."""
    live = step("unplug", "engine_bay", acts_on=["high-voltage"])
    looked, done = story(LOOK, live, applies_to=["hybrid-car"])
    assert looked.reserved == ()
    assert [line.id for line in done.reserved] == ["hv-live"]


def test_what_has_to_be_restored_before_the_next_job() -> None:
    """What the next job asks for, or silently counts on, and all that is undone; nothing else."""
    up = job("up", step("raise_on_lift", "beside_vehicle"),
             step("unplug", "under_vehicle", acts_on=["sensor"]),
             step("wait", sets={"engine_heat": "cold"}), entry={"codes": "saved"})  # fmt: skip
    silent = job("silent", LOOK)
    hot = job("hot", LOOK, entry={"engine_heat": "hot", "support": "lift"})
    kb = manual(up, silent, hot)
    left = guard(kb, up).left
    assert gap(kb, left, silent).words == {"support": ("lift", "ground")}
    assert gap(kb, left, hot).words == {"engine_heat": ("cold", "hot")}
    assert gap(kb, left, hot).undone == {"unplugged": ("sensor",)}
    assert not gap(kb, guard(kb, silent).left, silent)


def test_the_audit_is_plain_data() -> None:
    """Every step with its state, rules and boxes goes through JSON and back unchanged."""
    one = job("story", step("unplug", "engine_bay", acts_on=["module"]), START, LOOK)
    entries = audit(guard(manual(one), one))
    assert json.loads(json.dumps(entries)) == entries
    assert entries[2]["state"]["undone"] == {"unplugged": ["module"]}
    assert entries[2]["boxes"][0]["word"] == "WARNING"
    assert "running-engine" in entries[2]["boxes"][0]["hazards"]
