"""Small manuals for the hazard tests, built in memory."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from generator.hazards.classes import SUPPLIES, TOOLS
from generator.records.kinds import Record, Settings
from generator.records.kinds.facts import Energy
from generator.records.kinds.knowledge import Hazard, Person, Supply, Tool
from generator.records.kinds.things import Component, Spec, Vehicle
from generator.records.kinds.work import Job, Procedure, Step
from generator.records.knowledge_base import KnowledgeBase, Origin

SIGNED = {"author": "writer", "owner": "writer"}


def made(shape: type[Record], kind: str, id_: str, **fields: Any) -> Any:
    """Give a record of a shape, named as if it came from its file."""
    record = shape.model_validate({"title": id_, **SIGNED, **fields}, strict=False)
    record.named(kind, id_)
    return record


def vehicle(id_: str, fuel: str = "petrol", *, hybrid: bool = False) -> Vehicle:
    """Give a vehicle."""
    return made(
        Vehicle, "vehicles", id_, maker="Hollin & Tarn", years="2014 to 2019",
        engine={"code": "H1", "fuel": fuel, "hybrid": hybrid, "layout": "four in line"},
        supply="12 V", tell_apart="By its plate.", data_plate="On the door pillar.",
    )  # fmt: skip


def part(id_: str, *energies: str, **fields: Any) -> Component:
    """Give a component with its energies."""
    return made(
        Component, "components", id_, fitted_to=["petrol-car"], does="Does its work.",
        energies=list(energies) or ["none"],
        location={"zone": "engine_bay", "words": "at the front", "side": "above"}, **fields,
    )  # fmt: skip


def tool(id_: str, tool_class: str = "") -> Tool:
    """Give a tool; its class is its id in words unless said otherwise."""
    class_ = tool_class or id_.replace("-", " ")
    return made(Tool, "tools", id_, tool_class=class_, needs="To fit.", calibrated=False)


def supply(id_: str, supply_class: str = "") -> Supply:
    """Give a supply; its class is its id in words unless said otherwise."""
    class_ = supply_class or id_.replace("-", " ")
    return made(Supply, "supplies", id_, supply_class=class_, needs="To fit.", disposal="Bin.")


def spec(id_: str, quantity: str) -> Spec:
    """Give a spec of a quantity."""
    return made(
        Spec, "specs", id_, applies_to=["petrol-car"], component="sensor", quantity=quantity,
        standing="vehicle_value", at={}, method="At the plug.", source="common-practice",
    )  # fmt: skip


def step(action: str, place: str = "away", **fields: Any) -> Step:
    """Give a step."""
    fields.setdefault("do", f"{action} as told.")
    return Step.model_validate({"action": action, "place": place, **fields}, strict=False)


def job(
    id_: str,
    *steps: Step,
    entry: dict[str, str] | None = None,
    leaves: dict[str, str] | None = None,
    **fields: Any,
) -> Procedure:
    """Give a procedure."""
    fields.setdefault("applies_to", ["petrol-car"])
    return made(
        Procedure, "procedures", id_, minutes=5, who="mechanic", purpose="To test.",
        entry=entry or {}, leaves=leaves or {}, steps=[s.model_dump() for s in steps], **fields,
    )  # fmt: skip


def own_rule(id_: str, **fields: Any) -> Hazard:
    """Give a shop's own rule: looking into the cabin is dangerous, unless said otherwise."""
    fields.setdefault("when", [{"action": ["look"], "place": ["cabin"]}])
    return made(
        Hazard, "hazards", id_,
        **{
            "harm": "minor", "likelihood": "could", "begins": "act", "hazard": "A low beam.",
            "consequence": "It bumps heads.", "avoid": ["Duck."], "basis": "Ours.", **fields,
        },
    )  # fmt: skip


SETTINGS = {
    "format": 1,
    "title": "Workshop manual",
    "shop": {
        "name": "Kittiwake Quay Garage", "place": "Port Averil", "about": "Three bays.",
    },
    "opening": ["look-first"],
    "emergency": "Call for help.",
    "content_licence": "CC BY 4.0",
}  # fmt: skip

STOCK = (
    vehicle("petrol-car"),
    vehicle("diesel-van", "diesel"),
    vehicle("hybrid-car", hybrid=True),
    made(Person, "people", "writer", may=["Write."]),
    *(part(energy.value.replace("_", "-"), energy.value) for energy in Energy),
    part("sensor", "low_voltage_signal"),
    part("fan-guard", "none", guard=True),
    *(tool(name.replace(" ", "-"), name) for name in TOOLS),
    *(supply(name.replace(" ", "-"), name) for name in SUPPLIES),
    tool("torque-wrench"),
    spec("winding", "resistance"),
    spec("supply", "voltage"),
    spec("pulse", "frequency"),
)
"""What every little manual has: a vehicle of each kind, a component of each energy, and a tool
and a supply of each class, all named after what they stand for."""


def manual(*records: Record, standing: dict[str, str] | None = None) -> KnowledgeBase:
    """Give a knowledge base of the stock and some more records."""
    kinds: dict[str, dict[str, Record]] = {}
    for record in (*STOCK, *records):
        kinds.setdefault(record.kind, {})[record.id] = record
    settings = Settings.model_validate({**SETTINGS, "standing_state": standing or {}}, strict=False)
    origins = {r.key: Origin(f"kb_source/{r.key}.yml") for r in _every(kinds)}
    return KnowledgeBase(settings, kinds, origins)


def _every(kinds: dict[str, dict[str, Record]]) -> Iterable[Record]:
    for by_id in kinds.values():
        yield from by_id.values()


def ids(boxes: Iterable[Any]) -> list[str]:
    """Give the ids of the hazards in boxes."""
    return [line.id for box in boxes for line in box.hazards]


def in_manual(one: Job, *records: Record) -> tuple[KnowledgeBase, Job]:
    """Give a manual that holds a job, and the job."""
    return manual(one, *records), one
