"""A reader says what was wrong: from a step or a page, without a network, in their own words."""

from __future__ import annotations

import re
from pathlib import Path
from urllib.parse import parse_qs, urlsplit

import pytest
from playwright.sync_api import Page, expect

from tests.browser.conftest import Watch
from tests.browser.static_server import StaticServer
from tests.browser.test_job import begin
from tests.browser.test_resume import JOB
from tests.browser.test_vehicle import choose

LIST = "add/index.html"
HOSTILE = (
    'Läuft? <img src=x onerror="window.ran = 1"> & 5 % #7\nRevision: 00000000 \U0001f527 \ud800'
)
WRITTEN = HOSTILE.replace("\ud800", "\ufffd")


def write(page: Page, text: str, step: str = "#step-2") -> None:
    """Open the note of a step and write into it."""
    page.locator(f"{step} > .note-open").click()
    page.locator(f"{step} > .note textarea").fill(text)


def letter(page: Page) -> tuple[str, str, str]:
    """Give receiver, subject and text of the e-mail that the open note leads to."""
    send = page.get_by_role("link", name="Send as e-mail")
    send.evaluate("one => one.addEventListener('click', (event) => event.preventDefault())")
    send.click()
    expect(page.locator(".note-word")).to_have_text("Delete the note when it has gone out.")
    found = urlsplit(send.get_attribute("href") or "")
    asked = parse_qs(found.query, strict_parsing=True)
    assert found.scheme == "mailto"
    assert sorted(asked) == ["body", "subject"]
    return found.path, asked["subject"][0], asked["body"][0]


def saved(page: Page, folder: Path) -> Path:
    """Save the open note as a file."""
    with page.expect_download() as download:
        page.get_by_role("button", name="Save as a file").click()
    path = folder / download.value.suggested_filename
    download.value.save_as(path)
    return path


def test_a_note_carries_where_it_was_and_any_text_stays_text(
    phone_page: Watch, site_server: StaticServer, tmp_path: Path
) -> None:
    """E-mail and file name page, step, revision, vehicle and job; the reader's words come last."""
    page = phone_page()
    page.goto(site_server.url(JOB))
    choose(page, "corrie-1-2")
    begin(page, "KQ 12")
    write(page, HOSTILE)
    page.reload()
    page.locator("#step-2 > .note-open").tap()
    expect(page.locator("#step-2 textarea")).to_have_value(WRITTEN)
    revision = page.locator("[data-revision]").get_attribute("data-revision")
    command = page.locator("#step-2 > .command > span").last.inner_text().split()
    to, subject, body = letter(page)
    title = page.locator("h1").inner_text()
    assert to == "workshop@kittiwake-quay.example"
    assert subject.startswith(f"Wrong: {title}, 2: {command[0]}")
    facts, words = body.split("\r\nWhat was wrong:\r\n\r\n")
    assert words == WRITTEN.replace("\n", "\r\n") + "\r\n"
    given = dict(line.split(": ", 1) for line in facts.split("\r\n"))
    assert re.fullmatch(r"20\d\d-\d\d-\d\d", given.pop("Written"))
    assert given == {
        "Page": title,
        "Address": site_server.url(f"{JOB}#step-2"),
        "Revision": revision,
        "Step": given["Step"],
        "Vehicle": "Corrie 1.2",
        "Job": "KQ 12",
    }
    assert given["Step"].removesuffix(" …").split() == ["2:", *command[:12]]
    path = saved(page, tmp_path)
    assert path.name == "wrong-replacements-replace-crank-sensor-inductive-html-step-2.txt"
    assert path.read_text("utf-8").replace("\n", "\r\n") == body
    page.goto(site_server.url(LIST))
    expect(page.locator(".note-said")).to_have_text(WRITTEN, use_inner_text=True)
    expect(page.locator("img[onerror]")).to_have_count(0)
    assert page.evaluate("window.ran") is None


def test_it_is_kept_in_a_folder_until_it_is_deleted(desk_page: Watch, site_dir: Path) -> None:
    """By keyboard, from a folder: written at the foot, found in the list, led back, deleted."""
    page = desk_page()
    page.goto((site_dir / "terms.html").as_uri())
    key = page.get_by_role("button", name="Something on this page was wrong")
    key.press("Enter")
    expect(page.get_by_label("What the manual says, and what you found")).to_be_focused()
    page.keyboard.type("A term is missing.")
    page.keyboard.press("Escape")
    expect(key).to_be_focused()
    expect(page.locator(".note")).to_have_count(0)
    page.get_by_role("link", name="Notes kept on this device: 1").press("Enter")
    expect(page.locator(".note-list .note-said")).to_have_text("A term is missing.")
    _to, _subject, body = letter(page)
    assert "Address: terms.html\r\n" in body
    assert "Step:" not in body and "Job:" not in body
    page.get_by_role("link", name="Terms of the trade").press("Enter")
    page.wait_for_url("**/terms.html")
    page.go_back()
    page.on("dialog", lambda dialog: dialog.accept())
    page.get_by_role("button", name="Delete the note").press("Enter")
    expect(page.locator(".note-list")).to_have_text("No note is kept on this device.")
    expect(page.locator(".note-list")).to_be_focused()
    kept = "Object.keys(localStorage).filter((key) => key.includes(':note:'))"
    assert page.evaluate(kept) == []


def test_it_is_quiet_and_never_between_a_caution_and_its_command(
    phone_page: Watch, site_server: StaticServer
) -> None:
    """One key a step, at its end, large enough; nothing of a note is fetched before, or printed."""
    page = phone_page()
    page.goto(site_server.url(JOB))
    keys = page.locator("li.step > .note-open:last-child")
    expect(keys).to_have_count(page.locator("li.step").count())
    expect(keys.first).to_have_accessible_name("This was wrong in step 1")
    sizes = page.locator(".note-open").evaluate_all(
        "all => all.map((one) => one.getBoundingClientRect())"
        ".map(({width, height}) => Math.min(width, height))"
    )
    assert min(sizes) >= 48
    assert not [url for url in phone_page.requests if "note-" in url or "hand-in" in url]
    page.locator("#step-1 > .note-open").tap()
    page.locator("#step-1 textarea").fill("x" * 300)
    expect(page.locator("#step-1 .note .facts")).to_be_visible()
    small = page.locator(".note :is(a, button)").evaluate_all(
        "all => all.filter((one) => one.getBoundingClientRect().height < 48).length"
    )
    assert small == 0
    assert page.evaluate("document.documentElement.scrollWidth") <= 390
    page.emulate_media(media="print")
    for part in (".note-open", ".note", ".wrong", ".note-waiting"):
        assert page.locator(f"{part}:visible").count() == 0, part


@pytest.mark.parametrize("broken", ["", "[", "{}", '{"path": "javascript:alert(1)"}'])
def test_what_is_broken_in_storage_is_no_note(
    broken: str, phone_page: Watch, site_server: StaticServer
) -> None:
    """Whatever lies under a note's key, the list stands and a note can be written."""
    page = phone_page()
    page.goto(site_server.url(LIST))
    page.evaluate(
        "(broken) => localStorage.setItem('fettlebook:note:terms.html', broken)", broken
    )
    page.reload()
    expect(page.locator(".note-list")).to_have_text("No note is kept on this device.")
    page.goto(site_server.url("terms.html"))
    page.locator(".note-open").tap()
    expect(page.locator(".note textarea")).to_have_value("")


def test_without_scripts_a_mail_is_one_tap_away(
    phone_page: Watch, site_server: StaticServer
) -> None:
    """The foot's plain link names page and revision; no dead key is shown."""
    page = phone_page(java_script_enabled=False)
    page.goto(site_server.url(JOB))
    link = urlsplit(page.locator(".wrong > a").get_attribute("href") or "")
    body = parse_qs(link.query)["body"][0]
    assert link.path == "workshop@kittiwake-quay.example"
    assert f"({JOB})" in body
    revision = page.locator("[data-revision]").get_attribute("data-revision")
    assert f"Revision: {revision}" in body
    expect(page.locator(".note-open")).to_have_count(0)
