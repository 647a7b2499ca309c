"""A reading typed beside its value: the verdict, what it does not prove, and the way on."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page, expect

from tests.browser.conftest import Watch

# The winding of 860 ohm at 20 degrees, 10 % either way: 774 to 946 ohm at that temperature.
CASES = [
    ("860", "In limits"), ("0.86k", "In limits"), ("0,86 k", "In limits"), ("860 Ω", "In limits"),
    ("600", "Low"), ("1.3k", "High"), ("OL", "Open"),
]  # fmt: skip


def box_of(page: Page) -> Locator:
    """Give the check of the winding's value."""
    return page.locator("[data-check]").first


@pytest.fixture
def test_page(phone_page: Watch, site_dir: Path) -> Page:
    """Open the test of the winding straight from the disk."""
    page = phone_page("dark")
    page.goto((site_dir / "tests/winding-resistance.html").as_uri())
    return page


@pytest.mark.parametrize(("reading", "verdict"), CASES)
def test_a_reading_gets_its_verdict(test_page: Page, reading: str, verdict: str) -> None:
    """At twenty degrees, in every way a mechanic types it."""
    box = box_of(test_page)
    box.locator("input[id$=-temperature]").fill("20")
    box.locator("input[id$=-temperature-spread]").fill("0")
    box.locator("input[id$=-reading]").fill(reading)
    expect(box.locator(".check-result")).to_contain_text(verdict)


def test_without_the_temperature_it_says_what_is_wanted(test_page: Page) -> None:
    """A reading that some temperature allows and another does not is no verdict."""
    box = box_of(test_page)
    box.locator("input[id$=-reading]").fill("0,85k")
    expect(box.locator(".check-result")).to_contain_text("Cannot tell")


def test_without_a_script_the_table_stands(phone_page: Watch, site_dir: Path) -> None:
    """The check is not shown, and the limits are."""
    page = phone_page("light", java_script_enabled=False)
    page.goto((site_dir / "tests/winding-resistance.html").as_uri())
    expect(box_of(page)).to_be_hidden()
    expect(page.locator("table.limits").first).to_be_visible()
