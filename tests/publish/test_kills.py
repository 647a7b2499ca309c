"""A build that is killed leaves the old site or the new one, and the next run tidies up."""

from __future__ import annotations

from pathlib import Path

from tests.publish.kills import kill


def test_a_kill_at_any_moment_leaves_a_whole_site(tmp_path: Path) -> None:
    """Kills while pages are written, around the swap and while the old site is taken apart."""
    seen = kill(tmp_path, 20, seed=7)
    assert seen["old site"] and seen["new site"] and seen["a folder left beside it"], seen
