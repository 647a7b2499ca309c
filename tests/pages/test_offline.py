"""What a copy has to know of cautions: they change when a warning does, and only then."""

from __future__ import annotations

import json
from dataclasses import replace
from typing import Any

from generator.pages import offline
from generator.pages.book import Book
from generator.records.knowledge_base import KnowledgeBase
from tests.demo import changed, demonstration

TEST = "winding-resistance"
PAGE = f"tests/{TEST}.html"


def told(kb: KnowledgeBase) -> dict[str, str]:
    """Give the digest of each page's cautions."""
    found: dict[str, str] = json.loads(offline.cautions(Book.of(kb)))
    return found


def reworded(number: int) -> list[Any]:
    """Give the steps of the test with another command in one of them."""
    test: Any = demonstration().records["tests"][TEST]
    steps = list(test.steps)
    steps[number] = steps[number].model_copy(update={"do": "Do it quite differently."})
    return steps


def test_a_rule_that_changes_is_told_on_each_page_that_shows_it_and_on_no_other() -> None:
    """The shop's own rule is reworded: the pages that show it differ, and the page of rules."""
    kb = demonstration()
    rule = next(iter(kb.records["hazards"].values()))
    before, after = told(kb), told(changed(kb, "hazards", rule.id, hazard="It bites."))
    shown = {
        f"{guarded.job.kind}/{guarded.job.id}.html"
        for guarded in Book.of(kb).guarded.values()
        if any(line.id == rule.id for step in guarded.steps for line in step.hazards)
    }
    assert shown
    assert {page for page in before if before[page] != after[page]} == {*shown, "safety.html"}


def test_other_words_change_no_caution() -> None:
    """A new title, and a step that nothing threatens, leave every digest as it was."""
    kb = demonstration()
    before = told(kb)
    assert told(changed(kb, "tests", TEST, title="Something else")) == before
    number = next(
        step.index for step in Book.of(kb).guarded[f"tests/{TEST}"].steps
        if not step.boxes and not step.reminders and step.record_key == f"tests/{TEST}"
    )  # fmt: skip
    assert told(changed(kb, "tests", TEST, steps=reworded(number))) == before


def test_a_guarded_command_that_changes_is_told() -> None:
    """A caution is about its command: where that is reworded, the page is named."""
    kb = demonstration()
    guarded = Book.of(kb).guarded[f"tests/{TEST}"]
    number = next(
        step.index for step in guarded.steps
        if step.boxes and step.record_key == f"tests/{TEST}"
    )  # fmt: skip
    before, after = told(kb), told(changed(kb, "tests", TEST, steps=reworded(number)))
    assert PAGE in {page for page in before if before[page] != after[page]}


def test_what_to_do_when_someone_is_hurt_counts_as_a_caution() -> None:
    """The emergency text stands on the safety page, and its change is told there."""
    kb = demonstration()
    other = replace(kb, settings=kb.settings.model_copy(update={"emergency": "Call 112."}))
    before, after = told(kb), told(other)
    assert {page for page in before if before[page] != after[page]} == {"safety.html"}
    assert set(before) == {"safety.html", *(f"{key}.html" for key in Book.of(kb).guarded)}
