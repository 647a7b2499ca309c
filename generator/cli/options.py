"""What every command knows before it begins: options, exit statuses, how to stop with a word."""

from __future__ import annotations

import os
import sys
from dataclasses import dataclass
from pathlib import Path
from typing import NoReturn

import click

ERRORS = 1
USAGE = 2
FAULT_OF_OURS = 3

FORMATS = click.Choice(["text", "json"])
FINDINGS_FORMATS = click.Choice(["text", "json", "sarif", "annotations"])


@dataclass(frozen=True, slots=True)
class Options:
    """The options before the command."""

    folder: Path
    quiet: bool
    verbose: bool

    def log(self, message: str) -> None:
        """Say something on standard error, unless asked to be quiet or nobody is watching."""
        if not self.quiet and (self.verbose or sys.stderr.isatty()):
            print(message, file=sys.stderr)


def colour(stream_is_terminal: bool) -> bool:
    """Say whether to colour: a terminal, and nobody asked for none."""
    return stream_is_terminal and not os.environ.get("NO_COLOR")


def usage(message: str) -> NoReturn:
    """Stop with a word on what was asked wrongly."""
    print(f"fettlebook: {message}", file=sys.stderr)
    raise SystemExit(USAGE)
