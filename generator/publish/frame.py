"""What stands around every page: made once by the theme, then filled for each page of records.

The theme renders a stand-in whose title, address, contents and text are slots, that is words that
occur nowhere else. Pages that differ in more than their slots (another folder, another entry of
the navigation, no list of contents) have a stand-in of their own.
"""

from __future__ import annotations

import html
import re
from collections.abc import Collection, Iterable
from dataclasses import dataclass
from functools import cached_property
from itertools import zip_longest

from generator.pages.page import Page
from generator.publish.files import digest_of

_WORD = "fettlebookslot"
TITLE, DESCRIPTION, NAME, ANCHOR, ENTRY, BODY = (
    f"{_WORD}{name}" for name in ("title", "description", "name", "anchor", "entry", "body")
)
"""Letters alone: whatever a template does to a text or an address leaves them as they are."""

_SLOTS = re.compile(f"({'|'.join((TITLE, DESCRIPTION, NAME, ANCHOR, BODY))})")
_ENTRIES = re.compile(rf"^.*{ENTRY}.*\n", re.MULTILINE)


class BadFrame(ValueError):
    """The theme's templates have no place for something that every page has."""


@dataclass(frozen=True, slots=True, order=True)
class Stand:
    """Which stand-in a page is filled into.

    Parameters
    ----------
    place : str
        The page's own address where the navigation lists it, otherwise its folder with "/".
    contents : bool
        Whether it has a list of contents.
    """

    place: str
    contents: bool


def stand_of(address: str, contents: bool, listed: Collection[str]) -> Stand:
    """Give the stand-in of a page; `listed` are the addresses in the navigation."""
    return Stand(address if address in listed else address.rpartition("/")[0] + "/", contents)


def stands_for(addresses: Iterable[str], listed: Collection[str]) -> set[Stand]:
    """Give the stand-ins of pages of which nobody knows yet whether they have contents."""
    return {
        stand_of(address, contents, listed) for address in addresses for contents in (True, False)
    }  # fmt: skip


@dataclass(frozen=True)
class Frame:
    """A frame.

    Parameters
    ----------
    text : str
        The whole page as the theme made it, with its slots.

    Raises
    ------
    BadFrame
        If a page's text has no place in it, or not exactly one.
    """

    text: str

    def __post_init__(self) -> None:
        if self.text.count(BODY) != 1:
            raise BadFrame("main.html has to show the content of a page, once")
        lines = _ENTRIES.findall(self.text)
        if any(line.count(ENTRY) != 1 or ANCHOR not in line for line in lines):
            raise BadFrame("an entry of the list of contents, with its link, has to be one line")

    @cached_property
    def digest(self) -> str:
        """The digest of its text."""
        return digest_of(self.text.encode())

    @cached_property
    def _pieces(self) -> tuple[str | tuple[str, ...], ...]:
        """Give the text cut at its slots; a tuple is a line that each entry repeats."""
        pieces: list[str | tuple[str, ...]] = []
        lines = _ENTRIES.findall(self.text)
        for between, line in zip_longest(_ENTRIES.split(self.text), lines, fillvalue=""):
            pieces += _SLOTS.split(between)
            pieces.append(tuple(re.split(f"({ANCHOR}|{ENTRY})", line)))
        return tuple(piece for piece in pieces if piece not in ("", ("",)))

    def fill(self, page: Page) -> bytes:
        """Give a page, whole."""
        slots = {
            TITLE: html.escape(page.title),
            DESCRIPTION: html.escape(page.description),
            NAME: page.url.rpartition("/")[2].removesuffix(".html"),
            ANCHOR: page.contents[0].anchor if page.contents else "",
            BODY: page.html,
        }
        out: list[str] = []
        for piece in self._pieces:
            if isinstance(piece, str):
                out.append(slots.get(piece, piece))
                continue
            for heading in page.contents:
                entry = {ANCHOR: heading.anchor, ENTRY: html.escape(heading.text)}
                out += [entry.get(part, part) for part in piece]
        return "".join(out).encode("utf-8", errors="xmlcharrefreplace")
