"""Two records of one kind with the same title."""

from __future__ import annotations

from generator.checks import duplicate_title
from tests.checks.manuals import edited


def test_the_second_of_two_is_found_and_the_first_is_shown() -> None:
    """Capitals and spaces do not tell two titles apart; the second place is the first use."""
    manual = edited("specs/inductive-gap", "Air gap, Corrie 1.2", "air  GAP, Corrie 1.6")
    (found,) = duplicate_title.problems(manual.kb)
    assert (found.record, manual.marked(found)) == ("specs/inductive-gap", "air  GAP, Corrie 1.6")
    assert found.second is not None
    assert manual.marked(found.second) == "Air gap, Corrie 1.6"
    assert found.second.path == "kb_source/specs/hall-gap.yml"


def test_two_kinds_may_share_a_title() -> None:
    """A test may be called as the value it measures."""
    manual = edited("specs/hall-gap", "Air gap, Corrie 1.6", "Battery at rest")
    assert not duplicate_title.problems(manual.kb)
