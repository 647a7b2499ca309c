"""The page on which a reader takes the manual along, and what a copy has to know of cautions."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterable, Iterator
from functools import partial

from generator.hazards import Guarded, HazardLine, rules_for
from generator.pages import routes, withdrawn
from generator.pages.book import Book
from generator.pages.page import Planned, render
from generator.pages.strings import say
from generator.records.kinds import Record


def planned(book: Book) -> Planned:
    """Plan the page."""
    return {
        routes.OFFLINE: lambda: render(
            book, routes.OFFLINE, say("offline.heading"), "offline.html", {},
            description=say("offline.lead"),
        )
    }  # fmt: skip


def cautions(book: Book) -> str:
    """Give a digest of the cautions on each page that has any, as JSON.

    A copy on a reader's device compares them, so that it can say which pages have changed in what
    may hurt somebody, whatever else about them changed.

    Returns
    -------
    str
        An object: address of the page to its digest, "withdrawn" for one that tells no more.
    """
    found = {
        routes.address(_job(book, key)): book.kb.remember("warned of", key, partial(_of, book, key))
        for key in sorted(book.guarded)
    }
    found |= dict.fromkeys(withdrawn.addresses(book.kb), withdrawn.STATUS)
    found[routes.SAFETY] = _digest(
        [book.kb.settings.emergency, *map(_line, map(HazardLine.of, rules_for(book.kb)))]
    )
    return json.dumps(found, ensure_ascii=False, separators=(",", ":"), sort_keys=True)


def _job(book: Book, key: str) -> Record:
    kind, _, id_ = key.partition("/")
    return book.kb.records[kind][id_]


def _of(book: Book, key: str) -> str:
    return _digest(_of_job(book.guarded[key]))


def _of_job(guarded: Guarded) -> Iterator[str]:
    """Give what a reader is warned of, and before which command."""
    for step in guarded.steps:
        yield from (_line(line) for line in step.hazards)
        yield from (f"{reminder.word} {reminder.text}" for reminder in step.reminders)
        if step.hazards or step.reminders:
            yield step.step.do


def _line(line: HazardLine) -> str:
    said = (line.word, line.hazard, line.consequence, *line.avoid, line.symbol)
    return json.dumps([*map(str, said), line.reserved_for, line.defer], ensure_ascii=False)


def _digest(texts: Iterable[str]) -> str:
    return hashlib.sha256("\n".join(texts).encode()).hexdigest()[:12]
