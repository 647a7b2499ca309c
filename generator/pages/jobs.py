"""Steps, states and outcomes as a page shows them. Only guarded steps come in."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from generator.hazards import FullState, Guarded, GuardedStep
from generator.pages import routes
from generator.pages.book import Book, LinkTo
from generator.pages.strings import say
from generator.pages.values import ValueView, value_view
from generator.records.kinds.knowledge import Supply, Symptom, Tool
from generator.records.kinds.things import Spec
from generator.records.kinds.work import LEADS_TO, Job, Next, Outcome, Procedure, State, Test

DIMENSIONS = tuple(State.model_fields)
"""Every dimension of the vehicle's state, in the order a record writes them."""

STRIP = ("engine", "ignition", "battery", "support")
"""The four words every step shows; other dimensions appear where they matter."""


@dataclass(frozen=True, slots=True)
class StepView:
    """One step: its cautions, the state it is done in, the command and its values."""

    guarded: GuardedStep
    state: tuple[str, ...]
    tools: str
    values: tuple[ValueView, ...]
    called_from: LinkTo | None


@dataclass(frozen=True, slots=True)
class JobView:
    """All that the pages of tests, replacements and procedures share."""

    job: Job
    guarded: Guarded
    steps: tuple[StepView, ...]
    entry: tuple[str, ...]
    leaves: tuple[str, ...]
    tools: tuple[LinkTo, ...]
    supplies: tuple[LinkTo, ...]
    who: LinkTo
    vehicles: str


@dataclass(frozen=True, slots=True)
class OnwardView:
    """Where an outcome leads."""

    words: str
    links: tuple[LinkTo, ...]
    text: str


@dataclass(frozen=True, slots=True)
class OutcomeView:
    """One outcome of a test."""

    outcome: Outcome
    anchor: str
    verdict: str
    onward: tuple[OnwardView, ...]


def state_words(state: State | FullState, names: Sequence[str] = DIMENSIONS) -> tuple[str, ...]:
    """Give a state in words; a dimension nobody spoke of, or that is not fitted, is left out."""
    words = []
    for name in names:
        value = getattr(state, name)
        if value is not None and str(value) != "not_fitted":
            words.append(say(f"state.{name}.{value}"))
    return tuple(words)


def job_view(book: Book, job: Job) -> JobView:
    """Give the view that every kind of job shares."""
    guarded = book.guarded[job.key]
    return JobView(
        job=job,
        guarded=guarded,
        steps=tuple(_step_view(book, job, step) for step in guarded.steps),
        entry=state_words(job.entry),
        leaves=state_words(job.leaves),
        tools=tuple(
            book.link(tool, tool.needs)
            for tool in (book.kb.get("tools", id_, Tool) for id_ in job.tools)
        ),
        supplies=tuple(
            book.link(supply, supply.needs)
            for supply in (book.kb.get("supplies", id_, Supply) for id_ in job.supplies)
        ),
        who=book.role(job.who),
        vehicles=book.vehicles(job.applies_to),
    )


def _step_view(book: Book, job: Job, guarded: GuardedStep) -> StepView:
    step = guarded.step
    called = None
    if guarded.record_key != job.key:
        kind, _, id_ = guarded.record_key.partition("/")
        called = book.links(kind, [id_])[0]
    return StepView(
        guarded=guarded,
        state=state_words(guarded.state_during, STRIP),
        tools=", ".join(book.kb.get("tools", id_, Tool).title for id_ in step.tools),
        values=tuple(value_view(book, book.kb.get("specs", id_, Spec)) for id_ in step.specs),
        called_from=called,
    )


def outcome_views(book: Book, test: Test) -> tuple[OutcomeView, ...]:
    """Give a test's outcomes, each with its verdict in words and its way on."""
    return tuple(
        OutcomeView(
            outcome=outcome,
            anchor=routes.outcome(outcome.finding, index),
            verdict=_verdict(book, test, outcome),
            onward=tuple(_onward(book, test, way) for way in outcome.next),
        )
        for index, outcome in enumerate(test.outcomes)
    )


def _verdict(book: Book, test: Test, outcome: Outcome) -> str:
    if outcome.verdict == "neither":
        return say("test.neither")
    about = outcome.about or test.components
    parts = [book.kb.records["components"][id_].title for id_ in about]
    return say(f"test.{outcome.verdict}", parts=" · ".join(parts))


def _onward(book: Book, test: Test, way: Next) -> OnwardView:
    note = say("next.on", vehicles=book.vehicles(way.vehicles)) if way.vehicles else ""
    words = say(f"next.{way.way}")
    for name, kind in LEADS_TO.items():
        if way.way == name:
            target = book.kb.records[kind][getattr(way, name)]
            return OnwardView(words, (book.link(target, note or _on(book, test, target)),), "")
    if way.way == "carry_on":
        return OnwardView(words, tuple(complaints_using(book, test, way.vehicles)), "")
    if way.way == "repeat":
        return OnwardView(words, (LinkTo(say("step.heading"), "#steps"),), note)
    return OnwardView(words, (), getattr(way, way.way))


def _on(book: Book, test: Test, target: object) -> str:
    """Say for which vehicles a link holds, where it holds for fewer than the test."""
    wider = set(test.applies_to) - set(getattr(target, "applies_to", test.applies_to))
    if not wider:
        return ""
    both = [id_ for id_ in test.applies_to if id_ not in wider]
    return say("next.on", vehicles=book.vehicles(both)) if both else ""


def complaints_using(book: Book, test: Test, vehicles: list[str] | None = None) -> list[LinkTo]:
    """Give the complaints in whose order a test stands, each at its order of tests."""
    found = []
    for symptom in book.kb.all("symptoms", Symptom):
        orders = book.orders[symptom.id]
        if any(
            test.id in [t.id for t in order.opening] + [p.test.id for p in order.places]
            for vehicle, order in orders.items()
            if not vehicles or vehicle in vehicles
        ):
            found.append(LinkTo(symptom.title, f"{routes.address(symptom)}#start", "symptoms"))
    return found


def called_by(book: Book, procedure: Procedure) -> list[LinkTo]:
    """Give the work that calls a procedure."""
    return [
        book.link(record)
        for kind in ("replacements", "procedures", "tests")
        for record in book.linked_from(procedure, kind)
    ]
