"""What was wrong: the words of the note that a reader writes, and whom it goes to."""

from __future__ import annotations

import json
from urllib.parse import quote

from generator.pages.book import Book
from generator.pages.strings import say

SAID = (
    "subject", "head", "head_step", "harm", "ask", "carries", "kept", "full", "send", "save",
    "delete", "close", "sure", "given", "is_page", "is_address", "is_revision", "is_step",
    "is_vehicle", "is_job", "is_day", "is_said", "list_none",
)  # fmt: skip


def script(book: Book) -> str:
    """Give the words and the shop's address, as a script that a folder can serve too."""
    data = {
        "words": {word: say(f"wrong.{word}") for word in SAID},
        "notes_to": book.kb.settings.shop.notes_to or "",
    }
    return f"window.fettleNoteWords={json.dumps(data, ensure_ascii=False)};\n"


def plain_mail(book: Book, url: str, title: str, revision: str) -> str:
    """Give the e-mail link for a browser without scripts; "" where the shop names no address.

    Parameters
    ----------
    book : Book
        The manual.
    url, title, revision : str
        Address of the page from the root of the site, its title, and the digest of what it shows.
    """
    to = book.kb.settings.shop.notes_to
    if not to:
        return ""
    facts = {"is_page": f"{title} ({url})", "is_revision": revision, "is_step": "", "is_said": ""}
    body = "\r\n".join(f"{say(f'wrong.{key}')}: {text}" for key, text in facts.items())
    subject = say("wrong.subject", page=title)
    return f"mailto:{quote(to, safe='@')}?subject={quote(subject)}&body={quote(body)}"
