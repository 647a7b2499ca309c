"""A damaged or foreign cache, or site, is noticed, and what comes is what a cold build gives."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.publish.damage import damage


@pytest.mark.soak
def test_no_damage_leads_a_build_astray(tmp_path: Path) -> None:
    """Some damages, and one to the site; tests/soak does all."""
    assert len(damage(tmp_path, 7, seed=3)) >= 8
