"""A second place, in each form a finding is printed in."""

from __future__ import annotations

import json

from generator.problems import as_json, as_text
from tests.problems.samples import WITH_SECOND, one


def test_text_says_where_else_to_look() -> None:
    """The line names file, line and column, and what stands there; without one there is none."""
    assert "  see:  kb_source/specs/gap.yml:1:8: first here\n" in as_text([WITH_SECOND], {}, False)
    assert "see:" not in as_text([one()], {}, False)


def test_json_has_it_where_there_is_one() -> None:
    """A program finds the place under `second`, and no empty field otherwise."""
    with_second, without = json.loads(as_json([WITH_SECOND, one()]))["findings"]
    assert with_second["second"] == {
        "path": "kb_source/specs/gap.yml", "line": 1, "column": 8, "end_line": 1,
        "end_column": 20, "says": "first here",
    }  # fmt: skip
    assert "second" not in without
