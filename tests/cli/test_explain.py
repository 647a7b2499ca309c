"""explain, and the forms in which check prints."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

import pytest

from generator.checks.pages import every_page
from tests.cli.asking import ask, replace_in

WINDING = "kb_source/specs/inductive-winding.yml"


@pytest.fixture
def spoilt(manual_dir: Path, tmp_path: Path) -> Path:
    """Give a copy of the manual with one unit spelled wrong."""
    folder = tmp_path / "manual"
    shutil.copytree(manual_dir, folder, ignore=shutil.ignore_patterns("site", ".site*"))
    replace_in(folder / WINDING, "860 ohm", "860 ohmz")
    return folder


def test_explain_prints_the_page_of_a_fault() -> None:
    """What is wrong, why, how to mend it, and an example of each kind with its file."""
    answer = ask("explain", "torque-step-without-value")
    assert answer.status == 0
    for part in ("What is wrong", "Why it matters", "How to mend it", "Does not pass", "Passes",
                 "procedures/set-gap-1-6.yml", "spec: hall-bolt-torque"):  # fmt: skip
        assert part in answer.out


def test_explain_alone_lists_every_fault_on_a_line() -> None:
    """Each code there is has one line with its title."""
    answer = ask("explain")
    assert answer.status == 0
    listed = [line.split()[0] for line in answer.out.splitlines() if line.startswith("  ")]
    assert sorted(listed) == sorted(set(listed))
    assert {"dangling-link", "duplicate-key", "missing-key", "unsafe-order"} <= set(listed)
    assert set(listed) <= set(every_page())


def test_explain_asks_what_was_meant() -> None:
    """An unknown name is wrong usage, with the nearest there is."""
    answer = ask("explain", "dangling-lnk")
    assert (answer.status, answer.out) == (2, "")
    assert "did you mean dangling-link?" in answer.err


def test_explain_needs_no_manual(tmp_path: Path) -> None:
    """A contributor reads about a fault wherever they stand."""
    assert ask("explain", "tab", manual=tmp_path).status == 0


def test_check_prints_a_sarif_log(spoilt: Path) -> None:
    """One result, at its place, under its rule with the title of its page; exit status 1."""
    answer = ask("check", "--format", "sarif", manual=spoilt)
    assert answer.status == 1
    (run,) = answer.data["runs"]
    (result,) = run["results"]
    assert result["ruleId"] == "value-unit"
    uri = result["locations"][0]["physicalLocation"]["artifactLocation"]["uri"]
    assert uri == WINDING
    assert run["tool"]["driver"]["rules"][0]["shortDescription"]["text"] == (
        "A value without a known unit"
    )


def test_check_prints_annotation_lines(spoilt: Path) -> None:
    """One line that a forge reads, and nothing beside it."""
    answer = ask("check", "--format", "annotations", manual=spoilt)
    assert answer.status == 1
    (line,) = answer.out.splitlines()
    assert line.startswith(f"::error file={WINDING},line=")
    assert ",title=value-unit::" in line


def test_a_clean_manual_has_an_empty_log_and_no_lines() -> None:
    """Every form says nothing where there is nothing to say."""
    assert ask("check", "--format", "sarif").data["runs"][0]["results"] == []
    assert ask("check", "--format", "annotations").out == ""


def test_reviews_are_asked_about_on_a_day() -> None:
    """On the day of the edition none is overdue; three years later all are, as warnings."""
    assert ask("check", "--as-of", "2026-10-05").out == "no findings\n"
    late = ask("check", "--as-of", "2029-10-05", "--format", "json")
    assert late.status == 0
    found = json.loads(late.out)["findings"]
    assert {one["code"] for one in found} == {"review-overdue"}
    assert {one["severity"] for one in found} == {"warning"}
    assert ask("check", "--as-of", "tomorrow").status == 2
