"""Pages of tests, replacements and procedures."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from markupsafe import Markup

from generator.expected.signals import settings_for
from generator.pages import routes
from generator.pages.book import Book, LinkTo, RecordKey, listed, planned_for
from generator.pages.check_data import check_data
from generator.pages.drawings import hookup_picture, location_picture, seen_words
from generator.pages.how_to import how_to
from generator.pages.jobs import (
    JobView,
    called_by,
    complaints_using,
    job_view,
    outcome_views,
    restore_before,
)
from generator.pages.page import Heading, Page, Planned, render
from generator.pages.pictures import value_picture
from generator.pages.strings import say
from generator.pages.values import ValueView, values_by_vehicle
from generator.quantities import figure
from generator.quantities.show import places_for
from generator.records.kinds.knowledge import Tool
from generator.records.kinds.things import Component, Spec
from generator.records.kinds.work import Hookup, Job, Procedure, Proof, Replacement, Test
from generator.records.knowledge_base import KnowledgeBase, table

KEPT_AT_STOP = ("before", "cautions", "ready", "steps", "used-by")
"""Parts of a page that stay where the job runs into reserved work; the others instruct it."""


@dataclass(frozen=True, slots=True)
class HookupView:
    """Where the leads go, in words and as a figure."""

    vehicles: str
    instrument: str
    setting: str
    words: str
    scope: str
    figure: Markup
    only: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ShownValue:
    """A value and its figure, if it has one."""

    view: ValueView
    figure: Markup
    check: str


@dataclass(frozen=True, slots=True)
class ProofView:
    """A test that proves the repair."""

    link: LinkTo
    expect: str
    restore: tuple[str, ...]


def planned(book: Book) -> Planned:
    """Plan the page of every test, replacement and procedure."""
    jobs: tuple[Job, ...] = (
        *book.kb.all("tests", Test),
        *book.kb.all("replacements", Replacement),
        *book.kb.all("procedures", Procedure),
    )
    return planned_for(book, jobs, page)


def page(book: Book, job: Job) -> Page:
    """Make the page of one test, replacement or procedure."""
    if isinstance(job, Test):
        return _test(book, job)
    if isinstance(job, Replacement):
        return _replacement(book, job)
    assert isinstance(job, Procedure)
    return _procedure(book, job)


def _test(book: Book, test: Test) -> Page:
    specs = [book.kb.get("specs", id_, Spec) for id_ in test.specs]
    values = {
        vehicles: [
            ShownValue(view, value_picture(book, view), check_data(book, test, view.spec))
            for view in views
        ]
        for vehicles, views in values_by_vehicle(book, specs).items()
    }
    hookups = [_hookup(book, test, hookup, n) for n, hookup in enumerate(test.hookups, start=1)]
    used_by = complaints_using(book, test)
    parts = [("cautions", "signal.summary"), ("ready", "job.needs")]
    parts += [("hookup", "test.hookup")] if hookups else []
    parts += [("values", "test.values")] if values else []
    parts += [
        ("steps", "step.heading"), ("outcomes", "test.outcomes"),
        ("cannot-show", "test.cannot_show"), ("leaves", "job.leaves"),
    ]  # fmt: skip
    parts += [("used-by", "test.used_by")] if used_by else []
    view = job_view(book, test)
    description = f"{say('test.kind')}: {test.title}, {book.vehicles(test.applies_to)}"
    return render(
        book,
        routes.address(test),
        test.title,
        "test.html",
        {
            "test": test,
            "view": view,
            "how_to": how_to(view, description),
            "after": book.links("tests", test.after),
            "hookups": hookups,
            "values": values,
            "outcomes": outcome_views(book, test),
            "used_by": used_by,
        },
        record=test,
        contents=_contents(_up_to_stop(view, parts)),
        description=description,
    )


def _scope(book: Book, test: Test, hookup: Hookup, instrument: Tool) -> str:
    """Say how to set an oscilloscope for the signal that the specs lead one to expect."""
    if instrument.screen is None:
        return ""
    vehicles = hookup.vehicles or test.applies_to
    together = [
        other
        for other in test.hookups
        if (other.instrument, other.component) == (hookup.instrument, hookup.component)
    ]
    if together[0] is not hookup:
        return ""
    found = settings_for(
        book.kb, hookup.component, vehicles, instrument.screen, channels=len(together)
    )
    if found is None:
        return ""
    volts, seconds = found.volts_a_division, found.seconds_a_division
    return say(
        "test.scope",
        volts=f"{volts:g} V" if volts >= 1 else f"{1000 * volts:g} mV",
        time=f"{seconds:g} s" if seconds >= 1 else f"{1000 * seconds:g} ms",
        coupling=say(f"test.coupling.{found.coupling}"),
        trigger=f"{figure(found.trigger_v, places_for(found.trigger_v, 2))} V",
        probe=found.probe,
        rate=f"{found.samples_a_second / 1000:g}",
        low=figure(found.low_v, 1), high=figure(found.high_v, 1),
    )  # fmt: skip


def _hookup(book: Book, test: Test, hookup: Hookup, n: int) -> HookupView:
    instrument = book.kb.get("tools", hookup.instrument, Tool)
    leads = " ".join(
        say("test.hookup_lead", colour=lead.colour.capitalize(), to=lead.to)
        for lead in hookup.leads
    )
    view = seen_words(hookup)
    return HookupView(
        vehicles=book.vehicles(hookup.vehicles) if hookup.vehicles else "",
        instrument=instrument.title,
        setting=hookup.setting,
        words=say(
            "test.hookup_desc", instrument=instrument.title, setting=hookup.setting, leads=leads,
            view=view,
        ),
        scope=_scope(book, test, hookup, instrument),
        figure=hookup_picture(book, f"hookup-{n}", test, hookup, instrument),
        only=tuple(hookup.vehicles),
    )  # fmt: skip


def _replacement(book: Book, job: Replacement) -> Page:
    component = book.kb.get("components", job.component, Component)
    proved_by = [
        book.link(test)
        for test in book.pick(_tests_for, job.id, Test)
        if any(
            outcome.verdict == "condemns"
            and job.component in (outcome.about or test.components)
            and any(way.replacement == job.id for way in outcome.next)
            for outcome in test.outcomes
        )
    ]
    parts = [
        ("before", "replacement.before"), ("cautions", "signal.summary"), ("ready", "job.needs"),
        ("parts", "replacement.parts"), ("access", "replacement.access"),
        ("steps", "step.heading"), ("verify", "replacement.verify"), ("leaves", "job.leaves"),
        ("job-card", "replacement.job_card"), ("not-cured", "replacement.not_cured"),
    ]  # fmt: skip
    view = job_view(book, job)
    description = f"{say('replacement.kind')}: {job.title}, {book.vehicles(job.applies_to)}"
    return render(
        book,
        routes.address(job),
        job.title,
        "replacement.html",
        {
            "job": job,
            "view": view,
            "how_to": how_to(view, description),
            "proved_by": proved_by,
            "where": location_picture("where", component),
            "proofs": _proofs(book, job, job.verify),
        },
        record=job,
        contents=_contents(_up_to_stop(view, parts)),
        description=description,
    )


@table
def _tests_for(kb: KnowledgeBase) -> dict[str, tuple[RecordKey, ...]]:
    """Give the tests with an outcome that leads to a replacement, by that replacement."""

    def replacements(test: Test) -> Iterable[str]:
        ways = (way for outcome in test.outcomes for way in outcome.next)
        return (way.replacement for way in ways if way.replacement is not None)

    return listed(kb, "tests", Test, replacements)


def _procedure(book: Book, job: Procedure) -> Page:
    callers = called_by(book, job)
    parts = [("cautions", "signal.summary"), ("ready", "job.needs"), ("steps", "step.heading")]
    parts += [("verify", "replacement.verify")] if job.verify else []
    parts += [("leaves", "job.leaves")]
    parts += [("job-card", "replacement.job_card")] if job.job_card else []
    parts += [("used-by", "procedure.called_by")] if callers else []
    view = job_view(book, job)
    description = f"{say('procedure.kind')}: {job.title}"
    return render(
        book,
        routes.address(job),
        job.title,
        "procedure.html",
        {
            "job": job,
            "view": view,
            "how_to": how_to(view, description),
            "proofs": _proofs(book, job, job.verify),
            "called_by": callers,
        },
        record=job,
        contents=_contents(_up_to_stop(view, parts)),
        description=description,
    )


def _proofs(book: Book, job: Job, proofs: Iterable[Proof]) -> list[ProofView]:
    found = []
    for proof in proofs:
        test = book.kb.get("tests", proof.test, Test)
        found.append(ProofView(book.link(test), proof.expect, restore_before(book, job, test)))
    return found


def _up_to_stop(view: JobView, parts: list[tuple[str, str]]) -> list[tuple[str, str]]:
    """Leave out the parts of a page that a stop at reserved work leaves out."""
    return [part for part in parts if view.stop is None or part[0] in KEPT_AT_STOP]


def _contents(parts: list[tuple[str, str]]) -> tuple[Heading, ...]:
    return tuple(Heading(say(key), anchor) for anchor, key in parts)
