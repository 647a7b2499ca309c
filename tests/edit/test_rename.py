"""Renaming a record: every reference, nothing else, and never over another file."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.edit import rename
from generator.records.load import load
from tests.demonstration import copy_manual

CASES = [
    ("tests", "winding-resistance"), ("specs", "engine-warm"), ("codes", "p0335"),
    ("people", "workshop-lead"), ("components", "battery"), ("vehicles", "corrie-1-2"),
    ("symptoms", "long-cranking"), ("sources", "corrie-data-sheet"),
]  # fmt: skip


@pytest.fixture
def records(tmp_path: Path) -> Path:
    """Give the records of a copy of the demonstration manual."""
    copy_manual(tmp_path / "manual")
    return tmp_path / "manual" / "kb_source"


def carried_out(records: Path, kind: str, old: str, new: str) -> rename.Plan:
    """Rename a record on disk."""
    kb = load(records, "kb_source").kb
    assert kb is not None
    plan = rename.plan(kb, records, "kb_source", kind, old, new)
    rename.carry_out(plan)
    return plan


@pytest.mark.parametrize(("kind", "id_"), CASES)
def test_there_and_back_is_the_same_manual(records: Path, kind: str, id_: str) -> None:
    """Each file is the same again, byte for byte; only the settings say where it was meanwhile."""
    before = {path: path.read_bytes() for path in records.rglob("*.yml")}
    carried_out(records, kind, id_, "another-name")
    loaded = load(records, "kb_source")
    assert loaded.kb is not None and not loaded.problems
    assert not rename.uses(loaded.kb, kind, id_)
    assert rename.uses(loaded.kb, kind, "another-name")
    carried_out(records, kind, "another-name", id_)
    after = {path: path.read_bytes() for path in records.rglob("*.yml")}
    assert {path for path in before if before[path] != after[path]} == {records / "settings.yml"}


def test_the_settings_keep_the_old_address_through_two_renamings(records: Path) -> None:
    """The first name leads to the last, and so does the one between."""
    carried_out(records, "tests", "battery-rest", "one")
    carried_out(records, "tests", "one", "two")
    kb = load(records, "kb_source").kb
    assert kb is not None
    assert [(m.old, m.new) for m in kb.settings.moved] == [("battery-rest", "two"), ("one", "two")]


def test_only_the_references_change(records: Path) -> None:
    """Line by line, what differs names the record."""
    kb = load(records, "kb_source").kb
    assert kb is not None
    plan = rename.plan(kb, records, "kb_source", "tools", "multimeter", "bench-meter")
    for change in plan.changes[:-1]:
        pairs = zip(change.before.splitlines(), change.after.splitlines(), strict=True)
        for old, new in pairs:
            assert old == new or old.replace(b"multimeter", b"bench-meter") == new


@pytest.mark.parametrize("new", ["on", "0x1", "1e3", "12"])
def test_an_id_that_yaml_would_misread_is_quoted(records: Path, new: str) -> None:
    """The manual reads without a finding afterwards."""
    carried_out(records, "tests", "battery-rest", new)
    assert load(records, "kb_source").problems == []


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("nope", "x", "no record"), ("battery-rest", "battery-cranking", "already"),
        ("battery-rest", "Bad Name", "cannot be an id"), ("battery-rest", "con", "device"),
    ],
)  # fmt: skip
def test_what_cannot_be_is_refused(records: Path, old: str, new: str, said: str) -> None:
    """An unknown record, a name that is taken and a name unfit for a file."""
    kb = load(records, "kb_source").kb
    assert kb is not None
    with pytest.raises(rename.CannotRename, match=said):
        rename.plan(kb, records, "kb_source", "tests", old, new)
