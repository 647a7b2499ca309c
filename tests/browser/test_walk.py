"""The main job, walked as a reader would: complaint, test, finding, replacement, proof."""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path
from urllib.parse import urlsplit

import pytest
from playwright.sync_api import Locator, Page, expect

from tests.browser.conftest import Scheme, Watch
from tests.browser.hands import Hand, Keys, Thumb
from tests.browser.static_server import StaticServer
from tests.browser.taken_along import TAKE_MS
from tests.browser.test_cautions import is_dark
from tests.browser.test_every_page import SIDEWAYS
from tests.browser.test_policy import watched


@dataclass(frozen=True, slots=True)
class Walk:
    """A complaint of the manual, and what is read on the way from it to the proof."""

    vehicle: str
    complaint: str
    test: str
    faulty: dict[str, str]
    """Field of the test's first check, by the end of its id: what is typed."""
    word: str
    """The verdict on it."""
    part: str
    proof: str
    sound: dict[str, str]


# 1.3 kohm is far above a winding of 860 ohm; at 200 turns a minute 0.9 V is the nominal output.
INDUCTIVE = Walk(
    "corrie-1-2", "Cranks but does not start", "winding-resistance",
    {"reading": "1.3k", "temperature": "20"}, "High",
    "crank-sensor-inductive", "output-while-cranking", {"reading": "0.9", "engine_speed": "200"},
)  # fmt: skip
# A pull-up of five volts that has fallen to three, and one that stands at five.
HALL = Walk(
    "corrie-1-6", "Dies when hot", "heat-and-wiggle-hall", {"reading": "3"}, "Low",
    "crank-sensor-hall", "square-wave-on-scope", {"reading": "5"},
)  # fmt: skip

# Each hand, each scheme and each place a manual is read from, and each of them more than once.
WAYS: list[tuple[type[Thumb] | type[Keys], Scheme, str, Walk]] = [
    (Thumb, "light", "served", INDUCTIVE),
    (Keys, "dark", "served", HALL),
    (Thumb, "dark", "server stopped", INDUCTIVE),
    (Keys, "light", "server stopped", INDUCTIVE),
    (Keys, "dark", "folder", INDUCTIVE),
    (Thumb, "light", "under a path", HALL),
]


SETTLED_MS = 500
"""After the last key the verdict is given once more, with all that was typed."""


def arrive(page: Page, address: str, scheme: Scheme) -> None:
    """See that the page one went for is there, in its scheme and no wider than the screen."""
    page.wait_for_url(re.compile(re.escape(address)))
    expect(page.locator("button.scheme")).to_be_visible()
    assert is_dark(page) == (scheme == "dark")
    assert page.evaluate(SIDEWAYS) <= 0, address


def judge(page: Page, hand: Hand, reading: dict[str, str], word: str) -> Locator:
    """Type a reading and its conditions at the first value; give the verdict with its way on."""
    box = page.locator("[data-check]:visible").first
    for field, text in reading.items():
        hand.write(box.locator(f"input[id$=-{field}]"), text)
    box.page.wait_for_timeout(SETTLED_MS)
    expect(box.locator(".check-word")).to_have_text(word)
    return box.locator(".check-result")


@pytest.mark.parametrize(
    ("device", "scheme", "place", "walk"), WAYS,
    ids=[f"{device.__name__}-{scheme}-{place}" for device, scheme, place, _ in WAYS],
)  # fmt: skip
def test_from_complaint_to_proof(
    device: type[Thumb] | type[Keys],
    scheme: Scheme,
    place: str,
    walk: Walk,
    request: pytest.FixtureRequest,
    site_dir: Path,
) -> None:
    """Shows the way from the complaint to a repair that a reading proves, however one reads.

    Each page is opened by what stands on the one before it.
    """
    watch: Watch = request.getfixturevalue("phone_page" if device is Thumb else "desk_page")
    page = watched(watch, scheme)
    hand: Hand = device(page)
    if place == "folder":
        page.goto((site_dir / "index.html").as_uri())
    elif place == "under a path":
        page.goto(request.getfixturevalue("sub_path_server").url())
    elif place == "served":
        page.goto(request.getfixturevalue("site_server").url())
    else:
        server: StaticServer = request.getfixturevalue("serve")(site_dir)
        page.goto(server.url("offline/index.html"))
        hand.press(page.locator(".take-go"))
        expect(page.locator(".take-forget")).to_be_visible(timeout=TAKE_MS)
        server.stop()
        page.goto(server.url())
    hand.press(page.locator(".reader-vehicle"))
    hand.press(page.locator(f"[data-vehicle='{walk.vehicle}']"))
    hand.press(page.get_by_role("link", name=re.compile(walk.complaint)).first)
    arrive(page, "symptoms/", scheme)
    order = page.locator(f"#on-{walk.vehicle} ol.order")
    assert order.locator("> li").count() >= 5
    hand.press(order.locator(f"a[href*='tests/{walk.test}.html']"))
    arrive(page, f"tests/{walk.test}.html", scheme)
    hand.press(judge(page, hand, walk.faulty, walk.word).locator(".check-next a").first)
    found = page.locator(f"#{urlsplit(page.url).fragment}")
    expect(found).to_be_in_viewport()
    job = f"replacements/replace-{walk.part}.html"
    condemned = found.locator("xpath=descendant-or-self::*[contains(@class, 'answer-condemns')]")
    hand.press(condemned.locator(f"a[href*='{job}']").first)
    arrive(page, job, scheme)
    expect(page.locator("li.step .signal").first).to_be_visible()
    hand.press(page.locator("#step-1 > .tick"))
    expect(page.locator("#step-2")).to_have_attribute("aria-current", "step")
    hand.press(page.locator(f"#verify a[href*='tests/{walk.proof}.html']"))
    arrive(page, f"tests/{walk.proof}.html", scheme)
    judge(page, hand, walk.sound, "In limits")


def test_a_lost_focus_is_noticed(desk_page: Watch, site_server: StaticServer) -> None:
    """A place that does not show that the keyboard stands on it fails the walk."""
    page = desk_page()
    page.goto(site_server.url("terms.html"))
    page.evaluate("document.querySelector('button.scheme').style.outline = '0'")
    with pytest.raises(AssertionError, match="nobody sees"):
        Keys(page).reach(page.locator("h1"))


def test_no_page_is_a_dead_end(phone_page: Watch, site_server: StaticServer) -> None:
    """Shows that every outcome of every test says where to go, in a link or in plain words."""
    page = phone_page("light", java_script_enabled=False)
    page.goto(site_server.url("tests/index.html"))
    tests = page.locator("a.tile").evaluate_all("links => links.map(link => link.href)")
    assert len(tests) >= 15
    for address in tests:
        page.goto(address)
        answers: list[list[str]] = page.locator(".answer").evaluate_all(
            "all => all.map(one => Array.from(one.querySelectorAll('.onward'), at => at.innerText))"
        )
        for onward in answers:
            assert onward and all(len(text.strip()) > 10 for text in onward), address


def test_the_box_stands_before_the_command(phone_page: Watch, site_server: StaticServer) -> None:
    """Shows that a panel is the first thing in its step, in sight, also under a deep link."""
    page = phone_page("dark")
    page.goto(site_server.url("replacements/replace-crank-sensor-inductive.html"))
    steps = page.locator("li.step").filter(has=page.locator(".signal"))
    assert steps.count() >= 3
    for number in range(steps.count()):
        step = steps.nth(number)
        first = step.evaluate("step => step.firstElementChild.className")
        assert "signal" in first
        box = step.locator(".signal").bounding_box()
        command = step.locator(".command").bounding_box()
        assert box and command and box["y"] + box["height"] <= command["y"] + 1
    anchor = steps.nth(1).get_attribute("id")
    page.goto(f"{page.url.split('#')[0]}#{anchor}")
    top = steps.nth(1).locator(".signal").bounding_box()
    assert top and -1 <= top["y"] < 844, "the deep link shows the panel"


def test_pages_stand_without_scripts(phone_page: Watch, site_server: StaticServer) -> None:
    """Shows that tables, panels, figures and links are there with scripts off."""
    page = phone_page("light", java_script_enabled=False)
    page.goto(site_server.url("tests/winding-resistance.html"))
    for selector in (".signal", "table.limits", "svg[role='img']", ".answer .onward a"):
        expect(page.locator(selector).first).to_be_visible()
