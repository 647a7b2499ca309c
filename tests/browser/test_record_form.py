"""The record form: every kind, filled in without a network, gives a file that `check` accepts."""

from __future__ import annotations

import json
import random
import shutil
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from generator import manual as manual_on_disk
from generator.edit.order import ordered
from generator.edit.source import read
from generator.problems import Severity
from generator.records import strict_yaml
from generator.records.kinds import KINDS
from generator.shapes.outline import outline
from tests.browser.conftest import Watch
from tests.browser.static_server import StaticServer
from tests.demonstration import SMALL_RECORDS, copy_manual

ADDRESS = "add/index.html"
FILL = Path(__file__).with_name("form_filler.js").read_text("utf-8").partition("*/")[2]

COPIED = {
    "vehicles": "corrie-1-2",
    "components": "crank-sensor-inductive",
    "circuits": "",
    "specs": "inductive-winding",
    "symptoms": "cranks-no-start",
    "cases": "chafed-signal-wire",
    "codes": "p0335",
    "tests": "winding-resistance",
    "replacements": "replace-crank-sensor-inductive",
    "procedures": "clear-and-watch-codes",
    "tools": "multimeter",
    "supplies": "",
    "hazards": "",
    "sources": "",
    "terms": "air-gap",
    "people": "technician",
}
"""For each kind the record of the small manual that is typed in again; "" for its first."""


OLD = "replace-crank-sensor-inductive"
NEW = "replace-the-inductive-crank-sensor-typed-in"


def record(kind: str) -> dict[str, Any]:
    """Give what a record of the small manual says, as a new draft of another title."""
    folder = SMALL_RECORDS / kind
    path = folder / f"{COPIED[kind]}.yml" if COPIED[kind] else sorted(folder.glob("*.yml"))[0]
    data = strict_yaml.read(path.read_bytes(), path.name).data
    assert data is not None
    kept = {key: value for key, value in data.items() if key not in ("reviewed", "approved")}
    return {**kept, "title": f"{data['title']}, typed in", "status": "draft"}


def choose(page: Page, label: str, value: str) -> None:
    """Choose a word as a person does: turn to the list first."""
    page.get_by_label(label).focus()
    page.get_by_label(label).select_option(value)


def downloaded(page: Page, folder: Path) -> Path:
    """Have the record made, and give the file that the browser put down."""
    page.get_by_role("button", name="Check and make the record").click()
    expect(page.locator(".form-faults li")).to_have_count(0)
    with page.expect_download() as download:
        page.get_by_role("button", name="Download").click()
    path = folder / download.value.suggested_filename
    download.value.save_as(path)
    return path


def test_every_kind_gives_a_record_that_check_accepts(
    desk_page: Watch, serve: Callable[..., StaticServer], site_dir: Path, tmp_path: Path
) -> None:
    """With the server stopped, each file says what was typed, in order, and has no error."""
    manual = tmp_path / "copy"
    copy_manual(manual)
    server = serve(site_dir)
    page = desk_page()
    page.goto(server.url(ADDRESS), wait_until="networkidle")
    server.stop()
    page.on("dialog", lambda dialog: dialog.accept())
    assert set(COPIED) == set(KINDS)
    made: list[tuple[str, Path]] = []
    for kind in sorted(KINDS, key=lambda kind: kind == "tests"):
        data = record(kind)
        if kind == "tests":  # it leads to the replacement that was made a moment ago
            data = json.loads(json.dumps(data).replace(OLD, NEW))
        page.evaluate(FILL, [kind, json.loads(json.dumps(data, default=str))])
        if kind == "codes":  # its file is called as the code is
            data["code"] = "P0399"
            page.locator('[data-path="code"]').fill("P0399")
            page.locator("#form-id").fill("p0399")
        path = downloaded(page, tmp_path)
        reading = strict_yaml.read(path.read_bytes(), path.name)
        assert reading.problems == [], kind
        assert reading.data == data, kind
        shutil.copy(path, manual / "kb_source" / kind)
        made.append((kind, path))
        assert ordered(read(path.read_bytes(), path.name), outline(kind)) == path.read_text("utf-8")
    checked = manual_on_disk.read(manual)
    assert [found for found in checked.problems if found.severity is Severity.ERROR] == []
    assert {f"{kind}/{path.stem}" for kind, path in made} <= {one.key for one in checked.kb or ()}


def test_a_person_fills_it_in_by_keyboard_and_finds_the_draft_again(
    phone_page: Watch, site_dir: Path, tmp_path: Path
) -> None:
    """From a folder: faults are named and lead to their fields, and a reload loses nothing."""
    page = phone_page()
    page.goto((site_dir / ADDRESS).as_uri())
    page.get_by_label("What do you want to add?").select_option(label="A term")
    page.get_by_label("Title").fill("Ring gear")
    page.get_by_role("button", name="Check and make the record").press("Enter")
    expect(page.locator(".form-wrong-count")).to_have_text("3 things are to be mended.")
    expect(page.get_by_role("button", name="Download")).to_be_hidden()
    page.get_by_role("link", name="Means: Fill this in.").press("Enter")
    expect(page.get_by_label("Means")).to_be_focused()
    page.keyboard.type("The toothed rim: yes, the one the starter turns.\n\n- Look at its teeth.")
    choose(page, "Author", "technician")
    choose(page, "Owner", "workshop-lead")
    page.reload()
    expect(page.get_by_label("Name of its file")).to_have_value("ring-gear")
    page.get_by_label("Name of its file").fill("air-gap")
    page.keyboard.press("Tab")
    expect(page.locator("#form-id-fault")).to_contain_text(
        "There is a record called air-gap already"
    )
    page.get_by_label("Name of its file").fill("ring-gear")
    path = downloaded(page, tmp_path)
    assert path.name == "ring-gear.yml"
    assert path.read_text("utf-8") == (
        "title: Ring gear\nstatus: draft\nauthor: technician\nowner: workshop-lead\nmeans: |-\n"
        "  The toothed rim: yes, the one the starter turns.\n\n  - Look at its teeth.\n"
    )
    expect(page.locator(".form-text")).to_have_value(path.read_text("utf-8"))
    mail = page.get_by_role("link", name="Send as e-mail").get_attribute("href") or ""
    assert mail.startswith("mailto:workshop@kittiwake-quay.example?subject=New%20record")


@pytest.mark.parametrize(
    ("field", "wrong", "said"),
    [
        ("minutes", "08", "Write a plain number"),
        ("minutes", "0", "must lie between 0 and 600"),
        ("outcomes/0/reading", "860", "Write a value with its unit"),
        ("sensitivity", "1.5", "must lie between 0 and 1"),
        ("title", "x" * 401, "at most 400 characters"),
        ("title", "a\u200bb", "invisible character"),
    ],
)
def test_a_slip_is_told_at_its_field(
    desk_page: Watch, site_dir: Path, field: str, wrong: str, said: str
) -> None:
    """What is wrong is said where it was typed, once the field is left."""
    page = desk_page()
    page.goto((site_dir / ADDRESS).as_uri())
    page.locator("#form-kind").select_option("tests")
    control = page.locator(f'[data-path="{field}"]')
    if not control.count():
        folded = field.rpartition("/")[0]
        page.locator(f'[data-more="{folded}"] > summary').click()
    control.fill(wrong)
    control.blur()
    expect(page.locator(f'[data-fault="{field}"]')).to_contain_text(said)
    expect(control).to_have_attribute("aria-invalid", "true")


def test_any_text_is_read_back_as_it_was_typed(desk_page: Watch, site_dir: Path) -> None:
    """Words that YAML would take for something else, signs, folds and breaks are read as typed."""
    page = desk_page()
    page.goto((site_dir / ADDRESS).as_uri())
    pick = random.Random(9)
    pieces = [
        *"aB \n0'~{}[],&*!|>%@`=?#é漢µ°…±", ": ", " #", "- ", '"', "\\", "\n\n", "1.5", "1e3",
        "yes", "word " * 30, "---", "...", "<<", "2026-10-05", "1:30", ".inf", "\U0001f527",
    ]  # fmt: skip
    texts = ["".join(pick.choices(pieces, k=pick.randint(1, 8))).strip() for _ in range(2000)]
    texts = [text for text in [*pieces, *texts] if text.strip() == text and text]
    made = page.evaluate(
        """(texts) => texts.map((text) => window.fettleYaml.record({ map: [
          ["one", { text }], ["many", { list: [{ text }, { text }] }],
          ["deep", { list: [{ map: [["inner", { map: [["text", { text }]] }]] }] }],
        ] }))""",
        texts,
    )
    for text, yaml in zip(texts, made, strict=True):
        reading = strict_yaml.read(yaml.encode(), "typed.yml")
        lines = "\n".join(line.rstrip() for line in text.split("\n"))
        assert reading.problems == [], yaml
        assert reading.data is not None and reading.data["one"] in (text, lines), yaml
        same = reading.data["one"]
        assert reading.data["many"] == [same, same], yaml
        assert reading.data["deep"] == [{"inner": {"text": same}}], yaml


def test_without_a_script_the_page_says_how(phone_page: Watch, site_server: StaticServer) -> None:
    """No dead control is shown, and the command is."""
    page = phone_page(java_script_enabled=False)
    page.goto(site_server.url("index.html"))
    page.locator("footer.bottom a", has_text="Add to the manual").click()
    expect(page.locator("noscript code")).to_have_text("fettlebook new tests my-new-test")
    expect(page.locator("article button:visible, article select:visible")).to_have_count(0)


def test_every_control_is_named_described_and_large(desk_page: Watch, site_dir: Path) -> None:
    """For each kind: a label, a sentence, 48 px, and no id twice."""
    page = desk_page()
    page.goto((site_dir / ADDRESS).as_uri())
    for kind in KINDS:
        page.locator("#form-kind").select_option(kind)
        faults = page.evaluate(
            """() => {
              const controls = [...document.querySelectorAll(
                "#record-form :is(input, select, textarea, button)",
              )].filter((one) => one.offsetParent);
              const ids = [...document.querySelectorAll("[id]")].map((one) => one.id);
              const named = (one) =>
                one.labels?.length || one.ariaLabel || one.textContent.trim();
              const said = (one) => !one.dataset.path
                || one.getAttribute("aria-describedby").split(" ")
                  .every((id) => document.getElementById(id));
              return [
                ...controls.filter((one) => !named(one) || !said(one)
                  || one.getBoundingClientRect().height < 48).map((one) => one.outerHTML),
                ...ids.filter((id, n) => ids.indexOf(id) !== n),
              ];
            }"""
        )
        assert faults == [], kind
