"""The harness itself: it serves as a shop would, sees every fault, and never goes without."""

from __future__ import annotations

import sys
from collections.abc import Callable
from pathlib import Path
from urllib.error import HTTPError
from urllib.request import urlopen

import pytest
from playwright.sync_api import Browser

from tests.browser import find_browser as finder
from tests.browser.conftest import DESK, PHONE, SUB_PATH, Watch
from tests.browser.static_server import StaticServer

Serve = Callable[..., StaticServer]


def site_of(tmp_path: Path, body: str) -> Path:
    """Give a site of one page."""
    (tmp_path / "index.html").write_text(
        f'<!doctype html><title>x</title><link rel="icon" href="data:,">{body}', encoding="utf-8"
    )
    return tmp_path


def status(url: str) -> int:
    """Give the status of an address."""
    try:
        with urlopen(url, timeout=10) as answer:
            return int(answer.status)
    except HTTPError as refusal:
        with refusal:
            return refusal.code


def test_the_server_gives_files_and_nothing_else(tmp_path: Path, serve: Serve) -> None:
    """Files are served; folders, strangers and what lies above the site are not."""
    (tmp_path / "secret.txt").write_text("x")
    site = tmp_path / "site"
    (site / "sub").mkdir(parents=True)
    server = serve(site_of(site, "hello"))
    assert status(server.url()) == 200
    assert status(server.url("gone.html")) == 404
    assert status(server.url("sub/")) == 404
    assert status(server.url("../secret.txt")) == 404
    assert status(server.url("%2e%2e/secret.txt")) == 404


def test_under_a_path_the_rest_of_the_host_is_missing(tmp_path: Path, serve: Serve) -> None:
    """A link from the root of the host cannot pass for one relative to the site."""
    server = serve(site_of(tmp_path, "hello"), SUB_PATH)
    assert status(server.url()) == 200
    assert status(f"{server.origin}/index.html") == 404
    assert status(f"{server.origin}/manuals/index.html") == 404


def test_a_server_stopped_and_started_keeps_its_origin(tmp_path: Path, serve: Serve) -> None:
    """Going off the air and back is the same site to the browser."""
    server = serve(site_of(tmp_path, "hello"))
    before = server.origin
    server.stop()
    with pytest.raises(OSError, match="refused"):
        status(server.url())
    server.start()
    assert server.origin == before
    assert status(server.url()) == 200


@pytest.mark.parametrize(
    ("body", "said"),
    [
        ("<script>console.error('ouch')</script>", "ouch"),
        ("<script>throw new Error('ouch')</script>", "uncaught: ouch"),
        ("<script>Promise.reject(new Error('ouch'))</script>", "uncaught: ouch"),
        ("<script src='gone.js'></script>", "404"),
        ("<img src='http://elsewhere.invalid/x.png' alt=''>", "asked for http://elsewhere"),
        ("<img src='http://127.0.0.1:9/x.png' alt=''>", "asked for http://127.0.0.1:9/"),
    ],
)
def test_the_watch_sees_each_fault(
    tmp_path: Path, browser: Browser, serve: Serve, body: str, said: str
) -> None:
    """A message, an exception, a missing file and a stranger are each a fault."""
    watch = Watch(browser, PHONE)
    watch().goto(serve(site_of(tmp_path, body)).url(), wait_until="networkidle")
    watch.close()
    assert any(said in fault for fault in watch.faults())


def test_the_watch_sees_what_a_service_worker_asks_for(
    tmp_path: Path, browser: Browser, serve: Serve
) -> None:
    """A worker in the background cannot reach elsewhere unseen."""
    (tmp_path / "worker.js").write_text(
        "addEventListener('install', event => event.waitUntil("
        "fetch('http://elsewhere.invalid/x', {mode: 'no-cors'}).catch(() => 0)))",
        encoding="utf-8",
    )
    watch = Watch(browser, PHONE)
    page = watch()
    page.goto(serve(site_of(tmp_path, "hello")).url())
    page.evaluate(
        "navigator.serviceWorker.register('worker.js')"
        ".then(() => navigator.serviceWorker.ready).then(() => true)"
    )
    watch.close()
    assert any("asked for http://elsewhere.invalid" in fault for fault in watch.faults())


def test_the_watch_is_content_with_a_sound_page(
    tmp_path: Path, browser: Browser, serve: Serve
) -> None:
    """Own files, data addresses and plain messages are no faults; nor is what is forgiven."""
    body = "<img src='data:image/gif;base64,R0lGODlhAQABAAAAACw=' alt=''>"
    body += "<script>console.log('x'); console.error('planned')</script>"
    watch = Watch(browser, DESK)
    watch.forgive("planned")
    watch().goto(serve(site_of(tmp_path, body)).url(), wait_until="networkidle")
    watch.close()
    assert watch.faults() == []
    assert watch.requests


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_phone_and_desk_are_what_they_say(browser: Browser, scheme: str) -> None:
    """The phone is 390 wide, three dots to the pixel, touched; both follow the scheme asked for."""
    asked = (
        "[innerWidth, devicePixelRatio, navigator.maxTouchPoints > 0,"
        f" matchMedia('(prefers-color-scheme: {scheme})').matches]"
    )
    seen = {}
    for name, device in (("phone", PHONE), ("desk", DESK)):
        watch = Watch(browser, device)
        page = watch(scheme)  # type: ignore[arg-type]
        page.set_content("<meta name=viewport content='width=device-width'>")
        seen[name] = page.evaluate(asked)
        watch.close()
    assert seen == {"phone": [390, 3, True, True], "desk": [1280, 1, False, True]}


def test_no_browser_is_an_error_that_says_what_to_do(monkeypatch: pytest.MonkeyPatch) -> None:
    """Where none is there and none can be had, the tests fail with a clear word."""
    tried: list[tuple[str, ...]] = []
    monkeypatch.setattr(finder, "_present", lambda: iter(()))
    monkeypatch.setattr(finder, "_may_use_apt", lambda: True)
    monkeypatch.setattr(finder, "_call", lambda *command: tried.append(command))
    finder.find_browser.cache_clear()
    with pytest.raises(finder.NoBrowser, match="apt-get install chromium"):
        finder.find_browser()
    finder.find_browser.cache_clear()
    assert [(command[0], command[-1]) for command in tried] == [
        ("apt-get", "-qq"),
        ("apt-get", finder.SHELL),
        ("apt-get", "chromium"),
        (sys.executable, "chromium"),
    ]
