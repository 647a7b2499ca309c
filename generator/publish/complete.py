"""From what the host gave and the pages of records to every file of a site."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Protocol

from generator.pages.page import Page
from generator.publish import finish
from generator.publish.files import Files, Made
from generator.publish.finish import FileStep
from generator.publish.frame import Frame, Stand, stand_of
from generator.publish.host import LISTED
from generator.publish.notes import Notes

File = tuple[str, Made]
"""An address, and what is to lie there."""

_FRAME = "frame "
"""Shells that are frames have names that no address has."""


class Target(Protocol):
    """Where the files of a site are put."""

    def take(self, address: str, made: Made) -> Made:
        """Put a file in its place, if it does not lie there yet; give it as it lies there."""

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
        The host's own pages and files.
    """

    frames: Mapping[Stand, Frame]
    files: Files


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
    whole = {**files, **{address: text.encode() for address, text in found.items()}}
    return Shells(made, {address: Made.of(content) for address, content in whole.items()})


def filled(host: Shells, pages: Iterable[Page], texts: Mapping[str, str]) -> Iterator[File]:
    """Give every file that is made from records: texts, and pages in their frames."""
    for address, text in texts.items():
        yield address, Made.of(text.encode())
    for page in pages:
        frame = host.frames[stand_of(page.url, bool(page.contents), LISTED)]
        yield page.url, Made.of(frame.fill(page))


def lay_out(
    target: Target,
    host: Shells,
    ours: Iterable[File],
    notes: Notes,
    steps: Iterable[FileStep] = finish.ON_FILES,
) -> Files:
    """Put every file of a site in its place, and give them all.

    Parameters
    ----------
    target : Target
        Where to.
    host : Shells
        Frames, and the host's own files.
    ours : iterable of address and Made
        What is made from records, one at a time, so that the whole need not be in memory.
    notes : Notes
        For the steps over files.
    steps : iterable of FileStep
        These steps.
    """
    found = {address: target.take(address, made) for address, made in host.files.items()}
    for address, made in ours:
        found[address] = target.take(address, made)
    finished = finish.files(found, notes, steps)
    for address in found.keys() - finished.keys():
        target.drop(address)
    return {address: target.take(address, made) for address, made in finished.items()}
