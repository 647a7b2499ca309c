"""A manual that changes under a copy: newer sites made from a built one, and a way to look."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

from playwright.sync_api import Page, expect

from generator.pages import routes
from generator.publish import folder, packs
from generator.publish.files import Made
from generator.publish.notes import Notes

GONE = "procedures/repair-wiring.html"
TOLD = "procedures/charge-battery.html"
CAUTIONED = "tests/battery-rest.html"
WORDED = "terms.html"
"""Pages of the demonstration that the newer manual takes away, withdraws with a reason at the same
address, warns of, and words anew."""

MARK = b"<p>Said anew.</p>"
TAKE_MS = 20_000


def laid_out(site: Path, into: Path, **changes: bool) -> Path:
    """Lay a copy of a built site out, or a newer one with these changes, packed by our steps.

    `withdrawn` takes a page away, `told` says of one that it was withdrawn, `cautions` changes
    those of one, `words` changes the text of another, `look` a style sheet.
    """
    found = {
        path.relative_to(site).as_posix(): path.read_bytes()
        for path in site.rglob("*")
        if path.is_file()
    }
    told = json.loads(found[packs.MANIFEST])["pages"]
    cautions = {address: entry[1] for address, entry in told.items() if len(entry) == 2}
    found = {
        address: content
        for address, content in found.items()
        if packs.goes_in(address) or address == packs.WORKER
    }
    if changes.get("withdrawn"):
        del found[GONE], cautions[GONE]
    if changes.get("told"):
        cautions[TOLD] = "withdrawn"
    for change, address in (("cautions", CAUTIONED), ("words", WORDED)):
        if changes.get(change):
            found[address] = found[address].replace(b"</h1>", b"</h1>" + MARK, 1)
            assert MARK in found[address]
    if changes.get("cautions"):
        cautions[CAUTIONED] = "changed"
    if changes.get("look"):
        found["assets/screen.css"] += b"\n"
    made = {address: Made.of(content) for address, content in found.items()}
    made[routes.CAUTIONS] = Made.of(json.dumps(cautions).encode())
    finished = folder.step(packs.step(made, Notes()), Notes())
    for path in into.rglob("*"):
        if path.is_file():
            path.unlink()
    for address, file in finished.items():
        (into / address).parent.mkdir(parents=True, exist_ok=True)
        (into / address).write_bytes(file.read())
    return into


class Network:
    """A network between the servers of this run and a page, which goes and comes back."""

    def __init__(self) -> None:
        self._lost = False
        self._goes: Callable[[str], bool] = lambda path: False

    def goes(self, when: Callable[[str], bool]) -> None:
        """Go at the first request, by its path, for which this holds; all after it are lost."""
        self._goes = when

    def comes_back(self) -> None:
        """Carry every request again."""
        self._goes, self._lost = lambda path: False, False

    def carries(self, path: str) -> bool:
        """Say whether a request gets through."""
        self._lost = self._lost or self._goes(path)
        return not self._lost


def take(page: Page, key: str = ".take-go") -> None:
    """Tap the key that fetches, and wait until it is done."""
    page.locator(key).click()
    expect(page.locator(".take-bar")).to_be_hidden(timeout=TAKE_MS)
    expect(page.locator(".take-forget")).to_be_visible(timeout=TAKE_MS)


def kept(page: Page) -> dict[str, Any]:
    """Give what the device keeps: the names of all files, and the index."""
    found: dict[str, Any] = page.evaluate(
        """async () => {
          const out = { names: [], index: null };
          for (const name of await caches.keys()) {
            const cache = await caches.open(name);
            for (const { url } of await cache.keys()) {
              out.names.push(url.slice(url.lastIndexOf("/") + 1));
              if (url.endsWith("/kept/index")) {
                out.index = await (await cache.match(url)).json();
              }
            }
          }
          out.names.sort();
          return out;
        }"""
    )
    return found
