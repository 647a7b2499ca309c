"""A folder as one digest."""

from __future__ import annotations

import hashlib
from pathlib import Path


def digest_of_tree(folder: Path) -> str:
    """Give one digest of everything in a folder: names, empty folders and bytes."""
    total = hashlib.sha256()
    for path in sorted(folder.rglob("*")):
        total.update(path.relative_to(folder).as_posix().encode() + b"\0")
        total.update(path.read_bytes() if path.is_file() else b"a folder")
        total.update(b"\0")
    assert folder.is_dir()
    return total.hexdigest()
