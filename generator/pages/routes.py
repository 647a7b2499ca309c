"""Every address of the site; no other place spells one."""

from __future__ import annotations

from generator.records.kinds import Record

HOME = "index.html"
SAFETY = "safety.html"
SOURCES = "sources.html"
TERMS = "terms.html"
STOCK = "tools-and-supplies.html"
ROLES = "roles.html"
CASES = "solved-cases.html"
FAULTS = "faults/index.html"
UPKEEP = "state-of-the-manual.html"
AUDIT = "audit.json"
SEARCH = "search-index.js"
OFFLINE = "offline/index.html"
FOLDER = "offline/manual.zip"
CAUTIONS = "offline/cautions.json"
ADD = "add/index.html"
FORMS = "record-forms.js"
READINGS = "reading-data.js"
CHOICE = "vehicle-data.js"
IN_HAND = "job-words.js"
WRONG = "note-words.js"

PAGED = (
    "vehicles", "components", "circuits", "symptoms", "codes", "tests", "replacements",
    "procedures",
)  # fmt: skip
"""Kinds whose records have a page each; the others share one."""

SHARED = {
    "sources": SOURCES, "terms": TERMS, "tools": STOCK, "supplies": STOCK, "people": ROLES,
    "hazards": SAFETY, "cases": CASES,
}  # fmt: skip
"""Kinds whose records are entries of one page."""

HUBS = ("symptoms", "codes", "tests", "replacements", "procedures", "components", "vehicles")
"""Kinds with a page that lists them."""


def hub(kind: str) -> str:
    """Give the address of the page that lists a kind."""
    return f"{kind}/index.html"


def page_of(kind: str, id_: str) -> str:
    """Give the address of a record's page, or of its entry on a shared page."""
    if kind in PAGED:
        return f"{kind}/{id_}.html"
    if kind in SHARED:
        return f"{SHARED[kind]}#{entry(kind, id_)}"
    raise KeyError(f"{kind} has no page; link to the part or the test that uses it")


def address(record: Record) -> str:
    """Give the address of a record."""
    return page_of(record.kind, record.id)


def fault(code: str) -> str:
    """Give the address of the page about a fault."""
    return f"faults/{code}.html"


def entry(kind: str, id_: str) -> str:
    """Give the anchor of a record on a shared page."""
    return f"{kind}-{id_}"


def step(number: str) -> str:
    """Give the anchor of a step: 4.2 becomes step-4-2."""
    return "step-" + number.replace(".", "-")


def outcome(finding: str, index: int) -> str:
    """Give the anchor of an outcome."""
    return f"found-{finding.replace('_', '-')}-{index + 1}"


def spec(id_: str) -> str:
    """Give the anchor of a value on a page that shows it."""
    return f"value-{id_}"


def vehicle(id_: str) -> str:
    """Give the anchor of the part of a page that is about one vehicle."""
    return f"on-{id_}"


def relative(from_page: str, target: str) -> str:
    """Give the link from one page to another, or to an anchor, as the browser needs it.

    Relative links alone work under a sub-path and from a folder on a stick.
    """
    page, _, anchor = target.partition("#")
    tail = f"#{anchor}" if anchor else ""
    if not page or page == from_page:
        return tail or page.rsplit("/", 1)[-1] or from_page.rsplit("/", 1)[-1]
    here, there = from_page.split("/")[:-1], page.split("/")
    while here and len(there) > 1 and here[0] == there[0]:
        here, there = here[1:], there[1:]
    return "../" * len(here) + "/".join(there) + tail


def source_name(page: str) -> str:
    """Give the name under which the host knows a page: tests/winding.html is tests/winding.md."""
    return page.removesuffix(".html") + ".md"
