"""The reader's vehicle: chosen by its engine, kept on the device, first on every page."""

from __future__ import annotations

import pytest
from playwright.sync_api import Page, expect

from generator.records.kinds.things import Vehicle
from tests.browser.conftest import Watch
from tests.browser.static_server import StaticServer
from tests.demo import demonstration

HERE, THERE = "corrie-1-6", "corrie-1-2"
SHARED = "symptoms/cuts-out-hot.html"
OTHERS = "tests/winding-resistance.html"


def choose(page: Page, id_: str) -> None:
    """Choose a vehicle by touch."""
    page.locator(".reader-vehicle").tap()
    page.locator(f".reader-choose [data-vehicle='{id_}']").tap()


@pytest.fixture
def home(phone_page: Watch, site_server: StaticServer) -> Page:
    """Open the home page."""
    page = phone_page("light")
    page.goto(site_server.url("index.html"))
    return page


def test_the_choice_tells_the_engines_apart(home: Page) -> None:
    """Each vehicle of the manual stands there with its record's way to tell it, one tap away."""
    expect(home.locator(".reader-choose")).to_be_hidden()
    home.locator(".reader-vehicle").tap()
    for vehicle in demonstration().all("vehicles", Vehicle):
        button = home.locator(f".reader-choose [data-vehicle='{vehicle.id}']")
        expect(button).to_contain_text(vehicle.title)
        expect(button).to_contain_text(vehicle.tell_apart.strip())
    home.keyboard.press("Escape")
    expect(home.locator(".reader-choose")).to_be_hidden()
    expect(home.locator(".reader-vehicle")).to_be_focused()


def test_the_vehicle_is_kept_over_pages(home: Page, site_server: StaticServer) -> None:
    """Chosen once, every page states it; "all vehicles" takes it back."""
    choose(home, HERE)
    expect(home.locator(".reader-vehicle b")).to_have_text("Corrie 1.6")
    for address in (SHARED, "components/index.html", "tests/hall-pull-up.html", "safety.html"):
        home.goto(site_server.url(address))
        expect(home.locator(".reader-vehicle b")).to_have_text("Corrie 1.6")
    choose(home, "")
    home.goto(site_server.url(SHARED))
    expect(home.locator(".reader-vehicle b")).to_have_text("all")
    assert home.locator("[data-for]:not(:visible)").count() == 0


def test_its_order_and_causes_come_first(home: Page, site_server: StaticServer) -> None:
    """On a complaint of both vehicles the other's order and causes are folded, and one tap away."""
    choose(home, HERE)
    home.goto(site_server.url(SHARED))
    expect(home.locator(f"#on-{HERE}")).to_be_visible()
    expect(home.locator(f"#on-{THERE}")).to_be_hidden()
    more = home.locator("#start > .others")
    expect(more).to_have_text("For other vehicles: Corrie 1.2")
    more.tap()
    expect(home.locator(f"#on-{THERE}")).to_be_visible()
    more.tap()
    expect(home.locator(f"#on-{THERE}")).to_be_hidden()
    hidden = home.locator("#causes li[data-for]:not(:visible)")
    assert hidden.count() >= 1
    home.locator("#causes .others").tap()
    assert hidden.count() == 0


def test_nothing_is_ever_lost(home: Page, site_server: StaticServer) -> None:
    """On every kind of page, whatever is folded away comes back by the page's own buttons."""
    choose(home, HERE)
    for address in ("index.html", SHARED, "tests/index.html", "components/index.html",
                    "components/crank-sensor-harness.html", "codes/p0335.html",
                    "tests/identify-sensor-type.html"):  # fmt: skip
        home.goto(site_server.url(address))
        folded = home.locator("[data-for][hidden]").count()
        buttons = home.locator(".others[aria-expanded=false]:visible")
        for button in buttons.all()[::-1]:
            button.tap()
        assert home.locator("[data-for][hidden]").count() == 0, address
        assert folded or address not in (SHARED, "components/index.html"), address


def test_a_page_for_others_says_so_and_shows_all(home: Page, site_server: StaticServer) -> None:
    """The winding of the 1.2 does not apply to the 1.6; its values stand all the same."""
    choose(home, HERE)
    home.goto(site_server.url(OTHERS))
    note = home.locator(".reader-only")
    expect(note).to_contain_text("does not apply to your vehicle, Corrie 1.6")
    expect(note).to_contain_text("It is for Corrie 1.2")
    expect(note).to_be_in_viewport()
    assert home.locator("[data-for][hidden]").count() == 0
    expect(home.locator("table.limits").first).to_be_visible()
    choose(home, THERE)
    expect(note).to_have_count(0)


def test_a_link_into_what_is_folded_opens_it(home: Page, site_server: StaticServer) -> None:
    """A deep link to the other vehicle's order shows it, from outside and on the page."""
    choose(home, HERE)
    home.goto(site_server.url(f"{SHARED}#on-{THERE}"))
    expect(home.locator(f"#on-{THERE}")).to_be_in_viewport()
    home.goto(site_server.url(SHARED))
    expect(home.locator(f"#on-{THERE}")).to_be_hidden()
    home.evaluate(f"location.hash = 'on-{THERE}'")
    expect(home.locator(f"#on-{THERE}")).to_be_visible()


def test_a_page_that_lay_behind_follows(home: Page, site_server: StaticServer) -> None:
    """Going back to a page from before the choice, and a page in another tab, both have it."""
    beside = home.context.new_page()
    beside.goto(site_server.url(SHARED))
    home.goto(site_server.url(SHARED))
    choose(home, HERE)
    expect(beside.locator(f"#on-{THERE}")).to_be_hidden()
    home.go_back()
    expect(home.locator(".reader-vehicle b")).to_have_text("Corrie 1.6")


def test_every_target_is_wide_enough_and_nothing_runs_over(
    phone_page: Watch, site_server: StaticServer
) -> None:
    """At 320 pixels every button of the bar, the panel and the folds is 48 high."""
    page = phone_page("dark", viewport={"width": 320, "height": 700})
    page.goto(site_server.url(SHARED))
    choose(page, HERE)
    page.locator(".reader-vehicle").tap()
    heights = page.locator(".reader button, .others").evaluate_all(
        "all => all.map((button) => button.getBoundingClientRect().height)"
    )
    assert len(heights) >= 7
    assert min(heights) >= 48
    assert page.evaluate("document.documentElement.scrollWidth") <= 320


@pytest.mark.parametrize("kept", ["", "no-such-vehicle", "{}"])
def test_what_is_not_known_counts_as_no_choice(
    kept: str, phone_page: Watch, site_server: StaticServer
) -> None:
    """A vehicle of an older edition, or anything else that was kept, shows all."""
    page = phone_page("light")
    page.goto(site_server.url(SHARED))
    page.evaluate("kept => localStorage.setItem('fettlebook:vehicle', kept)", kept)
    page.reload()
    expect(page.locator(".reader-vehicle b")).to_have_text("all")
    assert page.locator("[data-for][hidden]").count() == 0


def test_a_browser_that_keeps_nothing_still_chooses(
    phone_page: Watch, site_server: StaticServer
) -> None:
    """Where storage is refused the choice holds on this page, without a complaint."""
    page = phone_page("light")
    page.add_init_script(
        "Object.defineProperty(window, 'localStorage', { get() { throw new Error(); } })"
    )
    page.goto(site_server.url(SHARED))
    choose(page, HERE)
    expect(page.locator(".reader-vehicle b")).to_have_text("Corrie 1.6")
    expect(page.locator(f"#on-{THERE}")).to_be_hidden()


def test_without_a_script_all_vehicles_are_shown(
    phone_page: Watch, site_server: StaticServer
) -> None:
    """Both orders stand, and there is no bar that would do nothing."""
    page = phone_page("light", java_script_enabled=False)
    page.goto(site_server.url(SHARED))
    for id_ in (HERE, THERE):
        expect(page.locator(f"#on-{id_}")).to_be_visible()
    expect(page.locator(".reader")).to_be_hidden()
