"""A job goes from one phone to another by link, code or file, and is looked at on the way in."""

from __future__ import annotations

import base64
import io
import json
from pathlib import Path
from urllib.parse import urlsplit

import pytest
import zxingcpp
from matplotlib import image
from playwright.sync_api import Page, expect

from tests.browser.conftest import Watch
from tests.browser.static_server import StaticServer
from tests.browser.test_job import HERE, begin, kept_jobs
from tests.browser.test_policy import watched
from tests.browser.test_resume import JOB, tick, ticked

SAID = "Geht heiß aus, “immer” bei 90 °C"


def give(page: Page) -> None:
    """Open the part of the panel that hands the job over."""
    page.locator(".job-open").tap()
    page.locator(".job-give summary").tap()
    expect(page.locator(".job-file")).to_be_visible()


@pytest.fixture
def first(phone_page: Watch, site_server: StaticServer) -> Page:
    """Give a phone with a job in hand, two steps ticked, at the part that hands it over."""
    page = watched(phone_page)
    page.goto(site_server.url(JOB))
    begin(page, "KQ 12", mileage="84 200", said=SAID, vehicle=HERE)
    tick(page, "1", "2")
    give(page)
    return page


def taken_over(page: Page) -> None:
    """Say yes to the job that has arrived."""
    expect(page.locator(".job-head")).to_have_text("Take over this job?")
    for text in ("KQ 12", "84 200", SAID, "Corrie 1.2", "2 steps ticked"):
        expect(page.locator("#job-panel")).to_contain_text(text)
    assert kept_jobs(page) == []
    page.get_by_role("button", name="Take it over").tap()
    expect(page.locator(".job-head")).to_have_text("Job KQ 12")


def goes_on(page: Page) -> None:
    """Follow the job to its page: the ticks are there, and the state is asked for first."""
    page.locator(".job-pages a").tap()
    expect(page).to_have_title("Replace the inductive crank sensor - Kittiwake Quay Garage workshop"
                               " manual")  # fmt: skip
    expect(page.locator(".ask")).to_contain_text("step 3")
    assert ticked(page) == 2
    expect(page.locator(".reader-vehicle b")).to_have_text("Corrie 1.2")


def test_by_link(first: Page, phone_page: Watch) -> None:
    """What the link carries no server is sent, and it is gone from the address once it is read."""
    link = first.locator("#job-link").input_value()
    assert not urlsplit(link).query
    secret = urlsplit(link).fragment.removeprefix("job=")
    assert len(secret) > 100
    before = len(phone_page.requests)
    second = watched(phone_page)
    second.goto(link)
    taken_over(second)
    assert urlsplit(second.url).fragment == ""
    goes_on(second)
    asked = phone_page.requests[before:]
    assert asked and not [url for url in asked if secret[:40] in url.partition("#")[0]]


def test_nothing_changes_until_the_reader_says_so(first: Page, phone_page: Watch) -> None:
    """Left alone, or reloaded, no job is here; a link opened over a page of the manual asks too."""
    link = first.locator("#job-link").input_value()
    second = watched(phone_page)
    second.goto(link)
    second.get_by_role("button", name="Leave it").tap()
    assert kept_jobs(second) == []
    second.reload()
    expect(second.locator("#job-panel")).to_be_hidden()
    second.evaluate("hash => { location.hash = hash; }", urlsplit(link).fragment)
    taken_over(second)


def test_the_same_job_again_says_what_it_replaces(first: Page) -> None:
    """Back on the phone it came from, the newer ticks are not lost without a word."""
    link = first.locator("#job-link").input_value()
    first.keyboard.press("Escape")
    first.locator(".ask .confirm").or_(first.locator("#step-3 > .tick")).first.tap()
    first.goto(link)
    expect(first.locator("#job-panel")).to_contain_text("on this device already")
    first.get_by_role("button", name="Take it over").tap()
    assert kept_jobs(first) == ["KQ 12"]
    expect(first.locator(".job-pages")).to_contain_text("2 steps ticked")


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_a_camera_reads_the_code(
    scheme: str, first: Page, phone_page: Watch, site_server: StaticServer
) -> None:
    """An independent reader finds the link, whole, in the code as the screen shows it."""
    first.emulate_media(color_scheme="dark" if scheme == "dark" else "light")
    picture = first.locator(".job-code svg").screenshot()
    pixels = (image.imread(io.BytesIO(picture), format="png")[:, :, 0] * 255).astype("uint8")
    found = zxingcpp.read_barcodes(pixels)
    assert [code.text for code in found] == [first.locator("#job-link").input_value()]


def test_by_file_from_a_folder(first: Page, phone_page: Watch, site_dir: Path) -> None:
    """A manual on a stick, which no link leads to, takes the file, and says why it has no link."""
    with first.expect_download() as download:
        first.locator(".job-file").tap()
    assert download.value.suggested_filename == "job-kq-12.json"
    second = watched(phone_page)
    second.goto((site_dir / "index.html").as_uri())
    second.locator(".job-open").tap()
    second.locator(".job-taking summary").tap()
    second.get_by_label("File of the job").set_input_files(download.value.path())
    taken_over(second)
    second.locator(".job-give summary").tap()
    expect(second.locator(".job-give")).to_contain_text("no link leads to")
    expect(second.locator("#job-link")).to_have_count(0)
    goes_on(second)


def test_a_job_too_long_for_a_code_says_so(phone_page: Watch, site_server: StaticServer) -> None:
    """Where no camera could read it, link and file are still there."""
    page = watched(phone_page)
    page.goto(site_server.url(JOB))
    # Letters in no order, which nothing makes shorter.
    letters = [chr(0x4E00 + (7919 * n * n + 104729 * n) % 20000) for n in range(400)]
    begin(page, "KQ 12", said="".join(letters))
    give(page)
    expect(page.locator(".job-give")).to_contain_text("too much for a code")
    expect(page.locator("#job-link")).to_be_visible()


def letters(*told: object) -> str:
    """Give a job as a link carries it where a browser cannot deflate."""
    text = json.dumps(told).encode()
    return "t" + base64.urlsafe_b64encode(text).decode().rstrip("=")


OWN = "0123456789abcdef"
STEPS = [JOB, "0123abcd", "A page", "1 2"]


def test_a_plain_job_is_understood(phone_page: Watch, site_server: StaticServer) -> None:
    """The form that the refused ones below differ from in one place each."""
    page = watched(phone_page)
    whole = letters(1, OWN, "KQ 12", "84", "said", "no-such-vehicle", [STEPS])
    page.goto(site_server.url(f"index.html#job={whole}"))
    expect(page.locator("#job-panel")).to_contain_text("2 steps ticked")
    page.get_by_role("button", name="Take it over").tap()
    assert kept_jobs(page) == ["KQ 12"]


@pytest.mark.parametrize(
    "told",
    [
        "",
        "zAAAA",
        "t!!!",
        letters(2, OWN, "KQ 12", "84", "said", "", [STEPS]),
        letters(1, "x", "KQ 12", "84", "said", "", [STEPS]),
        letters(1, OWN, "", "84", "said", "", [STEPS]),
        letters(1, OWN, "KQ 12", "84", "s" * 401, "", [STEPS]),
        letters(1, OWN, "KQ 12", "84", {"said": 1}, "", [STEPS]),
        letters(1, OWN, "KQ 12", "84", "said", "", [["../../x.html", *STEPS[1:]]]),
        letters(1, OWN, "KQ 12", "84", "said", "", [["https://x.test/a.html", *STEPS[1:]]]),
        letters(1, OWN, "KQ 12", "84", "said", "", [[*STEPS[:3], "1 <b>"]]),
        letters(1, OWN, "KQ 12", "84", "said", "", "no rows"),
    ],
)
def test_what_is_no_job_is_refused(told: str, phone_page: Watch, site_server: StaticServer) -> None:
    """Cut off, of another kind, too long, or leading off the manual: a word, and nothing kept."""
    page = watched(phone_page)
    page.goto(site_server.url(f"index.html#job={told}"))
    expect(page.get_by_role("alert")).to_contain_text("no job of this manual")
    assert kept_jobs(page) == []
