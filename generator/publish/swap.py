"""Putting a finished folder in the place of another.

On Linux the two folders change places in one step (renameat2 with RENAME_EXCHANGE), so that a
reader's request meets the old site or the new one, never a gap. Elsewhere the old folder is
renamed away first; a kill between the two renames leaves it under its waiting name, from where
:func:`mend` brings it back at the next run. Before either, the new site is on the disk itself:
after a power cut there is the old site or the new one, whole.
"""

from __future__ import annotations

import ctypes
import os
import shutil
import sys
from pathlib import Path

RENAME_EXCHANGE = 2  # include/uapi/linux/fs.h
AT_FDCWD = -100  # include/uapi/linux/fcntl.h


def beside(site: Path) -> Path:
    """Give the folder a new site is built in: beside the old one, so that a rename suffices."""
    return site.with_name(f".{site.name}.new")


def waiting(site: Path) -> Path:
    """Give the name under which an old site waits while the new one moves in."""
    return site.with_name(f".{site.name}.old")


def mend(site: Path) -> None:
    """Bring back a site that a kill left under its waiting name; clear what is left over.

    Only whoever holds the site's lock may do it: to anybody else a site that is being built looks
    just like one that was left over.
    """
    old = waiting(site)
    if _is_folder(old) and not os.path.lexists(site):
        old.rename(site)
    for left_over in (old, beside(site)):
        _clear(left_over)


def swap(site: Path, *, settled: bool = True) -> None:
    """Put the folder built beside a site in its place.

    Parameters
    ----------
    site : Path
        Where readers look; it may not exist yet.
    settled : bool
        Whether the new site is to be on the disk itself first. A look that is made anew at the next
        save can do without.

    Raises
    ------
    OSError
        If the new site cannot be put on the disk or the folders cannot be renamed; the old site is
        still in its place.
    """
    new, old = beside(site), waiting(site)
    if settled:
        _settle(new)
    if not site.exists():
        new.rename(site)
        return
    if not _exchanged(new, site):
        site.rename(old)
        try:
            new.rename(site)
        except OSError:
            old.rename(site)
            raise
        # A waiting site is a whole one, so it is taken apart under the other name.
        old.rename(new)
    _clear(new)


def _settle(folder: Path) -> None:
    """Have what was written there on the disk itself, so that a power cut finds it whole.

    One call for the whole file system, since one a file takes longer than building the site.
    """
    if not sys.platform.startswith("linux"):
        if hasattr(os, "sync"):
            os.sync()
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        settled = ctypes.CDLL(None, use_errno=True).syncfs(handle) == 0
    except AttributeError:  # a C library of long ago
        os.sync()
        settled = True
    finally:
        os.close(handle)
    if not settled:
        raise OSError(ctypes.get_errno(), os.strerror(ctypes.get_errno()), str(folder))


def _is_folder(path: Path) -> bool:
    return path.is_dir() and not path.is_symlink()


def _clear(path: Path) -> None:
    """Take away what lies under one of our names, a link itself and never what it leads to."""
    if _is_folder(path):
        shutil.rmtree(path)
    elif os.path.lexists(path):
        path.unlink()


def _exchanged(one: Path, other: Path) -> bool:
    """Let two folders change places in one step; False where the system cannot."""
    if not sys.platform.startswith("linux"):
        return False
    try:
        rename = ctypes.CDLL(None, use_errno=True).renameat2
    except (OSError, AttributeError):
        return False
    done: int = rename(
        AT_FDCWD, os.fsencode(one), AT_FDCWD, os.fsencode(other), ctypes.c_uint(RENAME_EXCHANGE)
    )
    return done == 0
