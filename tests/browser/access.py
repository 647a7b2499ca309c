"""Whether everybody can use a page, as axe sees it."""

from __future__ import annotations

from importlib.resources import files
from pathlib import Path
from typing import Any

import yaml
from playwright.sync_api import Page

HERE = Path(__file__).parent
AXE = (files("axe_playwright_python") / "axe.min.js").read_text("utf-8")
RUN = (HERE / "access.js").read_text("utf-8")

RULES: dict[str, Any] = {
    "runOnly": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
    "resultTypes": ["violations", "incomplete"],
    "preload": False,  # of media there is none, and style sheets are read where they stand
}
"""All that the guidelines ask for at levels A and AA, and axe's own advice."""

LOOKED_AT: list[dict[str, str]] = yaml.safe_load((HERE / "looked_at.yml").read_text("utf-8"))
"""What axe could not decide and somebody looked at."""

LEAST_CHECKED = 10
"""Rules that find something to pass on any page of ours; with fewer, axe has not looked."""


def look(
    page: Page, where: str, met: set[int] | None = None, rules: dict[str, Any] | None = None
) -> list[str]:
    """Give the faults of a page as it stands.

    Parameters
    ----------
    page : Page
        The page.
    where : str
        What to call it.
    met : set of int, optional
        Takes up the numbers of the listed doubts that the page raises.
    rules : dict, optional
        What axe shall look at beside the usual.
    """
    page.evaluate(AXE)
    found = page.evaluate(RUN, [{**RULES, "rules": rules or {}}, LOOKED_AT])
    assert found["checked"] >= LEAST_CHECKED, f"{where}: axe has not looked"
    if met is not None:
        met.update(found["seen"])
    return [f"{where} {fault}" for fault in found["faults"]]
