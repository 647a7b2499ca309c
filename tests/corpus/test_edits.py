"""Every edit to the small manual gives exactly the findings its row says, at their places."""

from __future__ import annotations

import datetime
import shutil
from collections.abc import Callable, Iterator
from functools import cache
from pathlib import Path
from typing import Any
from unittest.mock import patch

import pytest

from generator import manual
from generator.records import shape, strict_yaml
from generator.records.rules import RULES
from tests.corpus.edited import MANUAL, BadRow, Copy, Row, parsed, rows

ROWS = rows()

# The day of the small manual's edition, on which none of its reviews is overdue.
AS_OF = datetime.date(2026, 10, 5)


@pytest.fixture(autouse=True, scope="module")
def _read_once() -> Iterator[None]:
    """Read and fit a file again only where its bytes are others: both are pure functions."""
    read = cache(strict_yaml.read)
    with patch.object(strict_yaml, "read", read), patch.object(shape, "fit", _fits(shape.fit)):
        yield


def _fits(fit: Callable[..., Any]) -> Callable[..., Any]:
    """Remember what data gave; the cached reading keeps the data alive, so its id is its name."""
    known: dict[tuple[str, str, int], Any] = {}

    def fitted(kind: str, id_: str, data: Any, places: Any, path: str) -> Any:
        key = (kind, id_, id(data))
        if key not in known:
            known[key] = fit(kind, id_, data, places, path)
        return known[key]

    return fitted


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """Give a copy of the small manual."""
    return Path(shutil.copytree(MANUAL, tmp_path / "manual"))


def found(folder: Path) -> list[tuple[str, str, int, int]]:
    """Give code, path, line and column of every finding on a manual."""
    problems = manual.read(folder, AS_OF).problems
    return sorted((one.code, one.path, one.line, one.column) for one in problems)


def test_the_small_manual_is_clean(folder: Path) -> None:
    """Without an edit there is nothing to find, so what an edit gives comes from the edit."""
    assert found(folder) == []


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row.name)
def test_findings(row: Row, folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """An edit gives its own finding at its place, those that follow from it, and no others."""
    expected = Copy(folder).carry_out(row)
    if row.forgotten:
        monkeypatch.delitem(RULES, row.forgotten)
    assert found(folder) == expected


def test_no_two_rows_have_one_name() -> None:
    """A row that fails can be told from every other by its name."""
    names = [row.name for row in ROWS]
    assert len(names) == len(set(names)) > 100


ROW = """
[dangling-link] a test that nobody wrote
in symptoms/cranks-no-start.yml
     component: battery
"""


def test_a_mark_is_a_place(folder: Path) -> None:
    """A mark is counted in the edited file, in characters from 1, and is not written there."""
    text = ROW + "     weight: 6\n-    reason: A slow engine makes a weak signal.\n"
    text += "+    reason: Slow.\n-    tests: [battery-rest]\n+    tests: [⟦battery]\n"
    (row,) = parsed("group", text + " codes: [p0335]\n")
    expected = Copy(folder).carry_out(row)
    lines = (folder / "kb_source/symptoms/cranks-no-start.yml").read_text("utf-8").split("\n")
    ((code, path, line, column),) = expected
    assert (code, path) == ("dangling-link", "kb_source/symptoms/cranks-no-start.yml")
    assert lines[line - 1] == "    tests: [battery]"
    assert lines[line - 2] == "    reason: Slow."
    assert lines[line - 1][column - 1 :] == "battery]"


@pytest.mark.parametrize(
    ("lines", "wrong"),
    [
        ("in terms/gone.yml\n title: Gone\n", "there is no"),
        ("in terms/open-circuit.yml\n-title: ⟦Another title\n", "stands 0 times"),
        ("in tests/save-codes.yml\n       - carry_on: ⟦true\n", "stands 3 times"),
        ("in terms/open-circuit.yml\n title: Open circuit\n", "wants one place"),
        ("in terms/open-circuit.yml\n ⟦title: ⟦Open circuit\n", "wants one place"),
        ("make terms/hole.yml from nothing\n", "nobody knows"),
        ("also orphan in terms/open-circuit.yml\n-title: Open circuit\n", "changes nothing"),
    ],
)
def test_a_row_that_does_not_fit_is_told(lines: str, wrong: str, folder: Path) -> None:
    """An edit that misses its text, or marks no place, is a fault of the row and not silent."""
    (row,) = parsed("group", "[orphan] a row\n" + lines)
    with pytest.raises(BadRow, match=wrong):
        Copy(folder).carry_out(row)


@pytest.mark.parametrize("text", ["in terms/open-circuit.yml", "[orphan] a row\nfind it\n"])
def test_a_row_that_cannot_be_read_is_told(text: str) -> None:
    """A line that is neither a head, an order nor a line of one stops the reading."""
    with pytest.raises(BadRow):
        list(parsed("group", text))
