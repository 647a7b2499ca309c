"""What a folder of records holds, told from what it held before without understanding a word."""

from __future__ import annotations

import hashlib
import os
from collections.abc import Iterator, Mapping

SETTINGS_KEY = "settings"
SUFFIX = ".yml"


def digest_of(source: bytes) -> str:
    """Give the digest by which what a file holds is known."""
    return hashlib.blake2b(source, digest_size=20).hexdigest()


def of_digests(digests: Mapping[str, str]) -> str:
    """Give one digest of many files.

    Parameters
    ----------
    digests : mapping
        Record key ("kind/id"), or "settings", to the digest of the file.
    """
    lines = (f"{key} {digest}" for key, digest in sorted(digests.items()))
    return digest_of("\n".join(lines).encode())


def of_folder(folder: str) -> str | None:
    """Give the same for a folder of records as it lies on the disk.

    Returns
    -------
    str or None
        None for a folder that holds anything but plain files where records belong: then it has
        to be read with understanding.
    """
    try:
        return of_digests(dict(_digests(folder)))
    except (OSError, _NotPlain):
        return None


class _NotPlain(Exception):
    pass


def _digests(folder: str) -> Iterator[tuple[str, str]]:
    for entry in _entries(folder):
        if entry.name == SETTINGS_KEY + SUFFIX:
            yield SETTINGS_KEY, digest_of(_content(entry))
            continue
        if not entry.is_dir(follow_symlinks=False):
            raise _NotPlain
        for file in _entries(entry.path):
            stem = file.name.removesuffix(SUFFIX)
            if stem == file.name:
                raise _NotPlain
            yield f"{entry.name}/{stem}", digest_of(_content(file))


def _entries(folder: str) -> list[os.DirEntry[str]]:
    with os.scandir(folder) as found:
        return [entry for entry in found if not entry.name.startswith(".")]


def _content(entry: os.DirEntry[str]) -> bytes:
    if not entry.is_file(follow_symlinks=False):
        raise _NotPlain
    with open(entry.path, "rb", buffering=0) as file:
        return file.read()
