"""new, fmt, schema and migrate, as a person runs them."""

from __future__ import annotations

import os
import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner

from generator.cli.main import group
from generator.edit import migrate
from generator.shapes import schema
from tests.cli.asking import Answer, ask, replace_in
from tests.edit.test_migrate import rename_means

WINDING = Path("kb_source/specs/inductive-winding.yml")


@pytest.fixture
def manual(manual_dir: Path, tmp_path: Path) -> Path:
    """Give a copy of the manual that a test may change."""
    folder = tmp_path / "a manual"
    shutil.copytree(manual_dir, folder, ignore=shutil.ignore_patterns("site", ".site*"))
    return folder


def quick(manual: Path, *arguments: str) -> Answer:
    """Run a command in this process: faster, for what a process of its own adds nothing to."""
    done = CliRunner().invoke(group, ["-C", str(manual), *arguments])
    assert done.exception is None or isinstance(done.exception, SystemExit), done.exception
    return Answer(done.exit_code, done.stdout, done.stderr)


def everything(manual: Path) -> dict[Path, tuple[bytes, int]]:
    """Give every record file's content and when it was written."""
    paths = [path for path in (manual / "kb_source").rglob("*") if path.is_file()]
    return {path: (path.read_bytes(), path.stat().st_mtime_ns) for path in paths}


def test_new_writes_a_record_and_says_where(manual: Path) -> None:
    """The path on standard output is that of the new record, and nothing else is printed."""
    answer = ask("new", "tests", "coolant-sensor", manual=manual)
    path = manual / "kb_source" / "tests" / "coolant-sensor.yml"
    assert (answer.status, answer.out, answer.err) == (0, f"{path}\n", "")
    assert path.read_text(encoding="utf-8").startswith("# yaml-language-server: $schema=../.schema")
    check = ask("check", "--format", "json", manual=manual)
    assert check.status == 1
    found = check.data["findings"]
    assert {one["path"] for one in found} == {"kb_source/tests/coolant-sensor.yml"}
    assert {one["code"] for one in found} == {"empty-value"}
    assert len({one["line"] for one in found}) == len(found) > 20


def test_new_makes_the_folder_of_a_kind_and_tells_of_schemas(manual: Path) -> None:
    """A kind without records gets its folder; who has no schemas is told how to get them."""
    shutil.rmtree(manual / "kb_source" / ".schema")
    shutil.rmtree(manual / "kb_source" / "cases", ignore_errors=True)
    answer = quick(manual, "new", "cases", "old-van")
    assert answer.status == 0
    assert (manual / "kb_source" / "cases" / "old-van.yml").is_file()
    assert "fettlebook schema" in answer.err
    assert quick(manual, "-q", "new", "cases", "older-van").err == ""


def test_new_never_overwrites(manual: Path) -> None:
    """A record that is there stays as it is."""
    before = everything(manual)
    answer = quick(manual, "new", "specs", WINDING.stem)
    assert (answer.status, answer.out) == (2, "")
    assert "is there already" in answer.err
    assert everything(manual) == before


@pytest.mark.parametrize(
    ("arguments", "word"),
    [
        (("test", "x"), "did you mean tests?"),
        (("xyzzy", "x"), "use one of vehicles"),
        (("tests", "Coolant"), "as coolant"),
        (("tests", "../../escape"), "as escape"),
        (("tests", "nul"), "device"),
        (("tests", "index"), "page that lists"),
        (("tests", "x" * 300), "60 characters"),
        (("tests", "電"), "cannot be an id"),
        (("tests",), "ID"),
    ],
)
def test_new_refuses_what_would_not_work(
    manual: Path, arguments: tuple[str, ...], word: str
) -> None:
    """A wrong kind or an unsafe id gets status 2 and one clear line, and nothing is written."""
    before = everything(manual)
    answer = quick(manual, "new", *arguments)
    assert (answer.status, answer.out) == (2, "")
    assert word in answer.err
    assert everything(manual) == before


@pytest.mark.parametrize("put", ["file", "link"])
def test_new_stays_in_the_folder_of_records(manual: Path, tmp_path: Path, put: str) -> None:
    """Where the kind's folder is a file or leads out of the manual, nothing is written."""
    shutil.rmtree(manual / "kb_source" / "terms")
    outside = tmp_path / "outside"
    outside.mkdir()
    if put == "file":
        (manual / "kb_source" / "terms").write_text("", encoding="utf-8")
    else:
        (manual / "kb_source" / "terms").symlink_to(outside)
    answer = quick(manual, "new", "terms", "slit")
    assert (answer.status, answer.out) == (2, "")
    assert answer.err.count("\n") == 1
    assert list(outside.iterdir()) == []


def test_new_without_a_manual(tmp_path: Path) -> None:
    """Where there are no records, there is nothing to add one to."""
    answer = quick(tmp_path, "new", "tests", "x")
    assert answer.status == 2
    assert "no folder kb_source" in answer.err
    assert list(tmp_path.iterdir()) == []


def spoil_order(manual: Path) -> Path:
    """Bring the keys of one record out of order."""
    path = manual / WINDING
    replace_in(path, "title: Winding", "where: Row 1 # of the sheet\ntitle: Winding")
    replace_in(path, "where: Crank sensor, row 1\n", "")
    return path


def test_fmt_orders_and_names_what_it_changed(manual: Path) -> None:
    """Only the record that was out of order is written, and it means what it meant."""
    assert quick(manual, "fmt").status == 0
    path = spoil_order(manual)
    spoilt = path.read_text(encoding="utf-8")
    before = everything(manual)
    answer = ask("fmt", manual=manual)
    assert (answer.status, answer.out, answer.err) == (0, f"{WINDING.as_posix()}\n", "")
    changed = [one for one, state in everything(manual).items() if state != before[one]]
    assert changed == [path]
    text = path.read_text(encoding="utf-8")
    assert sorted(text.splitlines()) == sorted(spoilt.splitlines())
    assert "source: corrie-data-sheet\nwhere: Row 1 # of the sheet\n" in text
    assert quick(manual, "fmt").out == ""
    assert quick(manual, "check").status == 0


def test_fmt_check_writes_nothing(manual: Path) -> None:
    """With --check the record is named, the status is 1 and every file stays as it was."""
    quick(manual, "fmt")
    assert quick(manual, "fmt", "--check").status == 0
    path = spoil_order(manual)
    before = everything(manual)
    answer = quick(manual, "fmt", "--check")
    assert (answer.status, answer.out) == (1, f"{WINDING.as_posix()}\n")
    assert everything(manual) == before
    assert quick(manual, "fmt", "--check", str(path.parent / "hall-duty.yml")).status == 0
    assert quick(manual, "fmt", "--check", str(path)).status == 1
    assert quick(manual, "fmt", "--check", str(path.parent)).status == 1


def test_fmt_leaves_a_faulty_record_and_does_the_rest(manual: Path) -> None:
    """A record with a reading error is told of at its place and not touched; others are done."""
    quick(manual, "fmt")
    spoil_order(manual)
    faulty = manual / "kb_source" / "terms" / "air-gap.yml"
    faulty.write_text("means: 010\ntitle: a\ntitle: b\n", encoding="utf-8")
    answer = quick(manual, "fmt")
    assert (answer.status, answer.out) == (1, f"{WINDING.as_posix()}\n")
    assert "kb_source/terms/air-gap.yml:1:8: error leading-zero" in answer.err
    assert "kb_source/terms/air-gap.yml:3:1: error duplicate-key" in answer.err
    assert "2 errors" in answer.err
    assert faulty.read_text(encoding="utf-8") == "means: 010\ntitle: a\ntitle: b\n"


def test_fmt_does_not_write_over_somebody_else(
    manual: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A record that changes while it is being ordered keeps what was written to it."""
    quick(manual, "fmt")
    path = spoil_order(manual)
    sync = os.fsync

    def meanwhile(handle: int) -> None:
        sync(handle)
        path.write_text("title: theirs\n", encoding="utf-8")

    monkeypatch.setattr(os, "fsync", meanwhile)
    answer = quick(manual, "fmt")
    assert (answer.status, answer.out) == (1, "")
    assert "changed by somebody else" in answer.err
    assert path.read_text(encoding="utf-8") == "title: theirs\n"


@pytest.mark.parametrize("name", ["mkdocs.yml", "docs", "kb_source/.schema", "gone.yml"])
def test_fmt_refuses_what_is_no_record(manual: Path, name: str) -> None:
    """A path that names no record gets status 2, and nothing is written."""
    spoil_order(manual)
    before = everything(manual)
    answer = quick(manual, "fmt", str(manual / name))
    assert (answer.status, answer.out) == (2, "")
    assert everything(manual) == before


def test_schema_writes_what_is_stale(manual: Path) -> None:
    """The first run writes all, the next none, and one after a change that one."""
    folder = manual / "kb_source" / ".schema"
    shutil.rmtree(folder)
    assert quick(manual, "schema", "--check").status == 1
    assert not folder.exists()
    answer = ask("schema", manual=manual)
    assert answer.status == 0
    assert {Path(line).stem for line in answer.out.splitlines()} == set(schema.SCHEMAS)
    assert quick(manual, "schema").out == ""
    assert quick(manual, "schema", "--check").status == 0
    (folder / "tests.json").write_text("{}", encoding="utf-8")
    assert quick(manual, "schema").out == f"{folder / 'tests.json'}\n"
    assert quick(manual, "check").status == 0, "the folder is not taken for a kind"


def test_schema_goes_where_it_is_told(manual: Path, tmp_path: Path) -> None:
    """--out names another folder; a file in its place is told of."""
    assert quick(manual, "schema", "--out", str(tmp_path / "new" / "place")).status == 0
    assert (tmp_path / "new" / "place" / "settings.json").is_file()
    (tmp_path / "file").write_text("", encoding="utf-8")
    answer = quick(manual, "schema", "--out", str(tmp_path / "file" / "x"))
    assert answer.status == 2
    assert answer.err.count("\n") == 1


def test_schema_prints_one(manual: Path) -> None:
    """With a kind its schema goes to standard output, as JSON, and nothing is written."""
    before = everything(manual)
    answer = ask("schema", "tests", manual=manual)
    assert answer.status == 0
    assert answer.data["title"] == "tests"
    assert everything(manual) == before
    assert "did you mean tests?" in quick(manual, "schema", "test").err


def test_migrate_has_nothing_to_do(manual: Path) -> None:
    """A manual in the current format is told so and stays as it is."""
    before = everything(manual)
    answer = ask("migrate", manual=manual)
    assert (answer.status, answer.out, answer.err) == (0, "already at format 1\n", "")
    assert everything(manual) == before


def test_migrate_refuses_a_newer_format(manual: Path) -> None:
    """Records of a later version are not guessed at, by migrate as little as by check."""
    replace_in(manual / "kb_source" / "settings.yml", "format: 1", "format: 2")
    answer = quick(manual, "migrate")
    assert (answer.status, answer.out) == (2, "")
    assert "format 2" in answer.err and "install the version" in answer.err
    assert "unknown-format" in quick(manual, "check").out


def test_migrate_lifts_and_names_what_it_changed(
    manual: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """With a step registered, each changed file is named and only the stretch is changed."""
    monkeypatch.setitem(migrate.STEPS, 0, rename_means)
    settings = manual / "kb_source" / "settings.yml"
    term = manual / "kb_source" / "terms" / "air-gap.yml"
    replace_in(settings, "format: 1", "format: 0")
    before = term.read_text(encoding="utf-8")
    answer = quick(manual, "migrate")
    assert answer.status == 0
    assert "kb_source/terms/air-gap.yml\n" in answer.out
    assert answer.out.endswith("kb_source/settings.yml\n")
    assert term.read_text(encoding="utf-8") == before.replace("means:", "says:", 1)
    assert "format: 1\n" in settings.read_text(encoding="utf-8")
    assert quick(manual, "migrate").out == "already at format 1\n"


def test_migrate_tells_of_records_that_cannot_be_read(
    manual: Path,
) -> None:
    """An unreadable record gets its finding, status 1, and nothing is lifted."""
    (manual / "kb_source" / "terms" / "air-gap.yml").write_text("title: 010\n", encoding="utf-8")
    before = everything(manual)
    answer = quick(manual, "migrate")
    assert (answer.status, answer.out) == (1, "")
    assert "leading-zero" in answer.err
    assert everything(manual) == before
