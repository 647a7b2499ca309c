"""``compare``: what a change does to the reader, between revisions of git or folders."""

from __future__ import annotations

import sys
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import click

from generator import manual
from generator.cli.shared import ERRORS, Options, colour, usage
from generator.edit import versions
from generator.problems import as_text as findings_text
from generator.problems import has_errors, summary
from generator.records.knowledge_base import KnowledgeBase


@click.command()
@click.argument("base")
@click.argument("head", required=False)
@click.option(
    "--format", "form", type=click.Choice(["text", "json", "markdown"]), default="text",
    help="How to print; markdown is a comment for a pull request.",
)
@click.option(
    "--fail-on-lost-caution", "strict", is_flag=True, help="Exit 1 where a caution is lost."
)
@click.pass_obj
def compare(options: Options, base: str, head: str | None, form: str, strict: bool) -> None:
    """Print what changes for the reader between two versions of the manual.

    BASE and HEAD are revisions of git, or folders that hold a manual. Without HEAD it is the
    manual as it lies there now.
    """
    from generator.edit import compare as comparing
    from generator.edit.compare import told

    with _version(options, base) as before, _version(options, head) as after:
        found = comparing.compare(_checked(before, base), _checked(after, head or "the manual"))
    forms = {"text": told.as_text, "json": told.as_json, "markdown": told.as_markdown}
    click.echo(forms[form](found))
    if strict and found.loses_a_caution:
        raise SystemExit(ERRORS)


@contextmanager
def _version(options: Options, name: str | None) -> Iterator[Path]:
    """Give the folder of a version, laid out beside the manual's own where it is a revision."""
    if name is None:
        yield options.folder
        return
    if (Path(name) / manual.RECORDS).is_dir():
        yield Path(name)
        return
    with tempfile.TemporaryDirectory(prefix="fettlebook-") as laid_out:
        try:
            versions.lay_out(options.folder, name, Path(laid_out))
        except versions.NoGit as wrong:
            usage(f"{wrong}; compare two folders instead")
        except versions.NoVersion as wrong:
            usage(str(wrong))
        yield Path(laid_out)


def _checked(folder: Path, name: str) -> KnowledgeBase:
    """Read and check a version, or stop with its findings: there is no page to compare."""
    read = manual.read(folder)
    if read.kb is None or has_errors(read.problems):
        print(findings_text(read.problems, read.sources, colour(sys.stderr.isatty())),
              file=sys.stderr)  # fmt: skip
        print(f"{name}: {summary(read.problems)}", file=sys.stderr)
        raise SystemExit(ERRORS)
    return read.kb
