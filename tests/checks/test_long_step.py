"""A step of more than twenty words."""

from __future__ import annotations

from generator.checks import long_step
from tests.checks.manuals import edited

JOB = "procedures/set-gap-1-6"


def test_twenty_one_words_are_too_many_and_twenty_are_not() -> None:
    """The instruction is marked and its words counted."""
    twenty = " ".join(["word"] * 20)
    assert not long_step.problems(edited(JOB, "Fit the air duct.", twenty).kb)
    manual = edited(JOB, "Fit the air duct.", f"{twenty} more")
    (found,) = long_step.problems(manual.kb)
    assert manual.marked(found) == f"{twenty} more"
    assert found.message.startswith("the step has 21 words")


def test_a_note_may_be_longer() -> None:
    """What explains is no instruction."""
    note = "    note: " + " ".join(["word"] * 40) + "\n"
    manual = edited(JOB, "  - do: Fit the air duct.\n", "  - do: Fit the air duct.\n" + note)
    assert not long_step.problems(manual.kb)
