"""A verdict that rests on a value nobody can look up."""

from __future__ import annotations

from generator.checks import verdict_without_source
from tests.checks.manuals import patched


def test_a_value_that_condemns_needs_a_document() -> None:
    """The source is marked, and the verdict it stands behind is shown."""
    manual = patched("specs/inductive-winding", "source: common-practice")
    (found,) = verdict_without_source.problems(manual.kb)
    assert (found.record, manual.marked(found)) == ("specs/inductive-winding", "common-practice")
    assert found.second is not None
    assert manual.marked(found.second) in ("condemns", "clears")


def test_a_value_that_decides_over_nothing_may_rest_on_practice() -> None:
    """A waiting time is no verdict, nor is a value whose test says neither."""
    manual = patched("specs/battery-at-rest", "source: common-practice")
    assert not verdict_without_source.problems(manual.kb)
