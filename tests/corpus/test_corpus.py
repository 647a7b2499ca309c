"""Every broken record gives exactly the findings its row says, with either parser."""

from __future__ import annotations

from pathlib import Path
from typing import NamedTuple

import pytest
import yaml

from generator.problems import Code, Problem, as_json, as_text, in_order
from generator.records import faults, load, misfits, rules, scalars, shape, source_text, strict_yaml

HERE = Path(__file__).parent
PARSERS = [pytest.param(yaml.SafeLoader, id="pure")]
if hasattr(yaml, "CSafeLoader"):
    PARSERS.append(pytest.param(yaml.CSafeLoader, id="c"))

NOT_HERE = {
    "record-rule",  # for a rule without a code of its own; an edit takes one away
    "file-too-large",  # too large for a repository; an edit makes one
}


class Row(NamedTuple):
    """One broken record and what is to be found in it."""

    file: str
    kind: str
    findings: list[str]


def rows() -> list[Row]:
    """Give the table of broken records."""
    made = []
    for line in (HERE / "expected.txt").read_text(encoding="utf-8").splitlines():
        if line and not line.startswith("#"):
            file, kind, findings = line.split(maxsplit=2)
            made.append(Row(file, kind, findings.split(", ")))
    return made


ROWS = rows()


def findings(row: Row, parser: object) -> tuple[list[Problem], str]:
    """Give what is found in one record, and its text."""
    path = f"kb_source/{row.kind}/{row.file}"
    reading = strict_yaml.read((HERE / row.file).read_bytes(), path, parser)
    found = list(reading.problems)
    if reading.data is not None:
        fit = shape.fit_settings if row.kind == "settings" else None
        if fit is not None:
            found.extend(fit(reading.data, reading.places, path)[1])
        else:
            found.extend(shape.fit(row.kind, "x", reading.data, reading.places, path)[1])
    return strict_yaml.bounded(in_order(found), path), reading.text


def short(found: Problem) -> str:
    """Give a finding as the table writes it."""
    return f"{found.code} {found.line}:{found.column}"


@pytest.mark.parametrize("parser", PARSERS)
@pytest.mark.parametrize("row", ROWS, ids=lambda row: row.file)
def test_findings(row: Row, parser: object) -> None:
    """A broken record gives its own findings, at their places, and no others."""
    found, _ = findings(row, parser)
    # Two fields that are missing from one place are two findings, whatever the table's order.
    assert sorted(map(short, found)) == sorted(row.findings)


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row.file)
def test_findings_can_be_printed(row: Row) -> None:
    """Every finding says what, why and how to mend it, and prints without control characters."""
    found, text = findings(row, None)
    for one in found:
        assert one.message and one.why and one.hint
        assert "\n" not in one.message + one.hint
        assert not one.message.endswith(".") and not one.hint.endswith(".")
        assert (one.end_line, one.end_column) >= (one.line, one.column)
    printed = as_text(found, {found[0].path: text}, colour=False)
    assert all(character.isprintable() or character == "\n" for character in printed)
    as_json(found).encode("utf-8")


def test_every_file_has_a_row() -> None:
    """No broken record lies about without being checked, and no row names a missing file."""
    files = {path.relative_to(HERE).as_posix() for path in HERE.glob("*/*.yml")}
    assert files == {row.file for row in ROWS}


def test_every_code_of_reading_has_a_record() -> None:
    """Each fault that reading and fitting can find is found in a record of the corpus."""
    declared = {
        value.name
        for module in (source_text, scalars, faults, strict_yaml, shape, misfits)
        for value in vars(module).values()
        if isinstance(value, Code)
    } | {what.name for what in rules.RULES.values()}
    found = {finding.split()[0] for row in ROWS for finding in row.findings}
    assert declared - found == NOT_HERE
    assert found <= declared
    assert not found & {v.name for v in vars(load).values() if isinstance(v, Code)}
