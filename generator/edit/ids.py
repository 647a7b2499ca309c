"""Ids that are safe as file names on every computer, and as addresses of pages."""

from __future__ import annotations

import re
import unicodedata
from difflib import get_close_matches

from pydantic import TypeAdapter, ValidationError

from generator.pages import routes
from generator.records.kinds import KINDS
from generator.records.kinds.base import Id
from generator.records.load import DEVICES, SUFFIX

_ID: TypeAdapter[str] = TypeAdapter(Id)
_LONGEST = 60


class Unfit(ValueError):
    """A kind or an id that no record can have; the text says why, and what would do."""


def kind_named(text: str) -> str:
    """Give the kind of a name.

    Raises
    ------
    Unfit
        If there is none.
    """
    if text in KINDS:
        return text
    near = get_close_matches(text.lower(), KINDS, n=1, cutoff=0.5)
    hint = f"did you mean {near[0]}?" if near else "use one of " + ", ".join(KINDS)
    raise Unfit(f"there is no kind of record called {_shown(text)}; {hint}")


def fit_id(kind: str, text: str) -> str:
    """Give an id that a new record of a kind can have.

    Parameters
    ----------
    kind : str
        The kind.
    text : str
        What was asked for.

    Raises
    ------
    Unfit
        If it is unsafe as a file name or as an address.
    """
    try:
        _ID.validate_python(text)
    except ValidationError:
        raise Unfit(_why_not(text)) from None
    if text in DEVICES:
        raise Unfit(f"{text} is the name of a device on some computers; try {text}-record")
    if kind in routes.PAGED and routes.page_of(kind, text) == routes.hub(kind):
        raise Unfit(f"{text} is the name of the page that lists {kind}; use another")
    return text


def _why_not(text: str) -> str:
    if len(text) > _LONGEST and text.isascii():
        return f"an id has at most {_LONGEST} characters, and this one has {len(text)}"
    better = safe_form(text)
    hint = f", as {better}" if better else ""
    return f"{_shown(text)} cannot be an id: use small letters, digits and single hyphens{hint}"


def safe_form(text: str) -> str:
    """Give the nearest id there is to a text, or "" where nothing of it can stay."""
    plain = unicodedata.normalize("NFKD", text.removesuffix(SUFFIX))
    ascii_ = plain.encode("ascii", "ignore").decode().lower()
    return re.sub(r"[^a-z0-9]+", "-", ascii_).strip("-")[:_LONGEST].strip("-")


def _shown(text: str) -> str:
    short = text if len(text) <= _LONGEST else text[: _LONGEST - 1] + "…"
    return short if short.isprintable() and short else repr(short)
