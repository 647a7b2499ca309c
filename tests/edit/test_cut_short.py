"""Commands that write and are killed: nothing is lost, and the next run leaves no litter."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

from tests.demonstration import ROOT


def test_a_kill_before_any_step_loses_nothing(tmp_path: Path) -> None:
    """Every file is the old or the new after each kill, and all is done after the next run."""
    done = subprocess.run(
        [sys.executable, "-m", "tests.edit.cut_short", str(tmp_path)],
        cwd=ROOT, capture_output=True, text=True, timeout=300,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    lines = done.stdout.splitlines()
    assert not [line for line in lines if line.startswith("fault")], done.stdout
    steps = {name: int(count) for name, count in (line.split() for line in lines)}
    assert steps.keys() == {"replace", "create", "put", "rename", "start"}
    assert min(steps.values()) > 3, steps
