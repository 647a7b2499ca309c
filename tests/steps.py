"""A process that ends itself, as if killed, before a given step of what it does to files.

A step is whatever Python tells its auditors: each file opened, moved, linked, taken away.
"""

from __future__ import annotations

import mmap
import os
import signal
import struct
import sys
from collections.abc import Callable
from typing import Any

STEPS = struct.Struct("QQ")


class Steps:
    """Counts the steps of a process, and ends it before one of them.

    Parameters
    ----------
    last : int
        Before this step; 0 is none.
    told : mmap
        Gets the number of steps, and at which a folder was last taken apart.
    """

    def __init__(self, last: int, told: mmap.mmap) -> None:
        self.last, self.told = last, told
        self.taken = self.clearing = 0

    def take(self, event: str, arguments: tuple[Any, ...]) -> None:
        """Take a step, if the event is one."""
        if not event.startswith(("open", "os.", "shutil.", "fcntl.", "ctypes.dlsym")):
            return
        self.taken += 1
        if self.taken == self.last:
            os.kill(os.getpid(), signal.SIGKILL)
        if event == "shutil.rmtree":
            self.clearing = self.taken
        self.told[:] = STEPS.pack(self.taken, self.clearing)


def forked(task: Callable[[], object], last: int, told: mmap.mmap) -> int:
    """Do something in a process of its own that ends before a step; give its id."""
    child = os.fork()
    if child:
        return child
    try:
        sys.addaudithook(Steps(last, told).take)
        task()
        os._exit(0)
    except BaseException as fault:  # noqa: BLE001  # whatever it is, the child ends here
        print(repr(fault), file=sys.stderr, flush=True)
        os._exit(3)
