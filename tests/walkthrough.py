"""Reading a page of docs/ as the steps it tells a person to take."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path


@dataclass(frozen=True)
class Block:
    """A block of code: its language, its text, and the prose since the block before."""

    language: str
    text: str
    before: str

    @property
    def file(self) -> str:
        """The record that the prose tells to open."""
        return re.findall(r"`(kb_source/[\w/-]+\.yml)`", self.before)[-1]


def blocks(page: str) -> Iterator[Block]:
    """Give every fenced block of a page, in order."""
    end = 0
    for match in re.finditer(r"^```(\w+)\n(.*?)^```$", page, re.MULTILINE | re.DOTALL):
        yield Block(match[1], match[2], " ".join(page[end : match.start()].split()))
        end = match.end()


def commands(block: Block) -> Iterator[tuple[str, str]]:
    """Give each command of a console block and what it prints, as far as the page shows it."""
    for part in block.text.split("$ ")[1:]:
        command, _, printed = part.partition("\n")
        yield command, printed


def printed_as_shown(shown: str, printed: str) -> bool:
    """Say whether a command printed what a page shows; a line of three dots is any lines."""
    shape = re.escape(shown).replace(re.escape("...\n"), r"(?:.*\n)*")
    return re.fullmatch(shape, printed) is not None


def write(manual: Path, block: Block) -> set[str]:
    """Fill in the record that a page tells to; give its fields that the new record did not name."""
    path = manual / block.file
    fresh = path.read_text(encoding="utf-8")
    keys = set(re.findall(r"^ *(?:- )?([a-z_]+):", block.text, re.MULTILINE))
    path.write_text(block.text, encoding="utf-8")
    return {key for key in keys if not re.search(rf"\b{key}\b", fresh)}


def release(path: Path, block: Block) -> None:
    """Put what a page says in the place of a record's status."""
    text = path.read_text(encoding="utf-8")
    assert text.count("status: draft\n") == 1
    path.write_text(text.replace("status: draft\n", block.text), encoding="utf-8")
