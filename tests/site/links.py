"""Walks a built site, as a reader's taps would, and names every reference that leads nowhere.

Works on the files alone, so it sees what a folder on a stick would show: each reference has to
resolve relative to the file it stands in. Nothing may be loaded from elsewhere.
"""

from __future__ import annotations

import os
import posixpath
import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from html.parser import HTMLParser
from pathlib import Path
from urllib.parse import unquote, urlsplit

# Attributes that name another resource, by element.
REFERENCES = {
    "a": ("href",),
    "area": ("href",),
    "audio": ("src",),
    "embed": ("src",),
    "form": ("action",),
    "iframe": ("src",),
    "image": ("href", "xlink:href"),
    "img": ("src", "srcset"),
    "input": ("src",),
    "link": ("href",),
    "object": ("data",),
    "script": ("src",),
    "source": ("src", "srcset"),
    "track": ("src",),
    "use": ("href", "xlink:href"),
    "video": ("src", "poster"),
}
# Elements and kinds of <link> that only point; a browser does not fetch them by itself.
POINTERS = ("a", "area", "form")
POINTING_LINKS = frozenset({"canonical", "alternate", "author", "license", "next", "prev", "help"})
# Attributes that name ids on the same page.
ID_REFERENCES = (
    "for", "list", "aria-activedescendant", "aria-controls", "aria-describedby", "aria-details",
    "aria-labelledby", "aria-owns",
)  # fmt: skip
# The host shows this page at any address, so its references start at the root of the site.
NOT_FOUND_PAGE = "404.html"

_CSS_URL = re.compile(r"""url\(\s*(?:"([^"]*)"|'([^']*)'|([^)"'\s]*))\s*\)""")
_CSS_IMPORT = re.compile(r"""@import\s+["']([^"']+)["']""")


@dataclass(frozen=True, slots=True, order=True)
class Fault:
    """One reference that leads nowhere, or one id given twice."""

    path: str
    line: int
    what: str

    def __str__(self) -> str:
        return f"{self.path}:{self.line}: {self.what}"


@dataclass(frozen=True, slots=True)
class Reference:
    """Where something leads; `loads` says whether a browser fetches it without being asked."""

    line: int
    target: str
    loads: bool


@dataclass(slots=True)
class PageRead:
    """What matters of one file."""

    ids: dict[str, list[int]] = field(default_factory=dict)
    """The lines on which each id stands."""
    references: list[Reference] = field(default_factory=list)
    id_references: list[tuple[int, str]] = field(default_factory=list)


@dataclass(frozen=True, slots=True)
class Crawl:
    """What a walk found, and how much it looked at: no faults in nothing proves nothing."""

    faults: list[Fault]
    pages: int
    references: int


class _Reader(HTMLParser):
    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.page = PageRead()
        self._in_style = False

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        attributes = {name: value or "" for name, value in attrs}
        line = self.getpos()[0]
        self._in_style = tag == "style"
        if "id" in attributes:
            self.page.ids.setdefault(attributes["id"], []).append(line)
        for name in ID_REFERENCES:
            for target in attributes.get(name, "").split():
                self.page.id_references.append((line, target))
        for name in REFERENCES.get(tag, ()):
            if name in attributes:
                loads = tag not in POINTERS and not (
                    tag == "link" and POINTING_LINKS & set(attributes.get("rel", "").split())
                )
                for target in _targets(name, attributes[name]):
                    self.page.references.append(Reference(line, target, loads))
        if "style" in attributes:
            self._note_css(attributes["style"], line)

    def handle_endtag(self, tag: str) -> None:
        self._in_style = False

    def handle_data(self, data: str) -> None:
        if self._in_style:
            self._note_css(data, self.getpos()[0])

    def _note_css(self, text: str, line: int) -> None:
        self.page.references += [Reference(line, target, True) for target in css_targets(text)]


def crawl(site: Path, base: str = "/") -> Crawl:
    """Check every reference of every page and style sheet of a built site.

    Parameters
    ----------
    site : Path
        The folder of the site.
    base : str
        The path at which the not-found page expects the site, from `site_url`.

    Returns
    -------
    Crawl
        Faults in the order of their place, and what was looked at.
    """
    # Names as they are spelled: a system that ignores case must not hide a wrong one.
    files = {
        Path(folder, name).relative_to(site).as_posix()
        for folder, _, names in os.walk(site)
        for name in names
    }
    pages = {path: _read(site / path) for path in files if path.endswith((".html", ".css"))}
    faults = [
        Fault(path, line, what)
        for path, page in pages.items()
        for line, what in _faults_of(path, page, pages, files, base)
    ]
    return Crawl(
        sorted(set(faults)),
        sum(path.endswith(".html") for path in pages),
        sum(len(page.references) for page in pages.values()),
    )


def css_targets(text: str) -> Iterator[str]:
    """Give what a style sheet refers to."""
    for match in _CSS_URL.finditer(text):
        yield next((group for group in match.groups() if group is not None), "")
    for match in _CSS_IMPORT.finditer(text):
        yield match[1]


def _read(path: Path) -> PageRead:
    text = path.read_text(encoding="utf-8")
    if path.suffix == ".css":
        return PageRead(references=[Reference(1, target, True) for target in css_targets(text)])
    reader = _Reader()
    reader.feed(text)
    reader.close()
    return reader.page


def _targets(name: str, value: str) -> Iterator[str]:
    """Give the addresses in an attribute; a srcset has several, each with a size."""
    if name != "srcset":
        yield value.strip()
        return
    for candidate in value.split(","):
        if candidate.strip():
            yield candidate.split()[0]


def _faults_of(
    path: str, page: PageRead, pages: dict[str, PageRead], files: set[str], base: str
) -> Iterator[tuple[int, str]]:
    for id_, lines in page.ids.items():
        if not id_.strip():
            yield lines[0], "an id is empty"
        elif len(lines) > 1:
            yield lines[1], f"the id {id_!r} stands {len(lines)} times"
    for line, id_ in page.id_references:
        if id_ not in page.ids:
            yield line, f"names the id {id_!r}, which the page does not have"
    for reference in page.references:
        wrong = _fault_of(reference, path, pages, files, base)
        if wrong:
            yield reference.line, wrong


def _fault_of(
    reference: Reference, path: str, pages: dict[str, PageRead], files: set[str], base: str
) -> str:
    """Say what is wrong with a reference, or nothing."""
    target = reference.target
    parts = urlsplit(target)
    if parts.scheme in ("http", "https") or parts.netloc:
        return f"loads {target} from elsewhere" if reference.loads else ""
    if parts.scheme:
        return "" if parts.scheme in ("data", "mailto", "tel") else f"{target}: unknown scheme"
    inside = unquote(parts.path)
    if inside.startswith("/"):
        if path != NOT_FOUND_PAGE or not inside.startswith(base):
            return f"{target} starts at the root of the host, not at this file"
        inside = inside[len(base) :] or "."
    elif path == NOT_FOUND_PAGE and inside:
        return f"{target} is relative, but this page is shown at any address"
    found = posixpath.normpath(posixpath.join(posixpath.dirname(path), inside)) if inside else path
    if inside.endswith("/") or found == "." or any(name.startswith(found + "/") for name in files):
        if path == NOT_FOUND_PAGE:
            found = posixpath.normpath(posixpath.join(found, "index.html"))
        else:
            return f"{target} is a folder, which shows no page without a server"
    if found not in files:
        return f"{target} is not there"
    return _anchor_fault(target, unquote(parts.fragment), pages.get(found))


def _anchor_fault(target: str, anchor: str, page: PageRead | None) -> str:
    # "top" is the top of any page by the HTML standard.
    if not anchor or page is None or anchor == "top" or anchor in page.ids:
        return ""
    return f"{target}: the page has no id {anchor!r}"
