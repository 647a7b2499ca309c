"""What the commands share: options, reading a manual, printing findings."""

from __future__ import annotations

import datetime
import sys
from typing import TYPE_CHECKING

from generator import layout
from generator.cli.options import (
    ERRORS,
    FAULT_OF_OURS,
    FINDINGS_FORMATS,
    FORMATS,
    USAGE,
    Options,
    colour,
    usage,
)
from generator.problems import as_annotations, as_json, as_sarif, as_text, has_errors, summary

if TYPE_CHECKING:
    from generator import manual
    from generator.records.knowledge_base import KnowledgeBase

__all__ = [
    "ERRORS", "FAULT_OF_OURS", "FINDINGS_FORMATS", "FORMATS", "USAGE", "Options", "colour",
    "good_manual", "good_reading", "print_findings", "read_manual", "usage",
]  # fmt: skip


def read_manual(options: Options, as_of: datetime.date | None = None) -> manual.Manual:
    """Read the manual, or stop where there is none; reviews are overdue on the day `as_of`."""
    if not (options.folder / layout.RECORDS).is_dir():
        usage(f"there is no folder {layout.RECORDS} in {options.folder}")
    from generator import manual

    return manual.read(options.folder, as_of, options.folder / layout.CACHE)


def good_manual(options: Options) -> KnowledgeBase:
    """Read the manual's records and stop, with the findings, where an error stands."""
    kb = good_reading(options).kb
    assert kb is not None
    return kb


def good_reading(options: Options) -> manual.Manual:
    """Read the manual and stop, with the findings, where an error stands."""
    read = read_manual(options)
    if read.kb is None or has_errors(read.problems):
        print_findings(read, to_error=True)
        raise SystemExit(ERRORS)
    return read


def print_findings(read: manual.Manual, *, form: str = "text", to_error: bool = False) -> None:
    """Print every finding and the count."""
    stream = sys.stderr if to_error else sys.stdout
    if form == "json":
        print(as_json(read.problems), file=stream)
        return
    if form == "sarif":
        from generator.checks.pages import every_page

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
