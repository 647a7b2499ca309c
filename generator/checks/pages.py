"""The page about every fault there is, whichever room finds it.

A rule of this room is its own page. The faults of reading, of shape and of the engines have their
pages in the files of ``guide/``; one that nobody has written a page for yet has what its code
says.
"""

from __future__ import annotations

from functools import cache
from importlib import resources
from typing import Any

import yaml

from generator.checks.fault_page import PAGES, FaultPage
from generator.problems import CODES
from generator.records import load as _reading  # declares the codes of reading and of shape

_LOADER: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)

FOLDER = "guide"

DECLARES = (_reading,)
"""Rooms below that no rule of this one imports, and whose codes have pages too."""


GROUPS = ("checks", "engines", "shape", "reading")
"""Groups in the order they are listed: the rules of this room, then the files of the guide."""

OTHER = "other"


def page_of(name: str) -> FaultPage:
    """Give the page about a fault.

    Raises
    ------
    KeyError
        If there is no such code.
    """
    known = CODES[name]
    if name in PAGES:
        return PAGES[name]
    written = next((pages[name] for pages in guide().values() if name in pages), {})
    return FaultPage(
        title=written.get("title", name.replace("-", " ").capitalize()),
        wrong="",
        why=known.why,
        mend=written.get("mend", "The hint beside the finding says how."),
        record=written.get("in", ""),
        fails=written.get("fails", "").rstrip("\n"),
        passes=written.get("passes", "").rstrip("\n"),
    )


def every_page() -> dict[str, FaultPage]:
    """Give the page of every code, by name."""
    return {name: page_of(name) for name in sorted(CODES)}


def by_group() -> dict[str, list[str]]:
    """Give the names of all codes by the group they are listed in, groups without any left out."""
    groups: dict[str, list[str]] = {group: [] for group in (*GROUPS, OTHER)}
    for name in sorted(CODES):
        found = (group for group, pages in guide().items() if name in pages)
        groups["checks" if name in PAGES else next(found, OTHER)].append(name)
    return {group: names for group, names in groups.items() if names}


@cache
def guide() -> dict[str, dict[str, dict[str, str]]]:
    """Give what the files of the guide say: group, which is the file's name, to code to fields."""
    folder = resources.files("generator.checks") / FOLDER
    return {
        file.name.removesuffix(".yml"): yaml.load(file.read_text(encoding="utf-8"), Loader=_LOADER)
        for file in sorted(folder.iterdir(), key=lambda f: f.name)
        if file.name.endswith(".yml")
    }
