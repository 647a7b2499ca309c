"""Putting a new site in the place of the old one."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.publish import swap


def site_with(folder: Path, text: str) -> None:
    """Make a site of one page."""
    folder.mkdir()
    (folder / "index.html").write_text(text)


@pytest.fixture(params=[True, False], ids=["exchange", "two renames"])
def either_way(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> None:
    """Run a test with the one-step exchange and with the two renames of other systems."""
    if not request.param:
        monkeypatch.setattr(swap, "_exchanged", lambda one, other: False)


@pytest.mark.usefixtures("either_way")
def test_the_new_site_takes_the_place_of_the_old(tmp_path: Path) -> None:
    """Shows the new page in place and nothing left beside it."""
    site = tmp_path / "site"
    site_with(site, "old")
    site_with(swap.beside(site), "new")
    swap.swap(site)
    assert (site / "index.html").read_text() == "new"
    assert [p.name for p in tmp_path.iterdir()] == ["site"]


@pytest.mark.usefixtures("either_way")
def test_a_first_site_moves_in(tmp_path: Path) -> None:
    """Shows that no old site is needed."""
    site = tmp_path / "site"
    site_with(swap.beside(site), "new")
    swap.swap(site)
    assert (site / "index.html").read_text() == "new"


def test_a_kill_between_two_renames_is_mended(tmp_path: Path) -> None:
    """Shows that an old site left under its waiting name comes back at the next run."""
    site = tmp_path / "site"
    site_with(swap.waiting(site), "old")
    site_with(swap.beside(site), "half made")
    swap.mend(site)
    assert (site / "index.html").read_text() == "old"
    assert [p.name for p in tmp_path.iterdir()] == ["site"]


def test_a_rename_that_fails_leaves_the_old_site(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Shows that the old site is back in its place when the second rename fails."""
    site = tmp_path / "site"
    site_with(site, "old")
    monkeypatch.setattr(swap, "_exchanged", lambda one, other: False)
    with pytest.raises(FileNotFoundError):
        swap.swap(site)
    assert (site / "index.html").read_text() == "old"
