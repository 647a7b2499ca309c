"""In a real browser: a manual full of hostile texts runs nothing, fetches nothing, stays itself."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from generator.manual import Manual
from generator.publish.build import build
from tests.browser.conftest import Watch
from tests.browser.static_server import StaticServer
from tests.browser.test_policy import addresses, watched
from tests.hostile.saturated import saturated
from tests.hostile.texts import MARK

STRANGE = f"""() => [
  ...(window.ran ? ["it ran"] : []),
  ...Array.from(document.querySelectorAll(
    "script:not([src]):not([type='application/ld+json']), iframe, object, embed, base, [style],"
    + "[href^='javascript'], [href^='data'],"
    + "[src*='{MARK}'], [href*='elsewhere.invalid']"), (one) => one.outerHTML),
  ...Array.from(document.querySelectorAll("*")).flatMap((one) =>
    Array.from(one.attributes, ({{ name }}) => name).filter((name) => /^on/.test(name))),
]"""


@pytest.fixture(scope="module")
def hostile_site(manual_dir: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Give a site made of the saturated manual; no check has been asked whether it is fit to be."""
    place = tmp_path_factory.mktemp("hostile") / "site"
    read = Manual(saturated(7), [], {}, lambda: None)
    build(manual_dir / "mkdocs.yml", place, read, None)
    return place


def some(site: Path) -> list[str]:
    """Give two pages of each folder."""
    folders: dict[str, list[str]] = {}
    for address in addresses(site):
        folders.setdefault(address.rpartition("/")[0], []).append(address)
    return [address for pages in folders.values() for address in pages[:2]]


def look(page: Page, url: str) -> list[str]:
    """Open a page, try its controls, and give what is strange on it."""
    page.goto(url)
    for summary in page.locator("main summary").all()[:4]:
        summary.dispatch_event("click")
    return [f"{url}: {one}" for one in page.evaluate(STRANGE)]


def test_no_page_runs_or_fetches_anything(
    phone_page: Watch, serve: Callable[..., StaticServer], hostile_site: Path
) -> None:
    """Pages of every kind, the search and its hits; a breach, an error or a request fails too."""
    server = serve(hostile_site)
    page = watched(phone_page)
    page.on("dialog", lambda dialog: pytest.fail(dialog.message))
    pages = some(hostile_site)
    assert len(pages) > 20
    assert [fault for address in pages for fault in look(page, server.url(address))] == []
    page.goto(server.url("index.html"))
    page.locator(".home-finder input").fill(MARK)
    expect(page.locator(".home-finder .hits a").first).to_be_visible()
    assert page.evaluate(STRANGE) == []
    assert page.locator(".home-finder .hits a").count() > 3


def test_nothing_lies_outside_its_site(hostile_site: Path) -> None:
    """Every file lies in the site's own folder under a plain name; nothing else was written."""
    assert [path.name for path in hostile_site.parent.iterdir()] == ["site"]
    assert not [path for path in hostile_site.rglob("*") if MARK in path.name or path.is_symlink()]
