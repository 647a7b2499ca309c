"""The site opens wherever a shop puts it: on a host, under a path, in a folder on a stick."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Page

from tests.browser.conftest import Scheme, Watch
from tests.browser.static_server import StaticServer


def follow_every_kind_of_page(page: Page) -> int:
    """Open the home page's links within the site, one after another; give how many."""
    addresses: list[str] = page.eval_on_selector_all(
        "main a[href]:not([href*='://']), main a[href^='/']", "links => links.map(a => a.href)"
    )
    for address in addresses:
        page.goto(address)
        assert page.locator("h1").count() == 1, address
    return len(addresses)


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_it_opens_at_the_root_of_a_host(
    phone_page: Watch, site_server: StaticServer, scheme: Scheme
) -> None:
    """Served plainly, the home page and what it links to open without a complaint."""
    page = phone_page(scheme)
    page.goto(site_server.url())
    assert follow_every_kind_of_page(page) > 3


def test_it_opens_under_a_path(desk_page: Watch, sub_path_server: StaticServer) -> None:
    """Put under a path, nothing reaches for the root of the host."""
    page = desk_page()
    page.goto(sub_path_server.url())
    assert follow_every_kind_of_page(page) > 3


def test_it_opens_from_a_folder(phone_page: Watch, site_dir: Path) -> None:
    """Opened from a stick, with no server at all, every link shows a page."""
    page = phone_page()
    page.goto((site_dir / "index.html").as_uri())
    assert follow_every_kind_of_page(page) > 3
