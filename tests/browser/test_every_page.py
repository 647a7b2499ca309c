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
UNFOLD = "document.querySelectorAll('.sheet details').forEach((one) => { one.open = true; })"
SIDEWAYS = "document.documentElement.scrollWidth - document.documentElement.clientWidth"


def faults_of(
    watch: Watch, server: StaticServer, pages: list[str], scheme: Scheme, act: str = "null"
) -> tuple[list[str], set[int]]:
    """Open pages of a site at 320 px, run `act` there; give what is wrong, and the doubts met."""
    found: list[str] = []
    met: set[int] = set()
    page = watched(watch, scheme, **NARROW)
    for address in pages:
        page.goto(server.url(address))
        page.evaluate(act)
        found += access.look(page, address, met)
        if page.evaluate(SIDEWAYS) > 0:
            found.append(f"{address} scrolls sideways")
    return found, met


def test_every_page_is_sound(phone_page: Watch, site_server: StaticServer, site_dir: Path) -> None:
    """On no page does axe find a fault, the policy a breach, or anything run over the edge.

    A console error or a request elsewhere fails the test as well.
    """
    assert len(addresses(site_dir)) > 200
    found, _ = faults_of(phone_page, site_server, addresses(site_dir), "light")
    assert found == []
    opened = {url for url in phone_page.requests if url.endswith(".html")}
    assert len(opened) == len(addresses(site_dir))


@pytest.mark.soak
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_every_page_unfolded_is_sound(
    scheme: Scheme, phone_page: Watch, site_server: StaticServer, site_dir: Path
) -> None:
    """The same with all of it unfolded, in both schemes; there each listed doubt is met."""
    found, met = faults_of(phone_page, site_server, addresses(site_dir), scheme, UNFOLD)
    assert found == []
    assert met == set(range(len(access.LOOKED_AT))), "the list holds a doubt that nobody has"


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
