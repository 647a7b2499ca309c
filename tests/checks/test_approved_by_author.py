"""A record or an exception that its own author let pass."""

from __future__ import annotations

from dataclasses import replace

from generator.checks import approved_by_author
from tests.checks.manuals import edited, patched

TEST = "tests/winding-resistance"
OWN = "  by: diagnostic-technician"


def test_author_and_approver_are_two() -> None:
    """The approver is marked, and the author is shown."""
    manual = edited(TEST, "  by: workshop-lead", OWN)
    (found,) = approved_by_author.problems(manual.kb)
    assert manual.marked(found) == "diagnostic-technician"
    assert found.second is not None
    assert (found.second.line, found.second.says) == (2, "the author")


def test_nobody_excuses_themselves() -> None:
    """An exception that the author allowed is found at its own approver."""
    entry = (
        "exceptions:\n  - check: long-step\n    reason: No shorter way.\n"
        "    approved_by: {by}\n    date: 2026-09-21\n"
    )
    manual = patched(TEST, entry.format(by="diagnostic-technician"))
    assert [f.line for f in approved_by_author.problems(manual.kb)] == [
        manual.texts[f"kb_source/{TEST}.yml"].split("\n").index(
            "    approved_by: diagnostic-technician"
        ) + 1
    ]  # fmt: skip
    assert not approved_by_author.problems(patched(TEST, entry.format(by="workshop-lead")).kb)


def test_a_draft_and_a_shop_of_one_are_not_asked() -> None:
    """A draft is nobody's release; one person cannot be two, and every page says so."""
    manual = edited(TEST, "  by: workshop-lead", OWN)
    one = manual.kb.settings.model_copy(update={"one_person_shop": True})
    assert not approved_by_author.problems(replace(manual.kb, settings=one))
    assert not approved_by_author.problems(patched(TEST, "status: draft", manual).kb)
