"""The manual as one zip file: unpacked on a stick, it reads from there without a web server.

The members of the packs go in as they are: a file of a zip and a member of a gzip file hold the
same deflate stream (RFC 1951) between different heads and tails, so nothing is packed twice.
"""

from __future__ import annotations

import json
import struct
from collections.abc import Iterator
from dataclasses import dataclass

from generator.pages import routes
from generator.publish.files import Files
from generator.publish.notes import Notes
from generator.publish.packs import HEAD, MANIFEST, TAIL_LENGTH

TOP = "manual/"
"""The folder inside, so that unpacking scatters nothing."""

# APPNOTE.TXT 4.3 and 4.4 (PKWARE): signatures, and what each field means.
LOCAL, CENTRAL, END = 0x04034B50, 0x02014B50, 0x06054B50
NEEDED = 20  # 2.0, for deflate
MADE_BY = 3 << 8 | NEEDED  # 3: file attributes are those of Unix
UTF_8 = 1 << 11
DEFLATED = 8
# The first day that a zip knows, 1980-01-01: no clock is read, and the bytes stay the same.
TIME, DATE = 0, 0x21
ATTRIBUTES = 0o100644 << 16
MOST_FILES, MOST_BYTES = 2**16 - 2, 2**32 - 2  # beyond lies another format


class TooLarge(ValueError):
    """The manual does not fit into a plain zip file."""


@dataclass(frozen=True, slots=True)
class Entry:
    """A file in a zip: name, deflate stream, checksum, and its size unpacked."""

    name: bytes
    packed: bytes
    crc: int
    size: int


def step(found: Files, notes: Notes) -> Files:
    """Add the folder to a site that has its packs; a step over files."""
    made = notes.file("folder 1", [found[MANIFEST].digest], lambda: archive(list(_entries(found))))
    return {**found, routes.FOLDER: made}


def _entries(found: Files) -> Iterator[Entry]:
    entries = []
    for pack in json.loads(found[MANIFEST].read())["packs"]:
        content, start = found[pack["file"]].read(), 0
        for address, _digest, length in pack["members"]:
            member, start = content[start : start + length], start + length
            crc, size = struct.unpack("<II", member[-TAIL_LENGTH:])
            packed = member[len(HEAD) : -TAIL_LENGTH]
            entries.append(Entry((TOP + address).encode(), packed, crc, size))
    yield from sorted(entries, key=lambda entry: entry.name)


def archive(entries: list[Entry]) -> bytes:
    """Give a zip file.

    Raises
    ------
    TooLarge
        If there is more in it than a plain zip file can hold.
    """
    parts: list[bytes] = []
    directory: list[bytes] = []
    offset = 0
    for entry in entries:
        shared = struct.pack(
            "<HHHHHIIIHH", NEEDED, UTF_8, DEFLATED, TIME, DATE, entry.crc,
            len(entry.packed), entry.size, len(entry.name), 0,
        )  # fmt: skip
        parts += [struct.pack("<I", LOCAL), shared, entry.name, entry.packed]
        directory += [
            struct.pack("<IH", CENTRAL, MADE_BY), shared,
            struct.pack("<HHHII", 0, 0, 0, ATTRIBUTES, offset), entry.name,
        ]  # fmt: skip
        offset = sum(map(len, parts[-4:]), offset)
    listed = b"".join(directory)
    if len(entries) > MOST_FILES or offset + len(listed) > MOST_BYTES:
        raise TooLarge(f"{len(entries)} files, {offset} bytes")
    count = len(entries)
    end = struct.pack("<IHHHHIIH", END, 0, 0, count, count, len(listed), offset, 0)
    return b"".join([*parts, listed, end])
