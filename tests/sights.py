"""Pictures of the manual for docs/screens/: ``python -m tests.sights`` after the site is built.

Eight screens, on a phone and at a desk, light and dark, each brought about as a reader would.
"""

from __future__ import annotations

import io
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

from PIL import Image
from playwright.sync_api import Page, sync_playwright

from tests.browser.conftest import DESK, FLAGS, PHONE
from tests.browser.find_browser import find_browser
from tests.browser.static_server import StaticServer
from tests.demonstration import ROOT

OUT = ROOT / "docs" / "screens"
LIMIT_BYTES = 2_500_000
QUALITY = 60
DEVICES: dict[str, dict[str, Any]] = {
    "phone": {**PHONE, "device_scale_factor": 1.5},
    "desk": DESK,
}


def judged(page: Page) -> None:
    """Type a reading of the winding at twenty degrees, and bring the verdict into sight."""
    box = page.locator("[data-check]").first
    box.locator("input[id$=-temperature]").fill("20")
    box.locator("input[id$=-reading]").fill("1.3k")
    box.locator(".check-word").wait_for()
    box.locator(".check-main").evaluate("line => line.scrollIntoView()")


def searched(page: Page) -> None:
    """Type half a code into the search of the bar."""
    page.locator(".finder-open").click()
    page.locator("#finder-text").fill("335")
    page.locator("#finder .hits a").first.wait_for()


def told(page: Page) -> None:
    """Say that the first test of the order found nothing."""
    page.locator(".tap-next button[data-says='clear']").first.click()
    page.locator(".tapping").first.evaluate("part => part.scrollIntoView()")


def cautioned(page: Page) -> None:
    """Bring the first panel with its step into sight."""
    step = page.locator("li.step").filter(has=page.locator(".signal")).first
    step.evaluate("step => step.scrollIntoView()")


def drawn(page: Page) -> None:
    """Bring the figure into sight."""
    page.locator("svg.fig").first.evaluate("figure => figure.scrollIntoView({block: 'center'})")


def nothing(page: Page) -> None:
    """Leave the page as it opens."""


SIGHTS: dict[str, tuple[str, Callable[[Page], None]]] = {
    "home": ("index.html", nothing),
    "symptom": ("symptoms/cuts-out-hot.html", nothing),
    "diagnosis": ("symptoms/cuts-out-hot.html", told),
    "verdict": ("tests/winding-resistance.html", judged),
    "caution": ("replacements/replace-crank-sensor-inductive.html", cautioned),
    "code": ("codes/p0335.html", nothing),
    "component": ("components/crank-sensor-inductive.html", drawn),
    "search": ("terms.html", searched),
}
"""Name of a picture: the page, and what is done on it first."""


def taken(site: Path) -> dict[str, bytes]:
    """Give every picture of a built site by its file's name."""
    pictures = {}
    server = StaticServer(site)
    server.start()
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=find_browser(), args=FLAGS)
        for device, options in DEVICES.items():
            for scheme in ("light", "dark"):
                for name, (address, act) in SIGHTS.items():
                    page = browser.new_page(**options, color_scheme=scheme)
                    page.goto(server.url(address))
                    act(page)
                    page.wait_for_timeout(300)
                    pictures[f"{name}-{device}-{scheme}.webp"] = packed(page.screenshot())
                    page.close()
        browser.close()
    server.stop()
    return pictures


def packed(shot: bytes) -> bytes:
    """Give a screenshot in a smaller format."""
    out = io.BytesIO()
    Image.open(io.BytesIO(shot)).convert("RGB").save(out, "WEBP", quality=QUALITY, method=6)
    return out.getvalue()


def main(site: Path) -> int:
    """Write the pictures of a built site, unless they have grown out of all measure."""
    pictures = taken(site)
    size = sum(map(len, pictures.values()))
    if size > LIMIT_BYTES:
        print(f"the pictures have {size} bytes, more than {LIMIT_BYTES}", file=sys.stderr)
        return 1
    OUT.mkdir(exist_ok=True)
    for name, content in pictures.items():
        (OUT / name).write_bytes(content)
    print(f"{len(pictures)} pictures, {size} bytes, in {OUT.relative_to(ROOT)}")
    return 0


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1]) if sys.argv[1:] else ROOT / "site"))
