"""A released record that nobody approved."""

from __future__ import annotations

from dataclasses import replace

from generator.checks import released_without_approval
from tests.checks.manuals import edited, patched

TERM = "terms/air-gap"
APPROVED = "approved:\n  by: workshop-lead\n  date: 2026-09-21\n"


def test_a_record_without_a_name_under_it_is_found() -> None:
    """Nothing is there to mark, so the title is."""
    manual = edited(TERM, APPROVED, "")
    assert manual.found(released_without_approval.problems) == [
        ("released-without-approval", TERM, "Air gap")
    ]


def test_a_draft_and_a_shop_of_one_are_not_asked() -> None:
    """What is not released needs no release; one person has nobody to ask."""
    manual = edited(TERM, APPROVED, "")
    one = manual.kb.settings.model_copy(update={"one_person_shop": True})
    assert not released_without_approval.problems(replace(manual.kb, settings=one))
    assert not released_without_approval.problems(patched(TERM, "status: draft", manual).kb)
