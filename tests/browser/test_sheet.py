"""On paper: the job sheet with its blanks and its code, and what any printed page carries."""

from __future__ import annotations

import io
import json
import re
from pathlib import Path

import pytest
import zxingcpp
from matplotlib import image
from playwright.sync_api import Page, expect

from tests.browser.conftest import Watch
from tests.browser.static_server import StaticServer
from tests.browser.test_cautions import LOOK
from tests.browser.test_job import begin
from tests.browser.test_policy import watched
from tests.browser.test_resume import JOB

TEST = "tests/winding-resistance.html"
COMPLAINT = "symptoms/cuts-out-hot.html"
WRITTEN = "method.html"

# A browser that is driven has no printer: what the page looks like when it asks for one is kept.
PRINTER = "window.print = () => { window.printed = document.documentElement.className; };"
SHOWN = "all => all.filter((one) => one.checkVisibility()).length"
PAGE_OBJECT = re.compile(rb"/Type /Page\b(?!s)")
SIZES = {"A4": (595, 842), "Letter": (612, 792)}


def sheet(page: Page) -> None:
    """Ask for the job sheet of the page that is open, and look at it as it is printed."""
    page.locator(".job-sheet-open").click()
    expect(page.locator("html")).to_have_class(re.compile("job-sheet"))
    assert "job-sheet" in page.evaluate("window.printed")
    page.emulate_media(media="print")


@pytest.fixture
def desk(desk_page: Watch) -> Page:
    """Give a desk's browser without a printer."""
    page = watched(desk_page)
    page.add_init_script(PRINTER)
    return page


def names(page: Page, within: str) -> list[str]:
    """Give what stands over the blanks that are printed in a part of the page."""
    found: list[str] = page.locator(f"{within} .blank").evaluate_all(
        "all => all.filter((one) => one.checkVisibility()).map((one) => one.firstChild.data)"
    )
    return found


@pytest.mark.parametrize("address", [TEST, JOB])
def test_every_caution_and_step_is_on_the_sheet(
    address: str, desk: Page, site_server: StaticServer, site_dir: Path
) -> None:
    """As the audit lists them: each step with its box above it, each expected value, each blank."""
    jobs = json.loads((site_dir / "audit.json").read_text("utf-8"))["jobs"]
    steps = next(job for job in jobs if job["page"] == address)["steps"]
    boxes = [
        {"anchor": step["anchor"], "word": box["word"], "hazards": len(box["hazards"])}
        for step in steps
        for box in step["boxes"]
    ]
    assert boxes
    desk.goto(site_server.url(address))
    begin(desk, "KQ 12", mileage="84 200", said="Cuts out when hot", vehicle="corrie-1-2")
    sheet(desk)
    assert desk.evaluate(LOOK, boxes) == []
    assert desk.locator("li.step > .command").evaluate_all(SHOWN) == len(steps)
    summary = desk.locator("#cautions .hazards > li")
    assert summary.evaluate_all(SHOWN) == summary.count() > 3
    values = desk.locator(".sheet .reading")
    assert values.evaluate_all(SHOWN) == values.count() > 0
    for text in ("KQ 12", "84 200", "Cuts out when hot", "Corrie 1.2"):
        expect(desk.locator(".sheet-job")).to_contain_text(text)
    assert names(desk, ".sheet-job")[-3:] == ["Vehicle identification number", "Date", "Done by"]
    assert "Instrument, its number" in names(desk, ".sheet-end")
    assert {"Reading before", "Reading after"} <= set(names(desk, ".sheet"))
    for hidden in (".job", ".tick", ".check", "#used-by"):
        assert desk.locator(hidden).evaluate_all(SHOWN) == 0, hidden


def test_each_torque_is_signed_for(desk: Page, site_server: StaticServer) -> None:
    """At the step that tightens: what it was tightened to, with which tool, by whom."""
    desk.goto(site_server.url(JOB))
    sheet(desk)
    step = desk.locator("li.step", has_text="N·m").filter(has=desk.locator(".inline-value")).first
    number = step.get_attribute("id")
    assert names(desk, f"#{number}") == ["Tightened to", "Tool no.", "Signed"]


def test_a_complaints_sheet_is_its_order_of_tests(desk: Page, site_server: StaticServer) -> None:
    """Each test of the order has blanks; what is only looked up stays off the paper."""
    desk.goto(site_server.url(COMPLAINT))
    sheet(desk)
    tests = desk.locator(".order > li").count()
    assert names(desk, ".order") == ["Found", "After the repair"] * tests
    expect(desk.locator(".driving")).to_be_visible()
    assert desk.locator("#causes, .naive, .tapping").evaluate_all(SHOWN) == 0


@pytest.mark.parametrize("size", SIZES)
def test_it_fits_either_paper(size: str, desk: Page, site_server: StaticServer) -> None:
    """As a PDF of either size: that size on every page, and no more of them than a clip holds."""
    desk.goto(site_server.url(TEST))
    sheet(desk)
    content = desk.pdf(format=size)
    boxes = re.findall(rb"/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]", content)
    assert {(int(float(wide)), int(float(high))) for wide, high in boxes} == {SIZES[size]}
    assert 3 <= len(PAGE_OBJECT.findall(content)) <= 12


def test_the_code_leads_back_to_this_revision(
    desk: Page, desk_page: Watch, site_server: StaticServer
) -> None:
    """An independent reader finds page and revision; who follows it learns whether they hold."""
    desk.goto(site_server.url(TEST))
    sheet(desk)
    picture = desk.locator(".sheet-code svg").screenshot()
    pixels = (image.imread(io.BytesIO(picture), format="png")[:, :, 0] * 255).astype("uint8")
    (code,) = zxingcpp.read_barcodes(pixels)
    revision = desk.locator("[data-revision]").get_attribute("data-revision")
    assert code.text == f"{site_server.url(TEST)}#revision={revision}"
    back = watched(desk_page)
    back.goto(code.text)
    expect(back.locator(".job-paper")).to_contain_text("has this page’s revision")
    back.evaluate("location.hash = 'revision=0123abcd'")
    expect(back.locator(".job-paper")).to_contain_text("Do not work from it")


@pytest.mark.parametrize("address", ["index.html", TEST, COMPLAINT, "terms.html", WRITTEN])
def test_any_printed_page_says_where_it_is_from(
    address: str, desk: Page, site_server: StaticServer
) -> None:
    """Address, revision and the word to look for a newer one; blanks stay away unless asked for."""
    desk.goto(site_server.url(address))
    desk.emulate_media(media="print")
    line = desk.locator(".sheet > .print-only")
    expect(line).to_be_visible()
    expect(line).to_contain_text(
        f"Printed from {site_server.url(address)}. Check there for a newer"
    )
    expect(desk.locator(".sheet")).to_contain_text(re.compile(r"Revision [0-9a-f]{8}\b"))
    assert desk.locator(".on-sheet").evaluate_all(SHOWN) == 0


def colour_in(picture: bytes) -> float:
    """Give how far the most coloured point of a picture is from grey, 0 to 1."""
    points = image.imread(io.BytesIO(picture), format="png")[:, :, :3]
    return float((points.max(axis=2) - points.min(axis=2)).max())


@pytest.mark.parametrize("address", ["index.html", TEST, JOB, COMPLAINT])
def test_paper_is_grey(address: str, desk: Page, site_server: StaticServer) -> None:
    """Nothing on it needs a printer with colours, figures and signal panels included."""
    desk.goto(site_server.url(address))
    assert colour_in(desk.screenshot()) > 0.1, "the screen has colours, so that they are seen"
    desk.emulate_media(media="print")
    assert colour_in(desk.screenshot(full_page=True)) < 0.01


def test_after_printing_the_page_is_itself_again(desk: Page, site_server: StaticServer) -> None:
    """The sheet is gone when the printer has it."""
    desk.goto(site_server.url(TEST))
    sheet(desk)
    desk.evaluate("() => { window.dispatchEvent(new Event('afterprint')); }")
    assert desk.locator(".on-sheet").evaluate_all(SHOWN) == 0
    desk.emulate_media(media="screen")
    assert desk.locator(".on-sheet").evaluate_all(SHOWN) == 0


def test_without_a_script_paper_has_the_blanks(desk_page: Watch, site_server: StaticServer) -> None:
    """Nobody can ask for the sheet there, so every print of the page is one."""
    page = desk_page(java_script_enabled=False)
    page.goto(site_server.url(TEST))
    expect(page.locator(".sheet-job")).to_be_hidden()
    page.emulate_media(media="print")
    expect(page.locator(".sheet-job")).to_be_visible()
    expect(page.locator(".sheet-end")).to_be_visible()


def test_from_a_folder_the_sheet_has_no_code(desk: Page, site_dir: Path) -> None:
    """A code that leads to a file on this disk would lead nobody anywhere."""
    desk.goto((site_dir / TEST).as_uri())
    sheet(desk)
    expect(desk.locator(".sheet-job")).to_be_visible()
    expect(desk.locator(".sheet-code svg")).to_have_count(0)
    expect(desk.locator(".printed-from")).to_have_text(TEST)
