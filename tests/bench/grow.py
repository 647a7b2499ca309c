"""A manual of any size: copies of the small manual, each a whole of its own with real links.

The small manual is taken, not the demonstration: it stands still, so that two runs a year apart
measure the generator and not what was written meanwhile, and nothing is wrong with it, so that
every rule runs.

A copy has every record but those of the shop itself, under new ids; its links lead to its own
records, and to the shop's vehicles, roles and rules, of which a shop has no more however long its
manual grows.
"""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from generator.edit.rename import splices
from generator.edit.source import Source, read
from generator.records.kinds import Record
from generator.records.kinds.base import COMMON_PRACTICE, links_of
from generator.records.kinds.knowledge import FaultCode
from generator.records.load import SUFFIX
from tests.demo import demonstration
from tests.demonstration import SMALL_RECORDS

OF_THE_SHOP = frozenset({"vehicles", "people", "hazards"})
_NUMBER, _IN_CODE = "copynumber", "copyincode"
"""Stand where a copy's own number belongs, as such or as two digits of a code; no record has
such words."""


@dataclass(frozen=True, slots=True)
class Pattern:
    """A record to be copied: kind, id and text, with a hole for the copy's number."""

    kind: str
    id: str
    text: str

    def copied(self, folder: Path, number: int) -> None:
        """Write the copy of a number into a folder of records."""
        name = f"{_numbered(self.id, number)}{SUFFIX}"
        (folder / self.kind / name).write_text(_numbered(self.text, number), encoding="utf-8")


def grow(folder: Path, wanted: int) -> int:
    """Write a manual's records; give how many there are, the nearest to what is wanted.

    Parameters
    ----------
    folder : Path
        The folder of records, which is made.
    wanted : int
        Number of records; whole copies are made, so that no link is left without its end.
    """
    shutil.copytree(SMALL_RECORDS, folder)
    patterns = list(_patterns())
    small = sum(1 for _ in demonstration())
    copies = max(0, round((wanted - small) / len(patterns)))
    for number in range(1, copies + 1):
        for pattern in patterns:
            pattern.copied(folder, number)
    return small + copies * len(patterns)


def _patterns() -> Iterator[Pattern]:
    for record in demonstration():
        if record.kind not in OF_THE_SHOP:
            path = SMALL_RECORDS / record.kind / f"{record.id}{SUFFIX}"
            source = read(path.read_bytes(), path.name)
            yield Pattern(record.kind, _other(record.kind, record.id), _text(source, record))


def _text(source: Source, record: Record) -> str:
    """Give a record's text with holes: in its title, its code, and wherever it names a record."""
    title = source.places["title",].value
    changes = [(title, f"{source.written(title)} {_NUMBER}")]
    if isinstance(record, FaultCode):
        changes.append((source.places["code",].value, _other("codes", record.id).upper()))
    seen = set()
    for path, kinds, id_ in links_of(record, keys=True):
        kind = next((kind for kind in kinds if id_ in demonstration().records[kind]), "")
        if kind and kind not in OF_THE_SHOP and id_ != COMMON_PRACTICE:
            for span, _written in splices(source, [path], id_, id_):
                if span not in seen:
                    seen.add(span)
                    changes.append((span, _other(kind, id_)))
    return source.spliced(changes)


def _other(kind: str, id_: str) -> str:
    """Give a copy's id; that of a fault code has to be one."""
    if kind != "codes":
        return f"{id_}-{_NUMBER}"
    codes = list(demonstration().records["codes"])
    return f"p1{_IN_CODE}{codes.index(id_):x}"


def _numbered(text: str, number: int) -> str:
    code = f"{number:02x}"
    text = text.replace(_NUMBER, str(number)).replace(_IN_CODE, code)
    return text.replace(_IN_CODE.upper(), code.upper())
