"""Schemas: what editors are told is what the shapes hold."""

from __future__ import annotations

import datetime
import json
import random
import re
from functools import cache
from pathlib import Path
from typing import Any, NamedTuple

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from jsonschema import Draft202012Validator
from jsonschema.protocols import Validator

from generator.edit.blank import blank
from generator.edit.files import every
from generator.edit.source import read
from generator.problems import Code
from generator.records import misfits, rules, shape, strict_yaml
from generator.records.kinds import KINDS, Settings
from generator.shapes import schema
from generator.shapes.outline import SETTINGS, outline
from tests.corpus.test_corpus import HERE as CORPUS
from tests.corpus.test_corpus import ROWS
from tests.edit.samples import sample

RECORDS = Path(__file__).parents[2] / "kb_source"

EXPRESSED = {
    "missing-key", "unknown-key", "wrong-type", "unknown-word", "out-of-range", "bad-id",
    "bad-date", "empty-text", "too-long", "too-few-items", "too-many-items", "bad-pattern",
    "unknown-format", "value-form", "value-unit", "value-quantity", "value-spread", "next-ways",
    "one-fix", "cable-size", "piece-kind",
}  # fmt: skip
"""Faults that a schema can state."""

BEYOND = {
    "bare-date",  # quoted or not is the same to an editor
    "value-limits", "value-impossible", "build-range",  # one figure against another
    "meter-range", "shows-stranger", "code-stranger", "proof-without-reading",  # field to field
    "record-rule",  # for rules that have no code of their own; none has
}  # fmt: skip
"""Faults that it cannot."""


@cache
def validator(kind: str) -> Validator:
    """Give the validator of a kind's schema."""
    return Draft202012Validator(
        schema.schema_of(kind), format_checker=Draft202012Validator.FORMAT_CHECKER
    )


def as_json(data: Any) -> Any:
    """Give data as an editor sees it: a date is text to it."""
    return json.loads(json.dumps(data, default=lambda day: day.isoformat()))


def faults(kind: str, data: Any) -> list[str]:
    """Give what a schema finds wrong."""
    found = validator(kind).iter_errors(as_json(data))
    return [f"{error.json_path}: {error.message}" for error in found]


@pytest.mark.parametrize("kind", schema.SCHEMAS)
def test_each_schema_is_one(kind: str) -> None:
    """Each is a schema of the draft it names, and stands alone."""
    made = schema.schema_of(kind)
    assert made["$schema"] == "https://json-schema.org/draft/2020-12/schema"
    Draft202012Validator.check_schema(made)
    referred = re.findall(r'"\$ref": "#/\$defs/(\w+)"', json.dumps(made))
    assert set(referred) == set(made.get("$defs", {}))
    assert json.dumps(made).count("$ref") == len(referred)


def test_the_committed_schemas_have_not_drifted() -> None:
    """What editors read beside the records is what the shapes give: fettlebook schema."""
    folder = RECORDS / schema.FOLDER
    assert list(schema.stale(folder)) == []
    assert {path.name for path in folder.iterdir()} == {f"{kind}.json" for kind in schema.SCHEMAS}


def test_every_record_of_the_demonstration_fits() -> None:
    """No editor marks a record that `check` finds no fault with."""
    files = every(RECORDS, "kb_source")
    assert len(files) > 100
    found = {
        file.shown: wrong
        for file in files
        if (wrong := faults(file.kind, read(file.read(), file.shown).data))
    }
    assert found == {}


class Broken(NamedTuple):
    """A broken record that reads as YAML: its file, kind and data, and the faults of its shape."""

    file: str
    kind: str
    data: Any
    codes: frozenset[str]


def broken() -> list[Broken]:
    """Give the broken records that have a fault which a schema can state, and none of YAML's."""
    made = []
    for row in ROWS:
        reading = strict_yaml.read((CORPUS / row.file).read_bytes(), row.file)
        codes = frozenset(finding.split()[0] for finding in row.findings) & EXPRESSED
        if codes and not reading.problems:
            made.append(Broken(row.file, row.kind, reading.data, codes))
    return made


@pytest.mark.parametrize("record", broken(), ids=lambda record: record.file)
def test_a_broken_record_is_rejected(record: Broken) -> None:
    """An editor marks each fault that a schema can state, before anybody runs a check."""
    assert faults(record.kind, record.data)


def test_every_fault_is_tried() -> None:
    """For each fault that a schema can state there is a broken record above."""
    assert {code for record in broken() for code in record.codes} == EXPRESSED


def test_every_fault_of_shape_is_placed() -> None:
    """A new kind of misfit is either stated in schemas or known to be beyond them."""
    values = [value for module in (misfits, shape, rules) for value in vars(module).values()]
    declared = {value.name for value in values if isinstance(value, Code)}
    declared |= {value.name for value in rules.RULES.values()}
    assert declared == EXPRESSED | BEYOND


@settings(max_examples=300)
@given(st.sampled_from(schema.SCHEMAS), st.integers(0, 2**32), st.booleans())
def test_whatever_the_shape_takes_the_schema_takes(kind: str, seed: int, spoil: bool) -> None:
    """A schema is never stricter than the check: an editor raises no false alarm."""
    pick = random.Random(seed)
    data = sample(outline(kind), pick, 0.5)
    if spoil:
        spoiled(data, pick)
    wrong = faults(kind, data)
    if wrong:
        assert not taken(kind, data), wrong


def taken(kind: str, data: Any) -> bool:
    """Say whether the shape takes data."""
    if kind == SETTINGS:
        return shape.fit_settings(data, {}, "x.yml")[0] is not None
    return shape.fit(kind, "x", data, {}, "x.yml")[0] is not None


OTHER: tuple[Any, ...] = (
    "", " ", "x", "Some text.", 0, 1, -1, 0.5, True, False, [], {}, ["a"], "5 V", "5 ohm ± 10 %",
    "5 to 6 °C", "-5 °C", datetime.date(2026, 1, 2), "a" * 401,
)  # fmt: skip


def spoiled(data: Any, pick: random.Random) -> None:
    """Put something else in one place of the data, often something that does not belong there."""
    inner: Any = data
    while True:
        keys = list(inner) if isinstance(inner, dict) else list(range(len(inner)))
        if not keys:
            return
        key = pick.choice(keys)
        below = inner[key]
        if isinstance(below, (dict, list)) and below and pick.random() < 0.8:
            inner = below
            continue
        inner[key] = pick.choice(OTHER)
        return


@pytest.mark.parametrize("kind", schema.SCHEMAS)
def test_the_samples_are_mostly_sound(kind: str) -> None:
    """The data that the test above draws is taken by the shape often enough to prove something."""
    drawn = [sample(outline(kind), random.Random(seed), 0.3) for seed in range(40)]
    assert sum(taken(kind, data) for data in drawn) >= 10


def test_the_line_in_a_record_leads_to_its_schema() -> None:
    """The path that `new` writes is that of the schema file, seen from the record."""
    for kind in KINDS:
        path = blank(kind).split("$schema=")[1].split("\n")[0]
        wanted = RECORDS / schema.FOLDER / schema.file_name(kind)
        assert (RECORDS / kind / path).resolve() == wanted.resolve()
        assert wanted.is_file()


def test_completion_has_what_it_needs() -> None:
    """Fields are described, closed lists are listed, defaults are told, unknown keys are marked."""
    made = schema.schema_of("tests")
    assert made["additionalProperties"] is False
    assert made["properties"]["method"]["enum"][0] == "look"
    assert made["properties"]["sensitivity"]["default"] == 0.9
    assert all(one["description"] for one in made["properties"].values())
    assert "The id of a record in components/." in made["properties"]["components"]["description"]
    assert set(schema.schema_of("settings")["required"]) == {
        name for name, info in Settings.model_fields.items() if info.is_required()
    }
