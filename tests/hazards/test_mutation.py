"""One slip of an author is never silent: every fact of every step is taken away in turn.

A mutant is killed where a finding appears, or where every step still warns of all it warned of.
"""

from __future__ import annotations

from generator.hazards.findings import jobs_of
from generator.records.kinds import Record
from tests.demo import demonstration
from tests.hazards.build import job, manual, part, step, supply
from tests.hazards.mutate import forgetful_survivors, mutants, survivors


def workshop_day() -> list[Record]:
    """Give a manual whose jobs use most facts and most carried states."""
    battery_off = job(
        "battery-off",
        step("disconnect_battery", "engine_bay", do="Take the battery negative off.",
             acts_on=["lv-battery"]),
        entry={"codes": "saved"}, leaves={"codes": "saved", "battery": "disconnected"},
    )  # fmt: skip
    swap = job(
        "swap",
        step("save_codes", "driver_seat", do="Save the codes.", tools=["scan-tool"],
             plain="mechanic"),
        step("carry_out", "engine_bay", do="Make it safe.", call="battery-off"),
        step("raise_on_lift", "beside_vehicle", do="Raise the vehicle on the lift."),
        step("unplug", "under_vehicle", do="Unplug the control unit.", acts_on=["module"]),
        step("remove", "under_vehicle", do="Remove the gearbox.", acts_on=["heavy"],
             tools=["transmission-jack"]),
        step("fit", "under_vehicle", do="Fit the gearbox.", acts_on=["heavy"],
             tools=["transmission-jack"]),
        step("plug", "under_vehicle", do="Plug the control unit in.", acts_on=["module"]),
        step("lower_to_ground", "beside_vehicle", do="Lower the vehicle to the ground."),
        step("connect_battery", "engine_bay", do="Put the battery negative back on.",
             acts_on=["lv-battery"]),
        tools=["scan-tool", "transmission-jack"],
        leaves={"codes": "saved"},
    )  # fmt: skip
    fuel = job(
        "fuel",
        step("relieve_fuel_pressure", "engine_bay", do="Relieve the fuel pressure."),
        step("loosen", "engine_bay", do="Loosen the fuel pipe.", acts_on=["fuel-low"],
             opens=["fuel_low"]),
        step("tighten", "engine_bay", do="Tighten the fuel pipe.", acts_on=["fuel-low"],
             tools=["torque-wrench"]),
        step("start_engine", "driver_seat", do="Start the engine.",
             sets={"ventilation": "closed_bay"}),
        step("look", "engine_bay", do="Look for leaks.", acts_on=["fuel-low"]),
        step("stop_engine", "driver_seat", do="Stop the engine."),
        tools=["torque-wrench"],
        entry={"ventilation": "extraction"},
        leaves={"ventilation": "closed_bay"},
    )  # fmt: skip
    return [battery_off, swap, fuel, supply("spray", "brake cleaner"), part("bolt", "none")]


def test_no_fact_of_a_day_s_work_is_lost_in_silence() -> None:
    """In a small manual that uses many facts, no mutant survives."""
    kb = manual(*workshop_day())
    assert sum(1 for one in jobs_of(kb) for _ in mutants(kb, one.key)) > 40
    assert survivors(kb) == []


def test_no_carried_state_of_a_day_s_work_is_lost_in_silence() -> None:
    """Where an act no longer changes the state it changes, somebody notices."""
    assert forgetful_survivors(manual(*workshop_day())) == []


def test_no_fact_of_the_demonstration_manual_is_lost_in_silence() -> None:
    """Every fact of every step of every job of the manual, taken away in turn: none survives."""
    assert survivors(demonstration()) == []


def test_no_carried_state_of_the_demonstration_manual_is_lost_in_silence() -> None:
    """For every job, act and dimension: where the state is not carried on, somebody notices."""
    assert forgetful_survivors(demonstration()) == []


def test_the_mutation_test_can_fail() -> None:
    """A fact that nothing else holds up survives, so an empty list means something."""
    lonely = job(
        "lonely",
        step("look", "engine_bay", do="Look round.", condition=["burnt"], acts_on=["sensor"]),
    )
    found = survivors(manual(lonely))
    assert found
    assert all("charred-seals" in name for name in found)
