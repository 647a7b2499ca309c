"""The search as a reader meets it: what it finds, how fast, by keyboard, anywhere, and unasked."""

from __future__ import annotations

import csv
import json
import statistics
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, expect

from generator.pages import search
from generator.pages.search_pack import words
from generator.site import make
from tests.browser.conftest import Watch
from tests.browser.static_server import StaticServer
from tests.demonstration import ROOT, SMALL_RECORDS
from tests.search import big

QUERIES = ROOT / "tests/search/queries.csv"
LEAST_SHARE = 0.95
"""Queries whose page must be found within its rank; the list was written before the search."""

SLOWER = 4
"""A shop's phone against the machine that tests, as the debugger slows the page down."""

LIMIT_MS = {1000: 50.0, 5000: 150.0}
ROOM = 3.0
"""Times the limit that a busy machine may need before a test calls the search slow."""

BOX = ".home-finder input"
HITS = ".home-finder .hits a"


@pytest.fixture
def home(desk_page: Watch, site_server: StaticServer) -> Page:
    """Give the home page."""
    page = desk_page("light")
    page.goto(site_server.url("index.html"))
    return page


def asked(page: Page, text: str) -> list[str]:
    """Type into the home page's box; give the titles found."""
    page.locator(BOX).fill(text)
    expect(page.locator(HITS).first).to_be_visible()
    return page.locator(f"{HITS} .hit-title").all_text_contents()


def answerable(pages: str) -> bool:
    """Say whether the manual has one of the pages a query may find."""
    shared = {"terms", "safety", "tools-and-supplies"}
    own = [page for page in pages.split("|") if page not in shared]
    there = any((SMALL_RECORDS / f"{page}.yml").is_file() for page in own)
    return there or not own


def test_the_listed_queries_find_their_pages(home: Page) -> None:
    """At least 95 % of what the manual can answer is found within the rank that was asked for.

    The queries were written for the whole range of vehicles; those for whose pages there is no
    record yet are left out, and counted.
    """
    with QUERIES.open(encoding="utf-8") as file:
        written = list(csv.DictReader(file))
    queries = [query for query in written if answerable(query["pages"])]
    assert len(queries) >= 40
    print(f"{len(written) - len(queries)} queries ask for pages that are not written yet")
    asked(home, "crank")
    found: list[list[str]] = home.evaluate(
        """async (queries) => {
          const urls = (query) => {
            const box = document.querySelector(".home-finder input");
            box.value = query;
            box.dispatchEvent(new Event("input"));
            return Array.from(document.querySelectorAll(".home-finder .hits a"),
              (link) => new URL(link.href).pathname);
          };
          return queries.map(urls);
        }""",
        [query["query"] for query in queries],
    )
    missed = []
    for query, urls in zip(queries, found, strict=True):
        near = [url.lstrip("/").removesuffix(".html") for url in urls[: int(query["within"])]]
        if not set(near) & set(query["pages"].split("|")):
            missed.append(f"{query['query']}: {', '.join(near) or 'nothing'}")
    share = 1 - len(missed) / len(queries)
    print(f"{share:.1%} of {len(queries)} queries found", *missed, sep="\n  ")
    assert share >= LEAST_SHARE, "\n".join(missed)


def test_nothing_is_fetched_until_the_box_is_used(
    desk_page: Watch, site_server: StaticServer
) -> None:
    """A page alone asks for no index and no part of the search but its door; focus asks once."""
    page = desk_page("light")
    page.goto(site_server.url("index.html"))
    page.wait_for_load_state("networkidle")
    before = [url.rpartition("/")[2] for url in desk_page.requests]
    assert [name for name in before if "search" in name] == []
    asked(page, "battery")
    page.locator(BOX).blur()
    page.locator(BOX).focus()
    after = [url.rpartition("/")[2] for url in desk_page.requests][len(before) :]
    assert after == ["search-words.js", "search-unpack.js", "search-rank.js", "search-index.js"]


@pytest.mark.parametrize("way", ["root", "sub-path", "folder", "offline"])
def test_it_finds_from_everywhere(
    way: str, phone_page: Watch, site_server: StaticServer, sub_path_server: StaticServer,
    site_dir: Path,
) -> None:  # fmt: skip
    """From a host, under a path, from a folder on a stick and with the network gone again."""
    page = phone_page("dark")
    address = "codes/p0335.html"
    page.goto({
        "root": site_server.url(address), "sub-path": sub_path_server.url(address),
        "folder": (site_dir / address).as_uri(), "offline": site_server.url(address),
    }[way])  # fmt: skip
    page.locator(".finder-open").click()
    expect(page.locator("#finder-text")).to_be_focused()
    if way == "offline":
        page.locator("#finder-text").fill("b")
        expect(page.locator("#finder .hits a").first).to_be_visible()
        page.context.set_offline(True)
    page.locator("#finder-text").fill("335")
    first = page.locator("#finder .hits a").first
    expect(first).to_contain_text("P0335")
    expect(first.locator(".hit-kind")).to_have_text("Fault code")
    expect(first.locator(".hit-on")).to_contain_text("Corrie 1.2")
    page.context.set_offline(False)
    page.locator("#finder-text").fill("winding resistance")
    expect(first).to_contain_text("esistance")
    first.click()
    expect(page.locator("h1")).to_contain_text("esistance")
    assert page.url.endswith("tests/winding-resistance.html")


def test_the_keyboard_alone_reaches_a_hit(home: Page, site_server: StaticServer) -> None:
    """Arrows walk the hits and come back, Escape returns and empties, Enter opens the best."""
    titles = asked(home, "crank")
    home.locator(BOX).focus()
    home.keyboard.press("ArrowDown")
    home.keyboard.press("ArrowDown")
    expect(home.locator(HITS).nth(1)).to_be_focused()
    home.keyboard.press("ArrowUp")
    home.keyboard.press("ArrowUp")
    expect(home.locator(BOX)).to_be_focused()
    home.keyboard.press("ArrowDown")
    home.keyboard.press("Escape")
    expect(home.locator(BOX)).to_be_focused()
    home.keyboard.press("Escape")
    expect(home.locator(BOX)).to_have_value("")
    expect(home.locator(HITS)).to_have_count(0)
    assert titles
    home.keyboard.type("p0336")
    home.keyboard.press("Enter")
    home.wait_for_url("**/codes/p0336.html")


def test_enter_counts_even_before_the_index_is_there(home: Page) -> None:
    """A code typed and sent at once opens its page when the index has come."""
    home.locator(BOX).focus()
    home.keyboard.type("0337")
    home.keyboard.press("Enter")
    home.wait_for_url("**/codes/p0337.html")


def test_the_panel_opens_and_closes(phone_page: Watch, site_server: StaticServer) -> None:
    """The button says whether the panel is open; Escape and Close give it the focus back."""
    page = phone_page("light")
    page.goto(site_server.url("safety.html"))
    opener, panel = page.locator(".finder-open"), page.locator("#finder")
    for close in ("Escape", "button"):
        opener.click()
        expect(opener).to_have_attribute("aria-expanded", "true")
        assert panel.bounding_box() == {**(panel.bounding_box() or {}), "x": 0, "width": 390}
        if close == "Escape":
            page.keyboard.press("Escape")
        else:
            page.locator(".finder-close").click()
        expect(panel).to_be_hidden()
        expect(opener).to_be_focused()
        expect(opener).to_have_attribute("aria-expanded", "false")


def test_hits_are_spoken_and_named(home: Page) -> None:
    """The count and the best hit are read out; the box has a name; the hits are links in a list."""
    asked(home, "335")
    status = home.locator(".home-finder").get_by_role("status")
    expect(status).to_contain_text("P0335")
    expect(status).to_contain_text("Fault code")
    expect(home.get_by_role("searchbox", name="Complaint, code or part")).to_be_visible()
    tree = home.locator(".home-finder").aria_snapshot()
    assert "- list:" in tree and '- link "P0335' in tree
    home.locator(BOX).fill("qqqqzzzz")
    expect(status).to_contain_text("Nothing found")


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_everything_to_tap_is_large(
    scheme: Any, phone_page: Watch, site_server: StaticServer
) -> None:
    """Button, box, Close and every hit measure at least 48 pixels each way."""
    page = phone_page(scheme)
    page.goto(site_server.url("codes/p0335.html"))
    page.locator(".finder-open").click()
    page.locator("#finder-text").fill("crank")
    expect(page.locator("#finder .hits a").first).to_be_visible()
    parts = page.locator(".finder-open, #finder input, .finder-close, #finder .hits a").all()
    assert len(parts) > 6
    for part in parts:
        size = part.bounding_box() or {"width": 0, "height": 0}
        assert size["width"] >= 48 and size["height"] >= 48
    assert page.evaluate("document.documentElement.scrollWidth") <= 390


def test_without_scripts_there_is_no_box(phone_page: Watch, site_server: StaticServer) -> None:
    """A reader without scripts sees neither box nor button, and the lists of the page serve."""
    page = phone_page("light", java_script_enabled=False)
    page.goto(site_server.url("index.html"))
    assert page.locator(".finder:visible, .finder-open:visible").count() == 0
    assert page.locator(".tiles a:visible").count() > 0


def test_both_languages_split_words_alike(home: Page) -> None:
    """The page's script splits every text of the index as the generator does."""
    asked(home, "crank")
    texts = [
        text
        for entry in big.entries(1000)
        for text in (entry.title, *entry.names, *entry.said, entry.text)
    ] + ["won’t A/C E.G.R. 36−1 Café ½ 20 °C, N·m Ω µF ﬁlter"]
    found = home.evaluate("(texts) => texts.map(window.fettleWords.words)", texts)
    assert found == [words(text) for text in texts]


def test_every_hit_leads_to_a_page_with_its_anchor() -> None:
    """Each entry's address is a page of the site, and its anchor stands on that page."""
    site = make(big.book().kb, [])
    html = {page.url: page.html for page in site.pages}
    for entry in search.entries(big.book()):
        page, _, anchor = entry.target.partition("#")
        assert page in html, entry.target
        assert not anchor or f'id="{anchor}"' in html[page], entry.target


@pytest.fixture(scope="module")
def bench(browser: Browser, site_dir: Path) -> Iterator[Page]:
    """Give a page that holds the search's scripts and nothing else, on a slow processor."""
    page = browser.new_page()
    for part in ("words", "unpack", "rank"):
        page.add_script_tag(path=site_dir / f"assets/search-{part}.js")
    page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWER})
    yield page
    page.close()


@pytest.mark.parametrize("count", sorted(LIMIT_MS))
def test_it_answers_while_one_types(count: int, bench: Page) -> None:
    """On a processor four times slower every key is answered within its limit, with room to spare.

    Every beginning of eight queries is typed, as keys come; the median is held to the limit and
    the slowest key to the limit with room for a busy machine.
    """
    bench.add_script_tag(content=big.index(count))
    typed = ["P0335", "turns over but wont fire", "crankshft sensor", "coolant temperature sensor",
             "voltage drop", "haulden", "no power uphill", "s"]  # fmt: skip
    keys = [text[:n] for text in typed for n in range(1, len(text) + 1)]
    found = json.loads(bench.evaluate(
        """(keys) => {
          const began = performance.now();
          const index = new window.fettleSearch.Index(window.fettleIndex);
          while (!index.advance(performance.now() + 24));
          window.fettleSearch.find(index, "warm up");
          const ready = performance.now() - began;
          const times = keys.map((key) => {
            const start = performance.now();
            window.fettleSearch.find(index, key);
            return performance.now() - start;
          });
          return JSON.stringify({ ready, times, count: index.entries.length });
        }""",
        keys,
    ))  # fmt: skip
    times = sorted(found["times"])
    median, most = statistics.median(times), times[-1]
    print(f"{count} entries: ready {found['ready']:.0f} ms, median {median:.1f} ms, "
          f"95 % {times[len(times) * 95 // 100]:.1f} ms, slowest {most:.1f} ms")  # fmt: skip
    assert found["count"] == count
    assert median <= LIMIT_MS[count]
    assert most <= LIMIT_MS[count] * ROOM
