"""A job taken up again: ticks stay, the state is confirmed first, and nothing is ever hidden."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.browser.conftest import Scheme, Watch
from tests.browser.static_server import StaticServer
from tests.browser.test_cautions import LOOK

JOB = "replacements/replace-crank-sensor-inductive.html"
HALF_AN_HOUR_MS = 30 * 60 * 1000


def tick(page: Page, *steps: str) -> None:
    """Tick steps by touch."""
    for step in steps:
        page.locator(f"#step-{step} > .tick").tap()


def ticked(page: Page) -> int:
    """Give the number of ticked steps."""
    return page.locator(".tick[aria-pressed='true']").count()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_who_comes_back_confirms_the_state_first(
    scheme: Scheme, phone_page: Watch, site_server: StaticServer
) -> None:
    """Ticks are there again; no step is current until the state before the next is confirmed."""
    page = phone_page(scheme)
    page.goto(site_server.url(JOB))
    expect(page.locator(".ask")).to_have_count(0)
    tick(page, "1", "2")
    expect(page.locator("#step-3")).to_have_attribute("aria-current", "step")
    page.reload()
    assert ticked(page) == 2
    ask = page.locator(".ask")
    expect(ask).to_be_in_viewport()
    expect(ask).to_contain_text("step 3")
    assert ask.locator("button").count() == 1
    for word in ("engine stopped", "key off", "battery connected", "on its wheels"):
        expect(ask.locator("li", has_text=word)).to_be_visible()
    expect(page.locator("[aria-current='step']")).to_have_count(0)
    tick(page, "3")  # leads to the question, and ticks nothing
    assert ticked(page) == 2
    expect(ask.locator(".confirm")).to_be_focused()
    ask.locator(".confirm").tap()
    expect(ask).to_have_count(0)
    expect(page.locator("#step-3")).to_have_attribute("aria-current", "step")
    expect(page.locator("#step-3 > .command")).to_be_in_viewport()


def test_the_question_names_what_is_undone_by_then(
    phone_page: Watch, site_server: StaticServer, site_dir: Path
) -> None:
    """Where earlier steps left something apart, the next step counts on that too, part by part."""
    jobs = json.loads((site_dir / "audit.json").read_text("utf-8"))["jobs"]
    steps = next(job for job in jobs if job["page"] == JOB)["steps"]
    apart = [step["state"]["undone"].get("unplugged", []) for step in steps]
    after = next(n for n, parts in enumerate(apart) if parts)
    page = phone_page()
    page.goto(site_server.url(JOB))
    tick(page, *(step["anchor"].removeprefix("step-") for step in steps[: after + 1]))
    page.reload()
    expect(page.locator(".ask li", has_text="unplugged: ")).to_have_count(len(apart[after]))


def test_no_panel_is_hidden_by_ticks(
    phone_page: Watch, site_server: StaticServer, site_dir: Path
) -> None:
    """With every step ticked, and while the question is open, each box is where it was."""
    jobs = json.loads((site_dir / "audit.json").read_text("utf-8"))["jobs"]
    steps = [
        {"anchor": step["anchor"], "word": box["word"], "hazards": len(box["hazards"])}
        for job in jobs
        if job["page"] == JOB
        for step in job["steps"]
        for box in step["boxes"]
    ]
    assert len(steps) > 10
    page = phone_page()
    page.goto(site_server.url(JOB))
    for last in (".tick", ".tick:not(#step-28-11 > .tick)"):
        page.evaluate("() => document.querySelector('.clear').click()")
        page.evaluate("s => document.querySelectorAll(s).forEach(tick => tick.click())", last)
        assert page.evaluate(LOOK, steps) == []
        page.reload()
        assert page.evaluate(LOOK, steps) == []


def test_ticks_fall_away_with_a_word_when_the_page_has_changed(
    phone_page: Watch, site_server: StaticServer
) -> None:
    """Ticks of another revision are dropped, and the reader is told."""
    page = phone_page()
    page.goto(site_server.url(JOB))
    tick(page, "1", "2")
    key = page.evaluate("Object.keys(localStorage).find(k => k.startsWith('fettlebook:steps'))")
    page.evaluate(
        "key => localStorage.setItem(key, JSON.stringify("
        "{...JSON.parse(localStorage.getItem(key)), revision: 'older'}))",
        key,
    )
    page.reload()
    assert ticked(page) == 0
    expect(page.locator(".changed")).to_be_in_viewport()
    expect(page.locator(".ask")).to_have_count(0)
    page.reload()
    expect(page.locator(".changed")).to_have_count(0)
    tick(page, "1")
    assert ticked(page) == 1


def test_the_ticks_can_be_cleared(phone_page: Watch, site_server: StaticServer) -> None:
    """One control takes all ticks away for good; it shows only where there are any."""
    page = phone_page()
    page.goto(site_server.url(JOB))
    expect(page.locator(".clear")).to_be_hidden()
    tick(page, "1", "2")
    page.reload()
    page.locator(".clear").tap()
    assert ticked(page) == 0
    expect(page.locator(".ask, [aria-current='step']")).to_have_count(0)
    page.reload()
    assert ticked(page) == 0
    assert page.evaluate("Object.keys(localStorage).filter(k => k.includes('steps')).length") == 0


def test_another_page_keeps_its_own_ticks(phone_page: Watch, site_server: StaticServer) -> None:
    """Ticks belong to one page."""
    page = phone_page()
    page.goto(site_server.url(JOB))
    tick(page, "1")
    page.goto(site_server.url("tests/winding-resistance.html"))
    assert ticked(page) == 0


def test_controls_are_large_enough_for_gloves(phone_page: Watch, site_server: StaticServer) -> None:
    """Every control is at least 48 px each way and has a name with its step's number."""
    page = phone_page()
    page.goto(site_server.url(JOB))
    tick(page, "1")
    page.reload()
    for control in page.locator(".tick, .confirm, .clear").all():
        box = control.bounding_box()
        assert box and box["width"] >= 48 and box["height"] >= 48
    expect(page.get_by_role("button", name="Step 3 done", exact=True)).to_have_count(1)
    assert page.evaluate("document.documentElement.scrollWidth") <= 390


def test_a_page_left_open_asks_after_half_an_hour(
    phone_page: Watch, site_server: StaticServer
) -> None:
    """A phone woken next morning shows the page as it was, so the question comes then too."""
    page = phone_page()
    page.clock.install()
    page.goto(site_server.url(JOB))
    tick(page, "1")

    def see(state: str) -> None:
        page.evaluate(
            "state => { Object.defineProperty(document, 'visibilityState',"
            "{ value: state, configurable: true });"
            "document.dispatchEvent(new Event('visibilitychange')); }",
            state,
        )

    for away, asked in ((HALF_AN_HOUR_MS - 1000, 0), (HALF_AN_HOUR_MS + 1000, 1)):
        see("hidden")
        page.clock.fast_forward(away)
        see("visible")
        expect(page.locator(".ask")).to_have_count(asked)


def test_a_deep_link_still_lands_on_its_step(phone_page: Watch, site_server: StaticServer) -> None:
    """Opened by a link to a step the page shows that step; a tick there leads to the question."""
    page = phone_page()
    page.goto(site_server.url(JOB))
    tick(page, "1")
    page.goto(site_server.url("index.html"))
    page.goto(site_server.url(JOB) + "#step-9")
    expect(page.locator("#step-9")).to_be_in_viewport()
    expect(page.locator(".ask")).not_to_be_in_viewport()
    tick(page, "9")
    expect(page.locator(".ask")).to_be_in_viewport()
    page.reload()
    expect(page.locator(".ask")).to_be_in_viewport()


def test_it_works_from_a_folder(phone_page: Watch, site_dir: Path) -> None:
    """From a stick, with no server, ticks stay and the question comes."""
    page = phone_page()
    page.goto((site_dir / JOB).as_uri())
    tick(page, "1")
    page.reload()
    assert ticked(page) == 1
    expect(page.locator(".ask")).to_be_visible()


@pytest.mark.parametrize("kept", ["", "null", "[]", '{"done": 3}', '{"done": ["step-1"', '"x"'])
def test_what_is_broken_in_storage_counts_as_nothing(
    kept: str, phone_page: Watch, site_server: StaticServer
) -> None:
    """Whatever lies under the page's key, the page opens without a fault and without ticks."""
    page = phone_page()
    page.goto(site_server.url(JOB))
    page.evaluate(
        "kept => localStorage.setItem('fettlebook:steps:' + location.pathname, kept)", kept
    )
    page.reload()
    assert ticked(page) == 0
    tick(page, "1")
    assert ticked(page) == 1


def test_without_storage_nothing_changes(phone_page: Watch, site_server: StaticServer) -> None:
    """Where the browser refuses to keep anything, no control promises it."""
    page = phone_page()
    page.add_init_script(
        "Storage.prototype.setItem = () => { throw new DOMException('no', 'QuotaExceededError'); }"
    )
    page.goto(site_server.url(JOB))
    expect(page.locator(".tick, .kept")).to_have_count(0)
    expect(page.locator("li.step").first).to_be_visible()
