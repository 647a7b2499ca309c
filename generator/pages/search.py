"""What the search finds: one entry a page or part of a page, made from the records."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cache
from importlib import resources
from typing import Any

import yaml

from generator.pages import routes, search_pack
from generator.pages.book import Book
from generator.pages.search_text import names_of, said_of, text_of, title_of
from generator.pages.strings import say
from generator.records.kinds.knowledge import Term
from generator.records.kinds.things import Vehicle

PRIOR = {
    "symptoms": 1.15, "codes": 1.1, "components": 1.1, "vehicles": 1.1, "pages": 1.05,
    "tests": 1.0, "replacements": 1.0, "procedures": 1.0, "terms": 0.95, "tools": 0.95,
    "supplies": 0.9, "circuits": 0.9, "cases": 0.8, "hazards": 0.7, "people": 0.6,
    "sources": 0.5,
}  # fmt: skip
"""How much a kind counts where two entries fit alike (judgement): a complaint is where work
begins, a code or a part is what is in hand; a source is wanted least of all."""

LONGEST_TEXT = 64
"""Words of an entry's text, beyond its names, that are kept: they are a third of the index."""


@dataclass(frozen=True, slots=True)
class Entry:
    """Something to be found.

    Parameters
    ----------
    kind : str
        A record kind, or "pages" for a page made from many records.
    target : str
        Its address from the root of the site.
    title : str
        Its name as a hit shows it.
    vehicles : tuple of str
        Ids of the vehicles it is limited to.
    names : tuple of str
        What else it is called: code, abbreviation, engine code.
    said : tuple of str
        Sentences in which people ask for it.
    text : str
        What else it speaks of; it counts least, and is kept as single words.
    """

    kind: str
    target: str
    title: str
    vehicles: tuple[str, ...] = ()
    names: tuple[str, ...] = ()
    said: tuple[str, ...] = ()
    text: str = ""


def entries(book: Book) -> list[Entry]:
    """Give everything that can be found, by kind and id, each address once."""
    by_target = {entry.target: entry for entry in (*_records(book), *_pages(book))}
    return list(by_target.values())


def document(book: Book) -> str:
    """Give the index of a manual, as the script that the search loads when it is first asked."""
    return packed(
        entries(book),
        {vehicle.id: vehicle.title for vehicle in book.kb.all("vehicles", Vehicle)},
        same(book),
    )


def packed(found: list[Entry], vehicles: dict[str, str], same: list[list[str]]) -> str:
    """Give the index of any entries.

    Parameters
    ----------
    found : list of Entry
        In the order in which equals are shown.
    vehicles : dict
        Vehicle id to its title.
    same : list of list of str
        Groups of words and phrases that mean the same.

    Returns
    -------
    str
        A script; see :func:`generator.pages.search_pack.script`.
    """
    idle = trade()["idle"]
    order = {id_: number for number, id_ in enumerate(vehicles)}
    frames = {entry.kind: frame(entry) for entry in found}
    kinds = {kind: number for number, kind in enumerate(frames)}
    rows = []
    for entry in found:
        before, after = frames[entry.kind]
        rows.append(
            _short([
                kinds[entry.kind],
                entry.target.removeprefix(before).removesuffix(after),
                entry.title,
                [order[id_] for id_ in entry.vehicles],
                list(entry.names),
                list(entry.said),
            ])
        )  # fmt: skip
    return search_pack.script(
        {
            "kinds": [
                [say(f"search.kind.{kind}"), *frames[kind], PRIOR[kind]] for kind in kinds
            ],
            "vehicles": list(vehicles.values()),
            "rows": rows,
            "same": same,
            "idle": idle,
        },
        [list(_kept(entry, frozenset(idle))) for entry in found],
    )


def _short(row: list[Any]) -> list[Any]:
    while not row[-1]:
        row = row[:-1]
    return row


def frame(entry: Entry) -> tuple[str, str]:
    """Give what the addresses of a kind have before and after the id."""
    if entry.kind == "pages":
        return "", ".html"
    return tuple(routes.page_of(entry.kind, "\n").split("\n"))  # type: ignore[return-value]


def _kept(entry: Entry, idle: frozenset[str]) -> Iterator[str]:
    """Give the words of an entry's text that its names do not have already."""
    seen = set(idle)
    for line in (entry.title, *entry.names, *entry.said):
        seen.update(search_pack.words(line))
    left = LONGEST_TEXT
    for word in search_pack.words(entry.text):
        if left and word not in seen and (len(word) > 1 or word.isdigit()):
            seen.add(word)
            left -= 1
            yield word


def _records(book: Book) -> Iterator[Entry]:
    for kind in (*routes.PAGED, *routes.SHARED):
        if kind not in PRIOR:
            continue
        for record in book.kb.records.get(kind, {}).values():
            vehicles = getattr(record, "applies_to", None) or getattr(record, "fitted_to", None)
            yield Entry(
                kind,
                routes.address(record),
                title_of(record),
                tuple(vehicles or ([record.vehicle] if kind == "cases" else [])),  # type: ignore[attr-defined]
                tuple(_unlike(record.title, names_of(record))),
                tuple(said_of(record)),
                text_of(book, record),
            )


def _unlike(title: str, names: Iterable[str]) -> Iterator[str]:
    seen = {title.lower()}
    for name in names:
        if name.lower() not in seen:
            seen.add(name.lower())
            yield name


def _pages(book: Book) -> Iterator[Entry]:
    yield Entry(
        "pages", routes.SAFETY, say("nav.safety"), names=(say("safety.emergency"),),
        text=book.kb.settings.emergency,
    )  # fmt: skip
    for kind in routes.HUBS:
        yield Entry("pages", routes.hub(kind), say(f"hub.{kind}"), names=(say(f"nav.{kind}"),))
    for url, title in (
        (routes.TERMS, "terms.heading"), (routes.STOCK, "stock.heading"),
        (routes.SOURCES, "sources.heading"), (routes.ROLES, "roles.heading"),
        (routes.CASES, "cases.heading"),
    ):  # fmt: skip
        yield Entry("pages", url, say(title))


def same(book: Book) -> list[list[str]]:
    """Give the trade's groups and those of the manual's own terms."""
    own = [
        [term.title, *([term.abbreviation] if term.abbreviation else []), *term.also]
        for term in book.kb.all("terms", Term)
    ]
    return [*trade()["same"], *(group for group in own if len(group) > 1)]


@cache
def trade() -> dict[str, Any]:
    """Give the words of the trade, as they lie beside this module."""
    file = resources.files("generator.pages").joinpath("search_words.yml")
    loader: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
    found: dict[str, Any] = yaml.load(file.read_text(encoding="utf-8"), Loader=loader)
    return {
        "idle": [str(word) for word in found["idle"]],
        "same": [[str(phrase) for phrase in group] for group in found["same"]],
    }
