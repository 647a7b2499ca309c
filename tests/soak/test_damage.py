"""The cache and the site damaged by the dozen: every build is what a cold one gives."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.publish.damage import damage


@pytest.mark.soak
def test_damage_of_every_kind_to_every_kept_file(tmp_path: Path) -> None:
    """A hundred damages: each of thirteen kinds to each of the three files, and to the site."""
    seen = damage(tmp_path, 117, seed=5)
    assert len(seen) >= 40, seen
