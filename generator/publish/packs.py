"""The manual as a few files that a reader's browser can keep: every page in reach of one visit.

A pack is a row of gzip members, one for each file, behind one another. Its name holds the digest
of its bytes, and the manifest says which member begins where; the worker in the reader's browser
cuts a member out and inflates it. Files are spread over packs by their address alone, so that an
edit changes one pack and a new page moves no other.
"""

from __future__ import annotations

import hashlib
import html
import json
import re
import zlib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property
from itertools import chain
from typing import Any

from generator.pages import routes
from generator.publish.files import Files, Made, digest_of
from generator.publish.notes import Notes

FOLDER = routes.OFFLINE.rpartition("/")[0] + "/"
MANIFEST = f"{FOLDER}manifest.json"
VERSION = f"{FOLDER}version.json"
WORKER = "worker.js"

FORMAT = 1
"""Goes up when a worker or a page of an older copy could not read the manifest any more; the same
number stands in the scripts."""

FULL = 64
"""Files that a pack holds on average, at most: an edit packs so many again."""

# RFC 1952, 2.3: magic, deflate, no flags, no time, slowest method, unknown system.
HEAD = bytes((0x1F, 0x8B, 8, 0, 0, 0, 0, 0, 2, 255))
TAIL_LENGTH = 8
LEVEL = 9


def step(found: Files, notes: Notes) -> Files:
    """Add packs, their manifest and its version to a site; a step over files.

    Parameters
    ----------
    found : mapping
        Every file of the site. The digests of cautions, if they are there, go into the manifest
        and are left out themselves.
    notes : Notes
        A pack whose files are the same is not packed again.
    """
    rest = {address: made for address, made in found.items() if address != routes.CAUTIONS}
    made = found.get(routes.CAUTIONS)
    cautions: dict[str, str] = json.loads(made.read()) if made else {}
    packs = [_Pack(section, {a: rest[a] for a in members}) for section, members in _groups(rest)]
    entries = []
    for pack in packs:
        entry = notes.value("pack 1", pack.made_of, pack.entry)
        rest[entry["file"]] = notes.file("pack 1", pack.made_of, pack.content)
        entries.append(entry)
    manifest = _manifest(entries, cautions)
    rest[MANIFEST] = _json(manifest)
    rest[VERSION] = _json({key: manifest[key] for key in ("format", "version", "bytes")})
    return rest


def goes_in(address: str) -> bool:
    """Say whether a file of the site is part of what a reader takes along."""
    return address != WORKER and (address == routes.OFFLINE or not address.startswith(FOLDER))


def member_of(content: bytes) -> bytes:
    """Give a file as a gzip member (RFC 1952); the same bytes wherever it is made."""
    deflate = zlib.compressobj(LEVEL, zlib.DEFLATED, -zlib.MAX_WBITS)
    packed = deflate.compress(content) + deflate.flush()
    tail = zlib.crc32(content).to_bytes(4, "little") + (len(content) % 2**32).to_bytes(4, "little")
    return HEAD + packed + tail


def _groups(found: Iterable[str]) -> Iterable[tuple[str, list[str]]]:
    """Give the packs: a section of the site, in as many parts as it needs, by address."""
    sections: dict[str, list[str]] = {}
    for address in sorted(filter(goes_in, found)):
        folder = address.partition("/")[0] if "/" in address else "pages"
        sections.setdefault(folder if re.fullmatch(r"[a-z0-9-]+", folder) else "other", []).append(
            address
        )
    for section, addresses in sorted(sections.items()):
        # A power of two: when a section outgrows its parts each is split, none is mixed.
        count = 1
        while len(addresses) > count * FULL:
            count *= 2
        parts: dict[int, list[str]] = {}
        for address in addresses:
            parts.setdefault(int(digest_of(address.encode())[:8], 16) % count, []).append(address)
        yield from ((section, part) for _number, part in sorted(parts.items()))


@dataclass(frozen=True)
class _Pack:
    """Some files, to be packed if somebody asks."""

    section: str
    files: Mapping[str, Made]

    @property
    def made_of(self) -> list[str]:
        pairs = ((address, made.digest) for address, made in self.files.items())
        return [self.section, *chain.from_iterable(pairs)]

    @cached_property
    def _packed(self) -> list[tuple[str, bytes, bytes]]:
        return [
            (address, content, member_of(content))
            for address, content in ((a, made.read()) for a, made in self.files.items())
        ]

    def content(self) -> bytes:
        """Give the pack."""
        return b"".join(member for _address, _content, member in self._packed)

    def entry(self) -> dict[str, Any]:
        """Give the pack's entry in the manifest, with the titles of the pages in it."""
        digest = hashlib.sha256(self.content()).hexdigest()
        return {
            "file": f"{FOLDER}{self.section}-{digest[:20]}.pack",
            "digest": digest,
            "members": [
                [address, hashlib.sha256(content).hexdigest()[:32], len(member)]
                for address, content, member in self._packed
            ],
            "titles": {
                address: title_of(content)
                for address, content, _member in self._packed
                if address.endswith(".html")
            },
        }


def title_of(page: bytes) -> str:
    """Give a page's title without the manual's, "" if it has none."""
    found = re.search(rb"<title>(.*?)</title>", page, re.DOTALL)
    title = html.unescape(found[1].decode()) if found else ""
    return title.rpartition(" - ")[0] or title


def _manifest(entries: list[dict[str, Any]], cautions: Mapping[str, str]) -> dict[str, Any]:
    packs = [{key: value for key, value in e.items() if key != "titles"} for e in entries]
    titles = dict(chain.from_iterable(entry["titles"].items() for entry in entries))
    pages = {
        address: [title, cautions[address]] if address in cautions else [title]
        for address, title in sorted(titles.items())
    }
    told = {
        "format": FORMAT,
        "bytes": sum(length for pack in packs for _a, _digest, length in pack["members"]),
        "packs": packs,
        "pages": pages,
    }
    return {"version": hashlib.sha256(_text(told)).hexdigest()[:16], **told}


def _text(value: object) -> bytes:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":")).encode()


def _json(value: object) -> Made:
    return Made.of(_text(value) + b"\n")
