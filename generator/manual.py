"""A manual on disk: the folder that holds mkdocs.yml, the records and the hand-written pages."""

from __future__ import annotations

import datetime
from dataclasses import dataclass
from pathlib import Path

from generator import site
from generator.problems import Problem, in_order
from generator.records.knowledge_base import KnowledgeBase
from generator.records.load import load

RECORDS = "kb_source"
SETTINGS = "mkdocs.yml"
SITE = "site"


@dataclass(frozen=True, slots=True)
class Manual:
    """A manual, read and checked.

    Parameters
    ----------
    kb : KnowledgeBase or None
        The records; None where the settings could not be read.
    problems : list of Problem
        Every finding, in order.
    sources : dict
        Text of each record file, for excerpts.
    """

    kb: KnowledgeBase | None
    problems: list[Problem]
    sources: dict[str, str]


def read(folder: Path, as_of: datetime.date | None = None) -> Manual:
    """Read and check the manual in a folder; bad content gives findings, never an exception.

    Reviews are overdue on the day `as_of`; without a day none is.
    """
    loaded = load(folder / RECORDS, RECORDS)
    if loaded.kb is None:
        return Manual(None, in_order(loaded.problems), loaded.sources)
    return Manual(loaded.kb, site.check(loaded.kb, loaded.problems, as_of), loaded.sources)


def theme_folder() -> Path:
    """Give the folder of the theme: packed into the wheel, or beside the package in a checkout."""
    packed = Path(__file__).parent / "site_overrides"
    return packed if packed.is_dir() else Path(__file__).parent.parent / "site_overrides"
