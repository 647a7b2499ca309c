"""Every template in each of its states, in both schemes, as axe sees it; and 7:1 for its text."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.browser import access
from tests.browser.conftest import Scheme, Watch
from tests.browser.static_server import StaticServer
from tests.browser.test_every_page import UNFOLD
from tests.browser.test_job import begin
from tests.browser.test_policy import kinds
from tests.browser.test_resume import JOB, tick
from tests.browser.test_vehicle import HERE, OTHERS, SHARED, choose

# What a copy keeps of a newer manual: so old, and so much changed, that it says all it can say.
OLD_COPY = """async () => {
  const newer = { version: "newer", withdrawn: [["gone.html", "A page"]],
    cautions: [["index.html", "Home"]], others: 2 };
  await window.fettleCopy.write("state",
    { version: "older", compared: Date.now() - 30 * 24 * 60 * 60 * 1000, newer });
}"""


def searched(page: Page, text: str) -> None:
    """Type into the search of the bar."""
    page.locator(".finder-open").tap()
    page.locator("#finder-text").fill(text)
    expect(page.locator("#finder .hits a, #finder [role=status]").first).to_be_attached()
    page.wait_for_timeout(300)


def judged(page: Page, reading: str, word: str) -> None:
    """Type a reading of the winding at twenty degrees, and wait for what is said."""
    box = page.locator("[data-check]").first
    box.locator("input[id$=-temperature]").fill("20")
    box.locator("input[id$=-reading]").fill(reading)
    expect(box.locator(".check-result")).to_contain_text(word)


def kept(page: Page) -> None:
    """Type a reading with a job in hand, and look at the job."""
    begin(page, "KQ 12")
    judged(page, "1.3k", "High")
    page.locator(".job-open").tap()
    expect(page.locator(".job-readings")).to_be_visible()


def taken_up_again(page: Page) -> None:
    """Tick two steps and come back, so that the page asks for the state."""
    tick(page, "1", "2")
    page.reload()
    expect(page.locator(".ask")).to_be_visible()


def tapped(page: Page) -> None:
    """Say what the first test found."""
    page.locator(".tap-next button").first.tap()
    expect(page.locator(".tap-next").first).to_be_visible()


def warned(page: Page) -> None:
    """Make the copy old and overtaken."""
    page.evaluate(OLD_COPY)
    page.reload()
    expect(page.locator(".copy-word")).to_contain_text("A newer manual is out.")


STATES: dict[str, tuple[str, Callable[[Page], None]]] = {
    "menu open": ("index.html", lambda page: page.locator(".menu > summary").tap()),
    "vehicle asked": ("index.html", lambda page: page.locator(".reader-vehicle").tap()),
    "job asked": ("index.html", lambda page: page.locator(".job-open").tap()),
    "job begun": ("index.html", lambda page: begin(page, "KQ 12", said="Cuts out when hot")),
    "hits on the home page": (
        "index.html", lambda page: page.locator(".home-finder input").fill("crankshft"),
    ),
    "hits from the bar": (SHARED, lambda page: searched(page, "0335")),
    "nothing found": (SHARED, lambda page: searched(page, "zzqqxx")),
    "vehicle chosen": (SHARED, lambda page: choose(page, HERE)),
    "for another vehicle": (OTHERS, lambda page: choose(page, HERE)),
    "finding told": (SHARED, tapped),
    "in limits": (OTHERS, lambda page: judged(page, "860", "In limits")),
    "low": (OTHERS, lambda page: judged(page, "600", "Low")),
    "open": (OTHERS, lambda page: judged(page, "OL", "Open")),
    "not understood": (OTHERS, lambda page: judged(page, "8x6", "")),
    "reading kept": (OTHERS, kept),
    "other units": (OTHERS, lambda page: page.locator("[data-units=us]").tap()),
    "taken up again": (JOB, taken_up_again),
    "copy overtaken": ("safety.html", warned),
    "copy overtaken, its page": ("offline/index.html", warned),
}  # fmt: skip
"""State: the page, and what brings it there."""

# What lies under an open panel cannot be judged there; it was, on the page as it opens.
COVERED = ("overlapped by another element", "partially overlaps other elements")


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_every_state_is_sound(scheme: Scheme, phone_page: Watch, site_server: StaticServer) -> None:
    """Whatever a reader opens, types or is told, axe finds no fault and no new doubt in it."""
    page, found = phone_page(scheme), []
    page.goto(site_server.url("terms.html"))
    for state, (address, act) in STATES.items():
        page.evaluate("localStorage.clear()")
        page.goto(site_server.url(address))
        act(page)
        found += access.look(page, state)
    assert [fault for fault in found if not any(word in fault for word in COVERED)] == []


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_every_template_opened_holds_in_sunlight(
    scheme: Scheme, phone_page: Watch, site_server: StaticServer, site_dir: Path
) -> None:
    """One page of each kind, all of it unfolded: no fault, and 7:1 for all text but a panel's word.

    Large figures need 4.5:1, as the guideline for the highest level has it.
    """
    page, found = phone_page(scheme), []
    for address in kinds(site_dir):
        page.goto(site_server.url(address))
        page.evaluate(UNFOLD)
        found += access.look(page, address, rules={"color-contrast-enhanced": {"enabled": True}})
    assert found == []
