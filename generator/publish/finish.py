"""What is done to a site after its pages are made, in order.

There are two places to join in:

- :data:`ON_SHELLS`, for what goes into every page. A step gets the *shells*: each frame (its text
  still a slot, see :mod:`generator.publish.frame`) and each page that the host made whole. It
  gives them back changed. Pages of records are filled into the frames afterwards, so a step costs
  the same however many records there are; scripts and styles stand in shells alone, never in the
  text of a page.
- :data:`ON_FILES`, for what is made from finished pages: an index, a pack, a list. A step gets
  every file and gives back every file, some added, changed or left out.

The same steps run under our own build and under the host's.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping

from generator.publish import folder, packs
from generator.publish.files import Files
from generator.publish.notes import Notes

Shells = Mapping[str, str]
"""Address, or name of a frame, to HTML."""

ShellStep = Callable[[Shells], Shells]
FileStep = Callable[[Files, Notes], Files]
"""A step over files; it asks its notes before it works, so that only what changed is done again."""

ON_SHELLS: tuple[ShellStep, ...] = ()
ON_FILES: tuple[FileStep, ...] = (packs.step, folder.step)


def shells(found: Shells, steps: Iterable[ShellStep] | None = None) -> Shells:
    """Give the shells after every step.

    Raises
    ------
    ValueError
        If a step lost a shell or added one: then pages would be missing.
    """
    for step in ON_SHELLS if steps is None else steps:
        after = step(found)
        if after.keys() != found.keys():
            raise ValueError(f"{step} has to give back every shell and no other")
        found = after
    return found


def files(found: Files, notes: Notes, steps: Iterable[FileStep] | None = None) -> Files:
    """Give the files after every step."""
    for step in ON_FILES if steps is None else steps:
        found = step(found, notes)
    return found
