"""The site opens wherever a shop puts it: under a path, in a folder on a stick.

That it opens at the root of a host is seen where every page is opened, in test_every_page.py.
"""

from __future__ import annotations

from pathlib import Path

from playwright.sync_api import Page, expect

from tests.browser.conftest import Watch
from tests.browser.static_server import StaticServer
from tests.browser.test_policy import kinds, watched


def open_every_kind_of_page(page: Page, site: Path, root: str) -> None:
    """Open the home page, all that it links to, and one page of each kind, in the dark scheme."""
    page.goto(f"{root}/index.html")
    linked: list[str] = page.eval_on_selector_all(
        "main a[href]:not([href*='://']), main a[href^='/']", "links => links.map(a => a.href)"
    )
    assert len(linked) > 3
    for address in dict.fromkeys([*linked, *(f"{root}/{kind}" for kind in kinds(site))]):
        page.goto(address)
        expect(page.locator("h1")).to_have_count(1)
        expect(page.locator("button.scheme")).to_be_visible()  # the scripts have run
        ground = page.evaluate("getComputedStyle(document.querySelector('.sheet')).color")
        assert ground == "rgb(238, 243, 245)", address  # --ink of the dark scheme


def test_it_opens_under_a_path(
    desk_page: Watch, sub_path_server: StaticServer, site_dir: Path
) -> None:
    """Put under a path, nothing reaches for the root of the host, nor breaks the policy."""
    root = sub_path_server.url("").rstrip("/")
    open_every_kind_of_page(watched(desk_page, "dark"), site_dir, root)


def test_it_opens_from_a_folder(phone_page: Watch, site_dir: Path) -> None:
    """Opened from a stick, with no server at all, every link shows a page, the policy in force."""
    open_every_kind_of_page(watched(phone_page, "dark"), site_dir, site_dir.as_uri())
