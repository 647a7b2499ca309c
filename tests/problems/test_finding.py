"""The finding: unique codes, fixed order, honest counts, one JSON shape."""

from __future__ import annotations

import itertools
import json
from dataclasses import replace

import pytest

from generator.problems import (
    Code,
    Severity,
    Span,
    as_json,
    code,
    counts,
    elsewhere,
    has_errors,
    in_order,
    problem,
    summary,
)

FAULT = Code("some-fault", Severity.ERROR, "It matters.")
DOUBT = Code("some-doubt", Severity.WARNING, "It may matter.")


def test_code_is_declared_once() -> None:
    """A code that is declared again with another reason is a programming error."""
    made = code("declared-in-a-test", "One reason.")
    assert code("declared-in-a-test", "One reason.") == made
    with pytest.raises(ValueError, match="declared-in-a-test"):
        code("declared-in-a-test", "Another reason.")


def test_order_is_that_of_the_file() -> None:
    """Findings come by file, line and column, once each, whatever order they were found in."""
    a = problem(FAULT, "a.yml", Span(2, 1, 2, 2), "x", "y")
    b = problem(FAULT, "a.yml", Span(10, 1, 10, 2), "x", "y")
    c = problem(DOUBT, "b.yml", Span(1, 1, 1, 2), "x", "y")
    d = problem(DOUBT, "b.yml", Span(1, 1, 1, 2), "x", "z")
    for mixed in itertools.permutations([a, b, c, d]):
        assert in_order([*mixed, a]) == [a, b, c, d]


def test_counts_and_summary() -> None:
    """Errors and warnings are counted apart, and one is not a plural."""
    fault, doubt = (problem(what, "a", Span(), "x", "y") for what in (FAULT, DOUBT))
    assert counts([fault, fault, doubt]) == {"error": 2, "warning": 1}
    assert summary([fault, fault, doubt]) == "2 errors, 1 warning"
    assert summary([]) == "0 errors, 0 warnings"
    assert has_errors([doubt, fault]) and not has_errors([doubt]) and not has_errors([])


def test_json() -> None:
    """The JSON document has the agreed fields, its version and its counts."""
    found = problem(FAULT, "kb_source/a.yml", Span(3, 2, 4, 5), "Ω", "mend", "terms/a")
    document = json.loads(as_json([found]))
    assert document == {
        "schema": 1,
        "findings": [
            {
                "code": "some-fault", "severity": "error", "path": "kb_source/a.yml",
                "line": 3, "column": 2, "end_line": 4, "end_column": 5, "message": "Ω",
                "why": "It matters.", "hint": "mend", "record": "terms/a",
            }
        ],
        "counts": {"error": 1, "warning": 0},
    }  # fmt: skip


def test_json_of_a_second_place() -> None:
    """A second place is there only where there is one."""
    found = problem(FAULT, "a.yml", Span(), "x", "y")
    found = replace(found, second=elsewhere("b.yml", Span(1, 2, 1, 3), "first used here"))
    (data,) = json.loads(as_json([found]))["findings"]
    assert data["second"]["path"] == "b.yml" and data["second"]["says"] == "first used here"
