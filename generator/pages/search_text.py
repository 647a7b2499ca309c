"""What each record kind is called, in what sentences it is asked for, and what it speaks of."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from generator.expected.choose import specs_of
from generator.pages.book import Book, RecordKey, listed
from generator.pages.strings import say
from generator.records.kinds import Record
from generator.records.kinds.cases import Case
from generator.records.kinds.knowledge import (
    FaultCode,
    Hazard,
    Person,
    Source,
    Supply,
    Symptom,
    Term,
    Tool,
)
from generator.records.kinds.things import Circuit, Component, Vehicle
from generator.records.kinds.work import Job, Procedure, Replacement, Test
from generator.records.knowledge_base import KnowledgeBase, table


def title_of(record: Record) -> str:
    """Give a record's name as a hit shows it."""
    return f"{record.code} {record.title}" if isinstance(record, FaultCode) else record.title


def names_of(record: Record) -> Iterator[str]:
    """Give what else a record is called."""
    if isinstance(record, FaultCode):
        yield record.code
    elif isinstance(record, Component | Term):
        if record.abbreviation:
            yield record.abbreviation
        if isinstance(record, Term):
            yield from record.also
    elif isinstance(record, Vehicle):
        yield record.engine.code
        yield record.engine.fuel
        if record.engine.hybrid:
            yield say("search.hybrid")
        yield f"{record.maker} {record.title}"
    elif isinstance(record, Tool):
        yield record.tool_class
    elif isinstance(record, Supply):
        yield record.supply_class


def said_of(record: Record) -> Iterator[str]:
    """Give the sentences in which people ask for a record."""
    if isinstance(record, Symptom):
        yield from record.said


def text_of(book: Book, record: Record) -> str:
    """Give what a record speaks of, the telling first: only so many words are kept."""
    return " ".join(part for part in _parts(book, record) if part)


def _parts(book: Book, record: Record) -> Iterable[str | None]:
    if isinstance(record, Job):
        return _job(book, record)
    match record:
        case Symptom():
            return [record.group, *_codes(book, record.codes), *(c.name for c in record.causes),
                    record.when]  # fmt: skip
        case FaultCode():
            return [*_titles(book, "components", record.components), record.means,
                    record.set_when]  # fmt: skip
        case Component():
            return _component(book, record)
        case Circuit():
            wires = [f"{line.carries} {line.colour}" for line in record.lines]
            nodes = [node.name for line in record.lines for node in line.way]
            return [say("component.colour"), *wires, *nodes, record.note]
        case Vehicle():
            return [*record.systems, record.engine.layout, record.years, record.tell_apart]
        case _:
            return _entry(book, record)


def _entry(book: Book, record: Record) -> Iterable[str | None]:
    match record:
        case Term():
            return [record.means]
        case Tool():
            return [record.needs, record.note]
        case Supply():
            return [record.needs]
        case Hazard():
            return [record.hazard, record.consequence, *record.avoid]
        case Case():
            complaint = _titles(book, "symptoms", [record.complaint])
            return [record.cause, *complaint, *_codes(book, record.codes), record.learnt]
        case Person():
            return record.may
        case Source():
            return [record.publisher, record.note]
        case _:
            return []


def _job(book: Book, job: Job) -> Iterable[str | None]:
    match job:
        case Test():
            meters = [hookup.instrument for hookup in job.hookups]
            return [*_titles(book, "components", job.components), *_titles(book, "tools", meters),
                    *_titles(book, "specs", job.specs), job.purpose]  # fmt: skip
        case Replacement():
            return [*_titles(book, "components", [job.component]),
                    *(part.name for part in job.parts), job.before]  # fmt: skip
        case Procedure():
            return [*_titles(book, "components", job.components), job.purpose]
        case _:
            return []


@table
def _codes_of(kb: KnowledgeBase) -> dict[str, tuple[RecordKey, ...]]:
    """Give the codes that name a part, by that part."""
    return listed(kb, "codes", FaultCode, lambda code: code.components)


def _component(book: Book, component: Component) -> Iterable[str | None]:
    specs = [spec.title for spec in specs_of(book.kb, component.id)]
    codes = [code.code for code in book.pick(_codes_of, component.id, FaultCode)]
    return [*component.fails, *codes, *specs, component.does,
            say(f"zone.{component.location.zone}")]  # fmt: skip


def _titles(book: Book, kind: str, ids: Iterable[str]) -> list[str]:
    """Give the titles of what is linked to, as far as it is released."""
    found = book.kb.records.get(kind, {})
    return [found[id_].title for id_ in dict.fromkeys(ids) if id_ in found]


def _codes(book: Book, ids: Iterable[str]) -> list[str]:
    found = (book.kb.find("codes", id_, FaultCode) for id_ in ids)
    return [code.code for code in found if code]
