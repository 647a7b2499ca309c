"""From what the host gave and the pages of records to every file of a site."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Protocol

from generator.pages.page import Page
from generator.publish import finish
from generator.publish.files import Made
from generator.publish.finish import FileStep
from generator.publish.frame import Frame, Stand, stand_of
from generator.publish.host import LISTED
from generator.publish.notes import Notes

_FRAME = "frame "
"""Shells that are frames have names that no address has."""


class Target(Protocol):
    """Where the files of a site are put."""

    def put(self, address: str, content: bytes) -> Made:
        """Put a file in its place, and give it as made."""

    def take(self, address: str, made: Made) -> None:
        """Put a file that is known by its digest in its place, if it does not lie there yet."""

    def drop(self, address: str) -> None:
        """Take a file away again."""


@dataclass(frozen=True, slots=True)
class Shells:
    """What the host gave, every step over shells done.

    Parameters
    ----------
    frames : mapping
        Stand-in to frame.
    files : mapping
        Address to bytes: the host's own pages and files.
    """

    frames: Mapping[Stand, Frame]
    files: Mapping[str, bytes]


def shells(frames: Mapping[Stand, str], files: Mapping[str, bytes]) -> Shells:
    """Do the steps over shells.

    Parameters
    ----------
    frames : mapping
        Stand-in to HTML with slots.
    files : mapping
        Address to bytes, of the host's pages and files.
    """
    names = {f"{_FRAME}{stand.place} {stand.contents}": stand for stand in frames}
    found = {name: frames[stand] for name, stand in names.items()}
    found |= {a: content.decode() for a, content in files.items() if a.endswith(".html")}
    found = dict(finish.shells(found))
    made = {stand: Frame(found.pop(name)) for name, stand in names.items()}
    return Shells(made, {**files, **{a: text.encode() for a, text in found.items()}})


def lay_out(
    target: Target,
    host: Shells,
    pages: Iterable[Page],
    texts: Mapping[str, str],
    notes: Notes,
    steps: Iterable[FileStep] = finish.ON_FILES,
) -> None:
    """Put every file of a site in its place.

    Parameters
    ----------
    target : Target
        Where to.
    host : Shells
        Frames, and the host's own files.
    pages : iterable of Page
        The pages of records.
    texts : mapping
        Address to text: files of ours that are no pages.
    notes : Notes
        For the steps over files.
    steps : iterable of FileStep
        These steps.
    """
    found = {address: target.put(address, content) for address, content in host.files.items()}
    found |= {address: target.put(address, text.encode()) for address, text in texts.items()}
    for page in pages:
        frame = host.frames[stand_of(page, LISTED)]
        found[page.url] = target.put(page.url, frame.fill(page))
    settle(target, found, notes, steps)


def settle(
    target: Target,
    found: Mapping[str, Made],
    notes: Notes,
    steps: Iterable[FileStep] = finish.ON_FILES,
) -> Mapping[str, Made]:
    """Do the steps over files, put what they gave in its place, and give all there is."""
    finished = finish.files(found, notes, steps)
    for address in found.keys() - finished.keys():
        target.drop(address)
    for address, made in finished.items():
        target.take(address, made)
    return finished
