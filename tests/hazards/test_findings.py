"""What the hazard engine finds wrong: facts left out, unsafe orders, things left undone."""

from __future__ import annotations

from typing import Any

import pytest

from generator.hazards.findings import problems
from generator.records.kinds import Record
from generator.records.kinds.work import Step
from tests.hazards.build import job, manual, part, step, supply, tool

Fields = dict[str, Any]
TOOLS = ["multimeter", "scan-tool", "torque-wrench", "battery-charger"]

SAVE = step("save_codes", "engine_bay", tools=["scan-tool"])
OFF = step("disconnect_battery", "engine_bay")
BACK = step("connect_battery", "engine_bay")
UP = step("raise_on_lift", "beside_vehicle")
DOWN = step("lower_to_ground", "beside_vehicle")
JACK = step("raise_on_jack", "beside_vehicle")
STANDS = step("set_on_stands", "wheel_area")
BELOW = step("look", "under_vehicle")
KEY = step("key_on", "engine_bay")
KEY_OFF = step("key_off", "engine_bay")
START = step("start_engine", "engine_bay")
STOP = step("stop_engine", "engine_bay")
UNPLUG = step("unplug", "engine_bay", acts_on=["sensor"])
PLUG = step("plug", "engine_bay", acts_on=["sensor"])
SAVED = {"codes": "saved"}


def found(*steps: Step, records: tuple[Record, ...] = (), **fields: Any) -> list[str]:
    """Give the codes of the findings on a manual with one procedure."""
    used = sorted({id_ for one in steps for id_ in one.tools})
    used_up = sorted({id_ for one in steps for id_ in one.supplies})
    fields = {"tools": used, "supplies": used_up, **fields}
    one = job("story", *steps, **fields)
    return [
        p.code for p in problems(manual(one, *records, part("none", "none"), part("unknown")))
        if p.record.split("/")[0] != "components"
    ]  # fmt: skip


GOOD: dict[str, tuple[tuple[Step, ...], Fields]] = {
    "battery": ((SAVE, OFF, UNPLUG, PLUG, BACK), {"leaves": SAVED}),
    "lift": ((UP, BELOW, DOWN), {}),
    "stands": ((JACK, STANDS, BELOW, DOWN), {}),
    "engine": ((START, STOP), {}),
    "plain": ((step("ask", plain="mechanic"),), {}),
    "meant under power": (
        (KEY, step("unplug", "engine_bay", acts_on=["sensor"], sets={"ignition": "key_on"}),
         KEY_OFF, PLUG), {},
    ),
    "left apart on purpose": ((UNPLUG,), {"leaves_apart": ["sensor"]}),
    "restored on the way": (
        (step("remove", "engine_bay", acts_on=["sensor"], tools=["hand-tool"]),
         step("fit", "engine_bay", acts_on=["sensor"])), {},
    ),
}  # fmt: skip


@pytest.mark.parametrize("name", GOOD)
def test_good_work_has_no_finding(name: str) -> None:
    """Work that is done in the right order and put back gives no finding."""
    steps, fields = GOOD[name]
    assert found(*steps, **fields) == []


BAD: dict[str, tuple[str, tuple[Step, ...], Fields]] = {
    # unsafe order
    "battery off before the codes are saved": ("unsafe-order", (OFF, BACK), {}),
    "battery off with the key on": (
        "unsafe-order", (SAVE, KEY, OFF, KEY_OFF, BACK), {"leaves": SAVED},
    ),
    "codes cleared before they are saved": (
        "unsafe-order", (step("clear_codes", "engine_bay", tools=["scan-tool"]),),
        {"leaves": {"codes": "cleared"}},
    ),
    "unplugged under power": ("unsafe-order", (KEY, UNPLUG, KEY_OFF, PLUG), {}),
    "plugged under power": ("unsafe-order", (UNPLUG, KEY, PLUG, KEY_OFF), {}),
    "battery taken out with negative on": (
        "unsafe-order",
        (step("remove", "engine_bay", acts_on=["lv-battery"]),
         step("fit", "engine_bay", acts_on=["lv-battery"])), {},
    ),
    "negative on before positive is fastened": (
        "unsafe-order",
        (OFF, step("loosen", "engine_bay", acts_on=["main-terminal"]), BACK,
         step("tighten", "engine_bay", acts_on=["main-terminal"], tools=["torque-wrench"])),
        {"entry": SAVED},
    ),
    "under a vehicle on the ground": ("unsafe-order", (BELOW,), {}),
    "under a vehicle on a jack": ("unsafe-order", (JACK, BELOW, DOWN), {}),
    "raised with the engine running": ("unsafe-order", (START, UP, DOWN, STOP), {}),
    "driven with a part off": (
        "unsafe-order",
        (step("remove", "engine_bay", acts_on=["sensor"]), step("drive", "driver_seat"),
         STOP, step("fit", "engine_bay", acts_on=["sensor"])), {},
    ),
    # out of turn
    "cranked with the battery off": (
        "out-of-turn", (OFF, step("crank", "engine_bay"), KEY_OFF, BACK), {"entry": SAVED},
    ),
    "stopped before it ran": ("out-of-turn", (STOP,), {}),
    "connected twice": ("out-of-turn", (BACK,), {}),
    "disconnected twice": ("out-of-turn", (OFF, OFF, BACK), {"entry": SAVED}),
    "lowered from the ground": ("out-of-turn", (DOWN,), {}),
    "stands under nothing": ("out-of-turn", (STANDS, DOWN), {}),
    "plugged what was never apart": ("out-of-turn", (PLUG,), {}),
    "leads off that were never on": (
        "out-of-turn",
        (step("disconnect_leads", "engine_bay", acts_on=["sensor"], tools=["multimeter"]),), {},
    ),
    "sets against the act": (
        "sets-against-act", (START, step("stop_engine", "engine_bay",
                                         sets={"engine": "running"})), {},
    ),
    "sets what is so": (
        "sets-nothing", (step("adjust", "engine_bay", acts_on=["sensor"],
                              sets={"parking_brake": "set"}),), {},
    ),
    # left behind
    "battery left off": ("not-restored", (OFF,), {"entry": SAVED}),
    "raised and left": ("not-restored", (UP,), {}),
    "engine left running": ("not-restored", (START,), {}),
    "plug left apart": ("left-undone", (UNPLUG,), {}),
    "part left off": ("left-undone", (step("remove", "engine_bay", acts_on=["sensor"]),), {}),
    "part left loose": ("left-undone", (step("loosen", "engine_bay", acts_on=["sensor"]),), {}),
    "guard left off": (
        "left-undone", (step("remove", "engine_bay", acts_on=["fan-guard"]),), {},
    ),
    "leads left in": (
        "left-undone",
        (step("connect_leads", "engine_bay", acts_on=["sensor"], tools=["multimeter"]),), {},
    ),
    "says what is not so": ("leaves-untrue", (UP, DOWN), {"leaves": {"support": "lift"}}),
    "says that it leaves apart what is whole": (
        "leaves-untrue", (UNPLUG, PLUG), {"leaves_apart": ["sensor"]},
    ),
    # facts left out
    "no component": (
        "step-facts", (step("adjust", "engine_bay"),), {},
    ),
    "no tool": (
        "step-facts", (step("measure", "engine_bay", acts_on=["sensor"], measures="voltage"),), {},
    ),
    "no instrument": (
        "step-facts",
        (step("measure", "engine_bay", acts_on=["sensor"], measures="voltage",
              tools=["test-leads"]),), {},
    ),
    "no supply": ("step-facts", (step("fill", "engine_bay", acts_on=["sensor"]),), {}),
    "not said what is measured": (
        "step-facts",
        (step("measure", "engine_bay", acts_on=["sensor"], tools=["multimeter"]),), {},
    ),
    "not said what is opened": (
        "step-facts",
        (step("loosen", "engine_bay", acts_on=["hot-fluid"]),
         step("tighten", "engine_bay", acts_on=["hot-fluid"], tools=["torque-wrench"])), {},
    ),
    "a call that is not carried out": (
        "step-facts", (step("look", "engine_bay", call="story-two"),), {},
    ),
    "carried out without a call": ("step-facts", (step("carry_out", "engine_bay"),), {}),
    "place unknown": ("unknown-fact", (step("look", "unknown"),), {}),
    "near unknown": ("unknown-fact", (step("look", "bench", near=["unknown"]),), {}),
    "silent": ("silent-step", (step("ask"),), {}),
    "plain where a rule fires": ("not-plain", (step("look", "engine_bay", plain="mechanic"),), {}),
    "a caution that hangs on one word": (
        "near-alone", (step("look", "engine_bay", near=["main_terminal"]),), {},
    ),
    "tool not laid out": (
        "tool-not-listed", (step("look", "engine_bay", tools=["hand-tool"]),), {"tools": []},
    ),
    "tool laid out for nothing": (
        "tool-not-used", (step("look", "engine_bay"),), {"tools": ["hand-tool"]},
    ),
}  # fmt: skip


@pytest.mark.parametrize("name", BAD)
def test_bad_work_is_found(name: str) -> None:
    """Each fault gives its own finding, and no other that would hide it."""
    code, steps, fields = BAD[name]
    assert set(found(*steps, **fields)) == {code}


def test_a_called_procedure_s_entry_is_checked() -> None:
    """A procedure that counts on a cold engine cannot be called with a hot one."""
    cold = job("cold-work", step("look", "engine_bay"), entry={"engine_heat": "cold"},
               leaves={"engine_heat": "cold"})  # fmt: skip
    call = step("carry_out", "engine_bay", call="cold-work")
    assert found(call, records=(cold,)) == ["entry-not-met"]
    wait = step("wait", "engine_bay", sets={"engine_heat": "cold"})
    assert found(wait, call, records=(cold,), leaves={"engine_heat": "cold"}) == []


def test_a_safer_state_than_asked_for_will_do() -> None:
    """Codes that are cleared already were saved before, so the entry is met."""
    careful = job("careful", OFF, BACK, entry=SAVED)
    call = step("carry_out", "engine_bay", call="careful")
    cleared = {"codes": "cleared"}
    assert found(call, records=(careful,), entry=cleared, leaves=cleared) == []


def test_a_circle_of_calls_is_found() -> None:
    """Two procedures that call each other are both told."""
    back = job("back", step("carry_out", "engine_bay", call="story"))
    codes = found(step("carry_out", "engine_bay", call="back"), records=(back,))
    assert codes == ["call-cycle", "call-cycle"]


def test_what_a_called_procedure_leaves_undone_is_found_at_the_call() -> None:
    """The caller is told, at the step that calls."""
    inner = job("inner", UNPLUG, leaves_apart=["sensor"])
    assert found(step("carry_out", "engine_bay", call="inner"), records=(inner,)) == ["left-undone"]


def test_stock_that_the_rules_do_not_know() -> None:
    """A tool or substance of no known class, and a part of unknown energy, are findings."""
    kb = manual(tool("thing", "gizmo"), supply("stuff", "goo"), part("riddle", "unknown"))
    codes = [(p.code, p.record) for p in problems(kb) if p.record != "components/unknown"]
    assert codes == [
        ("unknown-energy", "components/riddle"),
        ("unknown-class", "supplies/stuff"),
        ("unknown-class", "tools/thing"),
    ]
