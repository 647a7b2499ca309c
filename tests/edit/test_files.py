"""Files: chosen with care, replaced whole, never over somebody else's words."""

from __future__ import annotations

import os
import stat
from pathlib import Path

import pytest

from generator.edit.files import ChangedMeanwhile, NotARecord, RecordFile, chosen, every


@pytest.fixture
def records(tmp_path: Path) -> Path:
    """Give a folder with two records, settings, and things that are no records."""
    root = tmp_path / "kb_source"
    for name in ("settings.yml", "terms/a.yml", "tests/b.yml", "terms/.c.yml.swp", "terms/d.yaml",
                 "attic/e.yml", ".schema/terms.json", "terms/old/f.yml"):  # fmt: skip
        (root / name).parent.mkdir(parents=True, exist_ok=True)
        (root / name).write_text("title: a\n", encoding="utf-8")
    return root


def names(files: list[RecordFile]) -> list[str]:
    """Give what findings call the files."""
    return [file.shown.removeprefix("kb_source/") for file in files]


def test_every_record_and_nothing_else(records: Path) -> None:
    """Records lie in the folder of a kind and end in .yml; the settings are one too."""
    files = every(records, "kb_source")
    assert names(files) == ["settings.yml", "terms/a.yml", "tests/b.yml"]
    assert [file.kind for file in files] == ["settings", "terms", "tests"]


def test_paths_name_files_and_folders(records: Path) -> None:
    """A file is itself, a folder all that is in it; each once, in a fixed order."""
    assert names(chosen(records, "kb_source", [records / "tests" / "b.yml"])) == ["tests/b.yml"]
    paths = [records / "tests", records / "terms" / "a.yml", records / "tests" / "b.yml"]
    assert names(chosen(records, "kb_source", paths)) == ["terms/a.yml", "tests/b.yml"]
    assert len(chosen(records, "kb_source", [records])) == 3


@pytest.mark.parametrize("name", ["attic/e.yml", "terms/d.yaml", "terms/old", ".schema", "gone"])
def test_what_is_no_record_is_refused(records: Path, name: str) -> None:
    """A path that names no record is a slip worth telling."""
    with pytest.raises(NotARecord, match="is no record"):
        chosen(records, "kb_source", [records / name])


def test_a_link_out_of_the_manual_is_not_followed(records: Path, tmp_path: Path) -> None:
    """Nothing outside the folder of records is ever written to."""
    outside = tmp_path / "outside.yml"
    outside.write_text("title: a\n", encoding="utf-8")
    (records / "terms" / "link.yml").symlink_to(outside)
    assert names(every(records, "kb_source")) == ["settings.yml", "terms/a.yml", "tests/b.yml"]


def test_replacing_is_whole_and_keeps_the_mode(records: Path) -> None:
    """The new content stands there, with the old permissions, and nothing is left beside it."""
    path = records / "terms" / "a.yml"
    path.chmod(0o640)
    file = RecordFile(path, "terms", "kb_source/terms/a.yml")
    file.replace(b"title: a\n", b"title: b\n")
    assert path.read_bytes() == b"title: b\n"
    assert stat.S_IMODE(path.stat().st_mode) == 0o640
    assert sorted(one.name for one in path.parent.iterdir()) == [".c.yml.swp", "a.yml", "d.yaml",
                                                                 "old"]  # fmt: skip


def test_somebody_elses_words_stand(records: Path) -> None:
    """A file that changed since it was read is refused and left, and no trace stays behind."""
    path = records / "terms" / "a.yml"
    file = RecordFile(path, "terms", "kb_source/terms/a.yml")
    before = file.read()
    path.write_bytes(b"title: theirs\n")
    with pytest.raises(ChangedMeanwhile, match="changed by somebody else"):
        file.replace(before, b"title: ours\n")
    assert path.read_bytes() == b"title: theirs\n"
    assert len(list(path.parent.iterdir())) == 4


def test_a_full_disk_costs_nothing(records: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Where the new content cannot be written, the old stands and no trace stays behind."""

    def full(handle: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    path = records / "terms" / "a.yml"
    with pytest.raises(OSError, match="No space"):
        RecordFile(path, "terms", "a").replace(b"title: a\n", b"title: b\n")
    assert path.read_bytes() == b"title: a\n"
    assert len(list(path.parent.iterdir())) == 4
