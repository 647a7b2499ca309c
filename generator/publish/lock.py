"""One build at a time: a lock that dies with its holder, so that none is ever left behind."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

if sys.platform == "win32":
    import msvcrt

    def _take(handle: int) -> None:
        msvcrt.locking(handle, msvcrt.LK_NBLCK, 1)

else:
    import fcntl

    def _take(handle: int) -> None:
        fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)


class Busy(RuntimeError):
    """Somebody else holds the lock."""


def place(site: Path) -> Path:
    """Give the lock of a site: beside it, so that whoever may build it may hold it."""
    return site.with_name(f".{site.name}.lock")


@contextmanager
def held(path: Path) -> Iterator[None]:
    """Hold a lock.

    Parameters
    ----------
    path : Path
        The lock's file. It is made and taken away again; one that a kill left is of no account.

    Raises
    ------
    Busy
        If another process holds it.
    OSError
        If the file cannot be made.
    """
    handle = _open(path)
    try:
        yield
    finally:
        # First the name, then the lock: whoever opened the file meanwhile finds it nameless.
        with suppress(OSError):
            path.unlink()
        os.close(handle)


def _open(path: Path) -> int:
    while True:
        handle = os.open(path, os.O_RDWR | os.O_CREAT | getattr(os, "O_NOFOLLOW", 0), 0o644)
        try:
            _take(handle)
            if _is_the_one(handle, path):
                return handle
        except (BlockingIOError, PermissionError):
            os.close(handle)
            raise Busy(str(path)) from None
        except BaseException:
            os.close(handle)
            raise
        os.close(handle)


def _is_the_one(handle: int, path: Path) -> bool:
    """Say whether the file still has its name; one that was let go just now has none."""
    try:
        return os.path.samestat(os.fstat(handle), path.stat())
    except FileNotFoundError:
        return False
