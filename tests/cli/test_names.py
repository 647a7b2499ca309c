"""where-used, rename and stale, asked as a person would."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.cli.asking import ask, replace_in
from tests.demonstration import copy_manual


@pytest.fixture
def manual(tmp_path: Path) -> Path:
    """Give a copy of the demonstration manual."""
    copy_manual(tmp_path / "manual")
    return tmp_path / "manual"


def test_a_renamed_record_leaves_a_good_manual(manual: Path) -> None:
    """Each changed file is named, the old file is gone, and check has nothing to say."""
    done = ask("rename", "tests", "winding-resistance", "coil-resistance", manual=manual)
    assert done.status == 0
    assert "kb_source/tests/output-while-cranking.yml" in done.out
    assert not (manual / "kb_source/tests/winding-resistance.yml").exists()
    assert ask("check", manual=manual).out.strip() == "no findings"
    assert ask("where-used", "winding-resistance", manual=manual).status == 2


def test_nothing_is_renamed_over_another_record(manual: Path) -> None:
    """The command stops with a word, and both records stand as they were."""
    before = (manual / "kb_source/tests/battery-cranking.yml").read_bytes()
    done = ask("rename", "tests", "battery-rest", "battery-cranking", manual=manual)
    assert done.status == 2 and "there already" in done.err
    assert (manual / "kb_source/tests/battery-cranking.yml").read_bytes() == before


def test_a_record_that_cannot_be_read_stops_it(manual: Path) -> None:
    """A reference in it would be missed."""
    replace_in(manual / "kb_source/tests/battery-rest.yml", "title:", "titel:")
    done = ask("rename", "tests", "hall-pull-up", "pull-up", manual=manual)
    assert done.status == 1 and "not every record can be read" in done.err


def test_where_used_names_file_line_and_field() -> None:
    """Text for people, JSON for programs, the same places."""
    text = ask("where-used", "winding-resistance")
    data = ask("where-used", "tests/winding-resistance", "--format", "json").data["uses"]
    assert len(text.out.splitlines()) == len(data) > 5
    assert f"{data[0]['file']}:{data[0]['line']}:{data[0]['column']}: " in text.out


def test_stale_asks_for_a_day() -> None:
    """Without one it stops; long after the reviews it lists records with their owners."""
    assert ask("stale").status == 2
    assert ask("stale", "--as-of", "2026-10-05").out.strip() == "nothing is overdue"
    late = ask("stale", "--as-of", "2036-01-01").out
    assert "kb_source/vehicles/corrie-1-2.yml:" in late and "diagnostic-technician" in late
