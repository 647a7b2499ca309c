"""A released record that leans on a draft or a withdrawn one."""

from __future__ import annotations

import pytest

from generator.checks import leans_on_unreleased
from tests.checks.manuals import edited, patched


@pytest.mark.parametrize("status", ["draft", "withdrawn"])
def test_every_link_to_it_is_found_with_the_word_that_makes_it_so(status: str) -> None:
    """Each released record that names it has a finding at its link, and the status is shown."""
    manual = patched("specs/inductive-winding-band", f"status: {status}")
    found = leans_on_unreleased.problems(manual.kb)
    assert {f.record for f in found} >= {"specs/inductive-winding", "tests/winding-resistance"}
    for one in found:
        assert manual.marked(one) == "inductive-winding-band"
        assert one.second is not None
        assert manual.marked(one.second) == status


def test_a_draft_may_lean_on_a_draft() -> None:
    """Two records that are written together may name each other before either is released."""
    manual = patched("specs/headlamp-load-time", "status: draft")
    assert {f.record for f in leans_on_unreleased.problems(manual.kb)} == {"tests/battery-rest"}
    manual = patched("tests/battery-rest", "status: draft", manual)
    assert "tests/battery-rest" not in {f.record for f in leans_on_unreleased.problems(manual.kb)}


def test_the_settings_count_as_released() -> None:
    """A first look that is a draft would be missing from every complaint."""
    manual = edited("tests/recent-work", "applies_to:", "status: draft\napplies_to:")
    found = leans_on_unreleased.problems(manual.kb)
    assert "kb_source/settings.yml" in {f.path for f in found}
