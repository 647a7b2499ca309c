"""The reader's vehicle: what a page is for, which parts of it are for some vehicles only.

The build marks; the script in the page shows what is for the reader's vehicle first. Without it
every part is shown.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable

from markupsafe import Markup

from generator.pages.book import Book
from generator.pages.strings import say
from generator.records.kinds import Record
from generator.records.kinds.things import Vehicle

SAID = ("all", "lead", "none", "none_lead", "only", "others", "fewer")
"""Words that the script puts on a page."""


def vehicles_of(record: Record | None) -> tuple[str, ...]:
    """Give the vehicles that a record is for; none where it names none."""
    if isinstance(record, Vehicle):
        return (record.id,)
    return tuple(getattr(record, "applies_to", None) or getattr(record, "fitted_to", None) or ())


def marker(book: Book, record: Record | None) -> Callable[[Iterable[str]], Markup]:
    """Give the function by which a template marks a part that is for some of a page's vehicles.

    Parameters
    ----------
    book : Book
        The manual.
    record : Record or None
        What the page is about; None for a page about all vehicles.

    Returns
    -------
    callable
        Vehicle ids to an attribute; nothing where the part is for all that the page is for.
    """
    whole = set(vehicles_of(record)) or set(book.kb.records.get("vehicles", ()))

    def only(ids: Iterable[str]) -> Markup:
        named = list(ids)
        if not named or whole <= set(named):
            return Markup("")
        return Markup(' data-for="{}"').format(" ".join(named))

    return only


def script(book: Book) -> str:
    """Give the vehicles and how to tell them apart, as a script a folder can serve too."""
    shared = {
        "vehicles": [
            {
                "id": vehicle.id, "title": vehicle.title, "engine": vehicle.engine.layout,
                "years": vehicle.years, "tell": vehicle.tell_apart,
            }
            for vehicle in book.kb.all("vehicles", Vehicle)
        ],
        "words": {word: say(f"choice.{word}") for word in SAID},
    }  # fmt: skip
    return f"window.fettleVehicles={json.dumps(shared, ensure_ascii=False)};\n"
