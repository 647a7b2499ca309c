"""The job in hand: begun, kept, put aside, cleared; its ticks belong to it and to its vehicle."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.browser.conftest import Scheme, Watch
from tests.browser.static_server import StaticServer
from tests.browser.taken_along import take
from tests.browser.test_policy import watched
from tests.browser.test_resume import JOB, tick, ticked
from tests.browser.test_vehicle import choose

ELSEWHERE = "terms.html"
HERE, THERE = "corrie-1-2", "corrie-1-6"


def begin(page: Page, plate: str, **said: str) -> None:
    """Start a job from the page that is open: by touch, with these fields filled."""
    page.locator(".job-open").click()
    expect(page.locator("#job-panel")).to_be_visible()
    if page.locator("#job-panel").get_by_role("button", name="Start another job").count():
        page.get_by_role("button", name="Start another job").click()
    page.locator("#job-plate").fill(plate)
    for name, text in said.items():
        field = page.locator(f"#job-{name}")
        if name == "vehicle":
            field.select_option(text)
        else:
            field.fill(text)
    page.get_by_role("button", name="Start this job").click()
    expect(page.locator(".job-head")).to_have_text(f"Job {plate}")
    shut(page)


def shut(page: Page) -> None:
    """Close the panel."""
    page.keyboard.press("Escape")
    expect(page.locator("#job-panel")).to_be_hidden()


def kept_jobs(page: Page) -> list[str]:
    """Give the plates of the jobs that the device keeps."""
    found: list[str] = page.evaluate(
        "Object.keys(localStorage).filter((key) => key.startsWith('fettlebook:job:'))"
        ".map((key) => JSON.parse(localStorage.getItem(key)).plate).sort()"
    )
    return found


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_a_job_is_begun_and_shown_on_every_page(
    scheme: Scheme, phone_page: Watch, site_server: StaticServer
) -> None:
    """Begun from the home page it stands in one line everywhere, and its vehicle is the page's."""
    page = watched(phone_page, scheme)
    page.goto(site_server.url("index.html"))
    expect(page.locator(".job-open")).to_have_text("Start a job", use_inner_text=True)
    begin(page, "KQ 12", mileage="84 200", said="Cuts out when hot", vehicle=HERE)
    for address in (ELSEWHERE, JOB, "tests/index.html"):
        page.goto(site_server.url(address))
        line = page.locator(".job-open")
        expect(line).to_contain_text("KQ 12")
        expect(line).to_contain_text("“Cuts out when hot”")
        expect(page.locator(".reader-vehicle b")).to_have_text("Corrie 1.2")
        box = line.bounding_box()
        assert box and 48 <= box["height"] <= 60  # one line
    assert page.evaluate("document.documentElement.scrollWidth") <= 390


def test_ticks_belong_to_the_job(phone_page: Watch, site_server: StaticServer) -> None:
    """Another job, and none, has ticks of its own; back in the first, the state is asked for."""
    page = phone_page()
    page.goto(site_server.url(JOB))
    begin(page, "ONE")
    tick(page, "1", "2")
    begin(page, "TWO")
    assert ticked(page) == 0
    expect(page.locator(".ask")).to_have_count(0)
    tick(page, "1")
    page.reload()
    assert ticked(page) == 1
    page.locator(".job-open").tap()
    page.locator(".job-others button", has_text="ONE").tap()
    expect(page.locator(".job-head")).to_have_text("Job ONE")
    assert ticked(page) == 2
    expect(page.locator(".ask")).to_contain_text("step 3")
    expect(page.locator("[aria-current='step']")).to_have_count(0)
    page.get_by_role("button", name="Put it aside").tap()
    assert ticked(page) == 0
    expect(page.locator(".ask")).to_have_count(0)
    assert kept_jobs(page) == ["ONE", "TWO"]


def test_ticks_belong_to_the_vehicle(phone_page: Watch, site_server: StaticServer) -> None:
    """With another vehicle chosen the page starts empty and says whose job it is."""
    page = phone_page()
    page.goto(site_server.url(JOB))
    begin(page, "ONE", vehicle=HERE)
    tick(page, "1", "2")
    expect(page.locator(".job-other")).to_be_hidden()
    choose(page, THERE)
    assert ticked(page) == 0
    expect(page.locator(".job-other")).to_be_visible()
    choose(page, HERE)
    assert ticked(page) == 2
    expect(page.locator(".ask")).to_be_visible()
    expect(page.locator(".job-other")).to_be_hidden()


def test_ticks_of_a_job_fall_away_with_a_word_on_a_new_revision(
    phone_page: Watch, site_server: StaticServer
) -> None:
    """The job stays, the ticks of the page that changed do not, and those of others do."""
    page = phone_page()
    page.goto(site_server.url("tests/winding-resistance.html"))
    begin(page, "ONE")
    tick(page, "1")
    page.goto(site_server.url(JOB))
    tick(page, "1", "2")
    page.evaluate(
        """(address) => {
          const key = Object.keys(localStorage).find((one) => one.startsWith("fettlebook:job:"));
          const job = JSON.parse(localStorage.getItem(key));
          job.pages[address].revision = "0123abcd";
          localStorage.setItem(key, JSON.stringify(job));
        }""",
        JOB,
    )
    page.reload()
    assert ticked(page) == 0
    expect(page.locator(".changed")).to_be_in_viewport()
    expect(page.locator(".ask")).to_have_count(0)
    page.locator(".job-open").tap()
    expect(page.locator(".job-pages li")).to_have_count(1)
    expect(page.locator(".job-pages")).to_contain_text("1 step ticked")
    page.locator(".job-pages a").tap()
    expect(page.locator(".ask")).to_be_visible()
    assert ticked(page) == 1


def test_a_job_outlives_the_network(
    phone_page: Watch, serve: Callable[..., StaticServer], site_dir: Path
) -> None:
    """From a copy, with the server off, a job is begun, ticked and there again after a reload."""
    server = serve(site_dir)
    page = watched(phone_page)
    page.goto(server.url("offline/index.html"))
    take(page)
    server.stop()
    page.goto(server.url(JOB))
    begin(page, "ONE")
    tick(page, "1", "2")
    page.reload()
    expect(page.locator(".job-open")).to_contain_text("ONE")
    assert ticked(page) == 2
    expect(page.locator(".ask")).to_be_visible()


def test_clearing_asks_first(phone_page: Watch, site_server: StaticServer) -> None:
    """One tap too many clears nothing; the second one leaves no trace of the job."""
    page = phone_page()
    page.goto(site_server.url(JOB))
    begin(page, "ONE")
    tick(page, "1")
    page.locator(".job-open").tap()
    page.get_by_role("button", name="Clear this job").tap()
    expect(page.locator(".job-head")).to_have_text("Clear ONE from this device?")
    page.get_by_role("button", name="Keep it").tap()
    assert kept_jobs(page) == ["ONE"]
    page.get_by_role("button", name="Clear this job").tap()
    page.get_by_role("button", name="Clear it").tap()
    expect(page.locator("#job-panel")).to_be_hidden()
    expect(page.locator(".job-open")).to_be_focused()
    assert kept_jobs(page) == []
    assert ticked(page) == 0
    left = page.evaluate("Object.keys(localStorage).filter((key) => /job|steps/.test(key))")
    assert left == []


def test_by_keyboard_alone(desk_page: Watch, site_server: StaticServer) -> None:
    """Begun, changed and closed without a pointer; every field has a name, a fault is announced."""
    page = watched(desk_page)
    page.goto(site_server.url(JOB))
    page.locator(".job-open").focus()
    page.keyboard.press("Enter")
    plate = page.get_by_label("Plate or job number")
    expect(plate).to_be_focused()
    page.keyboard.press("Enter")
    expect(page.get_by_role("alert")).to_have_text("Type the plate or the job number.")
    expect(plate).to_be_focused()
    for text in ("KQ 12", "84 200", "Cuts out"):
        page.keyboard.type(text)
        page.keyboard.press("Tab")
    expect(page.get_by_label("Vehicle", exact=True)).to_be_focused()
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    expect(page.locator(".job-head")).to_be_focused()
    page.get_by_role("button", name="Change", exact=True).press("Enter")
    page.get_by_label("Mileage").fill("84 300")
    page.get_by_label("Mileage").press("Enter")
    expect(page.locator("#job-panel .facts")).to_contain_text("84 300")
    page.keyboard.press("Escape")
    expect(page.locator(".job-open")).to_be_focused()
    expect(page.locator(".job-open")).to_have_attribute("aria-expanded", "false")


def test_every_target_is_wide_enough_and_nothing_runs_over(
    phone_page: Watch, site_server: StaticServer
) -> None:
    """At 320 pixels, with long words in it, each control of the panel is 48 high."""
    page = phone_page("dark", viewport={"width": 320, "height": 700})
    page.goto(site_server.url(JOB))
    begin(page, "KQ12-LONG-NUMBER-2026-11-000123", said="x" * 200)
    tick(page, "1")
    page.locator(".job-open").tap()
    page.locator(".job-give summary").tap()
    expect(page.locator(".job-code svg")).to_be_visible()
    page.locator(".job-taking summary").tap()
    sizes = page.locator(".job :is(button, summary, input, a)").evaluate_all(
        "all => all.map((one) => one.getBoundingClientRect()).map(({width, height}) =>"
        " Math.min(width, height))"
    )
    assert len(sizes) > 9
    assert min(sizes) >= 48
    assert page.evaluate("document.documentElement.scrollWidth") <= 320


@pytest.mark.parametrize("broken", ["", "null", "{}", '{"id": "x", "pages": []}', "["])
def test_what_is_broken_in_storage_counts_as_no_job(
    broken: str, phone_page: Watch, site_server: StaticServer
) -> None:
    """Whatever lies under a job's key, pages open and a job can be begun."""
    page = phone_page()
    page.goto(site_server.url(JOB))
    page.evaluate(
        "(broken) => { localStorage.setItem('fettlebook:job:x', broken);"
        " localStorage.setItem('fettlebook:job', 'x'); }",
        broken,
    )
    page.reload()
    expect(page.locator(".job-open")).to_contain_text("Start a job")
    begin(page, "ONE")
    tick(page, "1")
    assert ticked(page) == 1


def test_the_screen_is_kept_awake_or_it_is_said_that_not(
    phone_page: Watch, site_server: StaticServer
) -> None:
    """Asked for once it holds on the next page too; a refusal and a want of it are said."""
    given = """Object.defineProperty(navigator, "wakeLock", { configurable: true, value: {
      request: async (kind) => {
        if (window.refuses) throw new DOMException("no", "NotAllowedError");
        window.asked = (window.asked || 0) + 1;
        const lock = new EventTarget();
        lock.release = async () => lock.dispatchEvent(new Event("release"));
        return lock;
      } } });"""
    page = phone_page()
    page.add_init_script(given)
    page.goto(site_server.url(JOB))
    begin(page, "ONE")
    page.locator(".job-open").tap()
    key, word = page.locator(".job-awake"), page.locator(".job-screen [role=status]")
    expect(word).to_have_text("The screen goes dark as the device is set.")
    key.tap()
    expect(key).to_have_attribute("aria-pressed", "true")
    expect(word).to_have_text("The screen stays awake while this page is in sight.")
    page.goto(site_server.url(ELSEWHERE))
    page.locator(".job-open").tap()
    expect(word).to_have_text("The screen stays awake while this page is in sight.")
    assert page.evaluate("window.asked") == 1
    page.evaluate("() => { window.refuses = true; }")
    key.tap()
    expect(word).to_have_text("The screen goes dark as the device is set.")
    key.tap()
    expect(word).to_contain_text("refuses")
    bare = phone_page()
    bare.add_init_script("delete Navigator.prototype.wakeLock;")
    bare.goto(site_server.url(JOB))
    begin(bare, "ONE")
    bare.locator(".job-open").tap()
    expect(bare.locator(".job-screen [role=status]")).to_contain_text(
        "cannot keep the screen awake"
    )
    expect(bare.locator(".job-awake")).to_be_hidden()


def test_without_scripts_nothing_of_it_shows(phone_page: Watch, site_server: StaticServer) -> None:
    """No line, no gap for one, on a page where its place is held otherwise."""
    page = phone_page(java_script_enabled=False)
    page.goto(site_server.url(JOB))
    expect(page.locator(".job")).to_be_hidden()
    assert page.locator(".job").bounding_box() is None


def test_nothing_is_fetched_before_it_is_opened(
    phone_page: Watch, site_server: StaticServer
) -> None:
    """The panel's scripts and words cost a reader without a job nothing."""
    page = phone_page()
    page.goto(site_server.url(JOB))
    late = ("job-words.js", "job-panel.js", "job-hand.js", "lean-qr.js", "job-awake.js")
    assert not [url for url in phone_page.requests if url.endswith(late)]
    begin(page, "ONE")
    assert [url for url in phone_page.requests if url.endswith("job-panel.js")]
    kept = page.evaluate("JSON.stringify({...localStorage})")
    assert json.loads(kept).keys() >= {"fettlebook:job"}
