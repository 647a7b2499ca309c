"""Steps, states and outcomes as a page shows them. Only guarded steps come in."""

from __future__ import annotations

from dataclasses import dataclass, replace

from generator.hazards import Guarded, GuardedStep, gap
from generator.pages import routes
from generator.pages.book import Book, LinkTo, orders_of
from generator.pages.states import STRIP, restore_words, standing_words, state_words
from generator.pages.strings import say
from generator.pages.values import ValueView, value_view, with_overrides
from generator.records.kinds import Record
from generator.records.kinds.knowledge import Supply, Symptom, Tool
from generator.records.kinds.work import LEADS_TO, Job, Next, Outcome, Procedure, State, Test
from generator.records.knowledge_base import KnowledgeBase, table


@dataclass(frozen=True, slots=True)
class StepView:
    """One step: its cautions, the state it is done in, the command and its values.

    `stands` is the state it counts on when it begins, for a reader who comes back to it.
    """

    guarded: GuardedStep
    state: tuple[str, ...]
    stands: tuple[str, ...]
    tools: str
    values: tuple[ValueView, ...]
    called_from: LinkTo | None


@dataclass(frozen=True, slots=True)
class StopView:
    """Where a job turns into reserved work: the page names it and goes no further."""

    step: StepView
    who: tuple[str, ...]
    leave: str


@dataclass(frozen=True, slots=True)
class JobView:
    """All that the pages of tests, replacements and procedures share.

    Where a step is reserved, `steps` ends before it and `stop` holds it.
    """

    job: Job
    guarded: Guarded
    steps: tuple[StepView, ...]
    stop: StopView | None
    entry: tuple[str, ...]
    leaves: tuple[str, ...]
    tools: tuple[LinkTo, ...]
    supplies: tuple[LinkTo, ...]
    who: LinkTo
    vehicles: str


@dataclass(frozen=True, slots=True)
class OnwardView:
    """Where an outcome leads, and what has to be restored first."""

    words: str
    links: tuple[LinkTo, ...]
    text: str
    restore: tuple[str, ...] = ()
    only: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class OutcomeView:
    """One outcome of a test."""

    outcome: Outcome
    anchor: str
    verdict: str
    onward: tuple[OnwardView, ...]


def job_view(book: Book, job: Job) -> JobView:
    """Give the view that every kind of job shares."""
    guarded = book.guarded[job.key]
    steps = [_step_view(book, guarded, step) for step in guarded.steps]
    ends = next((n for n, step in enumerate(steps) if step.guarded.reserved), len(steps))
    return JobView(
        job=job,
        guarded=guarded,
        steps=tuple(steps[:ends]),
        stop=_stop(steps[ends]) if ends < len(steps) else None,
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


def _stop(step: StepView) -> StopView:
    who = dict.fromkeys(line.reserved_for for line in step.guarded.reserved if line.reserved_for)
    return StopView(step, tuple(who), step.guarded.step.do)


def _step_view(book: Book, job: Guarded, guarded: GuardedStep) -> StepView:
    step = guarded.step
    called = None
    if guarded.record_key != job.job.key:
        kind, _, id_ = guarded.record_key.partition("/")
        called = book.links(kind, [id_])[0]
    return StepView(
        guarded=guarded,
        state=state_words(guarded.state_during, STRIP),
        stands=standing_words(book, job, guarded),
        tools=", ".join(book.kb.get("tools", id_, Tool).title for id_ in step.tools),
        values=tuple(value_view(book, spec) for spec in with_overrides(book, step.specs)),
        called_from=called,
    )


def outcome_views(book: Book, test: Test) -> tuple[OutcomeView, ...]:
    """Give a test's outcomes, each with its verdict in words and its way on."""
    return tuple(
        OutcomeView(
            outcome=outcome,
            anchor=routes.outcome(outcome.finding, index),
            verdict=_verdict(book, test, outcome),
            onward=tuple(
                replace(_onward(book, test, way), only=tuple(way.vehicles))
                for way in outcome.next
            ),
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
            link = book.link(target, note or _on(book, test, target))
            return OnwardView(words, (link,), "", restore_before(book, test, target))
    if way.way == "carry_on":
        # Which test comes next is not known here, so the usual state of a vehicle is the goal.
        usual = test.model_copy(update={"entry": State()})
        links = tuple(complaints_using(book, test, way.vehicles))
        return OnwardView(words, links, "", restore_before(book, test, usual))
    if way.way == "repeat":
        links = (LinkTo(say("step.heading"), "#steps"),)
        return OnwardView(words, links, note, restore_before(book, test, test))
    return OnwardView(words, (), getattr(way, way.way))


def restore_before(book: Book, job: Job, target: Record) -> tuple[str, ...]:
    """Give what a reader who comes from a job restores before another, one line each."""
    left = book.guarded[job.key]
    found = gap(book.kb, left.left, target) if isinstance(target, Job) else None
    return restore_words(book, left, found) if found else ()


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
    for id_, on in book.kb.table(_standing).get(test.id, ()):
        if not vehicles or not on.isdisjoint(vehicles):
            symptom = book.kb.get("symptoms", id_, Symptom)
            found.append(LinkTo(symptom.title, f"{routes.address(symptom)}#start", "symptoms"))
    return found


@table
def _standing(kb: KnowledgeBase) -> dict[str, tuple[tuple[str, frozenset[str]], ...]]:
    """Give the complaints in whose order a test stands, and on which vehicles, by that test."""
    found: dict[str, dict[str, set[str]]] = {}
    for symptom in kb.all("symptoms", Symptom):
        for vehicle, order in orders_of(kb, symptom.id).items():
            for test in (*order.opening, *(place.test for place in order.places)):
                found.setdefault(test.id, {}).setdefault(symptom.id, set()).add(vehicle)
    return {
        test: tuple((symptom, frozenset(on)) for symptom, on in by.items())
        for test, by in found.items()
    }


def called_by(book: Book, procedure: Procedure) -> list[LinkTo]:
    """Give the work that calls a procedure."""
    return [
        book.link(record)
        for kind in ("replacements", "procedures", "tests")
        for record in book.linked_from(procedure, kind)
    ]
