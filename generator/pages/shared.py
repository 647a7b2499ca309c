"""Pages made from many records: home, the lists, safety, sources, terms, stock and roles."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from functools import partial
from itertools import chain

from generator.pages import routes, safety
from generator.pages.book import DRAFT, Book, LinkTo
from generator.pages.page import Heading, Page, Planned, anchor_of, render
from generator.pages.strings import say
from generator.records.kinds import Record
from generator.records.kinds.knowledge import (
    FaultCode,
    Person,
    Source,
    Supply,
    Symptom,
    Term,
    Tool,
)
from generator.records.kinds.things import Component, Vehicle


@dataclass(frozen=True, slots=True)
class Entry:
    """A record that shares a page with others."""

    anchor: str
    title: str
    short: str = ""
    text: str = ""
    facts: list[tuple[str, str]] = field(default_factory=list)
    used_by_words: str = ""
    used_by: list[LinkTo] = field(default_factory=list)


def planned(book: Book) -> Planned:
    """Plan the pages that show many records."""
    return {
        routes.HOME: partial(_home, book),
        **{routes.hub(kind): partial(_hub, book, kind) for kind in routes.HUBS},
        routes.SAFETY: partial(safety.page, book),
        routes.SOURCES: partial(_sources, book),
        routes.TERMS: partial(_terms, book),
        routes.STOCK: partial(_stock, book),
        routes.ROLES: partial(_roles, book),
    }


def _home(book: Book) -> Page:
    groups: dict[str, list[Symptom]] = {}
    for symptom in book.kb.all("symptoms", Symptom):
        groups.setdefault(symptom.group, []).append(symptom)
    headed = [(Heading(name, anchor_of(name)), found) for name, found in groups.items()]
    more = [LinkTo(say(f"nav.{kind}"), routes.hub(kind)) for kind in routes.HUBS] + [
        LinkTo(say("nav.safety"), routes.SAFETY), LinkTo(say("nav.sources"), routes.SOURCES),
        LinkTo(say("nav.terms"), routes.TERMS), LinkTo(say("nav.stock"), routes.STOCK),
        LinkTo(say("nav.roles"), routes.ROLES), LinkTo(say("cases.heading"), routes.CASES),
        LinkTo(say("faults.heading"), routes.FAULTS), LinkTo(say("upkeep.heading"), routes.UPKEEP),
    ]  # fmt: skip
    return render(
        book,
        routes.HOME,
        book.kb.settings.title,
        "home.html",
        {
            "groups": headed,
            "codes": sorted(book.kb.all("codes", FaultCode), key=lambda code: code.code),
            "vehicles": book.kb.all("vehicles", Vehicle),
            "more": more,
        },
        contents=(
            *(heading for heading, _ in headed),
            Heading(say("home.codes"), "codes"), Heading(say("home.vehicles"), "vehicles"),
            Heading(say("home.more"), "more"),
        ),
        description=say("home.lead"),
    )  # fmt: skip


def _hub(book: Book, kind: str) -> Page:
    groups: dict[str, list[LinkTo]] = {}
    for record in book.kb.records.get(kind, {}).values():
        groups.setdefault(_group(record), []).append(
            replace(book.link(record, _note(book, record)), title=_hub_title(record), kind=kind)
        )
    headed = [
        (Heading(name, anchor_of(name)) if name else None, links) for name, links in groups.items()
    ]
    return render(
        book,
        routes.hub(kind),
        say(f"hub.{kind}"),
        "hub.html",
        {"groups": headed},
        contents=tuple(heading for heading, _ in headed if heading),
        description=say(f"hub.{kind}"),
    )


def _group(record: Record) -> str:
    if isinstance(record, Symptom):
        return record.group
    if isinstance(record, Component):
        return say(f"zone.{record.location.zone}").capitalize()
    return ""


def _hub_title(record: Record) -> str:
    return f"{record.code} {record.title}" if isinstance(record, FaultCode) else record.title


def _note(book: Book, record: Record) -> str:
    vehicles = getattr(record, "applies_to", None) or getattr(record, "fitted_to", None)
    if isinstance(record, Vehicle):
        return record.engine.layout
    return book.vehicles(vehicles) if vehicles else ""


def _entries(
    book: Book, url: str, title: str, lead: str, groups: list[tuple[str, list[Entry]]]
) -> Page:
    headed = [
        (Heading(name, anchor_of(name)) if name else None, entries)
        for name, entries in groups
        if entries
    ]
    return render(
        book, url, title, "entries.html", {"lead": lead, "groups": headed},
        contents=tuple(heading for heading, _ in headed if heading), description=lead or title,
    )  # fmt: skip


def _named(record: Record) -> str:
    return f"{record.title} ({say('draft.mark')})" if record.status == DRAFT else record.title


def _used_by(book: Book, record: Record) -> list[LinkTo]:
    """Give the pages on which a shared record is used; a value is used on its part's page."""
    links: dict[str, LinkTo] = {}
    for user in chain.from_iterable(book.linked_from(record, kind) for kind in book.kb.records):
        target = user
        if user.kind == "specs":
            target = book.kb.records["components"][user.component]  # type: ignore[attr-defined]
        if target.kind in routes.PAGED:
            links.setdefault(target.key, book.link(target))
    return list(links.values())


def _sources(book: Book) -> Page:
    entries = [
        Entry(
            routes.entry("sources", source.id),
            _named(source),
            text=source.note or "",
            facts=[
                (source.publisher, ", ".join(filter(None, (
                    say(f"sources.kind.{source.kind_of}"), source.edition,
                    say(f"sources.read.{source.read}"),
                )))),
            ],
            used_by_words=say("sources.used_by"),
            used_by=_used_by(book, source),
        )
        for source in book.kb.all("sources", Source)
    ]  # fmt: skip
    return _entries(
        book, routes.SOURCES, say("sources.heading"), say("sources.lead"), [("", entries)]
    )


def _terms(book: Book) -> Page:
    entries = [
        Entry(
            routes.entry("terms", term.id), _named(term), term.abbreviation or "", term.means,
            [(say("terms.also", words="").rstrip(": "), ", ".join(term.also))] if term.also else [],
        )
        for term in book.kb.all("terms", Term)
    ]  # fmt: skip
    return _entries(book, routes.TERMS, say("terms.heading"), "", [("", entries)])


def _stock(book: Book) -> Page:
    tools = [
        Entry(
            routes.entry("tools", tool.id), _named(tool), tool.tool_class,
            "\n\n".join(filter(None, (
                tool.note, say("stock.calibrated") if tool.calibrated else None,
            ))),
            [(say("stock.needs"), tool.needs)],
            say("stock.used_by"), _used_by(book, tool),
        )
        for tool in book.kb.all("tools", Tool)
    ]  # fmt: skip
    supplies = [
        Entry(
            routes.entry("supplies", supply.id), _named(supply), supply.supply_class, "",
            [(say("stock.needs"), supply.needs), (say("stock.disposal"), supply.disposal)],
            say("stock.used_by"), _used_by(book, supply),
        )
        for supply in book.kb.all("supplies", Supply)
    ]  # fmt: skip
    return _entries(
        book, routes.STOCK, say("stock.heading"), "",
        [(say("stock.tools"), tools), (say("stock.supplies"), supplies)],
    )  # fmt: skip


def _roles(book: Book) -> Page:
    entries = [
        Entry(
            routes.entry("people", person.id), _named(person),
            facts=[(say("roles.may"), "; ".join(person.may))]
            + ([(say("roles.trained"), "; ".join(person.trained))] if person.trained else []),
        )
        for person in book.kb.all("people", Person)
    ]  # fmt: skip
    return _entries(book, routes.ROLES, say("roles.heading"), "", [("", entries)])
