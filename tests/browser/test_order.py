"""Following the order by tapping: offline, held to the generator's own answers, and undone."""

from __future__ import annotations

import json
from random import Random
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from generator.diagnosis import Evidence, order
from generator.diagnosis.evidence import causes_on, opening_shares
from generator.diagnosis.order import opening_tests
from generator.diagnosis.policy import ByRatio, clear_line
from generator.diagnosis.state import Board
from generator.diagnosis.survey import survey
from generator.diagnosis.tables import restored
from generator.records.kinds.knowledge import Symptom
from generator.records.kinds.work import Test
from tests.browser.conftest import Watch
from tests.browser.static_server import StaticServer
from tests.demo import demonstration

TOLERANCE = 1e-9
"""Shares are sums and products of the same doubles; only the order of the operations differs."""

WALKS = {
    "cuts-out-hot": ("corrie-1-6", "heat-and-wiggle-hall", "Hall crank sensor"),
    "cranks-no-start": ("corrie-1-2", "winding-resistance", "Inductive crank sensor"),
    "stumbles-and-tach-jumps": (
        "corrie-1-2", "harness-under-load-inductive", "Crank sensor wiring or connector",
    ),
}  # fmt: skip
"""Complaint: the vehicle, the test that proves it, the cause."""

STARTS = [
    (symptom.id, vehicle)
    for symptom in demonstration().all("symptoms", Symptom)
    for vehicle in symptom.applies_to
]


def opened(page: Page, server: StaticServer, complaint: str) -> None:
    """Open a complaint's page and wait until it can be tapped."""
    page.goto(server.url(f"symptoms/{complaint}.html"))
    expect(page.locator(".tap-next").first).to_be_visible()


@pytest.mark.parametrize("complaint", WALKS)
def test_a_complaint_is_followed_to_its_cause_offline(
    complaint: str, phone_page: Watch, site_server: StaticServer
) -> None:
    """Tapping what each test finds leads to the proved cause and its work, without a network."""
    vehicle, proof, cause = WALKS[complaint]
    page = phone_page("light")
    opened(page, site_server, complaint)
    page.context.set_offline(True)
    part = page.locator(f"#on-{vehicle}")
    for _ in range(20):
        test = part.locator(".tap-next").get_attribute("data-test")
        if test == proof:
            break
        sound = part.locator(".tap-next button[data-says='clear']")
        (sound if sound.count() else part.locator(".tap-next button")).first.tap()
    part.locator(".tap-next button[data-says='proves']").first.tap()
    expect(part.locator(".tap-end[data-how='proved'] .tap-verdict")).to_contain_text(cause)
    assert part.locator(".tap-end a[href]").count() >= 1, "the proof leads to its work"
    assert page.evaluate("document.documentElement.scrollWidth") <= 390, "no sideways scrolling"


def test_every_button_is_wide_enough_for_a_thumb(
    phone_page: Watch, site_server: StaticServer
) -> None:
    """No button is lower than 44 pixels."""
    page = phone_page("light")
    opened(page, site_server, "cuts-out-hot")
    heights = page.locator(".tapping button:visible").evaluate_all(
        "buttons => buttons.map(button => button.getBoundingClientRect().height)"
    )
    assert len(heights) >= 10
    assert min(heights) >= 44


def test_the_path_is_kept_copied_and_undone(phone_page: Watch, site_server: StaticServer) -> None:
    """A path outlives a look at a test's page, goes to the job card as text, and is undone."""
    page = phone_page("light", permissions=["clipboard-read", "clipboard-write"])
    opened(page, site_server, "cuts-out-hot")
    part = page.locator("#on-corrie-1-6")
    first = part.locator(".tap-next").get_attribute("data-test")
    part.get_by_role("button", name="Code P0335 stored").tap()
    part.locator(".tap-next button[data-says='clear']").first.tap()
    second = part.locator(".tap-next").get_attribute("data-test")
    assert second != first
    part.locator(".tap-next a").first.tap()
    page.wait_for_url("**/tests/**")
    page.go_back()
    expect(part.locator(".tap-path li")).to_have_count(1)
    assert part.locator(".tap-next").get_attribute("data-test") == second
    part.get_by_role("button", name="Copy for the job card").tap()
    expect(part.get_by_role("button", name="Copied")).to_be_visible()
    card = page.evaluate("navigator.clipboard.readText()")
    assert "Dies when hot" in card and "Corrie 1.6" in card and "P0335" in card
    part.get_by_role("button", name="Undo the last answer").tap()
    expect(part.locator(".tap-path")).to_have_count(0)
    part.get_by_role("button", name="Begin again").tap()
    assert part.locator(".tap-next").get_attribute("data-test") == first


def test_without_scripts_the_order_and_its_links_serve(
    phone_page: Watch, site_server: StaticServer
) -> None:
    """With scripts off the static order stands and nothing empty is shown."""
    page = phone_page("light", java_script_enabled=False)
    page.goto(site_server.url("symptoms/cuts-out-hot.html"))
    expect(page.locator(".tapping").first).to_be_hidden()
    assert page.locator("#on-corrie-1-6 ol.order > li a").count() >= 5


@pytest.mark.parametrize(("complaint", "vehicle"), STARTS)
def test_the_kernel_is_held_to_the_generator(
    complaint: str, vehicle: str, phone_page: Watch, site_server: StaticServer
) -> None:
    """After random findings the browser's shares and order are those that Python gives."""
    page = phone_page("light")
    opened(page, site_server, complaint)
    tables: dict[str, Any] = json.loads(
        page.locator(f"#on-{vehicle} .tapping").get_attribute("data-tables") or ""
    )
    random = Random(8)
    paths: list[list[tuple[str, int]]] = [[]]
    for _ in range(40):
        made = random.sample(sorted(tables["tests"]), random.randint(1, 4))
        paths.append([(i, random.randrange(len(tables["tests"][i]["outcomes"]))) for i in made])
    answers = page.evaluate(
        """([tables, paths]) => paths.map(path => {
            const { shares, contradictions } = fettleOrder.weigh(tables, [], path);
            const made = path.map(([id]) => id);
            return { shares, contradictions, order: fettleOrder.ranked(tables, shares, made) };
        })""",
        [tables, paths],
    )
    for path, answer in zip(paths, answers, strict=True):
        assert answer["contradictions"] == []
        shares, ranked = by_python(complaint, vehicle, path)
        assert answer["shares"] == pytest.approx(shares, abs=TOLERANCE), path
        assert answer["order"] == ranked, path


def by_python(
    complaint: str, vehicle: str, path: list[tuple[str, int]]
) -> tuple[list[float], list[str]]:
    """Give the shares and the order by ratio as the generator works them out."""
    kb = demonstration()
    symptom = kb.get("symptoms", complaint, Symptom)
    causes = causes_on(symptom, vehicle)
    opening = opening_tests(kb, symptom, vehicle)
    found = []
    for id_, n in path:
        found.append((id_, kb.get("tests", id_, Test).outcomes[n].finding))
    shares = opening_shares(kb, symptom, vehicle, opening, Evidence(found=tuple(found)))
    done = {*(id_ for id_, _ in path), *(test.id for test in opening)}
    board = Board(restored(survey(kb, causes, shares, vehicle, done)).search)
    ids = [probe.id for probe in board.search.probes]
    return list(shares), [ids[state.last] for state in clear_line(board, ByRatio(board))[1:]]


@pytest.mark.parametrize(("complaint", "vehicle"), STARTS)
def test_the_first_suggestion_is_the_page_s_own(
    complaint: str, vehicle: str, phone_page: Watch, site_server: StaticServer
) -> None:
    """While nothing is tapped, and while all is found good, the browser keeps the printed order."""
    page = phone_page("light")
    opened(page, site_server, complaint)
    kb = demonstration()
    places = order(kb, kb.get("symptoms", complaint, Symptom), vehicle).places
    part = page.locator(f"#on-{vehicle}")
    for place in places[:3]:
        assert part.locator(".tap-next").get_attribute("data-test") == place.test.id
        sound = part.locator(".tap-next button[data-says='clear']")
        if not sound.count():
            break
        sound.first.tap()
