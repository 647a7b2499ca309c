"""What a command costs: time on the wall, time of the processor, memory at its peak."""

from __future__ import annotations

import os
import subprocess
import sys
import time
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from tests.demonstration import ROOT

MIB = 1024 * (1024 if sys.platform == "darwin" else 1)


@dataclass(frozen=True, slots=True)
class Cost:
    """What one run cost.

    Parameters
    ----------
    wall_s, cpu_s : float
        Seconds by the clock, and of all its processors, its children included.
    peak_mib : float
        The largest process of it.
    """

    wall_s: float
    cpu_s: float
    peak_mib: float


class Failed(RuntimeError):
    """A command that is measured did not do its work."""


def run(command: list[str], folder: Path, env: Mapping[str, str] | None = None) -> Cost:
    """Run a command and give what it cost.

    Parameters
    ----------
    command : list of str
        The command.
    folder : Path
        Where it runs; its log is left there.
    env : mapping, optional
        What stands in its environment besides.

    Raises
    ------
    Failed
        If it fails.
    """
    log = folder / "log"
    began = time.monotonic()
    with log.open("wb") as out:
        child = subprocess.Popen(
            command, cwd=ROOT, stdout=out, stderr=out, env={**os.environ, **(env or {})}
        )
        _pid, status, used = os.wait4(child.pid, 0)
    child.returncode = os.waitstatus_to_exitcode(status)
    wall_s = time.monotonic() - began
    if child.returncode:
        raise Failed(f"{' '.join(command)}\n{log.read_text('utf-8', 'replace')[-2000:]}")
    return Cost(wall_s, used.ru_utime + used.ru_stime, used.ru_maxrss / MIB)


def python(*arguments: str) -> list[str]:
    """Give a command of this Python."""
    return [sys.executable, *arguments]
