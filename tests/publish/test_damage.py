"""A damaged or foreign cache, or site, is noticed, and what comes is what a cold build gives."""

from __future__ import annotations

from pathlib import Path

from tests.publish.damage import damage


def test_no_damage_leads_a_build_astray(tmp_path: Path) -> None:
    """Every kind of damage once; `make soak` does them to each kept file and more."""
    assert len(damage(tmp_path, 13, seed=3)) >= 13
