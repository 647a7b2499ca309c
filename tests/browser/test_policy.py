"""The policy at work: no page breaks it, wherever it is read from, and it does bar what it should.

A breach is a console error as well, so every other browser test would fail on one too. That no
page breaks it at the root of a host is seen where every page is opened, in test_every_page.py, and
under a path and in a folder in test_opens.py.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from tests.browser.conftest import Scheme, Watch
from tests.browser.static_server import StaticServer

LISTEN = """addEventListener("securitypolicyviolation", (event) => {
  console.error(`policy: ${event.violatedDirective} bars ${event.blockedURI || "inline"}`);
});"""


def addresses(site: Path) -> list[str]:
    """Give every page of a site; a moved page leads away before it can be looked at."""
    pages = sorted(path.relative_to(site).as_posix() for path in site.rglob("*.html"))
    moved = 'http-equiv="refresh"'
    return [page for page in pages if moved not in (site / page).read_text("utf-8")]


def kinds(site: Path) -> list[str]:
    """Give one page of each folder, and the home page."""
    return ["index.html", *{page.rpartition("/")[0]: page for page in addresses(site)}.values()]


def watched(watch: Watch, scheme: Scheme = "light", **options: Any) -> Page:
    """Open a page that complains of every breach."""
    page = watch(scheme, **options)
    page.add_init_script(LISTEN)
    return page


def test_no_page_breaks_it_in_a_copy_without_a_network(
    phone_page: Watch, site_server: StaticServer, site_dir: Path
) -> None:
    """One page of each kind out of the worker, with every script and style sheet it needs."""
    page = watched(phone_page)
    page.goto(site_server.url("offline/index.html"))
    page.locator(".take-go").click()
    expect(page.locator(".take-forget")).to_be_visible(timeout=20_000)
    page.context.set_offline(True)  # only what the page asks for; the worker has its own way
    for address in kinds(site_dir):
        page.goto(site_server.url(address))
        expect(page.locator("button.scheme")).to_be_visible()


@pytest.mark.parametrize(
    ("act", "directive"),
    [
        ("const s = document.createElement('script'); s.textContent = 'window.ran = 1';"
         "document.head.append(s)", "script-src-elem"),
        ("document.body.setAttribute('onclick', 'window.ran = 1'); document.body.click()",
         "script-src-attr"),
        ("document.body.innerHTML += '<p style=\"color: red\">x</p>'", "style-src-attr"),
        ("try { eval('window.ran = 1') } catch {}", "script-src"),
        ("fetch('http://elsewhere.invalid/').catch(() => 0)", "connect-src"),
        ("new Image().src = URL.createObjectURL(new Blob(['x']))", "img-src"),
        ("document.body.append(document.createElement('iframe'));"
         "document.querySelector('iframe').src = 'safety.html'", "frame-src"),
    ],
)  # fmt: skip
def test_the_policy_bars(
    act: str, directive: str, desk_page: Watch, site_server: StaticServer
) -> None:
    """What a page might be talked into, by a record's text or a library's fault, is refused."""
    page = watched(desk_page)
    for word in ("policy: ", "Content Security Policy", "Framing", "violates"):
        desk_page.forgive(word)
    page.goto(site_server.url("index.html"))
    # Through a script of the page: what the debugger runs itself stands above the policy.
    page.evaluate(f"setTimeout(() => {{ {act} }})")
    page.wait_for_timeout(200)
    assert page.evaluate("window.ran") is None
    assert any(f"policy: {directive} bars" in text for text in desk_page.complaints)
