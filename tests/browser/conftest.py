"""A real browser, a phone and a desk, and a watch on everything a page asks for or complains of."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any, Literal, NoReturn
from urllib.parse import unquote, urlsplit

import pytest
from playwright.sync_api import Browser, BrowserContext, ConsoleMessage, Page, sync_playwright

from tests.browser.find_browser import NoBrowser, find_browser
from tests.browser.static_server import StaticServer

Scheme = Literal["light", "dark"]

SUB_PATH = "/manuals/fettle/"

# Nothing of the browser's own may reach for the network, and it must run as root and in a sandbox.
FLAGS = [
    "--headless=new",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]

PHONE: dict[str, Any] = {
    "viewport": {"width": 390, "height": 844},
    "device_scale_factor": 3,
    "is_mobile": True,
    "has_touch": True,
}
DESK: dict[str, Any] = {"viewport": {"width": 1280, "height": 900}}


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Mark every test of this folder, so that nobody has to remember to."""
    here = Path(__file__).parent
    for item in items:
        if here in item.path.parents:
            item.add_marker(pytest.mark.browser)


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """Give a running Chromium; where there is none the tests fail, they never skip."""
    try:
        path = find_browser()
    except NoBrowser as fault:
        _fail(str(fault))
    with sync_playwright() as playwright:
        running = playwright.chromium.launch(executable_path=path, args=FLAGS)
        yield running
        running.close()


@pytest.fixture(scope="session")
def site_server(site_dir: Path) -> Iterator[StaticServer]:
    """Serve the demonstration site at the root of a host."""
    yield from _serving(StaticServer(site_dir))


@pytest.fixture(scope="session")
def sub_path_server(site_dir: Path) -> Iterator[StaticServer]:
    """Serve the demonstration site under a path, as many shops do; the rest of the host is 404."""
    yield from _serving(StaticServer(site_dir, SUB_PATH))


@pytest.fixture
def serve(request: pytest.FixtureRequest) -> Callable[..., StaticServer]:
    """Serve any folder for one test, which may stop and start it: ``serve(folder, prefix)``."""

    def start(folder: Path, prefix: str = "/") -> StaticServer:
        server = StaticServer(folder, prefix)
        server.start()
        request.addfinalizer(server.stop)
        return server

    return start


class Watch:
    """Opens pages and notes all that they ask for and complain of.

    Calling it gives a page: ``phone_page("dark")``. After the test it fails on a console error, an
    uncaught exception, or a request to anything but the site; :meth:`forgive` names what a test
    provokes on purpose.
    """

    def __init__(self, browser: Browser, device: dict[str, Any], site: Path | None = None) -> None:
        self.requests: list[str] = []
        self.complaints: list[str] = []
        self._browser = browser
        self._device = device
        self._site = site
        self._forgiven: list[str] = []
        self._contexts: list[BrowserContext] = []

    def __call__(self, scheme: Scheme = "light", **options: Any) -> Page:
        """Open an empty page in a context of its own."""
        context = self._browser.new_context(**{**self._device, "color_scheme": scheme, **options})
        self._contexts.append(context)
        context.on("request", lambda request: self.requests.append(request.url))
        context.on("console", self._note_message)
        context.on("weberror", lambda error: self.complaints.append(f"uncaught: {error.error}"))
        return context.new_page()

    def forgive(self, text: str) -> None:
        """Let pass every complaint that contains this text."""
        self._forgiven.append(text)

    def _note_message(self, message: ConsoleMessage) -> None:
        if message.type == "error":
            where = message.location.get("url", "")
            self.complaints.append(f"console: {message.text} ({where})")

    def faults(self) -> list[str]:
        """Give what must not have happened."""
        unforgiven = [
            complaint
            for complaint in self.complaints
            if not any(text in complaint for text in self._forgiven)
        ]
        strangers = [f"asked for {url}" for url in self.requests if not self._is_own(url)]
        return unforgiven + strangers

    def _is_own(self, url: str) -> bool:
        """Say whether an address is the site's: on a server of ours, or in its folder."""
        parts = urlsplit(url)
        if parts.scheme in ("data", "blob", "about"):
            return True
        if parts.scheme == "file":
            return self._site is not None and self._site in Path(unquote(parts.path)).parents
        return f"{parts.scheme}://{parts.netloc}" in StaticServer.origins

    def close(self) -> None:
        """Close every page that was opened."""
        for context in self._contexts:
            context.close()


@pytest.fixture
def phone_page(browser: Browser, site_dir: Path) -> Iterator[Watch]:
    """Open pages as on a phone: 390 by 844, by touch."""
    yield from _watching(Watch(browser, PHONE, site_dir))


@pytest.fixture
def desk_page(browser: Browser, site_dir: Path) -> Iterator[Watch]:
    """Open pages as on the desk in the office: 1280 by 900."""
    yield from _watching(Watch(browser, DESK, site_dir))


def _watching(watch: Watch) -> Iterator[Watch]:
    yield watch
    watch.close()
    faults = watch.faults()
    if faults:
        _fail("the pages misbehaved:\n  " + "\n  ".join(faults))


def _serving(server: StaticServer) -> Iterator[StaticServer]:
    server.start()
    yield server
    server.stop()


def _fail(message: str) -> NoReturn:
    pytest.fail(message, pytrace=False)
