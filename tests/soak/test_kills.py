"""Builds killed by the hundred: the old site or the new one, every time."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.publish.kills import kill


@pytest.mark.soak
def test_hundreds_of_kills_leave_a_whole_site(tmp_path: Path) -> None:
    """Five hundred kills, by both ways of changing places; some between the two renames."""
    seen = kill(tmp_path, 500, seed=11)
    assert seen["old site"] > 30 and seen["new site"] > 30 and seen["between two renames"], seen
