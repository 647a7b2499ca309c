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


def test_the_new_site_is_on_the_disk_before_the_old_one_goes(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A power cut behind the exchange must not find names without contents."""
    site = tmp_path / "site"
    for folder in (site, swap.beside(site)):
        folder.mkdir()
    (swap.beside(site) / "index.html").write_text("new", encoding="utf-8")
    seen: list[object] = []
    settle, exchanged = swap._settle, swap._exchanged

    def noted_settle(folder: Path) -> None:
        seen.append((folder.name, (folder / "index.html").read_text("utf-8")))
        settle(folder)

    def noted_exchange(one: Path, other: Path) -> bool:
        seen.append("exchange")
        return exchanged(one, other)

    monkeypatch.setattr(swap, "_settle", noted_settle)
    monkeypatch.setattr(swap, "_exchanged", noted_exchange)
    swap.swap(site)
    assert seen == [(".site.new", "new"), "exchange"]
    assert (site / "index.html").read_text("utf-8") == "new"
