"""A finished page, and the one place that turns a template and a model into HTML."""

from __future__ import annotations

import hashlib
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import jinja2

from generator.pages import routes
from generator.pages.book import Book, LinkTo
from generator.pages.choice import marker, vehicles_of
from generator.pages.prose import inline, prose
from generator.pages.standing import confidence_words, standing
from generator.pages.strings import say
from generator.pages.symbols import sign
from generator.pages.wrong import plain_mail
from generator.records.kinds import Record


@dataclass(frozen=True, slots=True)
class Heading:
    """An entry of the page's list of contents."""

    text: str
    anchor: str


@dataclass(frozen=True, slots=True)
class Page:
    """A page, ready to be handed to whatever hosts the site.

    Parameters
    ----------
    url : str
        Address from the root of the site.
    title : str
        Plain text.
    html : str
        The whole of the page's own content.
    contents : tuple of Heading
        Its parts, in order.
    record : str
        File of the record it shows, "" for a page made from many.
    description : str
        One plain sentence for a search engine or a link preview.
    revision : str
        Digest of what the page shows; it changes only when that does.
    """

    url: str
    title: str
    html: str
    contents: tuple[Heading, ...]
    record: str
    description: str
    revision: str


Planned = dict[str, Callable[[], Page]]
"""Address of a page to what makes it: a page that has not changed need not be made."""


def anchor_of(text: str) -> str:
    """Give an anchor made from a heading's words."""
    return re.sub(r"[^a-z0-9]+", "-", text.lower()).strip("-") or "part"


def revision_of(shown: str) -> str:
    """Give the revision of a page: a digest of what it shows."""
    return hashlib.sha256(shown.encode()).hexdigest()[:8]


@cache
def environment() -> jinja2.Environment:
    """Give the template environment: everything escaped, every hole an error."""
    env = jinja2.Environment(
        loader=jinja2.FileSystemLoader(Path(__file__).parent / "templates"),
        autoescape=True,
        undefined=jinja2.StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=False,
    )
    env.globals.update(say=say, routes=routes, sign=sign)
    env.filters.update(prose=prose, inline=inline)
    # The filter "tojson" escapes what could end a block of data or begin a tag.
    env.policies["json.dumps_kwargs"] = {"ensure_ascii": False, "separators": (",", ":")}
    return env


def render(
    book: Book,
    url: str,
    title: str,
    template: str,
    model: Mapping[str, Any],
    *,
    record: Record | None = None,
    contents: tuple[Heading, ...] = (),
    description: str = "",
) -> Page:
    """Make one page.

    Parameters
    ----------
    book : Book
        The manual.
    url, title, description : str
        As in :class:`Page`.
    template : str
        File name of the template.
    model : mapping
        What the template shows.
    record : Record, optional
        The record the page is about.
    contents : tuple of Heading
        The page's parts.

    Returns
    -------
    Page
        Finished.
    """

    def href(target: str | LinkTo) -> str:
        return routes.relative(url, target.target if isinstance(target, LinkTo) else target)

    given = {
        **model, "book": book, "settings": book.kb.settings, "title": title, "href": href,
        "record": record, "contents": contents, "only": marker(book, record),
    }  # fmt: skip
    body = environment().get_template(template).render(given)
    if book.preview:
        body = environment().get_template("preview.html").render(given) + body
    revision = revision_of(body)
    stands = standing(book, record) if record is not None else None
    foot = environment().get_template("foot.html").render(
        {**given, "revision": revision, "vehicles": vehicles_of(record),
         "standing": stands, "confidence": confidence_words(stands) if stands else "",
         "mail": plain_mail(book, url, title, revision)}
    )
    path = book.kb.origins[record.key].path if record is not None else ""
    return Page(url, title, body + foot, contents, path, description, revision)
