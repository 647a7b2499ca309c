"""``compare``: what a change does to the reader, between revisions of git or folders."""

from __future__ import annotations

import io
import subprocess
import sys
import tarfile
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import click

from generator import manual
from generator.cli.shared import ERRORS, Options, colour, usage
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
        _lay_out(options.folder, name, Path(laid_out))
        yield Path(laid_out)


def _lay_out(folder: Path, revision: str, into: Path) -> None:
    """Lay out the records of a revision; the working tree and its index stay untouched."""
    if revision.startswith("-"):
        usage(f"{revision} is neither a revision of git nor a folder with a manual")
    commit = _git(folder, "rev-parse", "--verify", "--quiet", f"{revision}^{{commit}}")
    if commit is None:
        usage(f"{revision} is neither a revision of git nor a folder with a manual")
    prefix = (_git(folder, "rev-parse", "--show-prefix") or b"").decode().strip()
    tree = f"{commit.decode().strip()}:{prefix}"
    archive = _git(folder, "archive", "--format=tar", tree, "--", manual.RECORDS)
    if archive is None:
        usage(f"{revision} holds no {manual.RECORDS}; a shallow clone may lack it: git fetch it")
    with tarfile.open(fileobj=io.BytesIO(archive)) as tar:
        tar.extractall(into, filter="data")


def _git(folder: Path, *arguments: str) -> bytes | None:
    """Run git and give what it printed, None where it refused."""
    try:
        done = subprocess.run(
            ["git", "-C", str(folder), *arguments], capture_output=True, check=False
        )  # fmt: skip
    except OSError:
        usage("git is not to be found; compare two folders instead")
    return done.stdout if done.returncode == 0 else None


def _checked(folder: Path, name: str) -> KnowledgeBase:
    """Read and check a version, or stop with its findings: there is no page to compare."""
    read = manual.read(folder)
    if read.kb is None or has_errors(read.problems):
        print(findings_text(read.problems, read.sources, colour(sys.stderr.isatty())),
              file=sys.stderr)  # fmt: skip
        print(f"{name}: {summary(read.problems)}", file=sys.stderr)
        raise SystemExit(ERRORS)
    return read.kb
