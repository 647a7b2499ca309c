"""The manual taken along: every page, the search and the check of readings with no network."""

from __future__ import annotations

import json
import re
import zipfile
from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import Browser, expect

from generator.publish import packs
from tests.browser.conftest import FLAGS, PHONE, Watch
from tests.browser.find_browser import find_browser
from tests.browser.static_server import StaticServer
from tests.browser.taken_along import take

Serve = Callable[..., StaticServer]

PAGES = (
    "index.html", "tests/winding-resistance.html", "replacements/replace-crank-sensor-hall.html",
    "symptoms/cuts-out-hot.html",
)  # fmt: skip


def test_after_consent_the_whole_manual_works_without_a_network(
    phone_page: Watch, serve: Serve, site_dir: Path
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
    phone_page: Watch, serve: Serve, site_dir: Path
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


def test_the_worker_is_registered_from_the_base_of_the_site(
    phone_page: Watch, sub_path_server: StaticServer
) -> None:
    """Under a path its scope is that path, and no cache stands between it and a newer one."""
    page = phone_page()
    page.goto(sub_path_server.url("offline/index.html"))
    expect(page.locator(".take-size")).to_contain_text(re.compile(r"About \d+\.\d+ MB"))
    take(page)
    found = page.evaluate(
        """navigator.serviceWorker.ready.then(
          (one) => [one.scope, one.updateViaCache, one.active.scriptURL])"""
    )
    base = sub_path_server.url("")
    assert found == [base, "none", f"{base}worker.js"]
    # The size that was shown is what came over the line.
    asked = {url for url in phone_page.requests if url.endswith(".pack")}
    files = [sub_path_server.folder / url.removeprefix(base) for url in asked]
    size = sum(file.stat().st_size for file in files)
    page.goto(sub_path_server.url("safety.html"))
    assert page.evaluate("navigator.serviceWorker.controller !== null")
    version = json.loads((sub_path_server.folder / packs.VERSION).read_text())
    assert size == version["bytes"]


def test_a_copy_can_be_removed(phone_page: Watch, serve: Serve, site_dir: Path) -> None:
    """Nothing stays behind: no file, no worker."""
    server = serve(site_dir)
    page = phone_page()
    page.goto(server.url("offline/index.html"))
    take(page)
    page.locator(".take-forget").click()
    expect(page.locator(".take-go")).to_be_visible()
    assert page.evaluate("caches.keys()") == []
    workers = "navigator.serviceWorker.getRegistrations().then((all) => all.length)"
    assert page.evaluate(workers) == 0


def test_an_unknown_address_is_404_with_a_network_too(
    phone_page: Watch, serve: Serve, site_dir: Path
) -> None:
    """The worker makes nothing up: what the copy lacks is the server's to answer."""
    phone_page.forgive("404")
    server = serve(site_dir)
    page = phone_page()
    page.goto(server.url("offline/index.html"))
    take(page)
    for address in ("tests/no-such-test.html", "no%2Fsuch", "%ff.html"):
        answer = page.goto(server.url(address))
        assert answer is not None and answer.status == 404, address
    answer = page.goto(server.url("tests/"))
    assert answer is not None and answer.status == 200


def test_an_address_that_is_not_secure_offers_the_folder(
    browser: Browser, serve: Serve, site_dir: Path
) -> None:
    """Plain http by a name of the shop's network: the page says why, and the zip is there."""
    server = serve(site_dir)
    flags = [*FLAGS, "--host-resolver-rules=MAP shop.test 127.0.0.1"]
    insecure = browser.browser_type.launch(executable_path=find_browser(), args=flags)
    page = insecure.new_page(**PHONE)
    page.goto(server.url("offline/index.html").replace("127.0.0.1", "shop.test"))
    assert page.evaluate("isSecureContext") is False
    expect(page.locator(".take-say")).to_contain_text("This address is not secure")
    expect(page.locator(".take-go")).to_be_hidden()
    with page.expect_download() as download:
        page.locator(".take-folder").click()
    assert zipfile.is_zipfile(download.value.path())
    insecure.close()


def test_the_folder_works_from_a_stick(browser: Browser, site_dir: Path, tmp_path: Path) -> None:
    """Unpacked and opened as files, pages, search and the check of a reading answer."""
    with zipfile.ZipFile(site_dir / "offline/manual.zip") as archive:
        archive.extractall(tmp_path)
    site = tmp_path / "manual"
    watch = Watch(browser, PHONE, site)
    page = watch()
    page.goto((site / "index.html").as_uri())
    page.locator(".home-finder input").fill("335")
    page.locator(".home-finder .hits a", has_text="P0335").first.click()
    expect(page.locator("h1")).to_contain_text("P0335")
    page.goto((site / "tests/winding-resistance.html").as_uri())
    expect(page.locator(".check input").first).to_be_visible()
    page.goto((site / "offline/index.html").as_uri())
    expect(page.locator(".take-say")).to_contain_text("You are reading from a folder")
    expect(page.locator("#folder")).to_be_hidden()
    watch.close()
    assert watch.faults() == []


def test_without_scripts_the_folder_is_there(phone_page: Watch, site_server: StaticServer) -> None:
    """The page says what it needs, and offers what it needs nothing for."""
    page = phone_page(java_script_enabled=False)
    page.goto(site_server.url("index.html"))
    page.locator("footer.bottom a", has_text="Take it along").click()
    expect(page.locator("noscript p")).to_be_visible()
    expect(page.locator(".take-folder")).to_be_visible()
    expect(page.locator(".take-keys button:visible")).to_have_count(0)
    expect(page.locator(".copy-word")).to_be_hidden()
