"""A whole site or the old one: the host builds beside it, and the two change places."""

from __future__ import annotations

import datetime
import logging
import os
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from generator.publish import swap
from generator.records.knowledge_base import KnowledgeBase


class NotBuilt(RuntimeError):
    """The host could not build the site; the old one stands as it was."""


def build(settings_file: Path, site: Path, kb: KnowledgeBase, *, strict: bool = True) -> None:
    """Build the site of a checked manual.

    Parameters
    ----------
    settings_file : Path
        The manual's mkdocs.yml.
    site : Path
        Where readers look. It changes only when the new site is whole.
    kb : KnowledgeBase
        The manual, for its dates: the clock is never read.
    strict : bool
        Whether a warning of the host stops the build.

    Raises
    ------
    NotBuilt
        If the host reports a fault.
    """
    from mkdocs.commands.build import build as host_build
    from mkdocs.config import load_config
    from mkdocs.exceptions import Abort, MkDocsException

    site.parent.mkdir(parents=True, exist_ok=True)
    swap.mend(site)
    new = swap.beside(site)
    counter = _Counter()
    log = logging.getLogger("mkdocs")
    log.addHandler(counter)
    try:
        with _dated(kb):
            config = load_config(str(settings_file), site_dir=str(new))
            config.plugins.on_startup(command="build", dirty=False)
            host_build(config)
            config.plugins.on_shutdown()
        if strict and counter.messages:
            raise NotBuilt("; ".join(counter.messages[:3]))
        swap.swap(site)
    except (Abort, MkDocsException) as fault:
        raise NotBuilt(_reason(fault, counter.messages)) from fault
    finally:
        log.removeHandler(counter)
        swap.mend(site)


def _reason(fault: BaseException, messages: list[str]) -> str:
    """Give what the host said; its own stop carries no words, its log does."""
    return "; ".join(messages[:3]) or str(fault) or "the host stopped"


class _Counter(logging.Handler):
    """Collects the host's warnings, which its own command alone would stop at."""

    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.messages: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        """Keep the message."""
        self.messages.append(record.getMessage())


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
