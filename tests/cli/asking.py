"""Running the command as a person would, on the demonstration manual or on a spoilt copy."""

from __future__ import annotations

import json
import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from click.testing import CliRunner

from generator.cli.main import group
from tests.demonstration import ROOT, SMALL


@dataclass(frozen=True)
class Answer:
    """What a command gave back."""

    status: int
    out: str
    err: str

    @property
    def data(self) -> Any:
        """Standard output, read as JSON."""
        return json.loads(self.out)


def ask(*arguments: str, manual: Path = SMALL) -> Answer:
    """Run ``fettlebook`` within this process; that its own process is no other is tested once."""
    done = CliRunner().invoke(group, ["-C", str(manual), *arguments], prog_name="fettlebook")
    if done.exception is not None and not isinstance(done.exception, SystemExit):
        raise done.exception
    return Answer(done.exit_code, done.stdout, done.stderr)


def ask_apart(*arguments: str, manual: Path = SMALL) -> Answer:
    """Run ``fettlebook`` in a process of its own, as a person does."""
    done = subprocess.run(
        [sys.executable, "-m", "generator", "-C", str(manual), *arguments],
        cwd=ROOT, capture_output=True, text=True, timeout=120,
    )  # fmt: skip
    return Answer(done.returncode, done.stdout, done.stderr)


def replace_in(path: Path, old: str, new: str) -> None:
    """Change one place of a file; the test is wrong if the place is not there."""
    text = path.read_text(encoding="utf-8")
    assert old in text, f"{path.name} has no {old!r}"
    path.write_text(text.replace(old, new, 1), encoding="utf-8")
