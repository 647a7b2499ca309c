"""The data is the shop's: all of it, checkable by anybody, and enough to make the same pages."""

from __future__ import annotations

import json
from functools import cache

import jsonschema
import pytest

from generator import site
from generator.edit import export
from tests.demo import demonstration


@cache
def through_json() -> export.Document:
    """Give the demonstration's document after a way through a file."""
    found: export.Document = json.loads(export.as_text(demonstration()))
    return found


def test_the_document_holds_what_its_schema_says() -> None:
    """An independent validator accepts it."""
    jsonschema.Draft202012Validator.check_schema(export.document_schema())
    errors = jsonschema.Draft202012Validator(export.document_schema()).iter_errors(through_json())
    assert [error.message for error in errors] == []


def test_the_schema_refuses_what_no_export_gives() -> None:
    """Another format, a record of an unknown kind, a field too many."""
    checked = jsonschema.Draft202012Validator(export.document_schema())
    good = through_json()
    records = {**good["records"], "songs": {}}
    kind, by_id = next(iter(good["records"].items()))
    id_ = next(iter(by_id))
    more = {**good["records"], kind: {**by_id, id_: {**by_id[id_], "smell": "of oil"}}}
    for bad in ({**good, "export": 9}, {**good, "records": records}, {**good, "records": more}):
        assert not checked.is_valid(bad)


def test_it_rebuilds_the_same_records() -> None:
    """Every record and the settings are equal to those that were written."""
    kb, again = demonstration(), export.rebuilt(through_json())
    assert again.settings == kb.settings
    assert list(again) == list(kb)


def test_it_rebuilds_the_same_pages() -> None:
    """Byte for byte, files for programs included."""
    kb, again = demonstration(), export.rebuilt(through_json())
    assert site.check(again) == []
    before, after = site.make(kb, []), site.make(again, [])
    assert after.pages == before.pages
    assert after.files == before.files


@pytest.mark.parametrize(
    "bad",
    [
        {}, {"export": 1}, {"export": 2, "settings": {}, "records": {}},
        {"export": 1, "settings": [], "records": {"songs": 3}},
    ],
)  # fmt: skip
def test_what_is_no_export_is_refused(bad: export.Document) -> None:
    """With a word, and not by chance further on."""
    with pytest.raises(export.NotAnExport):
        export.rebuilt(bad)
