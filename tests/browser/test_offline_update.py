"""A copy grows old: it says so, takes what changed, and stands whole whatever goes wrong."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import expect

from tests.browser import static_server
from tests.browser.conftest import Watch
from tests.browser.static_server import StaticServer
from tests.browser.taken_along import (
    CAUTIONED,
    GONE,
    MARK,
    TAKE_MS,
    TOLD,
    WORDED,
    Network,
    kept,
    laid_out,
    take,
)

Serve = Callable[..., StaticServer]
PAGES = ("index.html", "tests/winding-resistance.html", "symptoms/cuts-out-hot.html")


@pytest.fixture
def network(monkeypatch: pytest.MonkeyPatch) -> Network:
    """Give the network of this test; what it does not carry gets no answer at all."""
    found, answer = Network(), static_server._Handler.do_GET

    def carried(handler: static_server._Handler) -> None:
        if found.carries(handler.path):
            answer(handler)

    monkeypatch.setattr(static_server._Handler, "do_GET", carried)
    return found


def test_a_newer_manual_is_told_on_every_page_and_taken_in_parts(
    phone_page: Watch, serve: Serve, site_dir: Path, tmp_path: Path
) -> None:
    """Withdrawn pages and changed cautions are named; what changed alone is fetched."""
    site = laid_out(site_dir, tmp_path / "site")
    server = serve(site)
    page = phone_page()
    page.goto(server.url("offline/index.html"))
    take(page)
    laid_out(site_dir, site, withdrawn=True, told=True, cautions=True, words=True)
    page.goto(server.url("offline/index.html"))
    word = page.locator(".copy-word")
    expect(word).to_contain_text("2 pages were withdrawn. 1 page has changed cautions.")
    expect(page.locator(".withdrawn li")).to_have_text(
        ["Charge the battery", "Repair wiring and connectors"]
    )
    assert page.locator(".cautioned a").get_attribute("href") == server.url(CAUTIONED)
    expect(page.locator(".other-pages")).to_have_text(re.compile(r": 1$"))

    for address, said in (
        ("sources.html", "A newer manual is out."),
        (CAUTIONED, "The cautions on this page have changed. Do not work from it."),
        (GONE, "This page was withdrawn. Do not work from it."),
        (TOLD, "This page was withdrawn. Do not work from it."),
    ):
        page.goto(server.url(address))
        expect(word).to_contain_text(said)
    page.goto(server.url(WORDED))
    assert MARK.decode() not in page.content(), "until it is taken, the copy is the old manual"

    page.locator(".copy-word a").click()
    before = len(phone_page.requests)
    take(page, ".take-update")
    asked = [url.removeprefix(server.url("")) for url in phone_page.requests[before:]]
    assert {url for url in asked if url.endswith(".pack")} == set()
    assert {CAUTIONED, WORDED} <= set(asked)
    server.stop()
    for address in (CAUTIONED, WORDED):
        page.goto(server.url(address))
        assert MARK.decode() in page.content(), address
        expect(word).to_be_hidden()
    phone_page.forgive("Failed to load resource")
    answer = page.goto(server.url(GONE))
    assert answer is not None and answer.status == 404


def test_changes_that_add_up_leave_one_pack_of_loose_pages(
    phone_page: Watch, serve: Serve, site_dir: Path, tmp_path: Path
) -> None:
    """A second update carries on what the first fetched singly, and nothing idle is kept."""
    site = laid_out(site_dir, tmp_path / "site")
    server = serve(site)
    page = phone_page()
    for number, changes in enumerate(({}, {"words": True}, {"words": True, "look": True})):
        laid_out(site_dir, site, **changes)
        page.goto(server.url("offline/index.html"))
        take(page, ".take-update" if number else ".take-go")
    found = kept(page)
    used = {place[0] for place in found["index"]["members"].values()}
    assert used == {name for name in found["names"] if name not in ("index", "state")}
    assert len([name for name in used if name.startswith("loose-")]) == 1
    loose = {a for a, place in found["index"]["members"].items() if place[0].startswith("loose-")}
    assert loose == {WORDED, "assets/screen.css"}
    server.stop()
    page.goto(server.url(WORDED))
    assert MARK.decode() in page.content()


@pytest.mark.parametrize("loss", ["network", "damage"])
def test_an_update_cut_short_leaves_the_old_copy_whole(
    loss: str, network: Network, phone_page: Watch, serve: Serve, site_dir: Path, tmp_path: Path
) -> None:
    """The server goes away between two pages, or gives wrong bytes: the old manual stands."""
    phone_page.forgive("Failed to load resource")
    site = laid_out(site_dir, tmp_path / "site")
    server = serve(site)
    page = phone_page()
    page.goto(server.url("offline/index.html"))
    take(page)
    before = kept(page)["index"]
    laid_out(site_dir, site, withdrawn=True, cautions=True, words=True, look=True)
    if loss == "damage":
        for file in [*(site / "offline").glob("*.pack"), site / WORDED]:
            file.write_bytes(file.read_bytes()[:-1])
    page.goto(server.url("offline/index.html"))
    expect(page.locator(".take-update")).to_be_visible()
    if loss == "network":
        network.goes(lambda path: path.endswith(WORDED))
    page.locator(".take-update").click()
    expect(page.locator(".take-say")).to_have_text(
        "The network was lost. Nothing has changed on this device; try again.", timeout=TAKE_MS
    )
    server.stop()
    assert kept(page)["index"] == before
    for address in (GONE, CAUTIONED, WORDED, "index.html"):
        answer = page.goto(server.url(address))
        assert answer is not None and answer.status == 200, address
        assert MARK.decode() not in page.content()

    # With the network back, the same tap brings the whole of the newer one.
    network.comes_back()
    server.start()
    laid_out(site_dir, site, withdrawn=True, cautions=True, words=True, look=True)
    page.goto(server.url("offline/index.html"))
    take(page, ".take-update")
    page.goto(server.url(WORDED))
    assert MARK.decode() in page.content()


def test_a_first_copy_cut_short_is_none(
    network: Network, phone_page: Watch, serve: Serve, site_dir: Path, tmp_path: Path
) -> None:
    """The network goes while packs come in: nothing pretends to be a copy, and a retry works."""
    phone_page.forgive("Failed to load resource")
    server = serve(laid_out(site_dir, tmp_path / "site"))
    page = phone_page()
    page.goto(server.url("offline/index.html"))
    expect(page.locator(".take-go")).to_be_visible()
    third = iter((False, False, True))
    network.goes(lambda path: path.endswith(".pack") and next(third))
    page.locator(".take-go").click()
    expect(page.locator(".take-bar")).to_be_hidden(timeout=TAKE_MS)
    found = kept(page)
    assert found["index"] is None
    assert len(found["names"]) == 2
    network.comes_back()
    page.goto(server.url("offline/index.html"))
    before = len(phone_page.requests)
    take(page)
    again = [url for url in phone_page.requests[before:] if url.endswith(".pack")]
    whole = {url.rpartition("/")[2] for url in again} | set(found["names"])
    assert len(whole) == len(list((site_dir / "offline").glob("*.pack")))
    assert not {url.rpartition("/")[2] for url in again} & set(found["names"]), "not fetched twice"


@pytest.mark.parametrize(("days", "said"), [(6, False), (8, True)])
def test_a_copy_long_not_compared_says_so_on_every_page(
    days: int, said: bool, phone_page: Watch, serve: Serve, site_dir: Path
) -> None:
    """After a week without the shop's manual in reach, the copy warns wherever it is opened."""
    phone_page.forgive("Failed to load resource")
    server = serve(site_dir)
    page = phone_page()
    page.clock.install()
    page.goto(server.url("offline/index.html"))
    take(page)
    server.stop()
    page.clock.fast_forward(days * 24 * 3600 * 1000 + 1000)
    for address in PAGES:
        page.goto(server.url(address))
        expect(page.locator("h1")).to_be_visible()
        word = page.locator(".copy-word")
        if said:
            expect(word).to_contain_text("last compared with the shop’s manual 8 days ago")
        else:
            expect(word).to_be_hidden()
