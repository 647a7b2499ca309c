"""Findings: steps in an unsafe order, or out of turn with what went before."""

from __future__ import annotations

from collections.abc import Iterator

from generator.hazards.engine import Walked, start_of, walk
from generator.hazards.onward import meets
from generator.hazards.situation import energies_of
from generator.hazards.state import FullState, contradictions, said_words
from generator.hazards.undone import Ids
from generator.problems import Problem, Severity, code
from generator.records.kinds import facts
from generator.records.kinds.facts import Action, Energy, Place
from generator.records.kinds.work import Job, Procedure
from generator.records.knowledge_base import KnowledgeBase
from generator.records.knowledge_base import Path as FieldPath

UNSAFE_ORDER = code(
    "unsafe-order",
    "Done in this order the work harms somebody, or destroys evidence or a part.",
)
OUT_OF_TURN = code(
    "out-of-turn",
    "A step that ends what nothing began means that an earlier step has lost a fact.",
)
SETS_AGAINST_ACT = code(
    "sets-against-act",
    "Two words of one step disagree about the vehicle's state, and one of them is wrong.",
)
SETS_NOTHING = code(
    "sets-nothing",
    "A step that sets what is so already hides that an earlier step has lost a fact.",
    Severity.WARNING,
)
ENTRY_NOT_MET = code(
    "entry-not-met",
    "The procedure counts on a state that the vehicle is not in when it is called.",
)
CALL_CYCLE = code(
    "call-cycle",
    "A procedure that calls itself never ends.",
)

Said = tuple[FieldPath, str, str]
"""Field within the step, what is wrong, the smallest mend."""


def of_job(kb: KnowledgeBase, job: Job) -> Iterator[Problem]:
    """Give the findings on the order of a job's own steps, with its calls carried out."""
    for walked in walk(kb, job, start_of(kb, job)):
        if walked.job is not job or "." in walked.number:
            continue
        at = ("steps", walked.index)
        for what, said in (
            *((UNSAFE_ORDER, s) for s in _unsafe(kb, walked)),
            *((OUT_OF_TURN, s) for s in _out_of_turn(walked)),
            *((ENTRY_NOT_MET, s) for s in _entry(kb, walked)),
        ):
            field, message, hint = said
            yield kb.problem(what, job, (*at, *field), message, hint)
        yield from _sets(kb, job, walked)
    for index, step in enumerate(job.steps):
        if step.call and job.key in _reached(kb, step.call):
            yield kb.problem(
                CALL_CYCLE, job, ("steps", index, "call"),
                f"procedures/{step.call} leads back to this record", "break the circle",
            )  # fmt: skip


def _unsafe(kb: KnowledgeBase, walked: Walked) -> Iterator[Said]:
    step, before = walked.step, walked.before
    act = step.action
    keyed = before.ignition is not facts.Ignition.KEY_OFF
    powered = before.battery is not facts.Battery.DISCONNECTED
    unsaved = before.codes in (facts.Codes.UNSAVED, facts.Codes.UNKNOWN)
    energies = energies_of(kb, step.acts_on)
    if act in (Action.DISCONNECT_BATTERY, Action.CLEAR_CODES) and unsaved:
        yield ("action",), "codes and freeze frame are not saved by now", (
            "save the codes in an earlier step, or enter with codes: saved"
        )
    if act in (Action.DISCONNECT_BATTERY, Action.CONNECT_BATTERY) and keyed:
        yield ("action",), "the ignition is switched on at the battery", "switch off first"
    if act in (Action.UNPLUG, Action.PLUG) and keyed and powered and not _meant(walked):
        yield ("action",), f"a plug is parted or joined with {before.ignition}", (
            "switch off first, or repeat the ignition under `sets` where the test needs it"
        )
    if act in (Action.REMOVE, Action.LOOSEN) and powered:
        bare = energies & {Energy.LV_BATTERY, Energy.MAIN_TERMINAL}
        if bare:
            yield ("action",), "the battery negative is still connected", "disconnect it first"
    if act is Action.CONNECT_BATTERY:
        apart = energies_of(kb, before.undone.removed | before.undone.loose)
        if apart & {Energy.LV_BATTERY, Energy.MAIN_TERMINAL}:
            yield ("action",), "battery or main terminal is not fastened by now", (
                "negative goes on last: fit and tighten everything else first"
            )
    if step.place is Place.UNDER_VEHICLE and walked.during.support in (
        facts.Support.GROUND, facts.Support.JACK_ONLY, facts.Support.UNKNOWN,
    ):  # fmt: skip
        yield ("place",), f"somebody is under a vehicle whose support is {walked.during.support}", (
            "raise it on the lift, or set it on stands, in an earlier step"
        )
    if act in MOVES_VEHICLE and before.engine is not facts.Engine.STOPPED:
        yield ("action",), "the engine is not stopped", "stop it before the vehicle moves"
    if act is Action.DRIVE:
        yield from _drive(before)


MOVES_VEHICLE = (
    Action.RAISE_ON_LIFT, Action.RAISE_ON_JACK, Action.SET_ON_STANDS, Action.LOWER_TO_GROUND,
)  # fmt: skip
NEEDS_POWER = (
    Action.CRANK, Action.START_ENGINE, Action.DRIVE, Action.SAVE_CODES, Action.CLEAR_CODES,
    Action.COMMAND, Action.PROGRAM, Action.REGENERATE,
)  # fmt: skip


CONFIRMS = (Action.LOOK, Action.ASK, Action.READ, Action.RECORD)
"""Acts that change nothing; what they set is confirmed, and may well be so already."""


def _drive(before: FullState) -> Iterator[Said]:
    apart = before.undone.removed | before.undone.loose | before.undone.guards_off
    if apart:
        yield ("action",), f"{', '.join(sorted(apart))} is off or loose", (
            "fit and tighten everything before the road"
        )
    if before.support is not facts.Support.GROUND:
        yield ("action",), f"the vehicle's support is {before.support}", "lower it first"


def _meant(walked: Walked) -> bool:
    """Say whether the step itself says that the ignition is to stay as it is."""
    return said_words(walked.step.sets).get("ignition") is walked.before.ignition


def _out_of_turn(walked: Walked) -> Iterator[Said]:
    step, before = walked.step, walked.before
    act = step.action
    field = ("action",)
    if act in NEEDS_POWER and before.battery is facts.Battery.DISCONNECTED:
        yield field, "the battery is disconnected", "connect it in an earlier step"
    if act is Action.STOP_ENGINE and before.engine is facts.Engine.STOPPED:
        yield field, "the engine is stopped already", "start it in a step, or enter with it running"
    if act is Action.CONNECT_BATTERY and before.battery is facts.Battery.CONNECTED:
        yield field, "the battery is connected already", "disconnect it in a step, or on entry"
    if act is Action.DISCONNECT_BATTERY and before.battery is facts.Battery.DISCONNECTED:
        yield field, "the battery is disconnected already", "drop the step"
    if act is Action.LOWER_TO_GROUND and before.support is facts.Support.GROUND:
        yield field, "the vehicle is on the ground already", "raise it in a step, or on entry"
    if act is Action.SET_ON_STANDS and before.support is facts.Support.GROUND:
        yield field, "nothing carries the vehicle yet", "raise it on the jack first"
    parts = frozenset(step.acts_on)
    if act is Action.PLUG and parts and before.undone.joined(parts) != {parts}:
        yield ("acts_on",), f"no plug of exactly {', '.join(step.acts_on)} is apart", (
            "name the same components where the plug is parted and where it is joined"
        )
    if act is Action.DISCONNECT_LEADS and not _hooked_up(walked):
        yield field, "no such leads are connected by now", (
            "name the same components and tools where leads are connected and taken off"
        )


def _hooked_up(walked: Walked) -> bool:
    """Say whether every component and tool named was hooked up before."""
    step = walked.step
    taken = walked.before.undone.unhooked(frozenset(step.acts_on), step.tools)
    on = Ids().union(*(parts for parts, _tools in taken))
    using = Ids().union(*(tools for _parts, tools in taken))
    return bool(taken) and on.issuperset(step.acts_on) and using.issuperset(step.tools)


def _entry(kb: KnowledgeBase, walked: Walked) -> Iterator[Said]:
    called = kb.find("procedures", walked.step.call, Procedure)
    if called is None:
        return
    for name, asked in said_words(called.entry).items():
        found = walked.after.word(name)
        if not meets(name, found, asked, asked=True):
            yield ("call",), f"it counts on {name}: {asked}, and by now it is {found}", (
                "bring the vehicle into that state in an earlier step"
            )


def _sets(kb: KnowledgeBase, job: Job, walked: Walked) -> Iterator[Problem]:
    at = ("steps", walked.index, "sets")
    against = contradictions(walked.step)
    for name, (fixed, said) in against.items():
        yield kb.problem(
            SETS_AGAINST_ACT, job, (*at, name),
            f"{walked.step.action} leaves {name}: {fixed}, and `sets` says {said}",
            "drop it from `sets`, or name the act that is meant",
        )  # fmt: skip
    if walked.step.action in CONFIRMS or (
        walked.step.action in (Action.UNPLUG, Action.PLUG) and _meant(walked)
    ):
        return
    for name, said in said_words(walked.step.sets).items():
        if said is walked.before.word(name) and said is walked.after.word(name):
            yield kb.problem(
                SETS_NOTHING, job, (*at, name),
                f"{name} is {said} already", "drop it, or find the step that changed it before",
            )  # fmt: skip


def _reached(kb: KnowledgeBase, first: str) -> set[str]:
    """Give the keys of every procedure reached through calls from one."""
    found: set[str] = set()
    waiting = [first]
    while waiting:
        procedure = kb.find("procedures", waiting.pop(), Procedure)
        if procedure is not None and procedure.key not in found:
            found.add(procedure.key)
            waiting += [step.call for step in procedure.steps if step.call]
    return found
