"""The account for programs: every step of every job, in a shape that says its version."""

from __future__ import annotations

import json
from pathlib import Path

import jsonschema
import pytest

from generator.hazards import built_in
from generator.pages import audit
from generator.pages.book import Book
from generator.records.kinds.work import State
from tests.hazards.build import job, manual, step
from tests.pages.books import made, whole

TEXT = {"type": "string", "minLength": 1}
WORD = {"enum": ["DANGER", "WARNING", "CAUTION", "NOTICE"]}
IDS = {"type": "array", "items": TEXT}
STATE = {
    "type": "object",
    "required": [*State.model_fields, "undone"],
    "additionalProperties": {"anyOf": [TEXT, {"type": "object", "additionalProperties": IDS}]},
}
SHAPE = {
    "type": "object",
    "required": ["schema", "rules", "jobs"],
    "properties": {
        "schema": {"const": 1},
        "rules": {
            "type": "array",
            "items": {
                "required": ["id", "word", "title", "symbol", "reserved_for", "defer", "basis",
                             "reviewed"],
                "properties": {"id": TEXT, "word": WORD, "basis": TEXT},
            },
        },
        "jobs": {
            "type": "array",
            "items": {
                "required": ["job", "title", "page", "record", "start", "left", "stops_at",
                             "steps"],
                "properties": {
                    "start": STATE,
                    "left": STATE,
                    "steps": {
                        "type": "array",
                        "items": {
                            "required": ["step", "anchor", "record", "do", "state", "boxes",
                                         "reminders"],
                            "properties": {
                                "state": STATE,
                                "reminders": IDS,
                                "boxes": {"items": {
                                    "required": ["word", "hazards"],
                                    "properties": {"word": WORD, "hazards": IDS},
                                }},
                            },
                        },
                    },
                },
            },
        },
    },
}  # fmt: skip
"""The promise to whoever reads the account; it changes only with the number of its schema."""


def test_the_account_has_its_promised_shape_and_holds_every_step() -> None:
    """Each job of the manual and each of its steps, called ones too, is in the file."""
    found = json.loads(made().files["audit.json"])
    jsonschema.validate(found, SHAPE)
    book = whole()
    assert {one["job"] for one in found["jobs"]} == set(book.guarded)
    for one in found["jobs"]:
        steps = book.guarded[one["job"]].steps
        assert [s["anchor"] for s in one["steps"]] == [s.anchor for s in steps]
    assert {rule.id for rule in built_in()} < {rule["id"] for rule in found["rules"]}


def test_the_account_agrees_with_the_pages() -> None:
    """As many boxes as the account holds for a job stand on the page that it names."""
    pages = {page.url: page.html for page in made().pages}
    boxes = 0
    for one in json.loads(made().files["audit.json"])["jobs"]:
        html = pages[one["page"]]
        due = [box for step in one["steps"] for box in step["boxes"]]
        assert html.count('<div class="signal signal-') == len(due)
        assert all(f'id="{step["anchor"]}"' in html for step in one["steps"])
        boxes += len(due)
    assert boxes > 100


def test_the_shape_can_be_broken() -> None:
    """A step without its boxes does not pass for a whole account."""
    found = json.loads(made().files["audit.json"])
    del found["jobs"][0]["steps"][0]["boxes"]
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(found, SHAPE)


def test_the_account_says_where_reserved_work_stops_a_page() -> None:
    """The number of the reserved step, and null for a job that goes to its end."""
    risky = job("risky", step("key_off", "driver_seat"),
                step("unplug", "cabin", acts_on=["pyrotechnic"]))  # fmt: skip
    found = json.loads(audit.document(Book.of(manual(risky, job("calm", step("key_off"))))))
    stops = {one["job"]: one["stops_at"] for one in found["jobs"]}
    assert stops == {"procedures/calm": None, "procedures/risky": "2"}


def test_the_built_site_carries_the_account(site_dir: Path) -> None:
    """The file is published beside the home page."""
    found = json.loads((site_dir / "audit.json").read_text("utf-8"))
    jsonschema.validate(found, SHAPE)
    assert sum(len(one["steps"]) for one in found["jobs"]) > 300
