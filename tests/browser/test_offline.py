"""The manual taken along: every page, the search and the check of readings with no network."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import expect

from tests.browser.conftest import Watch
from tests.browser.static_server import StaticServer

PAGES = (
    "index.html", "tests/winding-resistance.html", "replacements/replace-crank-sensor-hall.html",
    "symptoms/cuts-out-hot.html",
)  # fmt: skip


def test_after_consent_the_whole_manual_works_without_a_network(
    phone_page: Watch, serve: Callable[..., StaticServer], site_dir: Path
) -> None:
    """With the server stopped pages open, the search answers, and no unknown address does."""
    phone_page.forgive("404")
    phone_page.forgive("Failed to load resource")
    server = serve(site_dir)
    page = phone_page("light")
    page.goto(server.url("offline/index.html"))
    page.get_by_role("button", name="Take the manual along").click()
    expect(page.get_by_text("The whole manual is on this device")).to_be_visible(timeout=20_000)
    server.stop()
    page.context.set_offline(True)
    for address in PAGES:
        answer = page.goto(server.url(address))
        assert answer is not None and answer.status == 200, address
        expect(page.locator("h1")).to_be_visible()
    page.goto(server.url("index.html"))
    page.locator(".home-finder input").fill("335")
    expect(page.locator(".home-finder .hits a").first).to_contain_text("P0335")
    answer = page.goto(server.url("tests/no-such-test.html"))
    assert answer is not None and answer.status == 404


def test_nothing_is_kept_before_the_reader_says_so(
    phone_page: Watch, serve: Callable[..., StaticServer], site_dir: Path
) -> None:
    """A visit alone leaves no copy behind."""
    server = serve(site_dir)
    page = phone_page("light")
    page.goto(server.url("tests/winding-resistance.html"))
    page.goto(server.url("offline/index.html"))
    expect(page.get_by_role("button", name="Take the manual along")).to_be_visible()
    kept = page.evaluate(
        """async () => {
          const names = await caches.keys();
          const found = await Promise.all(
            names.map(async (name) => (await (await caches.open(name)).keys()).length));
          return found.reduce((sum, count) => sum + count, 0);
        }"""
    )
    assert kept == 0
