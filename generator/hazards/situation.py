"""All that a rule may ask about one step: its facts resolved, with the state it happens in.

What nobody said is put in as *unknown*, and unknown matches whatever a rule asks for. That is why
an author who leaves a fact out gets more boxes, never fewer.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from generator.hazards.classes import UNKNOWN, class_of
from generator.hazards.state import FullState
from generator.hazards.undone import NOTHING
from generator.records.kinds.facts import Action, Energy, Measures, Opens, Place
from generator.records.kinds.knowledge import Supply, Tool
from generator.records.kinds.things import Component, Spec, Vehicle
from generator.records.kinds.work import Job, Step
from generator.records.knowledge_base import KnowledgeBase, table

NEEDS_PART = frozenset(
    {
        Action.UNPLUG, Action.PLUG, Action.REMOVE, Action.FIT, Action.LOOSEN, Action.TIGHTEN,
        Action.CLEAN, Action.ADJUST, Action.MOVE_HARNESS, Action.HEAT, Action.COOL,
        Action.CONNECT_LEADS, Action.DISCONNECT_LEADS, Action.MEASURE, Action.LOAD_CIRCUIT,
        Action.TURN_BY_HAND,
        Action.COMMAND, Action.PROGRAM, Action.DRAIN, Action.FILL, Action.CUT_AND_JOIN,
        Action.INFLATE,
    }
)  # fmt: skip
"""Acts that touch a part, so that the step has to name it."""

NEEDS_TOOL = frozenset(
    {
        Action.CONNECT_LEADS, Action.DISCONNECT_LEADS, Action.MEASURE, Action.LOAD_CIRCUIT,
        Action.HEAT, Action.COMMAND,
        Action.PROGRAM, Action.CLEAR_CODES, Action.SAVE_CODES, Action.CHARGE_BATTERY,
        Action.JUMP_START, Action.CUT_AND_JOIN, Action.TIGHTEN, Action.INFLATE,
        Action.REGENERATE,
    }
)  # fmt: skip
"""Acts that nobody does with bare hands, so that the step has to name the tool."""

NEEDS_SUPPLY = frozenset({Action.FILL})
"""Acts that use something up, so that the step has to name it."""

ON_BATTERY = frozenset(
    {
        Action.DISCONNECT_BATTERY, Action.CONNECT_BATTERY, Action.CHARGE_BATTERY,
        Action.JUMP_START,
    }
)  # fmt: skip
"""Acts on the low-voltage battery, whether or not the step names it."""

FLUIDS = frozenset(
    {
        Energy.FUEL_LOW, Energy.FUEL_HIGH, Energy.FUEL_GAS, Energy.REFRIGERANT, Energy.HOT_FLUID,
        Energy.BRAKE_HYDRAULIC,
    }
)  # fmt: skip
TAKES_APART = frozenset({Action.REMOVE, Action.LOOSEN, Action.DRAIN})
"""Acts that open a part which holds a fluid, unless the step says `opens: [nothing]`."""

_BAY = frozenset({Energy.ROTATING, Energy.ELECTRIC_FAN, Energy.HOT_SURFACE})
WITHIN_REACH: dict[Place, frozenset[Energy]] = {
    Place.ENGINE_BAY: _BAY,
    Place.UNDER_VEHICLE: frozenset({Energy.ROTATING, Energy.HOT_SURFACE}),
    Place.PIT: frozenset({Energy.ROTATING, Energy.HOT_SURFACE}),
    Place.WHEEL_AREA: frozenset({Energy.HOT_SURFACE}),
    Place.UNKNOWN: _BAY,
}
"""What is within reach there on any vehicle: an engine bay has belts, a fan and hot pipes."""

_HV_PLACES = frozenset({Place.ENGINE_BAY, Place.UNDER_VEHICLE, Place.PIT, Place.UNKNOWN})


@dataclass(frozen=True, slots=True)
class Situation:
    """One step as a rule sees it.

    Two steps that look alike to every rule are equal, whichever parts are undone meanwhile.
    """

    action: Action
    place: Place
    energy: frozenset[str]
    near: frozenset[str]
    opens: frozenset[str]
    tool_class: frozenset[str]
    supply_class: frozenset[str]
    measures: frozenset[str]
    condition: frozenset[str]
    apart: frozenset[str]
    undone: frozenset[str]
    vehicle: frozenset[str]
    state: FullState


def vehicles_of(kb: KnowledgeBase, job: Job) -> list[Vehicle]:
    """Give the vehicles a job holds for, as far as they have a record."""
    found = (kb.find("vehicles", id_, Vehicle) for id_ in job.applies_to)
    return [vehicle for vehicle in found if vehicle is not None]


def kinds_of(vehicles: Iterable[Vehicle]) -> frozenset[str]:
    """Give the kinds of vehicle meant: petrol, diesel, hybrid."""
    kinds: set[str] = set()
    for vehicle in vehicles:
        kinds.add(vehicle.engine.fuel)
        if vehicle.engine.hybrid:
            kinds.add("hybrid")
    return frozenset(kinds)


def energies_of(kb: KnowledgeBase, parts: Iterable[str]) -> frozenset[Energy]:
    """Give the energies of components; one without a record has an unknown energy."""
    found: set[Energy] = set()
    for id_ in parts:
        part = kb.find("components", id_, Component)
        found.update(part.energies if part else (Energy.UNKNOWN,))
    return frozenset(found) - {Energy.NONE}


def measures_of(kb: KnowledgeBase, step: Step) -> frozenset[str]:
    """Give what a step reads, from its own word or from the quantity of its specs."""
    if step.measures is not None:
        return frozenset({str(step.measures)})
    if step.action is not Action.MEASURE:
        return frozenset()
    return quantities_of(kb, step) or frozenset({UNKNOWN})


def quantities_of(kb: KnowledgeBase, step: Step) -> frozenset[str]:
    """Give the classes of quantity that a step's specs are about."""
    specs = (kb.find("specs", id_, Spec) for id_ in step.specs)
    return frozenset(class_of("measured", spec.quantity) for spec in specs if spec is not None)


def situation(
    kb: KnowledgeBase, kinds: frozenset[str], step: Step, state: FullState
) -> Situation:
    """Resolve the facts of a step.

    Parameters
    ----------
    kb : KnowledgeBase
        Where components, tools, supplies and specs are looked up.
    kinds : frozenset of str
        Kinds of vehicle the job holds for.
    step : Step
        What is done.
    state : FullState
        The state while it is done.

    Notes
    -----
    Whoever measures against a spec acts on the part that the spec belongs to.
    Whoever measures or sets the gap of a part that reads a wheel has the fingers at the wheel.
    """
    measured, quantities = measures_of(kb, step), quantities_of(kb, step)
    acts_on = set(energies_of(kb, [*step.acts_on, *_measured_parts(kb, step)]))
    if step.action in NEEDS_PART and not step.acts_on:
        acts_on.add(Energy.UNKNOWN)
    if step.action in ON_BATTERY:
        acts_on.add(Energy.LV_BATTERY)
    near = acts_on | set(step.near) | WITHIN_REACH.get(step.place, frozenset())
    for id_ in step.acts_on:
        part = kb.find("components", id_, Component)
        near |= set(part.near) if part else set()
        if part is not None and part.reads and Measures.LENGTH in measured | quantities:
            near |= energies_of(kb, [part.reads])
    fans = kb.table(_fans)[""]
    if not state.undone.unplugged.isdisjoint(fans) and Energy.ELECTRIC_FAN not in acts_on:
        near -= {Energy.ELECTRIC_FAN}  # an unplugged fan stays where it is
    if "hybrid" in kinds and step.place in _HV_PLACES:
        near.add(Energy.HIGH_VOLTAGE)
    if "petrol" in kinds and step.place in (Place.ENGINE_BAY, Place.UNKNOWN):
        near.add(Energy.IGNITION_SECONDARY)
    return Situation(
        action=step.action,
        place=step.place,
        energy=frozenset(map(str, acts_on)),
        near=frozenset(map(str, near - {Energy.NONE})),
        opens=_opens(step, acts_on),
        tool_class=_tools(kb, step),
        supply_class=_supplies(kb, step),
        measures=measured,
        condition=frozenset(map(str, step.condition)),
        apart=frozenset(map(str, energies_of(kb, state.undone.apart))),
        undone=frozenset(state.undone.ways),
        vehicle=kinds,
        state=replace(state, undone=NOTHING),
    )


@table
def _fans(kb: KnowledgeBase) -> dict[str, frozenset[str]]:
    """Give the ids of the electric fans."""
    parts = kb.all("components", Component)
    return {"": frozenset(part.id for part in parts if Energy.ELECTRIC_FAN in part.energies)}


def _measured_parts(kb: KnowledgeBase, step: Step) -> list[str]:
    if step.action is not Action.MEASURE:
        return []
    specs = (kb.find("specs", id_, Spec) for id_ in step.specs)
    return [spec.component for spec in specs if spec is not None]


def _opens(step: Step, acts_on: set[Energy]) -> frozenset[str]:
    said = frozenset(map(str, step.opens))
    if not said and step.action in TAKES_APART and acts_on & FLUIDS:
        return frozenset({UNKNOWN})
    return said - {str(Opens.NOTHING)}


def _tools(kb: KnowledgeBase, step: Step) -> frozenset[str]:
    if not step.tools and step.action in NEEDS_TOOL:
        return frozenset({UNKNOWN})
    tools = (kb.find("tools", id_, Tool) for id_ in step.tools)
    return frozenset(class_of("tool", t.tool_class) if t else UNKNOWN for t in tools)


def _supplies(kb: KnowledgeBase, step: Step) -> frozenset[str]:
    if not step.supplies and step.action in NEEDS_SUPPLY:
        return frozenset({UNKNOWN})
    supplies = (kb.find("supplies", id_, Supply) for id_ in step.supplies)
    return frozenset(class_of("supply", s.supply_class) if s else UNKNOWN for s in supplies)


