"""The account of all cautions for a program to read, published beside the pages."""

from __future__ import annotations

import json
from functools import partial
from typing import Any

from generator.hazards import Guarded, audit, rules_for, word_of
from generator.hazards.audit import state_entry
from generator.pages import routes
from generator.pages.book import Book
from generator.records.kinds.knowledge import Hazard

SCHEMA = 1
"""Goes up when a key is renamed, moved or taken away; a key that is added does not count."""


def document(book: Book) -> str:
    """Give the account of every step of every job, as JSON.

    Parameters
    ----------
    book : Book
        The manual.

    Returns
    -------
    str
        An object of `schema`; `rules`, each rule with its `id`, `word`, `title`, `symbol`,
        `reserved_for`, `defer`, `basis` and `reviewed` (a date or null); and `jobs`, each with
        its `job` (record key), `title`, `page`, `record` (its file), the state at
        its `start`, the state it has `left`, `stops_at` (the number of the step at which the page
        stops because the work is reserved, or null) and its `steps` as :func:`audit` gives them.
        A job stands on a line of its own.
    """
    rules = _json([_rule(rule) for rule in rules_for(book.kb)])
    jobs = ",\n".join(
        book.kb.remember("audit", key, partial(_told, book, key)) for key in sorted(book.guarded)
    )
    return f'{{"schema": {SCHEMA},\n"rules": {rules},\n"jobs": [\n{jobs}\n]}}\n'


def _told(book: Book, key: str) -> str:
    return _json(_job(book, book.guarded[key]))


def _json(found: object) -> str:
    return json.dumps(found, ensure_ascii=False)


def _rule(rule: Hazard) -> dict[str, Any]:
    return {
        "id": rule.id,
        "word": str(word_of(rule)),
        "title": rule.title,
        "symbol": rule.symbol,
        "reserved_for": rule.reserved_for,
        "defer": rule.defer,
        "basis": rule.basis,
        "reviewed": str(rule.reviewed.date) if rule.reviewed else None,
    }


def _job(book: Book, guarded: Guarded) -> dict[str, Any]:
    job = guarded.job
    return {
        "job": job.key,
        "title": job.title,
        "page": routes.address(job),
        "record": book.kb.origins[job.key].path,
        "start": state_entry(guarded.start),
        "left": state_entry(guarded.left),
        "stops_at": next((step.number for step in guarded.steps if step.reserved), None),
        "steps": audit(guarded),
    }
