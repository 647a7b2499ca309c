"""In a real browser: every DANGER and WARNING box is met before its command, however one comes."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page

from tests.browser.conftest import Scheme, Watch
from tests.browser.static_server import StaticServer
from tests.pages.test_stop import RESERVED, little

LOOK = (Path(__file__).parent / "panels.js").read_text("utf-8")
KINDS = {"tests", "replacements", "procedures"}
"""The templates that show steps."""

NARROW: dict[str, Any] = {"viewport": {"width": 320, "height": 640}, "device_scale_factor": 1}
SCHEMES: tuple[Scheme, ...] = ("light", "dark")
Steps = list[dict[str, Any]]


@pytest.fixture(scope="module")
def guarded(site_dir: Path) -> dict[str, Steps]:
    """Give each page that has steps whose box says DANGER or WARNING, with those steps."""
    jobs = json.loads((site_dir / "audit.json").read_text("utf-8"))["jobs"]
    found = {
        job["page"]: [
            {"anchor": step["anchor"], "word": box["word"], "hazards": len(box["hazards"])}
            for step in job["steps"]
            for box in step["boxes"]
            if box["word"] in ("DANGER", "WARNING")
        ]
        for job in jobs
    }
    return {page: steps for page, steps in found.items() if steps}


def faults_on(page: Page, steps: Steps, where: str) -> list[str]:
    """Give the faults of a page as it is now, each with where and how it was met."""
    return [f"{where} {fault}" for fault in page.evaluate(LOOK, steps)]


def is_dark(page: Page) -> bool:
    """Say whether the sheet is dark, to see that the scheme is really the one asked for."""
    ground = "getComputedStyle(document.querySelector('.sheet')).backgroundColor"
    dark: bool = page.evaluate(f"{ground}.match(/\\d+/g).every(part => part < 128)")
    return dark


def test_every_kind_of_page_has_such_steps(guarded: dict[str, Steps]) -> None:
    """Tests, replacements and procedures all carry boxes, so each template is looked at."""
    assert {page.split("/")[0] for page in guarded} == KINDS
    assert sum(map(len, guarded.values())) >= 50


def test_each_box_is_met_first_at_320_px_and_on_paper(
    phone_page: Watch, site_server: StaticServer, guarded: dict[str, Steps]
) -> None:
    """With scripts on: first in its step, in sight, readable, where a deep link lands; in print."""
    page, faults = phone_page(**NARROW), []
    for address, steps in guarded.items():
        page.goto(site_server.url(address))
        assert page.evaluate("innerWidth") == 320
        for scheme in SCHEMES:
            page.emulate_media(media="screen", color_scheme=scheme)
            assert is_dark(page) == (scheme == "dark")
            faults += faults_on(page, steps, f"{address} {scheme}")
            page.emulate_media(media="print", color_scheme=scheme)
            faults += faults_on(page, steps, f"{address} {scheme} in print")
    assert faults == []


def test_each_box_is_met_first_with_scripts_off(
    phone_page: Watch, site_server: StaticServer, guarded: dict[str, Steps]
) -> None:
    """Without a single script the same holds, under deep links too."""
    page, faults = phone_page(**NARROW, java_script_enabled=False), []
    for address, steps in guarded.items():
        page.goto(site_server.url(address))
        assert page.locator(".tick, .ask").count() == 0
        for scheme in SCHEMES:
            page.emulate_media(color_scheme=scheme)
            assert is_dark(page) == (scheme == "dark")
            faults += faults_on(page, steps, f"{address} {scheme}")
    assert faults == []


@pytest.mark.parametrize("scheme", SCHEMES)
def test_the_box_of_a_reserved_step_is_met_before_its_stop(
    scheme: Scheme, phone_page: Watch, site_server: StaticServer
) -> None:
    """A DANGER of reserved work, in the frame of the site: its box first, then the word to stop."""
    energy, act, entry, _who = next(one for one in RESERVED if one[0] == "high-voltage")
    page = phone_page(scheme, **NARROW)
    page.goto(site_server.url("procedures/index.html"))
    page.evaluate(
        "html => { document.querySelector('.sheet').innerHTML = html }",
        little(energy, act, entry).html,
    )
    boxes = page.locator("#step-3 .signal-body").count()
    steps = [{"anchor": "step-3", "word": "DANGER", "hazards": boxes}]
    assert boxes >= 1 and page.evaluate(LOOK, steps) == []
    assert page.locator("#step-3 > .command").inner_text().split("\n")[-1].startswith("Stop.")
    assert page.evaluate("document.documentElement.scrollWidth") <= 320


@pytest.mark.parametrize("kind", sorted(KINDS))
def test_a_deep_link_from_elsewhere_lands_on_the_box(
    kind: str, phone_page: Watch, site_server: StaticServer, guarded: dict[str, Steps]
) -> None:
    """The last such step of a page, opened cold by its address, shows its word on the screen."""
    address, steps = next((a, s) for a, s in guarded.items() if a.startswith(kind))
    page = phone_page()
    page.goto(f"{site_server.url(address)}#{steps[-1]['anchor']}")
    top = page.locator(f"#{steps[-1]['anchor']} .signal-word").bounding_box()
    assert top and 0 <= top["y"] < 844 - top["height"]


@pytest.mark.parametrize(
    ("harm", "said"),
    [
        ("panel.style.display = 'none'", "cannot be seen"),
        ("panel.style.opacity = '0'", "cannot be seen"),
        ("panel.querySelector('li').style.visibility = 'hidden'", "cannot be seen"),
        ("panel.style.marginLeft = '400px'", "cannot be seen"),
        ("step.append(panel)", "not the first thing"),
        ("const d = document.createElement('details'); panel.replaceWith(d); d.append(panel);"
         "d.className = 'signal'", "cannot be seen"),
        ("panel.querySelector('.signal-word').style.color = '#d60'", "too little contrast"),
        ("panel.style.borderColor = 'transparent'; panel.style.borderWidth = '0'", "edge is lost"),
        ("panel.style.position = 'relative'; panel.style.top = '500px'", "command is not below"),
        ("panel.querySelector('.signal-word').textContent = 'NOTE'", "it says NOTE"),
        ("const s = document.createElement('div'); document.body.append(s);"
         "s.style.cssText = 'position:fixed;inset:0;background:#fff'", "does not land"),
    ],
)  # fmt: skip
def test_a_spoilt_box_is_noticed(
    harm: str, said: str, phone_page: Watch, site_server: StaticServer, guarded: dict[str, Steps]
) -> None:
    """The look at the panels sees each way in which one could be lost."""
    address, steps = next((a, s) for a, s in guarded.items() if s)
    page = phone_page(**NARROW)
    page.goto(site_server.url(address))
    assert page.evaluate(LOOK, steps[:1]) == []
    page.evaluate(
        f"id => {{ const step = document.getElementById(id);"
        f"const panel = step.firstElementChild; {harm} }}",
        steps[0]["anchor"],
    )
    assert any(said in fault for fault in page.evaluate(LOOK, steps[:1]))
