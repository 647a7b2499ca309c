"""A damaged or foreign cache, or site, is noticed, and what comes is what a cold build gives."""

from __future__ import annotations

from pathlib import Path

from tests.publish.damage import damage


def test_no_damage_leads_a_build_astray(tmp_path: Path) -> None:
    """Some damages, and one to the site; `make soak` does every kind to each kept file."""
    assert len(damage(tmp_path, 7, seed=3)) >= 8
