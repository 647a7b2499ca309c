"""build: a whole new site, or the old one untouched."""

from __future__ import annotations

import hashlib
import shutil
from pathlib import Path

import pytest

from generator import layout
from tests.cli.asking import ask, ask_apart, replace_in
from tests.demonstration import SMALLEST_RECORDS, copy_manual


@pytest.fixture
def built(manual_dir: Path, site_dir: Path, tmp_path: Path) -> Path:
    """Give a copy of the manual with a built site that a test may spoil."""
    folder = tmp_path / "manual"
    shutil.copytree(manual_dir, folder, ignore=shutil.ignore_patterns("site", ".site*"))
    shutil.copytree(site_dir, folder / "site")
    return folder


def digest(folder: Path) -> dict[str, str]:
    """Give the digest of each file of a folder."""
    return {
        path.relative_to(folder).as_posix(): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in folder.rglob("*")
        if path.is_file()
    }


def test_a_bad_record_leaves_the_old_site(built: Path) -> None:
    """Shows that a manual with an error is not built, and the site stays as it was."""
    before = digest(built / "site")
    replace_in(built / "kb_source" / "specs" / "inductive-winding.yml", "860 ohm", "860 ohms")
    answer = ask("build", manual=built)
    assert answer.status == 1
    assert "inductive-winding.yml" in answer.err
    assert answer.out == ""
    assert digest(built / "site") == before


def test_a_bad_template_leaves_the_old_site(built: Path) -> None:
    """Shows that a fault in the host's settings is no new site, and is not the records' fault."""
    before = digest(built / "site")
    replace_in(built / "mkdocs.yml", "name: material", "name: nonexistent")
    answer = ask("build", manual=built)
    assert answer.status not in (0, 1)
    assert digest(built / "site") == before
    assert "Traceback" not in answer.err


def test_a_dead_link_in_a_written_page_leaves_the_old_site(built: Path) -> None:
    """Shows that a warning of the host stops the build as an error does."""
    before = digest(built / "site")
    (built / "docs" / "bad.md").write_text("# Bad\n\n[nowhere](nowhere.md)\n")
    assert ask("build", manual=built).status not in (0, 1)
    assert digest(built / "site") == before
    assert not list(built.glob(".site*")), "nothing is left lying beside the site"


def test_a_good_build_says_where_to_open_it_and_is_the_same_twice(tmp_path: Path) -> None:
    """Shows that the same records give the same bytes cold, and no litter stays beside the site."""
    folder = tmp_path / "manual"
    copy_manual(folder, SMALLEST_RECORDS)
    first = ask_apart("build", manual=folder)
    assert first.status == 0
    assert Path(first.out.strip()) == folder.resolve() / "site" / "index.html"
    before = digest(folder / "site")
    shutil.rmtree(folder / "site")
    shutil.rmtree(folder / layout.CACHE)
    assert ask_apart("build", manual=folder).status == 0
    assert digest(folder / "site") == before
    assert not list(folder.glob(".site*"))


@pytest.mark.parametrize("target", [".", "kb_source", "docs/inside", "mkdocs.yml", ".."])
def test_a_target_that_holds_something_else_is_refused(built: Path, target: str) -> None:
    """Shows that a build never takes a person's files away."""
    before = digest(built / "kb_source")
    answer = ask("build", "--site-dir", str(built / target), manual=built)
    assert answer.status == 2
    assert digest(built / "kb_source") == before


def test_a_folder_with_other_things_is_refused(built: Path, tmp_path: Path) -> None:
    """Shows that a folder that is no site is not replaced by one."""
    (tmp_path / "papers").mkdir()
    (tmp_path / "papers" / "thesis.txt").write_text("mine")
    answer = ask("build", "--site-dir", str(tmp_path / "papers"), manual=built)
    assert answer.status == 2
    assert (tmp_path / "papers" / "thesis.txt").read_text() == "mine"


def test_serve_refuses_a_wrong_address() -> None:
    """Shows that an address without a port is told, not tried."""
    answer = ask("serve", "--address", "localhost")
    assert answer.status == 2
    assert "HOST:PORT" in answer.err


def test_a_preview_is_never_put_where_readers_look(tmp_path: Path) -> None:
    """Named or not, the folder of the site is refused before anything is read."""
    copy_manual(tmp_path / "manual")
    done = ask("build", "--preview", "--site-dir", str(tmp_path / "manual" / "site"),
               manual=tmp_path / "manual")  # fmt: skip
    assert done.status == 2 and "put a preview elsewhere" in done.err
