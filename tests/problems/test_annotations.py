"""Annotation lines for pull requests: the form and the escapes of GitHub's workflow commands."""

from __future__ import annotations

import re

from generator.problems import as_annotations
from tests.problems.samples import (
    EVERY,
    ODD,
    SEVERAL_LINES,
    TO_THE_END,
    WHOLE_FILE,
    WITH_SECOND,
    one,
)

LINE = re.compile(r"::(error|warning) ([^:]*)::(.*)")


def parts(line: str) -> tuple[str, dict[str, str], str]:
    """Take a line apart as a forge does: escapes of properties and data undone."""
    match = LINE.fullmatch(line)
    assert match is not None, line
    undone = {
        name: _plain(text).replace("%3A", ":").replace("%2C", ",")
        for name, text in (pair.split("=", 1) for pair in match[2].split(","))
    }
    return match[1], undone, _plain(match[3])


def _plain(text: str) -> str:
    return text.replace("%0A", "\n").replace("%0D", "\r").replace("%25", "%")


def test_one_line_a_finding_and_none_for_none() -> None:
    """No finding is no output, and no finding takes two lines."""
    assert as_annotations([]) == ""
    assert len(as_annotations(EVERY).split("\n")) == len(EVERY)


def test_a_stretch_in_one_line_has_columns() -> None:
    """The last column counts as marked there, so it is one less than ours."""
    level, place, text = parts(as_annotations([one()]))
    assert level == "error"
    assert place == {
        "file": "kb_source/specs/hall gap.yml", "line": "4", "col": "8", "endColumn": "14",
        "title": "sample-fault",
    }  # fmt: skip
    assert text == "the unit is unknown\nIt misleads the reader.\nhint: write mm"


def test_a_stretch_over_lines_has_none() -> None:
    """Columns of two lines mean nothing together; the last line that holds anything counts."""
    _, place, _ = parts(as_annotations([SEVERAL_LINES]))
    assert (place["line"], place["endLine"]) == ("4", "6")
    assert "col" not in place
    assert parts(as_annotations([TO_THE_END]))[1]["endLine"] == "4"


def test_a_file_as_a_whole_is_its_first_line() -> None:
    """A warning about a file stands at its top."""
    level, place, _ = parts(as_annotations([WHOLE_FILE]))
    assert (level, place["line"]) == ("warning", "1")


def test_nothing_in_a_finding_can_start_another_command() -> None:
    """Line breaks, percent signs, colons and commas come back as they were."""
    _, place, text = parts(as_annotations([ODD]))
    assert place["file"] == ODD.path
    assert text == f"{ODD.message}\n{ODD.why}\nhint: {ODD.hint}"


def test_a_second_place_is_told_in_the_words() -> None:
    """An annotation has one place, so the other is written out."""
    _, _, text = parts(as_annotations([WITH_SECOND]))
    assert "see kb_source/specs/gap.yml:1: first here" in text.split("\n")
