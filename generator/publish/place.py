"""Where a site may lie: nowhere that holds what is not a site of ours."""

from __future__ import annotations

import os
from pathlib import Path

from generator import layout

MARK = b'data-revision="'
"""Stands on every page of ours, the first one included; who else's site has it is not asked."""


def place_of(wanted: Path) -> Path:
    """Give the whole path of a folder, links on the way to it followed, the last one not."""
    if wanted.name in ("", ".", ".."):
        return wanted.resolve()
    return wanted.parent.resolve() / wanted.name


def refusal(folder: Path, site: Path) -> str | None:
    """Say why a site of the manual in `folder` may not be put at `site`, None where it may.

    Both paths are whole, as :func:`place_of` gives them. A swap would take away what lies there.
    """
    if site.is_symlink():
        return f"{site} is a link; name the folder itself"
    if site == folder or site in folder.parents:
        return f"{site} holds the manual itself; name a folder of its own"
    for kept in (layout.RECORDS, layout.DOCS, layout.CACHE):
        if site == folder / kept or folder / kept in site.parents:
            return f"{site} lies among the manual's own files; name another folder"
    if os.path.lexists(site) and not site.is_dir():
        return f"{site} is a file"
    if os.path.ismount(site):
        return f"{site} is a disk of its own; name a folder on it"
    if site.is_dir() and any(site.iterdir()) and not _is_ours(site):
        return f"{site} holds something that is not a site; name an empty folder"
    return None


def _is_ours(site: Path) -> bool:
    try:
        return MARK in (site / "index.html").read_bytes()
    except OSError:
        return False
