"""A manual of one's own: it is clean from the first minute, and nothing is ever written over."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator import manual
from generator.edit import start
from generator.shapes import schema
from tests.cli.asking import ask

NAMES = [("Anchor Lane Garage", "Port Averil"), ('O\'Hara: & "Sons" #7', "yes"), ("on", "1:30")]


def laid_down(folder: Path, name: str = "Anchor Lane Garage", *, alone: bool = False) -> Path:
    """Lay a manual down and give its folder."""
    start.lay_down(folder, start.files(name, "Port Averil", alone=alone))
    return folder


@pytest.mark.parametrize(("name", "place"), NAMES)
def test_whatever_the_shop_is_called_it_has_no_finding(
    tmp_path: Path, name: str, place: str
) -> None:
    """Quotes, colons and words that YAML would misread are a name like any other."""
    start.lay_down(tmp_path / "own", start.files(name, place, alone=False))
    read = manual.read(tmp_path / "own")
    assert read.problems == []
    assert read.kb is not None
    assert (read.kb.settings.shop.name, read.kb.settings.shop.place) == (name, place)


def test_one_person_may_sign_alone(tmp_path: Path) -> None:
    """The settings say so, and there is no finding."""
    read = manual.read(laid_down(tmp_path / "own", alone=True))
    assert read.problems == []
    assert read.kb is not None and read.kb.settings.one_person_shop


def test_the_example_leads_from_a_complaint_to_a_part(tmp_path: Path) -> None:
    """A complaint, its tests, a value and a replacement: the whole way, once."""
    kb = manual.read(laid_down(tmp_path / "own")).kb
    assert kb is not None
    for kind in ("symptoms", "tests", "specs", "components", "replacements", "vehicles"):
        assert kb.records[kind], kind


def test_no_copy_of_our_code_lies_in_it(tmp_path: Path) -> None:
    """The shop has records and settings; the program is installed."""
    folder = laid_down(tmp_path / "own")
    found = {path.suffix for path in folder.rglob("*") if path.is_file()}
    assert found <= {".yml", ".md", ".json", ""}
    assert (folder / ".github/workflows/check.yml").is_file()
    assert (folder / ".gitignore").is_file()


def test_its_schemas_are_the_current_ones(tmp_path: Path) -> None:
    """An editor completes fields from the first minute."""
    folder = laid_down(tmp_path / "own") / manual.RECORDS / schema.FOLDER
    assert not list(schema.stale(folder))


def test_a_folder_with_something_in_it_stays_as_it_is(tmp_path: Path) -> None:
    """A file of the shop's own is never written over."""
    (tmp_path / "README.md").write_text("ours", "utf-8")
    with pytest.raises(start.CannotStart, match="not empty"):
        laid_down(tmp_path)
    assert [path.name for path in tmp_path.iterdir()] == ["README.md"]


def test_a_new_repository_counts_as_empty(tmp_path: Path) -> None:
    """Whoever made the repository first can start in it."""
    (tmp_path / ".git").mkdir()
    assert (laid_down(tmp_path) / "mkdocs.yml").is_file()


def test_the_command_lays_down_what_check_likes(tmp_path: Path) -> None:
    """Started, checked, and refused the second time."""
    own = str(tmp_path / "own")
    assert ask("start", own, "--name", "Anchor Lane Garage").status == 0
    assert ask("check", manual=tmp_path / "own").out.strip() == "no findings"
    again = ask("start", own)
    assert again.status == 2 and "stays as it is" in again.err
    assert ask("start", str(tmp_path / "other"), "--name", "a\x07b").status == 2
