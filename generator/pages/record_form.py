"""The page on which a record is made by filling in a form, and what its script asks for."""

from __future__ import annotations

import json
from typing import Any

from generator.pages import routes
from generator.pages.book import Book
from generator.pages.page import Planned, render
from generator.pages.strings import say
from generator.records.kinds import KINDS
from generator.records.kinds.base import COMMON_PRACTICE, OWN_KIND
from generator.records.load import DEVICES, LIST
from generator.shapes.schema import schema_of

SAID = (
    "choose", "free", "more", "one_way", "which", "add_to", "add_one", "remove", "remove_one",
    "item", "up", "up_one", "down", "down_one", "key", "value", "true", "false", "day",
    "missing", "too_few", "too_many", "too_long", "one_line", "bad_number", "bad_whole",
    "bad_least", "bad_most", "bad_range", "bad_day", "bad_word", "bad_value", "bad_pattern",
    "bad_character", "bad_id", "reserved_id", "taken_id", "unknown_id", "twice",
    "faults_one", "faults_more", "where", "copied", "mail_subject", "start_over",
)  # fmt: skip
"""Words that the script puts on the page."""


def planned(book: Book) -> Planned:
    """Plan the page."""
    return {
        routes.ADD: lambda: render(
            book, routes.ADD, say("form.heading"), "record_form.html", {},
            description=say("form.lead"),
        )
    }  # fmt: skip


def script(book: Book) -> str:
    """Give the schemas, the records that there are and the words, as a script a folder can serve.

    Only the page with the form asks for it.
    """
    kinds, defs = book.kb.remember("shapes", "of the form", _schemas)
    records = {
        kind: [[id_, record.title] for id_, record in sorted(book.kb.records.get(kind, {}).items())]
        for kind in KINDS
    }
    records["sources"].append([COMMON_PRACTICE, say("form.common_practice")])
    data = {
        "kinds": kinds,
        "defs": defs,
        "records": records,
        "names": {kind: say(f"form.kind.{kind}") for kind in KINDS},
        "words": {word: say(f"form.{word}") for word in SAID},
        "own_kind": OWN_KIND,
        "reserved": sorted({*DEVICES, LIST}),
        "notes_to": book.kb.settings.shop.notes_to or "",
    }
    return f"window.fettleForms={json.dumps(data, ensure_ascii=False, separators=(',', ':'))};\n"


def _schemas() -> tuple[dict[str, Any], dict[str, Any]]:
    """Give the schema of each kind, and what they refer to: shapes of one name are one shape."""
    kinds: dict[str, Any] = {}
    defs: dict[str, Any] = {}
    for kind in KINDS:
        schema = schema_of(kind)
        for name, inner in schema.pop("$defs", {}).items():
            if defs.setdefault(name, inner) != inner:
                raise ValueError(f"two shapes are called {name}")
        kinds[kind] = schema
    return kinds, defs
