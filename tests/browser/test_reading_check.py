"""A reading typed beside its value: the verdict, what it does not prove, and the way on."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page, expect

from tests.browser.conftest import Watch
from tests.browser.static_server import StaticServer

# The winding of 860 ohm at 20 degrees, 10 % either way: 774 to 946 ohm at that temperature.
CASES = [
    ("860", "In limits"), ("0.86k", "In limits"), ("0,86 k", "In limits"), ("860 Ω", "In limits"),
    ("600", "Low"), ("1.3k", "High"), ("OL", "Open"),
]  # fmt: skip


def box_of(page: Page) -> Locator:
    """Give the check of the page's first value."""
    return page.locator("[data-check]").first


@pytest.fixture
def test_page(phone_page: Watch, site_dir: Path) -> Page:
    """Open the test of the winding straight from the disk."""
    page = phone_page("dark")
    page.goto((site_dir / "tests/winding-resistance.html").as_uri())
    return page


def typed(page: Page, reading: str, temperature: str = "", spread: str = "") -> Locator:
    """Type a reading and a temperature, and give the result."""
    box = box_of(page)
    box.locator("input[id$=-temperature]").fill(temperature)
    box.locator("input[id$=-temperature-spread]").fill(spread)
    box.locator("input[id$=-reading]").fill(reading)
    return box.locator(".check-result")


@pytest.mark.parametrize(("reading", "verdict"), CASES)
def test_a_reading_gets_its_verdict(test_page: Page, reading: str, verdict: str) -> None:
    """At twenty degrees, in every way a mechanic types it."""
    expect(typed(test_page, reading, "20", "0")).to_contain_text(verdict)


def test_without_the_temperature_it_says_what_is_wanted(test_page: Page) -> None:
    """A reading that some temperature allows and another does not is no verdict."""
    result = typed(test_page, "0,85k")
    expect(result).to_contain_text("Cannot tell")
    expect(result).to_contain_text("State the temperature of the part itself more closely")


def test_without_a_script_the_table_stands(phone_page: Watch, site_dir: Path) -> None:
    """The check is not shown, and the limits are."""
    page = phone_page("light", java_script_enabled=False)
    page.goto((site_dir / "tests/winding-resistance.html").as_uri())
    expect(box_of(page)).to_be_hidden()
    expect(page.locator("table.limits").first).to_be_visible()


def test_the_verdict_leads_to_its_outcome_by_touch(
    phone_page: Watch, site_server: StaticServer
) -> None:
    """Tapping the fields, the button OL and the link brings a reader to "Over-range"."""
    page = phone_page("light")
    page.goto(site_server.url("tests/winding-resistance.html"))
    box = box_of(page)
    box.get_by_label("You read", exact=True).tap()
    page.keyboard.type("1.5")
    box.get_by_role("combobox", name="Unit, You read").select_option("kohm")
    box.get_by_label("Temperature of the part itself", exact=True).tap()
    page.keyboard.type("20")
    expect(box.locator(".check-word")).to_have_text("High")
    assert box.locator(".check-next a").get_attribute("href") == "#found-high-5"
    box.get_by_role("button", name="Over range").tap()
    expect(box.locator(".check-word")).to_have_text("Open circuit")
    box.locator(".check-next a").tap()
    assert page.url.endswith("#found-open-6")
    expect(page.locator("#found-open-6")).to_be_in_viewport()


def test_a_written_stretch_goes_before_the_finding(test_page: Page) -> None:
    """Five ohm is low; the outcome that says "at most 50 ohm" is the one to go on with."""
    result = typed(test_page, "5", "20")
    expect(result.locator(".check-word")).to_have_text("Low")
    assert result.locator(".check-next a").get_attribute("href") == "#found-shorted-3"


def test_in_limits_says_what_it_does_not_prove(test_page: Page) -> None:
    """The words of the command stand below the verdict, and the sleeping fault has its way on."""
    result = typed(test_page, "860", "20")
    expect(result).to_contain_text("Limits: 774 to 946 ohm")
    expect(result).to_contain_text("It does not prove the part sound")
    expect(result).to_contain_text("A part that fails hot reads well at this temperature")
    targets = result.locator(".check-next a").evaluate_all("all => all.map((a) => a.hash)")
    assert targets == ["#found-in-limits-1", "#found-complaint-absent-2"]


def test_another_meter_changes_the_verdict(test_page: Page) -> None:
    """925 ohm lies 21 below the limit of 946: enough for a meter of 0.8 %, too little for one of 3.

    JCGM 100, 4.3.7: half-widths of 9.4 and 29.8 ohm, u of 5.4 and 17.2; JCGM 106, 5 %: guard bands
    of 1.645 u, 8.9 and 28.3 ohm.
    """
    result = typed(test_page, "925", "20")
    box = box_of(test_page)
    expect(result.locator(".check-word")).to_have_text("In limits")
    box.locator("details > summary").tap()
    box.get_by_label("Accuracy, % of the reading").fill("3")
    expect(result.locator(".check-word")).to_have_text("Cannot tell")
    expect(result).to_contain_text("use a meter, or a range, with a smaller one")
    expect(box.locator("summary")).to_contain_text("±(3 % of the reading + 2 × 1 ohm)")
    box.get_by_label("Meter", exact=True).select_option("not named")
    expect(result.locator(".check-word")).to_have_text("In limits")
    expect(result).to_contain_text("The bare figure was judged")
    box.get_by_label("Meter", exact=True).select_option("another meter")
    expect(result).to_contain_text("The meter’s figures are not right: Accuracy")


def test_leads_that_were_not_taken_off_count(test_page: Page) -> None:
    """With 100 ohm of leads in it, 1000 ohm is a winding of 900 (by subtraction): in limits."""
    result = typed(test_page, "1000", "20")
    expect(result.locator(".check-word")).to_have_text("High")
    box = box_of(test_page)
    box.locator("details > summary").tap()
    box.get_by_label("Leads taken off the reading").uncheck()
    box.get_by_label("Both leads together, ohm").fill("100")
    expect(result.locator(".check-word")).to_have_text("In limits")
    expect(result).to_contain_text("With the meter’s error: 900")


def test_the_temperature_may_be_said_in_either_unit(test_page: Page) -> None:
    """68 °F is 20 °C (NIST SP 811, B.8), typed or chosen; a spread in °F has no offset."""
    for temperature, unit in (("68 F", "°C"), ("68", "°F")):
        box_of(test_page).get_by_label("Unit, Temperature of the part itself").select_option(unit)
        result = typed(test_page, "860", temperature)
        expect(result).to_contain_text("Limits: 774 to 946 ohm")
    expect(typed(test_page, "860", "68", "9")).to_contain_text("Limits: 759 to 964 ohm")


@pytest.mark.parametrize(
    ("reading", "words"),
    [
        ("1,200", "Do you mean 1200 or 1.200?"), ("850 V", "V measures something else"),
        ("850 flurb", "The unit flurb is not known"), ("about 850", "This is no reading"),
        ("1.2m", "may be milli or mega"),
    ],
)  # fmt: skip
def test_what_cannot_be_read_is_said(test_page: Page, reading: str, words: str) -> None:
    """Nothing is guessed: the fault is named, with its mend, and there is no verdict."""
    result = typed(test_page, reading, "20")
    expect(result).to_contain_text(words)
    expect(result.locator(".check-word")).to_have_count(0)


def test_beyond_its_temperatures_the_page_says_nothing(test_page: Page) -> None:
    """The limits were worked out from −20 to 100 °C; at 140 °C there is no verdict."""
    expect(typed(test_page, "860", "140")).to_contain_text("from −20 to 100 °C")
    expect(typed(test_page, "860", "-20")).to_contain_text("Limits")


def test_a_sign_needs_no_key(phone_page: Watch, site_server: StaticServer) -> None:
    """A keyboard of digits has no minus: a button gives a voltage its sign, and takes it off."""
    page = phone_page("light")
    page.goto(site_server.url("tests/hall-pull-up.html"))
    box = box_of(page)
    box.get_by_label("You read", exact=True).fill("5")
    box.get_by_role("button", name="Change the sign").tap()
    expect(box.get_by_label("You read", exact=True)).to_have_value("-5")
    expect(box.locator(".check-word")).to_have_text("Low")
    box.get_by_role("button", name="Change the sign").tap()
    expect(box.locator(".check-word")).to_have_text("In limits")


def test_a_poor_meter_moves_the_limits_of_a_pull_up(
    phone_page: Watch, site_server: StaticServer
) -> None:
    """A load of 1 Mohm pulls the open wire down: closed form, R/(R + 1 Mohm) of the level."""
    page = phone_page("light")
    page.goto(site_server.url("tests/hall-pull-up.html"))
    box = box_of(page)
    box.get_by_label("You read", exact=True).fill("5")
    limits = box.locator(".check-text").first
    before = limits.inner_text()
    box.locator("details > summary").tap()
    box.get_by_label("Input resistance, Mohm").fill("1")
    expect(limits).not_to_have_text(before)
    low = float(limits.inner_text().split()[1])
    assert low < float(before.split()[1])


def test_fields_are_large_and_bring_the_numbers_up(
    phone_page: Watch, site_server: StaticServer
) -> None:
    """At 320 pixels nothing is lower than 48, nothing runs over, and the keyboard has digits."""
    page = phone_page("light", viewport={"width": 320, "height": 700})
    page.goto(site_server.url("tests/winding-resistance.html"))
    typed(page, "860", "20", "3")
    box = box_of(page)
    expect(box.locator(".check-word")).to_be_visible()
    box.locator("details > summary").tap()
    fields = box.locator("input[type=text]")
    assert fields.count() >= 6
    modes = fields.evaluate_all("all => all.map((field) => field.inputMode)")
    assert set(modes) == {"decimal"}
    heights = box.locator(
        "input[type=text], select, button, summary, .check-tick, .check-next a"
    ).evaluate_all("all => all.map((each) => each.getBoundingClientRect().height)")
    assert min(heights) >= 48
    assert page.evaluate("document.documentElement.scrollWidth") <= 320
    assert box.locator(".check-result").get_attribute("aria-live") == "polite"
    names = fields.evaluate_all("all => all.map((field) => field.labels.length)")
    assert set(names) == {1}
