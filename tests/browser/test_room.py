"""Room for a thumb and for large letters: 48 px targets, and text of twice the size on a phone."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import CDPSession, Page

from tests.browser.conftest import Watch
from tests.browser.static_server import StaticServer
from tests.browser.test_every_page import SIDEWAYS, UNFOLD
from tests.browser.test_policy import kinds, watched

TARGETS = (Path(__file__).parent / "targets.js").read_text("utf-8")
USUAL_PX, TWICE_PX = 16, 32
TEST = "tests/winding-resistance.html"
CALLING = "replacements/replace-crank-sensor-inductive.html"
SQUEEZE = """(low) => {
  for (const { style } of document.querySelectorAll(low)) {
    Object.assign(style, { minHeight: "0", padding: "0", height: "20px" });
  }
}"""


def set_text(session: CDPSession, size_px: int) -> None:
    """Set the browser's own size of text, as a reader does in its settings."""
    session.send("Page.setFontSizes", {"fontSizes": {"standard": size_px}})


def missed(page: Page, part: str = "body") -> list[str]:
    """Give the targets of a page, or of a part of it, that a thumb may miss."""
    found = page.evaluate(TARGETS, part)
    assert found["count"] > 5, "nothing was looked at"
    faults: list[str] = found["faults"]
    return faults


def test_every_kind_of_page_has_room(
    phone_page: Watch, site_server: StaticServer, site_dir: Path
) -> None:
    """With all unfolded, each target is 48 px high or stands alone, and large text runs nowhere.

    Twice the usual letters at 390 px, and the usual ones at 320.
    """
    page, found = watched(phone_page), []
    session = page.context.new_cdp_session(page)
    for address in kinds(site_dir):
        page.set_viewport_size({"width": 390, "height": 844})
        page.goto(site_server.url(address))
        page.evaluate(UNFOLD)
        found += [f"{address} {fault}" for fault in missed(page)]
        set_text(session, TWICE_PX)
        assert page.evaluate("parseFloat(getComputedStyle(document.body).fontSize)") >= TWICE_PX
        if page.evaluate(SIDEWAYS) > 0:
            found.append(f"{address} scrolls sideways with large text")
        set_text(session, USUAL_PX)
        page.set_viewport_size({"width": 320, "height": 640})
        if page.evaluate(SIDEWAYS) > 0:
            found.append(f"{address} scrolls sideways at 320 px")
    assert found == []


def test_the_menu_has_room(phone_page: Watch, site_server: StaticServer) -> None:
    """What opens over the page is looked at alone; keys of less height in it are noticed."""
    page = phone_page()
    page.goto(site_server.url(TEST))
    page.locator(".menu > summary").tap()
    assert missed(page, ".menu") == []
    page.evaluate(SQUEEZE, "[data-units], .menu a")
    assert len(missed(page, ".menu")) > 3


@pytest.mark.parametrize("low", [".links > li, .links > li > a", ".step > .aside > a"])
def test_a_target_too_low_is_noticed(
    low: str, phone_page: Watch, site_server: StaticServer
) -> None:
    """Links without their room, below each other or above a tick, fail."""
    page = phone_page()
    page.goto(site_server.url(CALLING))
    assert missed(page) == []
    page.evaluate(SQUEEZE, low)
    assert missed(page) != []


def test_text_that_runs_over_is_noticed(phone_page: Watch, site_server: StaticServer) -> None:
    """A line that may not break runs off the screen once letters are twice the size."""
    page = phone_page()
    page.goto(site_server.url(TEST))
    page.evaluate(
        "document.querySelector('h1').insertAdjacentHTML('afterend',"
        " '<p>wwwwwwwwwwwwwwwwwwww</p>')"
    )
    page.evaluate("document.querySelector('h1 + p').style.overflowWrap = 'normal'")
    assert page.evaluate(SIDEWAYS) <= 0
    set_text(page.context.new_cdp_session(page), TWICE_PX)
    assert page.evaluate(SIDEWAYS) > 0
