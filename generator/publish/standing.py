"""The site as the last build left it, trusted as far as the file system vouches for it.

A file is known to be unchanged by what the system notes of it: size, inode, mode and both times.
Where any of that differs its bytes are read and compared with their digest, so that a touch costs
time and a change costs the file its trust.
"""

from __future__ import annotations

import errno
import os
import shutil
import stat
import time
from collections.abc import Iterator, Mapping
from contextlib import suppress
from functools import cached_property
from pathlib import Path

from generator.publish.files import digest_of

Mark = tuple[int, ...]
"""What the system notes of a file: mode, size, inode, time of its bytes, time of these notes."""

Files = dict[str, tuple[str, Mark]]
"""Address to the digest of a file and its mark, empty where nobody vouches for it."""

TICK_S = 0.02
"""Longer than the step in which systems write times: two changes a step apart are told apart."""


def mark_of(path: Path) -> Mark:
    """Give the mark of a plain file, nothing for anything else."""
    try:
        found = path.lstat()
    except OSError:
        return ()
    if not stat.S_ISREG(found.st_mode):
        return ()
    return (found.st_mode, found.st_size, found.st_ino, found.st_mtime_ns, found.st_ctime_ns)


def marked(site: Path, digests: Mapping[str, str], made: Mapping[str, Mark]) -> Files:
    """Mark the files of a site that has just been put in its place.

    Parameters
    ----------
    site : Path
        The site.
    digests : mapping
        Address to digest: every file of it.
    made : mapping
        Address to its mark on the day it was made; whoever changed it since gives it other times.
    """
    time.sleep(TICK_S)
    found: Files = {}
    for address, digest in digests.items():
        mark = mark_of(site / address)
        same = mark[:-1] == made.get(address, ())[:-1]  # a second name changes the last part alone
        found[address] = (digest, mark if same and os.name == "posix" else ())
    return found


class Standing:
    """The files of a site, each looked at before it is trusted.

    Parameters
    ----------
    site : Path
        The site.
    files : mapping
        What the last build noted of it.
    """

    def __init__(self, site: Path, files: Files) -> None:
        self._site = site
        self._noted = files

    @cached_property
    def _places(self) -> dict[str, str]:
        return {digest: address for address, (digest, _mark) in self._noted.items()}

    def mark(self, address: str, digest: str) -> Mark:
        """Give the mark of a file, if it stands and has this digest."""
        noted, mark = self._noted.get(address, ("", ()))
        if noted != digest:
            return ()
        now = mark_of(self._site / address)
        if now and now != mark:
            # A cold build would give it the usual mode.
            usual = not mark or now[0] == mark[0]
            if not usual or self._read(address, digest) is None:
                return ()
        return now

    def held(self, digest: str) -> bytes | None:
        """Give the bytes of a file by their digest, None where it does not stand any more."""
        address = self._places.get(digest)
        return None if address is None else self._read(address, digest)

    def read(self, address: str, digest: str) -> bytes:
        """Give the bytes of a file.

        Raises
        ------
        OSError
            If it does not stand any more.
        """
        content = self._read(address, digest)
        if content is None:
            raise FileNotFoundError(errno.ENOENT, "the last site has changed", address)
        return content

    def give(self, address: str, digest: str, to: Path) -> Mark:
        """Give a file a second name, or copy it where that cannot be; nothing if it is not there.

        Whoever has two names for a file must write to neither of them.
        """
        mark = self.mark(address, digest)
        if not mark:
            return ()
        path = self._site / address
        try:
            os.link(path, to, follow_symlinks=False)
        except (OSError, NotImplementedError):
            with suppress(FileNotFoundError):
                to.unlink()
            shutil.copyfile(path, to, follow_symlinks=False)
            return mark_of(to)
        return mark

    def whole(self) -> bool:
        """Say whether every file stands as it was, and no other."""
        found = dict(_walk(self._site))
        return found.keys() == self._noted.keys() and all(
            mark == found[address] or bool(self.mark(address, digest))
            for address, (digest, mark) in self._noted.items()
        )

    def _read(self, address: str, digest: str) -> bytes | None:
        try:
            content = (self._site / address).read_bytes()
        except OSError:
            return None
        return content if digest_of(content) == digest else None


def _walk(folder: Path) -> Iterator[tuple[str, Mark]]:
    """Give every file with its mark, and whatever else is no folder without one."""
    for place, _folders, names in os.walk(folder):
        for name in names:
            path = Path(place, name)
            yield path.relative_to(folder).as_posix(), mark_of(path)
