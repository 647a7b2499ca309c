"""What a visit costs: every byte of every page and of all that it asks for by itself."""

from __future__ import annotations

import gzip
import re
from functools import cache
from pathlib import Path

from playwright.sync_api import expect

from tests.browser.conftest import Watch
from tests.browser.static_server import StaticServer
from tests.browser.test_policy import addresses, kinds

FIRST_BYTES = 100_000
LATER_BYTES = 60_000
LEVEL = 6
"""As servers pack that are left as they come; a picture is sent as it is."""

ASKED_FOR = re.compile(r'<(?:script|link)\b[^>]*?\b(?:src|href)="([^"]+)"[^>]*>')
BOUNDS = re.compile(r'\brel="(?!icon|stylesheet)')


def asked_for(site: Path, address: str) -> set[str]:
    """Give what a page asks for by itself, from the root of the site."""
    text = (site / address).read_text("utf-8")
    here = (site / address).parent
    return {
        (here / found[1]).resolve().relative_to(site.resolve()).as_posix()
        if not found[1].startswith("/")
        else found[1].lstrip("/")
        for found in ASKED_FOR.finditer(text)
        if not BOUNDS.search(found[0])
    }


@cache
def sent(path: Path) -> int:
    """Give the bytes of a file as a server sends it."""
    content = path.read_bytes()
    return len(content) if path.suffix == ".png" else len(gzip.compress(content, LEVEL))


def cost(site: Path, files: set[str]) -> int:
    """Give the bytes of files as they are sent."""
    return sum(sent(site / file) for file in files)


def test_a_first_visit_stays_within_its_bytes(site_dir: Path) -> None:
    """Whatever page a reader meets first, with all it asks for, is 100 KB or less, packed."""
    visits = {page: asked_for(site_dir, page) | {page} for page in addresses(site_dir)}
    costs = {page: cost(site_dir, files) for page, files in visits.items()}
    raw = {p: sum((site_dir / f).stat().st_size for f in files) for p, files in visits.items()}
    worst, usual = max(costs, key=costs.__getitem__), sorted(costs.values())[len(costs) // 2]
    print(
        f"first visit: at most {costs[worst]} bytes ({worst}, {len(visits[worst])} requests, "
        f"{raw[worst]} bytes unpacked), usually {usual}; unpacked at most {max(raw.values())}"
    )
    assert {page: size for page, size in costs.items() if size > FIRST_BYTES} == {}


def test_a_later_page_stays_within_its_bytes(site_dir: Path) -> None:
    """After any first page, the next is 60 KB or less with what its kind alone asks for."""
    needs = {page: asked_for(site_dir, page) for page in addresses(site_dir)}
    shared = set.intersection(*needs.values())
    assert len(shared) > 4
    costs = {page: cost(site_dir, {page, *files} - shared) for page, files in needs.items()}
    worst = max(costs, key=costs.__getitem__)
    print(f"a page after the first: at most {costs[worst]} bytes ({worst})")
    assert {page: size for page, size in costs.items() if size > LATER_BYTES} == {}


def test_a_browser_asks_for_that_and_no_more(
    phone_page: Watch, site_server: StaticServer, site_dir: Path
) -> None:
    """On one page of each kind, what is requested is what was counted: no script fetches more."""
    for address in kinds(site_dir):
        page = phone_page()
        before = len(phone_page.requests)
        page.goto(site_server.url(address), wait_until="networkidle")
        expect(page.locator("button.scheme")).to_be_visible()
        root = site_server.url("")
        asked = {url.removeprefix(root) for url in phone_page.requests[before:]}
        counted = asked_for(site_dir, address) | {address}
        # The page on which the manual is taken along asks for its size as well.
        manifest = {"offline/manifest.json"} if address.startswith("offline/") else set()
        assert asked - manifest <= counted, address
        assert counted - asked <= {"assets/images/favicon.png"}, address
        page.context.close()
