"""A whole site or the old one: the new one is made beside it, and the two change places."""

from __future__ import annotations

import datetime
import os
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path

from generator import site as pages_of
from generator.problems import Problem
from generator.publish import complete, host, lock, swap
from generator.publish.frame import BadFrame, stand_of
from generator.publish.notes import Notes
from generator.publish.target import Folder
from generator.records.knowledge_base import KnowledgeBase


class NotBuilt(RuntimeError):
    """The site could not be built; the old one stands as it was."""


def build(settings_file: Path, site: Path, kb: KnowledgeBase, problems: Sequence[Problem]) -> None:
    """Build the site of a checked manual.

    Parameters
    ----------
    settings_file : Path
        The manual's mkdocs.yml.
    site : Path
        Where readers look. It changes only when the new site is whole.
    kb : KnowledgeBase
        The manual.
    problems : sequence of Problem
        What the check gave for it.

    Raises
    ------
    NotBuilt
        If the host reports a fault or warns of anything, or another build is under way.
    OSError
        If a file cannot be written.
    """
    site.parent.mkdir(parents=True, exist_ok=True)
    try:
        with lock.held(site.with_name(f".{site.name}.lock")):
            swap.mend(site)
            try:
                with _dated(kb):
                    _make(settings_file, swap.beside(site), kb, problems)
                swap.swap(site)
            finally:
                swap.mend(site)
    except lock.Busy:
        raise NotBuilt(f"another build of {site} is under way") from None
    except (host.NotHosted, BadFrame) as fault:
        raise NotBuilt(str(fault)) from fault


def _make(
    settings_file: Path, folder: Path, kb: KnowledgeBase, problems: Sequence[Problem]
) -> None:
    made = pages_of.make(kb, problems)
    pages = {page.url: page for page in made.pages}
    stands = {stand_of(page, host.LISTED) for page in made.pages}
    asked = host.Asked(made.title, [*pages, *made.files], stands)
    host.run(settings_file, folder, asked)
    dead = list(host.dead_anchors(asked.links, lambda a: pages[a].html if a in pages else ""))
    if dead:
        raise NotBuilt("; ".join(dead[:3]))
    target = Folder(folder)
    shells = complete.shells(asked.frames, target.files())
    complete.lay_out(target, shells, made.pages, made.files, Notes())


@contextmanager
def _dated(kb: KnowledgeBase) -> Iterator[None]:
    """Give the host the date of the newest record, so that the same input gives the same bytes."""
    ours = {
        "SOURCE_DATE_EPOCH": str(int(newest(kb).timestamp())),
        "NO_MKDOCS_2_WARNING": "1",  # the theme's word on a host that we do not use
    }
    missing = {name: value for name, value in ours.items() if name not in os.environ}
    os.environ.update(missing)
    try:
        yield
    finally:
        for name in missing:
            del os.environ[name]


def newest(kb: KnowledgeBase) -> datetime.datetime:
    """Give midnight (UTC) of the newest date that any record or the settings carry."""
    dates = [kb.settings.release] if kb.settings.release else []
    dates += [signed.date for r in kb for signed in (r.reviewed, r.approved) if signed]
    day = max(dates, default=datetime.date(2020, 1, 1))
    return datetime.datetime(day.year, day.month, day.day, tzinfo=datetime.UTC)
