"""The switch of units: everywhere at once, remembered, and both without a script."""

from __future__ import annotations

import pytest
from playwright.sync_api import Page, expect

from tests.browser.conftest import Watch
from tests.browser.static_server import StaticServer

WINDING = "tests/winding-resistance.html"
TORQUE = "components/crank-sensor-inductive.html"


def pressed(page: Page) -> list[str]:
    """Give the systems whose buttons are down."""
    found: list[str] = page.locator("[data-units][aria-pressed=true]").all_inner_texts()
    return found


def test_one_tap_changes_every_figure_of_the_page(
    phone_page: Watch, site_server: StaticServer
) -> None:
    """In SI no °F is left in the values, in US no °C, and with both each has its second."""
    page = phone_page("light")
    page.goto(site_server.url(TORQUE))
    values = page.locator("#values")
    assert pressed(page) == ["Both"]
    both = values.inner_text()
    assert "°C" in both and "°F" in both and "N·m" in both and "lbf·ft" in both
    for system, here, gone in (
        ("SI", ("°C", "N·m"), ("°F", "lbf·ft")), ("US", ("°F", "lbf·ft"), ("°C", "N·m"))
    ):  # fmt: skip
        page.get_by_role("button", name=system, exact=True).tap()
        assert pressed(page) == [system]
        heads = "\n".join(values.locator(".reading, .at, th").all_inner_texts())
        assert all(unit in heads for unit in here)
        assert not any(unit in heads for unit in gone)
    page.get_by_role("button", name="Both", exact=True).tap()
    assert values.inner_text() == both


def test_the_choice_is_kept_over_pages_and_tabs(
    phone_page: Watch, site_server: StaticServer
) -> None:
    """Another page has it, a page that lay beside follows, and one that lay behind does too."""
    page = phone_page("dark")
    page.goto(site_server.url(WINDING))
    beside = page.context.new_page()
    beside.goto(site_server.url(TORQUE))
    assert pressed(beside) == ["Both"]
    page.get_by_role("button", name="US", exact=True).tap()
    expect(beside.locator("[data-units=us]")).to_have_attribute("aria-pressed", "true")
    page.goto(site_server.url(TORQUE))
    assert pressed(page) == ["US"]
    page.get_by_role("button", name="SI", exact=True).tap()
    page.go_back()
    expect(page.locator("[data-units=si]")).to_have_attribute("aria-pressed", "true")


def test_the_check_of_a_reading_follows(phone_page: Watch, site_server: StaticServer) -> None:
    """In US the temperature is asked in °F, and what is taken where none is said is in °F."""
    page = phone_page("light")
    page.goto(site_server.url(WINDING))
    box = page.locator("[data-check]").first
    expect(box).to_contain_text("Left empty: −20 to 100 °C")
    page.get_by_role("button", name="US", exact=True).tap()
    expect(box).to_contain_text("Left empty: −4 to 212 °F")
    box.locator("input[id$=-temperature]").fill("68")
    box.locator("input[id$=-reading]").fill("860")
    expect(box.locator(".check-result")).to_contain_text("Limits: 774 to 946 ohm")


def test_without_a_script_both_are_shown(phone_page: Watch, site_server: StaticServer) -> None:
    """Both systems stand, and no switch that would do nothing."""
    page = phone_page("light", java_script_enabled=False)
    page.goto(site_server.url(WINDING))
    row = page.locator("table.limits tbody tr").first.inner_text()
    assert "°C" in row and "°F" in row
    expect(page.locator(".reader")).to_be_hidden()


@pytest.mark.parametrize("refusal", ["throws", "forgets"])
def test_a_browser_that_keeps_nothing_still_switches(
    refusal: str, phone_page: Watch, site_server: StaticServer
) -> None:
    """Where storage is refused the switch works on this page, without a complaint."""
    page = phone_page("light")
    script = {
        "throws": "Object.defineProperty(window, 'localStorage', { get() { throw new Error(); } })",
        "forgets": "Storage.prototype.setItem = () => { throw new Error('full'); }",
    }
    page.add_init_script(script[refusal])
    page.goto(site_server.url(WINDING))
    page.get_by_role("button", name="US", exact=True).tap()
    assert pressed(page) == ["US"]
    assert "°C" not in page.locator("table.limits tbody").first.inner_text()
