"""A whole site or the old one: the new one is made beside it, and the two change places."""

from __future__ import annotations

import datetime
import os
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from functools import partial
from pathlib import Path

from generator import site as pages_of
from generator.manual import Manual
from generator.publish import complete, host, inputs, lock, swap
from generator.publish.files import Files, Made, digest_of
from generator.publish.frame import BadFrame, Frame, Stand, stands_for
from generator.publish.inputs import Inputs
from generator.publish.last import Last
from generator.publish.notes import Notes
from generator.publish.ours import Ours
from generator.publish.standing import Standing, marked
from generator.publish.target import Folder
from generator.records.knowledge_base import KnowledgeBase
from generator.site import Plan


class NotBuilt(RuntimeError):
    """The site could not be built; the old one stands as it was."""


def build(
    settings_file: Path, site: Path, read: Manual, before: Inputs | None, *, preview: bool = False
) -> None:
    """Build the site of a checked manual.

    Parameters
    ----------
    settings_file : Path
        The manual's mkdocs.yml.
    site : Path
        Where readers look. It changes only when the new site is whole.
    read : Manual
        The manual, without an error.
    before : Inputs or None
        What the site is made from, as it was before the manual was read; None where nobody knows.
    preview : bool
        Whether drafts are shown too. Such a site is made whole, and the next one takes nothing
        over from it.

    Raises
    ------
    NotBuilt
        If the host reports a fault or warns of anything, or another build is under way.
    OSError
        If a file cannot be written.
    """
    assert read.kb is not None
    site.parent.mkdir(parents=True, exist_ok=True)
    folder = settings_file.parent
    try:
        with lock.held(lock.place(site)):
            swap.mend(site)
            try:
                with _dated(read.kb):
                    plan = pages_of.plan(read.kb, (), preview=preview)
                    known = Last(str(site)) if preview else Last.read(folder, site)
                    made = _make(settings_file, site, plan, known, before)
                swap.swap(site, settled=not preview)
            finally:
                swap.mend(site)
            if not preview:
                made.leave(folder, site, before)
            read.keep()
    except lock.Busy:
        raise NotBuilt(f"another build of {site} is under way") from None
    except (host.NotHosted, BadFrame) as fault:
        raise NotBuilt(str(fault)) from fault


@dataclass(frozen=True, slots=True)
class _New:
    """A new site, and what the next build is to know of it."""

    last: Last
    target: Folder
    files: Files

    def leave(self, folder: Path, site: Path, before: Inputs | None) -> None:
        """Write down what is known of the site, now that it is in its place."""
        if before is None or not before.marks or inputs.marks(folder) != before.marks:
            # Somebody saved a file meanwhile: who knows which of its versions was read.
            self.last.inputs = self.last.hosted = ""
        digests = {address: made.digest for address, made in self.files.items()}
        self.last.files = marked(site, digests, self.target.marks)
        self.last.keep(folder)


def _make(
    settings_file: Path, site: Path, plan: Plan, before: Last, now: Inputs | None
) -> _New:
    """Make a site beside the standing one, out of that one where nothing has changed."""
    standing = Standing(site, before.files)
    target = Folder(swap.beside(site), standing)
    last = Last(str(site), now.whole if now else "")
    asked = host.Asked(
        plan.title, [*plan.pages, *plan.texts], stands_for(plan.pages, host.LISTED)
    )
    last.hosted = _hosted(asked, now)
    shells = _shells_of(before, standing) if last.hosted and last.hosted == before.hosted else None
    again = shells is None
    if shells is None:
        host.run(settings_file, target.root, asked)
        shells = complete.shells(asked.frames, target.files())
    else:
        asked.links = before.links
    last.frames = {(s.place, s.contents): frame.text for s, frame in shells.frames.items()}
    last.of_host = {address: one.digest for address, one in shells.files.items()}
    last.links = asked.links
    ours = Ours(plan, shells.frames, before)
    notes = Notes(before.notes, standing.held)
    files = complete.lay_out(target, shells, ours.files(), notes)
    links = {
        (address, anchor): link for (address, anchor), link in asked.links.items()
        if again or address in ours.changed
    }  # fmt: skip
    dead = list(host.dead_anchors(links, ours.html))
    if dead:
        raise NotBuilt("; ".join(dead[:3]))
    last.made, last.notes = ours.made_of, notes.after
    return _New(last, target, files)


def _shells_of(before: Last, standing: Standing) -> complete.Shells | None:
    """Give what the host gave last time, None where its files do not stand as they did."""
    found = {}
    for address, digest in before.of_host.items():
        if not standing.mark(address, digest):
            return None
        found[address] = Made(digest, partial(standing.read, address, digest))
    frames = {Stand(*place): Frame(text) for place, text in before.frames.items()}
    return complete.Shells(frames, found)


def _hosted(asked: host.Asked, now: Inputs | None) -> str:
    """Give a digest of all that the host's part is made from, "" where nobody knows."""
    if now is None:
        return ""
    told = (now.host, asked.title, os.environ.get(inputs.DATE, ""), *asked.addresses)
    return digest_of("\0".join(told).encode())


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
