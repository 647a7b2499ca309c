"""A reading typed with a job in hand goes with the job: its panel, its sheet, the other phone."""

from __future__ import annotations

from typing import Any

import pytest
from playwright.sync_api import Page, expect

from tests.browser.conftest import Watch
from tests.browser.static_server import StaticServer
from tests.browser.test_hand_over import OWN, STEPS, letters
from tests.browser.test_job import HERE, begin, kept_jobs
from tests.browser.test_policy import watched
from tests.browser.test_reading_check import box_of, typed
from tests.browser.test_vehicle import choose

TEST = "tests/winding-resistance.html"
NAMES = ("page", "revision", "key", "title", "when", "value", "word", "conditions", "at")
AT = "temperature of the part itself"
# What a driven browser is told the time is: the reader's own clock, in the reader's own zone.
CLOCK: dict[str, Any] = {"timezone_id": "Pacific/Auckland"}


@pytest.fixture
def page(phone_page: Watch, site_server: StaticServer) -> Page:
    """Give the test of the winding on a phone whose clock stands, with a job begun."""
    page = watched(phone_page, "light", **CLOCK)
    page.clock.install(time="2026-03-01T21:05:00Z")
    page.goto(site_server.url(TEST))
    begin(page, "KQ 12", vehicle=HERE)
    return page


def readings(page: Page) -> list[dict[str, str]]:
    """Give the readings of the job in hand, as the device keeps them."""
    found: list[dict[str, str]] = page.evaluate("window.fettleJob.running().readings")
    return found


def read(page: Page, reading: str, word: str) -> None:
    """Type a reading at twenty degrees, and see its verdict."""
    result = typed(page, reading, "20", "3")
    page.clock.run_for(1000)
    expect(result.locator(".check-word")).to_have_text(word)


def test_what_was_read_is_kept_whole(page: Page) -> None:
    """Value, verdict, conditions, page and its revision, and the time of the reader's own day."""
    read(page, "1.3k", "High")
    expect(box_of(page).locator(".check-kept")).to_contain_text(
        "Kept with job KQ 12 as the reading before the work."
    )
    revision = page.locator("[data-revision]").get_attribute("data-revision")
    (kept,) = readings(page)
    assert kept.pop("at").startswith("2026-03-02 10:0")
    assert kept.pop("key") and kept.pop("title")
    assert kept == {
        "page": f"{TEST} {HERE}", "when": "before", "revision": revision, "value": "1300 ohm",
        "word": "high", "conditions": f"{AT} 20 °C ± 3",
    }  # fmt: skip


def test_a_correction_takes_its_place_and_a_later_visit_is_after_the_work(page: Page) -> None:
    """What is typed anew on one visit is the same reading; after a reload it is the second one."""
    read(page, "1.2k", "High")
    read(page, "1.3k", "High")
    assert [(each["when"], each["value"]) for each in readings(page)] == [("before", "1300 ohm")]
    page.reload()
    read(page, "860", "In limits")
    said = [(each["when"], each["value"], each["word"]) for each in readings(page)]
    assert said == [("before", "1300 ohm", "high"), ("after", "860 ohm", "in_limits")]
    keys = box_of(page).locator(".check-keys button")
    keys.filter(has_text="from before the work").tap()
    assert [(each["when"], each["value"]) for each in readings(page)] == [("before", "860 ohm")]
    keys.filter(has_text="from after the work").tap()
    assert [each["value"] for each in readings(page)] == ["1300 ohm", "860 ohm"]
    keys.filter(has_text="Do not keep it").tap()
    assert [each["value"] for each in readings(page)] == ["1300 ohm"]
    expect(box_of(page).locator(".check-kept")).to_contain_text("Not kept with job KQ 12.")
    read(page, "870", "In limits")
    assert len(readings(page)) == 1
    expect(keys).to_have_text(["Keep it"])
    keys.tap()
    assert [each["value"] for each in readings(page)] == ["1300 ohm", "870 ohm"]


def test_what_is_no_reading_is_not_kept(page: Page) -> None:
    """Unreadable, or with no job in hand, nothing is kept and no word is said of it."""
    typed(page, "about 850", "20")
    page.clock.run_for(1000)
    assert readings(page) == []
    expect(box_of(page).locator(".check-kept")).to_be_hidden()
    page.locator(".job-open").tap()
    page.get_by_role("button", name="Put it aside").tap()
    page.keyboard.press("Escape")
    read(page, "OL", "Open circuit")
    expect(box_of(page).locator(".check-kept")).to_be_hidden()
    assert "1300" not in page.evaluate("JSON.stringify({...localStorage})")
    page.locator(".job-open").tap()
    page.locator(".job-others button").tap()
    expect(box_of(page).locator(".check-kept")).to_contain_text("Not kept with job KQ 12.")
    assert readings(page) == []
    box_of(page).get_by_role("button", name="Keep it").tap()
    assert [(each["value"], each["word"]) for each in readings(page)] == [("OL", "open")]


def test_panel_and_sheet_show_it(page: Page, site_server: StaticServer) -> None:
    """The panel leads back to the value; on paper it stands in its box, an old revision said."""
    read(page, "1.3k", "High")
    page.reload()
    read(page, "860", "In limits")
    page.locator(".job-open").tap()
    lines = page.locator(".job-readings li")
    expect(lines).to_have_count(2)
    expect(lines.first).to_contain_text("1300 ohm: High")
    expect(lines.first).to_contain_text(f"{AT} 20 °C ± 3. Before the work, 2026-03-02 10:0")
    expect(lines.last).to_contain_text("860 ohm: In limits")
    lines.last.locator("a").tap()
    expect(page.locator(f"#{readings(page)[0]['key']}")).to_be_in_viewport()
    page.emulate_media(media="print")
    page.evaluate("document.documentElement.classList.add('job-sheet')")
    before, after = page.locator("#values [data-of-reading]").all()[:2]
    expect(before).to_be_visible()
    expect(before).to_contain_text(f"1300 ohm · High · {AT} 20 °C ± 3 · 2026-03-02 10:0")
    expect(after).to_contain_text("860 ohm · In limits")
    page.evaluate(
        "() => { const { running, save } = window.fettleJob; const job = running();"
        " job.readings[0].revision = '0123abcd'; save(job); }"
    )
    expect(before).to_contain_text("revision 0123abcd")
    expect(after).not_to_contain_text("revision")
    page.emulate_media(media="screen")
    choose(page, "corrie-1-6")
    assert page.locator("#values [data-of-reading]").first.text_content() == ""


def test_it_goes_to_another_phone(page: Page, phone_page: Watch, site_server: StaticServer) -> None:
    """Shown before the job is taken over, and there afterwards, as it was read."""
    read(page, "1.3k", "High")
    sent = readings(page)
    page.locator(".job-open").tap()
    page.locator(".job-give summary").tap()
    link = page.locator("#job-link").input_value()
    second = watched(phone_page)
    second.goto(link)
    expect(second.locator(".job-readings")).to_contain_text("1300 ohm: High")
    second.get_by_role("button", name="Take it over").tap()
    expect(second.locator(".job-readings")).to_contain_text("1300 ohm: High")
    assert readings(second) == sent


ROW = [
    TEST, "0123abcd", "value-a", "A value", "before", "860 ohm", "in_limits", "",
    "2026-03-02 10:05",
]  # fmt: skip


def test_a_job_without_readings_is_understood_still(
    phone_page: Watch, site_server: StaticServer
) -> None:
    """A link, and a job on the device, of before readings went with a job."""
    page = watched(phone_page)
    told = letters(1, OWN, "KQ 12", "84", "said", "", [STEPS])
    page.goto(site_server.url(f"index.html#job={told}"))
    page.get_by_role("button", name="Take it over").tap()
    page.evaluate(
        "(key) => { const job = JSON.parse(localStorage.getItem(key)); delete job.readings;"
        " localStorage.setItem(key, JSON.stringify(job)); }",
        f"fettlebook:job:{OWN}",
    )
    page.reload()
    expect(page.locator(".job-open")).to_contain_text("KQ 12")
    assert readings(page) == []


WRONG: list[tuple[str, object]] = [
    ("page", "https://x.test/a.html"), ("key", "a b"), ("when", "later"), ("word", "sound"),
    ("value", "x" * 61), ("at", "yesterday"), ("title", 7), ("revision", "new"),
]  # fmt: skip


def test_a_reading_that_is_none_is_refused(phone_page: Watch, site_server: StaticServer) -> None:
    """In a job from elsewhere, one field of a reading that is not ours refuses the whole job."""
    page = watched(phone_page)
    page.goto(site_server.url(f"index.html#job={told_with(ROW)}"))
    expect(page.locator(".job-readings")).to_contain_text("860 ohm: In limits")
    unpacked = "(told) => window.fettleJobHand.unpacked(told)"
    assert page.evaluate(unpacked, told_with(ROW))["readings"]
    for name, value in WRONG:
        row = [value if each == name else own for each, own in zip(NAMES, ROW, strict=True)]
        assert page.evaluate(unpacked, told_with(row)) is None, name
    assert kept_jobs(page) == []


def told_with(row: list[Any]) -> str:
    """Give a job with one reading, as a link carries it."""
    return letters(1, OWN, "KQ 12", "84", "said", "", [STEPS], [row])
