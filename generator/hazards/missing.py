"""Findings: facts that a step's kind needs and the step does not say."""

from __future__ import annotations

from collections.abc import Iterator

from generator.hazards.classes import (
    AT_THE_END_OF_LEADS,
    INSTRUMENTS,
    LOADS,
    SUPPLIES,
    TOOLS,
    UNKNOWN,
    class_of,
)
from generator.hazards.guarded import Guarded, GuardedStep
from generator.hazards.situation import (
    FLUIDS,
    NEEDS_PART,
    NEEDS_SUPPLY,
    NEEDS_TOOL,
    TAKES_APART,
    energies_of,
    measures_of,
)
from generator.problems import Problem, Severity, code
from generator.records.kinds.facts import Action, Energy, Opens, Place
from generator.records.kinds.knowledge import Supply, Tool
from generator.records.kinds.things import Component
from generator.records.kinds.work import Job, Procedure, Step, Test
from generator.records.knowledge_base import KnowledgeBase, Path

STEP_FACTS = code(
    "step-facts",
    "Cautions follow from what a step says of itself; what it leaves out nobody is warned of.",
)
UNKNOWN_FACT = code(
    "unknown-fact",
    "Unknown counts as hazardous, so the page would warn of everything and of nothing.",
)
UNKNOWN_ENERGY = code(
    "unknown-energy",
    "Until somebody says what the part can do, every step on it carries every caution.",
    Severity.WARNING,
)
UNKNOWN_CLASS = code(
    "unknown-class",
    "Rules ask for tools and substances by class; one they do not know fires no caution.",
)
SILENT_STEP = code(
    "silent-step",
    "No caution follows from this step, and nobody has said that there is nothing to fear.",
)
NOT_PLAIN = code(
    "not-plain",
    "Somebody vouched that nothing here is hazardous, and a rule says otherwise.",
)
TOOL_NOT_LISTED = code(
    "tool-not-listed",
    "The reader is under the vehicle before finding out that the tool is in the cabinet.",
    Severity.WARNING,
)
TOOL_NOT_USED = code(
    "tool-not-used",
    "Either it is laid out for nothing, or a step has lost the fact that it is used.",
    Severity.WARNING,
)


def of_stock(kb: KnowledgeBase) -> Iterator[Problem]:
    """Give the findings on components, tools and supplies: energies and classes not known."""
    for part in kb.all("components", Component):
        if Energy.UNKNOWN in part.energies:
            yield kb.problem(
                UNKNOWN_ENERGY, part, ("energies", part.energies.index(Energy.UNKNOWN)),
                "its energy is unknown, which counts as hazardous",
                "say what it can do to a person or a vehicle, or [none]",
            )  # fmt: skip
    for tool in kb.all("tools", Tool):
        if class_of("tool", tool.tool_class) == UNKNOWN:
            yield kb.problem(
                UNKNOWN_CLASS, tool, ("tool_class",),
                f"the rules know no class of tool in “{tool.tool_class}”",
                "use one of: " + ", ".join(TOOLS),
            )  # fmt: skip
    for supply in kb.all("supplies", Supply):
        if class_of("supply", supply.supply_class) == UNKNOWN:
            yield kb.problem(
                UNKNOWN_CLASS, supply, ("supply_class",),
                f"the rules know no class of substance in “{supply.supply_class}”",
                "use one of: " + ", ".join(SUPPLIES),
            )  # fmt: skip


def of_job(kb: KnowledgeBase, job: Job, guarded: Guarded) -> Iterator[Problem]:
    """Give the findings on a job's own steps."""
    own = {step.index: step for step in guarded.steps if step.record_key == job.key}
    for index, step in enumerate(job.steps):
        for field, message, hint in _wants(kb, step):
            yield kb.problem(STEP_FACTS, job, ("steps", index, *field), message, hint)
        for field, hint in _unknowns(step):
            yield kb.problem(
                UNKNOWN_FACT, job, ("steps", index, *field), f"`{field[0]}` is unknown", hint
            )
        if index in own:
            yield from _outright(kb, job, own[index])
    yield from _laid_out(kb, job)


def _wants(kb: KnowledgeBase, step: Step) -> Iterator[tuple[Path, str, str]]:
    """Give what a step lacks; what is not written at all has its place at the step itself."""
    act = step.action
    if act in NEEDS_PART and not step.acts_on:
        yield (), f"a step that says {act} names no component", "add acts_on: [component-id]"
    if act in NEEDS_TOOL and not step.tools:
        yield (), f"a step that says {act} names no tool", "add tools: [tool-id]"
    if act in ASKS_FOR and step.tools and not _classes(kb, step) & ASKS_FOR[act]:
        yield ("tools",), f"a step that says {act} names none of the tools that do it", (
            "add one of the class " + ", ".join(sorted(ASKS_FOR[act]))
        )
    if act in NEEDS_SUPPLY and not step.supplies:
        yield (), f"a step that says {act} names no supply", "add supplies: [supply-id]"
    if act is Action.MEASURE and UNKNOWN in measures_of(kb, step):
        yield (), "it does not say what it measures", "add spec, or measures: voltage"
    if act in TAKES_APART and not step.opens and energies_of(kb, step.acts_on) & FLUIDS:
        yield (
            (), "it takes apart something that holds a fluid, and does not say what it opens",
            "add opens: [coolant], or opens: [nothing] where nothing can come out",
        )  # fmt: skip
    if (act is Action.CARRY_OUT) != (step.call is not None):
        yield (
            ("action",), "`call` and the action carry_out go together",
            "use action: carry_out with call: procedure-id, and the act itself in that procedure",
        )  # fmt: skip


ASKS_FOR = {
    Action.MEASURE: INSTRUMENTS,
    Action.CONNECT_LEADS: AT_THE_END_OF_LEADS,
    Action.LOAD_CIRCUIT: LOADS,
}
"""The classes of tool, one of which an act cannot do without."""


def _classes(kb: KnowledgeBase, step: Step) -> set[str]:
    tools = (kb.find("tools", id_, Tool) for id_ in step.tools)
    return {class_of("tool", tool.tool_class) for tool in tools if tool}


def _unknowns(step: Step) -> Iterator[tuple[Path, str]]:
    if step.place is Place.UNKNOWN:
        yield ("place",), "say where the person's body and hands are"
    if Energy.UNKNOWN in step.near:
        at = step.near.index(Energy.UNKNOWN)
        yield ("near", at), "say what is within reach, or leave it out"
    if Opens.UNKNOWN in step.opens:
        yield ("opens", step.opens.index(Opens.UNKNOWN)), "say what it opens, or [nothing]"


def _outright(kb: KnowledgeBase, job: Job, step: GuardedStep) -> Iterator[Problem]:
    """Check that a step either has a caution or says outright that it needs none."""
    at = ("steps", step.index)
    met = [line.id for line in step.hazards] + [line.id for line in step.reminders]
    if met and step.step.plain is not None:
        yield kb.problem(
            NOT_PLAIN, job, (*at, "plain"),
            f"`plain` stands on a step that {', '.join(met)} applies to",
            "drop `plain`, or mend the fact that calls for the caution",
        )  # fmt: skip
    if not met and step.step.plain is None and step.step.action is not Action.CARRY_OUT:
        yield kb.problem(
            SILENT_STEP, job, at,
            "no caution follows from this step, and it does not say that it is harmless",
            "add the fact that is missing, or plain: role-id to vouch that nothing is hazardous",
        )  # fmt: skip


def _laid_out(kb: KnowledgeBase, job: Job) -> Iterator[Problem]:
    """Compare the tools and supplies laid out with those the steps use."""
    for field in ("tools", "supplies"):
        listed: list[str] = getattr(job, field)
        used = {id_ for step in job.steps for id_ in getattr(step, field)}
        if isinstance(job, Test) and field == "tools":
            used |= {hookup.instrument for hookup in job.hookups}
        called = {
            id_
            for step in job.steps
            if (procedure := kb.find("procedures", step.call, Procedure)) is not None
            for id_ in getattr(procedure, field)
        }
        for index, step in enumerate(job.steps):
            for position, id_ in enumerate(getattr(step, field)):
                if id_ not in listed:
                    yield kb.problem(
                        TOOL_NOT_LISTED, job, ("steps", index, field, position),
                        f"{id_} is used here and not laid out at the start",
                        f"add it to the record's own `{field}`",
                    )  # fmt: skip
        for position, id_ in enumerate(listed):
            if id_ not in used | called:
                yield kb.problem(
                    TOOL_NOT_USED, job, (field, position),
                    f"{id_} is laid out, and no step uses it",
                    f"name it under `{field}` of the step that uses it, or drop it here",
                )  # fmt: skip
