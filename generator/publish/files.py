"""The files of a site on their way out: each known by its digest, its bytes read when asked for."""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Mapping
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Made:
    """A finished file.

    Parameters
    ----------
    digest : str
        Of its bytes, as :func:`digest_of` gives it.
    read : callable
        Gives the bytes. It may read a disk or make the file again, so ask only when they are
        needed: what has not changed since the last build is told by its digest alone.
    """

    digest: str
    read: Callable[[], bytes]

    @classmethod
    def of(cls, content: bytes) -> Made:
        """Give a file whose bytes are at hand."""
        return cls(digest_of(content), lambda: content)


Files = Mapping[str, Made]
"""Address from the root of the site to the file that is to lie there."""


def digest_of(content: bytes) -> str:
    """Give the digest by which a file is known."""
    return hashlib.blake2b(content, digest_size=20).hexdigest()
