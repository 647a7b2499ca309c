"""The complaint page's data for the reader's browser: the tables, with titles and addresses."""

from __future__ import annotations

import json
from typing import Any

from generator.diagnosis import Order
from generator.diagnosis.readings import ways
from generator.diagnosis.tables import tables
from generator.pages import routes
from generator.pages.book import Book
from generator.pages.strings import say
from generator.records.kinds.knowledge import FaultCode, Symptom
from generator.records.kinds.things import Vehicle
from generator.records.kinds.work import LEADS_TO, Next, Test

SAID = (
    "known", "next", "left", "found", "undo", "again", "copy", "copied", "print", "restore",
    "odds", "contradiction", "proved", "refer", "not_found", "none_left", "path",
    "other", "excluded", "unsettled", "minutes", "look_there",
)  # fmt: skip
"""Words the script puts on the page."""


def tapping(book: Book, symptom: Symptom, vehicle: str, order: Order) -> str:
    """Give the data of one vehicle's order as JSON; the template escapes it for an attribute."""
    data = tables(book.kb, symptom, vehicle, order)
    page = routes.address(symptom)
    for id_, numbers in data["tests"].items():
        test = book.kb.get("tests", id_, Test)
        numbers["title"] = test.title
        numbers["href"] = routes.relative(page, routes.address(test))
        numbers["restore"] = {
            word: say(f"state.{word}.{value}") for word, value in numbers["entry"].items()
        }
        for outcome, shown in zip(test.outcomes, numbers["outcomes"], strict=True):
            shown["label"] = outcome.label
            shown["ways"] = [
                each
                for way in ways(outcome, vehicle)
                for each in [_way(book, page, way)]
                if each is not None
            ]
    data["known_words"] = {name: _known(book, name) for name in data["known"]}
    data["complaint"] = symptom.title
    data["vehicle"] = book.kb.get("vehicles", vehicle, Vehicle).title
    data["words"] = {word: say(f"tap.{word}") for word in SAID}
    return json.dumps(data, ensure_ascii=False)


def _way(book: Book, page: str, way: Next) -> dict[str, Any] | None:
    """Give where an outcome leads, where it leads to a page or says what to do."""
    kind = LEADS_TO.get(way.way)
    if kind is not None:
        record = book.kb.records[kind][getattr(way, way.way)]
        return {
            "title": record.title, "href": routes.relative(page, routes.address(record)),
            "kind": way.way,
        }  # fmt: skip
    words = way.refer or way.done
    return {"title": words, "href": "", "kind": way.way} if words else None



def _known(book: Book, name: str) -> str:
    kind, _, which = name.partition(" ")
    if kind == "code":
        return say("symptom.with_code", code=book.kb.get("codes", which, FaultCode).code)
    return say(f"when.{which}")
