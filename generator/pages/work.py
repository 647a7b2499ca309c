"""Pages of tests, replacements and procedures."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from markupsafe import Markup

from generator.pages import routes
from generator.pages.book import Book, LinkTo
from generator.pages.drawings import hookup_picture, location_picture
from generator.pages.jobs import called_by, complaints_using, job_view, outcome_views
from generator.pages.page import Heading, Page, render
from generator.pages.pictures import value_picture
from generator.pages.strings import say
from generator.pages.values import ValueView, values_by_vehicle
from generator.records.kinds.knowledge import Tool
from generator.records.kinds.things import Component, Spec
from generator.records.kinds.work import Hookup, Procedure, Proof, Replacement, Test


@dataclass(frozen=True, slots=True)
class HookupView:
    """Where the leads go, in words and as a figure."""

    vehicles: str
    instrument: str
    setting: str
    words: str
    figure: Markup


@dataclass(frozen=True, slots=True)
class ShownValue:
    """A value and its figure, if it has one."""

    view: ValueView
    figure: Markup


@dataclass(frozen=True, slots=True)
class ProofView:
    """A test that proves the repair."""

    link: LinkTo
    expect: str


def pages(book: Book) -> list[Page]:
    """Make the page of every test, replacement and procedure."""
    return [
        *(_test(book, test) for test in book.kb.all("tests", Test)),
        *(_replacement(book, job) for job in book.kb.all("replacements", Replacement)),
        *(_procedure(book, job) for job in book.kb.all("procedures", Procedure)),
    ]


def _test(book: Book, test: Test) -> Page:
    specs = [book.kb.get("specs", id_, Spec) for id_ in test.specs]
    values = {
        vehicles: [ShownValue(view, value_picture(book, view)) for view in views]
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
    return render(
        book,
        routes.address(test),
        test.title,
        "test.html",
        {
            "test": test,
            "view": job_view(book, test),
            "after": book.links("tests", test.after),
            "hookups": hookups,
            "values": values,
            "outcomes": outcome_views(book, test),
            "used_by": used_by,
        },
        record=test,
        contents=_contents(parts),
        description=f"{say('test.kind')}: {test.title}, {book.vehicles(test.applies_to)}",
    )


def _hookup(book: Book, test: Test, hookup: Hookup, n: int) -> HookupView:
    instrument = book.kb.get("tools", hookup.instrument, Tool)
    leads = " ".join(
        say("test.hookup_lead", colour=lead.colour.capitalize(), to=lead.to)
        for lead in hookup.leads
    )
    view = say("test.view.plugged" if hookup.plugged else f"test.view.{hookup.side}")
    return HookupView(
        vehicles=book.vehicles(hookup.vehicles) if hookup.vehicles else "",
        instrument=instrument.title,
        setting=hookup.setting,
        words=say(
            "test.hookup_desc", instrument=instrument.title, setting=hookup.setting, leads=leads,
            view=view,
        ),
        figure=hookup_picture(book, f"hookup-{n}", test, hookup, instrument),
    )  # fmt: skip


def _replacement(book: Book, job: Replacement) -> Page:
    component = book.kb.get("components", job.component, Component)
    proved_by = [
        book.link(test)
        for test in book.kb.all("tests", Test)
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
    return render(
        book,
        routes.address(job),
        job.title,
        "replacement.html",
        {
            "job": job,
            "view": job_view(book, job),
            "proved_by": proved_by,
            "where": location_picture("where", component),
            "proofs": _proofs(book, job.verify),
        },
        record=job,
        contents=_contents(parts),
        description=f"{say('replacement.kind')}: {job.title}, {book.vehicles(job.applies_to)}",
    )


def _procedure(book: Book, job: Procedure) -> Page:
    callers = called_by(book, job)
    parts = [("cautions", "signal.summary"), ("ready", "job.needs"), ("steps", "step.heading")]
    parts += [("verify", "replacement.verify")] if job.verify else []
    parts += [("leaves", "job.leaves")]
    parts += [("job-card", "replacement.job_card")] if job.job_card else []
    parts += [("used-by", "procedure.called_by")] if callers else []
    return render(
        book,
        routes.address(job),
        job.title,
        "procedure.html",
        {
            "job": job,
            "view": job_view(book, job),
            "proofs": _proofs(book, job.verify),
            "called_by": callers,
        },
        record=job,
        contents=_contents(parts),
        description=f"{say('procedure.kind')}: {job.title}",
    )


def _proofs(book: Book, proofs: Iterable[Proof]) -> list[ProofView]:
    return [ProofView(book.links("tests", [p.test])[0], p.expect) for p in proofs]


def _contents(parts: list[tuple[str, str]]) -> tuple[Heading, ...]:
    return tuple(Heading(say(key), anchor) for anchor, key in parts)
