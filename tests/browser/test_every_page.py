"""Every page there is, opened once and looked at in every way that needs no hand on it."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from tests.browser import access
from tests.browser.conftest import Scheme, Watch
from tests.browser.static_server import StaticServer
from tests.browser.test_policy import addresses, watched

NARROW: dict[str, Any] = {"viewport": {"width": 320, "height": 640}, "device_scale_factor": 1}
# Not innerWidth: a phone zooms out over what runs off the page, and calls that its width.
SIDEWAYS = "document.documentElement.scrollWidth - document.documentElement.clientWidth"


def faults_of(
    watch: Watch, server: StaticServer, pages: list[str], scheme: Scheme
) -> tuple[list[str], set[int]]:
    """Open pages of a site at 320 px; give what is wrong, and the listed doubts met."""
    found: list[str] = []
    met: set[int] = set()
    page = watched(watch, scheme, **NARROW)
    for address in pages:
        page.goto(server.url(address))
        found += access.look(page, address, met)
        if page.evaluate(SIDEWAYS) > 0:
            found.append(f"{address} scrolls sideways")
    return found, met


def test_pages_of_every_kind_are_sound(
    phone_page: Watch, site_server: StaticServer, site_dir: Path
) -> None:
    """On two pages of each folder axe finds no fault, the policy no breach, and none runs over.

    A console error or a request elsewhere fails the test as well.
    """
    folders: dict[str, list[str]] = {}
    for address in addresses(site_dir):
        folders.setdefault(address.rpartition("/")[0], []).append(address)
    some = [address for pages in folders.values() for address in pages[:2]]
    assert len(some) > 15
    found, _ = faults_of(phone_page, site_server, some, "light")
    assert found == []


@pytest.mark.soak
def test_every_page_is_sound(phone_page: Watch, site_server: StaticServer, site_dir: Path) -> None:
    """The same of every page, and each listed doubt is met somewhere."""
    assert len(addresses(site_dir)) > 200
    found, met = faults_of(
        phone_page, site_server, addresses(site_dir), "light"
    )
    assert found == []
    assert met == set(range(len(access.LOOKED_AT))), "the list holds a doubt that nobody has"
    opened = {url for url in phone_page.requests if url.endswith(".html")}
    assert len(opened) == len(addresses(site_dir))


@pytest.mark.parametrize(
    ("harm", "said"),
    [
        ("document.querySelector('.sheet').insertAdjacentHTML('beforeend', '<img src=\"../x\">')",
         "violates image-alt"),
        ("document.querySelector('h1').outerHTML = '<h4>x</h4>'", "page-has-heading-one"),
        ("document.querySelector('.verdict').style.color = '#999'", "violates color-contrast"),
        ("document.querySelector('.verdict').style.backgroundImage = 'url(data:image/png,)'",
         "undecided color-contrast"),
    ],
)  # fmt: skip
def test_a_fault_is_noticed(
    harm: str, said: str, phone_page: Watch, site_server: StaticServer
) -> None:
    """A picture without words, a lost heading, weak letters, an unseen doubt: each fails."""
    phone_page.forgive("404")
    phone_page.forgive("Failed to load")
    page = phone_page()
    page.goto(site_server.url("tests/winding-resistance.html"))
    page.evaluate(harm)
    assert any(said in fault for fault in access.look(page, "here"))
