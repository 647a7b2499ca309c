"""What the commands share: options, reading a manual, printing findings."""

from __future__ import annotations

import datetime
import os
import sys
from dataclasses import dataclass
from pathlib import Path
from typing import NoReturn

import click

from generator import manual
from generator.checks.pages import every_page
from generator.problems import as_annotations, as_json, as_sarif, as_text, has_errors, summary
from generator.records.knowledge_base import KnowledgeBase

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


def read_manual(options: Options, as_of: datetime.date | None = None) -> manual.Manual:
    """Read the manual, or stop where there is none; reviews are overdue on the day `as_of`."""
    if not (options.folder / manual.RECORDS).is_dir():
        usage(f"there is no folder {manual.RECORDS} in {options.folder}")
    return manual.read(options.folder, as_of)


def good_manual(options: Options) -> KnowledgeBase:
    """Read the manual and stop, with the findings, where an error stands."""
    read = read_manual(options)
    if read.kb is None or has_errors(read.problems):
        print_findings(read, to_error=True)
        raise SystemExit(ERRORS)
    return read.kb


def print_findings(read: manual.Manual, *, form: str = "text", to_error: bool = False) -> None:
    """Print every finding and the count."""
    stream = sys.stderr if to_error else sys.stdout
    if form == "json":
        print(as_json(read.problems), file=stream)
        return
    if form == "sarif":
        pages = {name: (page.title, page.mend) for name, page in every_page().items()}
        print(as_sarif(read.problems, pages), file=stream)
        return
    if form == "annotations":
        if read.problems:
            print(as_annotations(read.problems), file=stream)
        return
    text = as_text(read.problems, read.sources, colour(stream.isatty()))
    if text:
        print(text, file=stream)
    print(summary(read.problems) if read.problems else "no findings", file=stream)
