"""Grow the demonstration manual: every record again and again, under new names, links and all.

A copy of a record links to the copies of what the record links to, so that the copies together
are a manual of the same shape, on the same vehicles. The text is spliced where the reader found
the links, so that a grown file reads as a hand-written one does.
"""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from pathlib import Path

from generator.problems import Span
from generator.records.kinds import Record
from generator.records.kinds.base import links_of
from generator.records.kinds.knowledge import FaultCode, Symptom
from generator.records.knowledge_base import KnowledgeBase
from generator.records.load import load

SHARED = ("vehicles", "people", "sources", "hazards")
"""Kinds that stay as they are: a shop's vehicles, roles and rules do not grow with its manual."""


def grow(manual: Path, target: Path, records: int) -> int:
    """Write a manual of at least so many records.

    Parameters
    ----------
    manual : Path
        The manual to grow.
    target : Path
        A folder to write; it may not exist yet.
    records : int
        How many records are wanted.

    Returns
    -------
    int
        How many records there are.
    """
    target.mkdir(parents=True)
    shutil.copy2(manual / "mkdocs.yml", target)
    for part in ("docs", "kb_source"):
        shutil.copytree(manual / part, target / part)
    loaded = load(manual / "kb_source")
    assert loaded.kb is not None
    kb = loaded.kb
    made = sum(1 for _ in kb)
    number = 1
    while made < records:
        number += 1
        lot = _Lot(kb, number)
        for record in kb:
            if record.kind not in SHARED:
                text = lot.text(record, loaded.sources[kb.origins[record.key].path])
                path = target / "kb_source" / record.kind / f"{lot.name(record)}.yml"
                path.write_text(text, encoding="utf-8")
                made += 1
    return made


class _Lot:
    """One copy of a manual's records: what each is called in it, and what it says."""

    def __init__(self, kb: KnowledgeBase, number: int) -> None:
        self.kb = kb
        self.number = number
        self.codes = {
            # Five characters are all that tells trouble codes apart: they are counted through.
            code.key: f"{code.code[0]}{0x1000 + number * len(kb.records['codes']) + n:04x}".lower()
            for n, code in enumerate(kb.all("codes", FaultCode))
        }

    def name(self, record: Record) -> str:
        """Give the id of the copy of a record."""
        return self.codes.get(record.key, f"{record.id}-lot-{self.number}")

    def text(self, record: Record, source: str) -> str:
        """Give the file of the copy of a record."""
        lines = source.split("\n")
        edits = sorted(self._edits(record), key=lambda edit: (edit[0].line, edit[0].column))
        for span, text in reversed(edits):
            line = lines[span.line - 1]
            lines[span.line - 1] = line[: span.column - 1] + text + line[span.end_column - 1 :]
        return "\n".join(lines)

    def _edits(self, record: Record) -> Iterator[tuple[Span, str]]:
        origin = self.kb.origins[record.key]
        for path, kinds, id_ in links_of(record):
            for kind in kinds:
                if kind not in SHARED and id_ in self.kb.records.get(kind, {}):
                    yield origin.span(path), self.name(self.kb.records[kind][id_])
        if isinstance(record, Symptom):
            for n, cause in enumerate(record.causes):
                for part, kind in (("shows", "tests"), ("codes", "codes")):
                    for id_ in getattr(cause, part):
                        span = origin.span(("causes", n, part, id_), of_key=True)
                        yield span, self.name(self.kb.records[kind][id_])
        if isinstance(record, FaultCode):
            yield origin.span(("code",)), self.name(record).upper()
        span = origin.span(("title",))
        assert span.line == span.end_line, f"the title of {record.key} takes two lines"
        quoted = record.title.replace('"', "'")
        yield span, f'"{quoted} {self.number}"'
