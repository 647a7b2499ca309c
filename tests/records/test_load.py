"""Loading: every file of a folder becomes a record or a finding."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

import pytest

from generator.problems import Code
from generator.records import load as module
from generator.records.load import Loaded, load

SETTINGS = """\
format: 1
title: Manual of the quay
shop: {name: Kittiwake Quay Garage, place: Port Averil, about: Three bays.}
opening: [confirm-complaint]
emergency: Make the place safe, then call for help.
content_licence: Demonstration content
"""
TERM = """\
title: Air gap
author: lead
owner: lead
means: The space between sensor and wheel.
"""


@pytest.fixture
def manual(tmp_path: Path) -> Path:
    """Give a small manual without a fault: its settings and one term."""
    root = tmp_path / "kb_source"
    (root / "terms").mkdir(parents=True)
    (root / "settings.yml").write_text(SETTINGS, encoding="utf-8")
    (root / "terms" / "air-gap.yml").write_text(TERM, encoding="utf-8")
    return root


def found(root: Path) -> list[tuple[str, str]]:
    """Give each finding's code and path."""
    return [(one.code, one.path) for one in load(root, "kb_source").problems]


def test_a_manual_without_fault(manual: Path) -> None:
    """Settings and records are there, each with its origin and its text, and nothing is found."""
    loaded = load(manual, "kb_source")
    assert loaded.problems == []
    assert loaded.kb is not None
    record = loaded.kb.records["terms"]["air-gap"]
    assert record.key == "terms/air-gap"
    origin = loaded.kb.origins["terms/air-gap"]
    assert origin.path == "kb_source/terms/air-gap.yml"
    assert origin.span(("means",)).line == 4
    assert loaded.sources[origin.path] == TERM
    assert loaded.kb.origins["settings"].path == "kb_source/settings.yml"


def test_ids_are_in_alphabetical_order(manual: Path) -> None:
    """Records come by id, not by file name: "air" before "air-gap"."""
    (manual / "terms" / "air.yml").write_text(TERM, encoding="utf-8")
    kb = load(manual).kb
    assert kb is not None and list(kb.records["terms"]) == ["air", "air-gap"]


def test_drafts_and_withdrawn_records_are_loaded(manual: Path) -> None:
    """What is not published is still there for the checks to see."""
    for status in ("draft", "withdrawn"):
        text = TERM + f"status: {status}\n"
        (manual / "terms" / f"{status}.yml").write_text(text, encoding="utf-8")
    loaded = load(manual)
    assert loaded.kb is not None and loaded.problems == []
    assert {"draft", "withdrawn"} <= set(loaded.kb.records["terms"])


def test_a_faulty_record_is_left_out_but_named(manual: Path) -> None:
    """A record with an error is no record; its findings name it, so links to it can be told."""
    (manual / "terms" / "air-gap.yml").write_text(TERM + "colour: red\n", encoding="utf-8")
    loaded = load(manual, "kb_source")
    assert [(one.code, one.record, one.line) for one in loaded.problems] == [
        ("unknown-key", "terms/air-gap", 5)
    ]
    assert loaded.kb is not None
    assert loaded.kb.records["terms"] == {}
    assert "terms/air-gap" not in loaded.kb.origins


def test_an_unreadable_record_is_named(manual: Path) -> None:
    """A file that cannot be read still says which record is missing."""
    _link("terms/slit.yml", "gone.yml")(manual)
    assert [one.record for one in load(manual).problems] == ["terms/slit"]


def test_findings_of_one_file_are_bounded(manual: Path) -> None:
    """A file full of faults gives a hundred findings and a word on the rest."""
    text = TERM + "".join(f"k{number}: x\n" for number in range(5000))
    (manual / "terms" / "air-gap.yml").write_text(text, encoding="utf-8")
    problems = load(manual).problems
    assert len(problems) == 101
    assert problems[-1].code == "too-many-findings"


def test_faulty_settings_leave_no_knowledge_base(manual: Path) -> None:
    """Without settings there is no manual, but every other finding is still given."""
    (manual / "settings.yml").write_text(SETTINGS + "title: Twice\n", encoding="utf-8")
    (manual / "terms" / "air-gap.yml").write_text("title: 010\n", encoding="utf-8")
    loaded = load(manual)
    assert loaded.kb is None
    assert {"duplicate-key", "leading-zero", "missing-key"} <= {one.code for one in loaded.problems}


def _write(*names: str) -> Callable[[Path], None]:
    def change(root: Path) -> None:
        for name in names:
            path = root / name
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(TERM, encoding="utf-8")

    return change


def _link(name: str, target: str) -> Callable[[Path], None]:
    def change(root: Path) -> None:
        outside = root.parent / "outside"
        outside.mkdir(exist_ok=True)
        (outside / "secret.yml").write_text(TERM, encoding="utf-8")
        path = root / name
        if path.exists():
            path.unlink()
        path.symlink_to(target)

    return change


def _folder_named_like_a_record(root: Path) -> None:
    (root / "terms" / "slit.yml").mkdir()


def _pipe(root: Path) -> None:
    os.mkfifo(root / "terms" / "slit.yml")


def _no_settings(root: Path) -> None:
    (root / "settings.yml").unlink()


def _settings_folder(root: Path) -> None:
    (root / "settings.yml").unlink()
    (root / "settings.yml").mkdir()


FOLDER_FAULTS: list[tuple[str, Callable[[Path], None], str, str]] = [
    ("folder of no kind", _write("test/x.yml"), "unknown-folder", "test"),
    ("file beside the folders", _write("notes.md"), "stray-file", "notes.md"),
    ("record beside the folders", _write("air-gap.yml"), "stray-file", "air-gap.yml"),
    ("kind that is a file", _write("tools"), "stray-file", "tools"),
    ("other suffix", _write("terms/slit.yaml"), "stray-file", "terms/slit.yaml"),
    ("capital suffix", _write("terms/slit.YML"), "stray-file", "terms/slit.YML"),
    ("folder in a kind", _write("terms/old/slit.yml"), "stray-file", "terms/old"),
    ("folder named like a record", _folder_named_like_a_record, "stray-file", "terms/slit.yml"),
    ("capital", _write("terms/Slit.yml"), "unsafe-name", "terms/Slit.yml"),
    ("space", _write("terms/a slit.yml"), "unsafe-name", "terms/a slit.yml"),
    ("accent", _write("terms/fentè.yml"), "unsafe-name", "terms/fentè.yml"),
    ("two dots", _write("terms/slit.v2.yml"), "unsafe-name", "terms/slit.v2.yml"),
    ("device", _write("terms/con.yml"), "unsafe-name", "terms/con.yml"),
    ("name of a list", _write("tests/index.yml"), "unsafe-name", "tests/index.yml"),
    ("device with a number", _write("terms/com1.yml"), "unsafe-name", "terms/com1.yml"),
    ("over-long", _write(f"terms/{'a' * 61}.yml"), "unsafe-name", f"terms/{'a' * 61}.yml"),
    ("line break", _write("terms/a\nb.yml"), "unsafe-name", "terms/a\nb.yml"),
    ("differs in capitals", _write("terms/Air-Gap.yml"), "same-name", "terms/Air-Gap.yml"),
    ("link out", _link("terms/slit.yml", "../../outside/secret.yml"), "link-outside",
     "terms/slit.yml"),
    ("folder that links out", _link("tools", "../outside"), "link-outside", "tools"),
    ("link to nothing", _link("terms/slit.yml", "gone.yml"), "link-outside", "terms/slit.yml"),
    ("link to itself", _link("terms/slit.yml", "slit.yml"), "link-outside", "terms/slit.yml"),
    ("settings that link out", _link("settings.yml", "../outside/secret.yml"), "link-outside",
     "settings.yml"),
    ("endless device", _link("terms/slit.yml", "/dev/zero"), "link-outside", "terms/slit.yml"),
    ("pipe", _pipe, "unreadable-file", "terms/slit.yml"),
    ("no settings", _no_settings, "no-settings", "settings.yml"),
    ("settings that are a folder", _settings_folder, "unreadable-file", "settings.yml"),
]  # fmt: skip


@pytest.mark.parametrize(
    ("change", "code", "path"),
    [row[1:] for row in FOLDER_FAULTS],
    ids=[row[0] for row in FOLDER_FAULTS],
)
def test_folder_fault(manual: Path, change: Callable[[Path], None], code: str, path: str) -> None:
    """A fault of the folder is one finding at the file, and the rest of the manual is read."""
    change(manual)
    loaded = load(manual, "kb_source")
    assert [(one.code, one.path) for one in loaded.problems] == [(code, f"kb_source/{path}")]
    if not path.startswith("settings"):
        assert loaded.kb is not None and list(loaded.kb.records["terms"]) == ["air-gap"]


def test_every_code_of_loading_has_a_fault() -> None:
    """Each fault that loading can find is in the table above."""
    declared = {value.name for value in vars(module).values() if isinstance(value, Code)}
    assert declared == {row[2] for row in FOLDER_FAULTS}


def test_name_that_is_no_text(manual: Path) -> None:
    """A file name of bytes that are no text is a finding that can be printed and encoded."""
    name = os.fsdecode(b"terms/slit\xff.yml")
    (manual / name).write_text(TERM, encoding="utf-8")
    (one,) = load(manual, "kb_source").problems
    assert (one.code, one.path) == ("unsafe-name", "kb_source/terms/slit\\udcff.yml")
    (one.message + one.hint).encode("utf-8")


def test_link_inside_the_folder_is_followed(manual: Path) -> None:
    """A link from record to record stays inside and is read."""
    (manual / "terms" / "slit.yml").symlink_to("air-gap.yml")
    loaded = load(manual)
    assert loaded.problems == []
    assert loaded.kb is not None and set(loaded.kb.records["terms"]) == {"air-gap", "slit"}


def test_hidden_files_are_left_alone(manual: Path) -> None:
    """What editors and systems leave behind is not looked at."""
    _write(".DS_Store", "terms/.air-gap.yml.swp", ".git/x.yml")(manual)
    assert found(manual) == []


def test_no_folder(tmp_path: Path) -> None:
    """A folder that is not there gives findings, not an exception."""
    loaded: Loaded = load(tmp_path / "gone", "kb_source")
    assert loaded.kb is None
    assert {one.code for one in loaded.problems} == {"no-settings", "unreadable-file"}
    assert {one.path for one in loaded.problems} == {"kb_source/settings.yml", "kb_source"}


def test_the_demonstration_manual_loads() -> None:
    """The manual that comes along has no fault of reading, and every file is a record."""
    folder = Path(__file__).parents[2] / "kb_source"
    loaded = load(folder, "kb_source")
    assert loaded.problems == []
    assert loaded.kb is not None
    assert len(list(loaded.kb)) == len(list(folder.glob("*/*.yml"))) > 100
