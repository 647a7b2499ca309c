"""Every link of a manual: where it stands, and what it may name."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from generator.problems import Code, Elsewhere, Problem, problem
from generator.records.kinds import Record
from generator.records.kinds.base import COMMON_PRACTICE, links_of
from generator.records.knowledge_base import KnowledgeBase, Path


@dataclass(frozen=True, slots=True)
class LinkAt:
    """A link.

    Parameters
    ----------
    record : Record or None
        The record it stands in; None for the settings.
    path : tuple
        The way to the field.
    kinds : tuple of str
        The kinds it may name.
    id : str
        What it names.
    """

    record: Record | None
    path: Path
    kinds: tuple[str, ...]
    id: str

    @property
    def key(self) -> str:
        """ "kind/id" of the record it stands in, or "settings"."""
        return self.record.key if self.record is not None else "settings"

    def targets(self, kb: KnowledgeBase) -> list[Record]:
        """Give the records it names, of the kinds it may name."""
        found = (kb.records.get(kind, {}).get(self.id) for kind in self.kinds)
        return [record for record in found if record is not None]

    def whole(self, kb: KnowledgeBase) -> bool:
        """Say whether it names a record that is there, or common practice as a source.

        A record that could not be read has its own finding; a link to it is no second one.
        """
        practice = self.id == COMMON_PRACTICE and "sources" in self.kinds
        unread = any(f"{kind}/{self.id}" in kb.broken for kind in self.kinds)
        return practice or unread or bool(self.targets(kb))

    def elsewhere(self, kb: KnowledgeBase) -> list[Record]:
        """Give the records of that id in every kind."""
        return [by_id[self.id] for by_id in kb.records.values() if self.id in by_id]

    def problem(
        self, kb: KnowledgeBase, what: Code, message: str, hint: str,
        second: Elsewhere | None = None,
    ) -> Problem:  # fmt: skip
        """Give the finding at the link."""
        origin = kb.origins[self.key]
        record = self.record.key if self.record is not None else ""
        return problem(what, origin.path, origin.span(self.path), message, hint, record, second)


def links(kb: KnowledgeBase) -> list[LinkAt]:
    """Give every link of every record, and of the settings."""
    return kb.remember("links", "", lambda: list(_links(kb)), keep=False)


def loose(kb: KnowledgeBase) -> list[LinkAt]:
    """Give the links that are not whole."""
    return kb.remember("loose links", "", lambda: list(_loose(kb)), keep=False)


def _loose(kb: KnowledgeBase) -> Iterator[LinkAt]:
    # Nearly every link is whole, and to look its record up under a memory's eyes takes long.
    there = {kind: frozenset(by_id) for kind, by_id in kb.records.items()}
    for link in links(kb):
        named = any(link.id in there.get(kind, ()) for kind in link.kinds)
        if not (named or link.whole(kb)):
            yield link


def _links(kb: KnowledgeBase) -> Iterator[LinkAt]:
    for record in kb:
        for path, kinds, id_ in links_of(record):
            yield LinkAt(record, path, kinds, id_)
    for path, kinds, id_ in links_of(kb.settings):
        yield LinkAt(None, path, kinds, id_)
