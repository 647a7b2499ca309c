"""The digest by which what a file holds is known."""

from __future__ import annotations

import hashlib

SETTINGS_KEY = "settings"
SUFFIX = ".yml"


def digest_of(source: bytes) -> str:
    """Give the digest of a file's bytes."""
    return hashlib.blake2b(source, digest_size=20).hexdigest()
