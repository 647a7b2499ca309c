"""The main job, walked as a reader would: complaint, test, finding, replacement, proof."""

from __future__ import annotations

import re
from typing import Literal

import pytest
from playwright.sync_api import Page, expect

from tests.browser.conftest import Watch
from tests.browser.static_server import StaticServer

WALKS = {
    "corrie-1-2": ("Cranks but does not start", "winding-resistance", "crank-sensor-inductive"),
    "corrie-1-6": ("Dies when hot", "heat-and-wiggle-hall", "crank-sensor-hall"),
}
"""Vehicle: the complaint on the home page, the test that proves it, the part."""


def follow(page: Page, selector: str, address: str) -> None:
    """Tap the first link of a part of the page that leads to an address, and arrive there."""
    page.locator(f"{selector} a[href*='{address}']").first.tap()
    page.wait_for_url(re.compile(re.escape(address)))
    expect(page.locator("h1")).to_be_visible()
    assert page.evaluate("document.documentElement.scrollWidth") <= 390, "no sideways scrolling"


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("vehicle", WALKS)
def test_from_complaint_to_proof(
    vehicle: str,
    scheme: Literal["light", "dark"],
    phone_page: Watch,
    site_server: StaticServer,
) -> None:
    """Shows a way by touch from the complaint to the proven, replaced and verified sensor."""
    complaint, test, part = WALKS[vehicle]
    job = f"replace-{part}"
    page = phone_page(scheme)
    page.goto(site_server.url("index.html"))
    page.get_by_role("link", name=re.compile(complaint)).first.tap()
    page.wait_for_url(re.compile("symptoms/"))
    assert page.locator(f"#on-{vehicle} ol.order > li").count() >= 5
    follow(page, f"#on-{vehicle} ol.order", f"tests/{test}.html")
    condemned = page.locator(".answer-condemns").filter(has=page.locator(f"a[href*='{job}']"))
    assert condemned.count() >= 1, "the test can condemn the part"
    follow(page, ".answer-condemns", f"replacements/{job}.html")
    assert page.locator("#verify a").count() >= 1
    assert page.locator("li.step .signal").count() >= 1
    follow(page, "#verify", "tests/")
    assert page.locator("#outcomes .answer").count() >= 2


def test_no_page_is_a_dead_end(phone_page: Watch, site_server: StaticServer) -> None:
    """Shows that every outcome of every test says where to go, in a link or in plain words."""
    page = phone_page("light", java_script_enabled=False)
    page.goto(site_server.url("tests/index.html"))
    tests = page.locator("a.tile").evaluate_all("links => links.map(link => link.href)")
    assert len(tests) >= 15
    for address in tests:
        page.goto(address)
        answers: list[list[str]] = page.locator(".answer").evaluate_all(
            "all => all.map(one => Array.from(one.querySelectorAll('.onward'), at => at.innerText))"
        )
        for onward in answers:
            assert onward and all(len(text.strip()) > 10 for text in onward), address


def test_the_box_stands_before_the_command(phone_page: Watch, site_server: StaticServer) -> None:
    """Shows that a panel is the first thing in its step, in sight, also under a deep link."""
    page = phone_page("dark")
    page.goto(site_server.url("replacements/replace-crank-sensor-inductive.html"))
    steps = page.locator("li.step").filter(has=page.locator(".signal"))
    assert steps.count() >= 3
    for number in range(steps.count()):
        step = steps.nth(number)
        first = step.evaluate("step => step.firstElementChild.className")
        assert "signal" in first
        box = step.locator(".signal").bounding_box()
        command = step.locator(".command").bounding_box()
        assert box and command and box["y"] + box["height"] <= command["y"] + 1
    anchor = steps.nth(1).get_attribute("id")
    page.goto(f"{page.url.split('#')[0]}#{anchor}")
    top = steps.nth(1).locator(".signal").bounding_box()
    assert top and -1 <= top["y"] < 844, "the deep link shows the panel"


def test_pages_stand_without_scripts(phone_page: Watch, site_server: StaticServer) -> None:
    """Shows that tables, panels, figures and links are there with scripts off."""
    page = phone_page("light", java_script_enabled=False)
    page.goto(site_server.url("tests/winding-resistance.html"))
    for selector in (".signal", "table.limits", "svg[role='img']", ".answer .onward a"):
        expect(page.locator(selector).first).to_be_visible()
