"""A process that has read two manuals and forks a build of either whenever it is asked to.

``python -m tests.publish.nest SITE FOLDER FOLDER``: a line on standard input is the number of a
manual, whether folders change places by two renames (0 or 1), and a step (see tests/steps.py)
before which the build kills itself, 0 being none. The answers are the process id of the build and,
when it has ended, how, after how many steps, and at which it began to clear up.

Imports and reading touch nothing that is published and are done once, so that many builds can be
killed in a minute.
"""

from __future__ import annotations

import logging
import mmap
import os
import sys
from functools import partial
from pathlib import Path

from generator import manual
from generator.publish import build, inputs, swap
from tests.steps import STEPS, forked

EXCHANGED = swap._exchanged


class Nest:
    """Builds that are ready to go.

    Parameters
    ----------
    target : Path
        Where the site is put.
    folders : list of Path
        The manuals.
    """

    def __init__(self, target: Path, folders: list[Path]) -> None:
        self.target = target
        self.settings = [folder / manual.SETTINGS for folder in folders]
        self.inputs = [inputs.of(folder) for folder in folders]
        self.read = [manual.read(folder, None, folder / manual.CACHE) for folder in folders]
        assert not any(read.problems for read in self.read)

    def build(self, number: int, target: Path | None = None) -> None:
        """Build the site of one manual."""
        settings, read = self.settings[number], self.read[number]
        build.build(settings, target or self.target, read, self.inputs[number])

    def answer(self) -> None:
        """Answer until there is no more line."""
        told = mmap.mmap(-1, STEPS.size)  # shared with every child
        for line in sys.stdin:
            number, renames, last = map(int, line.split())
            told[:] = bytes(STEPS.size)
            swap._exchanged = (lambda one, other: False) if renames else EXCHANGED
            child = forked(partial(self.build, number), last, told)
            print(child, flush=True)
            how = os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])
            print(how, *STEPS.unpack(told), flush=True)


if __name__ == "__main__":
    site_path, *rest = sys.argv[1:]
    logging.getLogger("mkdocs").setLevel(logging.CRITICAL)
    swap._settle = lambda folder: None  # the end of a process takes nothing from the disk
    nest = Nest(Path(site_path), [Path(one) for one in rest])
    # A build that goes elsewhere, so that nothing is imported after a fork.
    nest.build(0, nest.target.with_name("spare"))
    print("ready", flush=True)
    nest.answer()
