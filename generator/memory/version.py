"""The version of everything that a result may come from, besides the manual itself."""

from __future__ import annotations

import hashlib
import os
import sys
from collections.abc import Iterable, Iterator
from functools import cache
from pathlib import Path

_SKIPPED = ("__pycache__",)


@cache
def of_generator() -> str:
    """Give a digest of the generator's code, its templates and all that is installed beside it.

    Notes
    -----
    The names of what is installed hold the versions, so that one more digit in one of them, be it
    of a plotter's own library, is another version of the whole.
    """
    digest = hashlib.blake2b(digest_size=20)
    digest.update(repr((sys.version, sys.platform)).encode())
    for name in sorted(_installed()):
        digest.update(name.encode() + b"\0")
    digest.update(of_folders([Path(__file__).parent.parent]).encode())
    return digest.hexdigest()


def of_folders(folders: Iterable[Path]) -> str:
    """Give a digest of every file in some folders, their names included; a file is its own."""
    digest = hashlib.blake2b(digest_size=20)
    for folder in folders:
        for path in _files(folder):
            name = path.relative_to(folder).as_posix()
            try:
                content = path.read_bytes()
            except OSError:
                content = b"unreadable"
            digest.update(f"{name}\0{len(content)}\0".encode("utf-8", "surrogateescape"))
            digest.update(content)
        digest.update(b"\0\0")
    return digest.hexdigest()


def _files(folder: Path) -> Iterator[Path]:
    if folder.is_file():
        yield folder
    for place, folders, files in os.walk(folder):
        folders[:] = sorted(name for name in folders if name not in _SKIPPED)
        yield from (Path(place) / name for name in sorted(files))


def _installed() -> set[str]:
    found: set[str] = set()
    for entry in sys.path:
        try:
            found.update(name for name in os.listdir(entry or ".") if name.endswith("-info"))
        except OSError:
            continue
    return found
