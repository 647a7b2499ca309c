"""``changes``: the page that tells readers what each version changed, from the history in git."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from generator.cli.shared import USAGE, Options, good_manual, usage
from generator.layout import DOCS


@click.command()
@click.option(
    "--limit",
    type=click.IntRange(1, 200),
    default=20,
    show_default=True,
    metavar="N",
    help="Versions at most, the newest ones.",
)
@click.option(
    "--write", is_flag=True, help=f"Write it to {DOCS}/changes.md, where build takes it up."
)
@click.pass_obj
def changes(options: Options, limit: int, write: bool) -> None:
    """Print what the newest versions in git changed for the reader, changes of cautions marked."""
    kb = good_manual(options)
    from generator.edit import changes as making
    from generator.edit import versions
    from generator.edit.files import put

    try:
        shallow = versions.is_shallow(options.folder)
        found = making.changes(options.folder, limit)
    except versions.NoGit as wrong:
        usage(f"{wrong}, so there is no history to tell")
    if shallow:
        print(
            "fettlebook: this is a shallow clone, older changes are missing; the page says so "
            "(git fetch --unshallow brings them)",
            file=sys.stderr,
        )
    text = making.as_markdown(kb, found, cut_short=shallow)
    if not write:
        click.echo(text, nl=False)
        return
    path = Path(options.folder, DOCS, "changes.md")
    try:
        if path.exists() and making.written_by_hand(path.read_text("utf-8", errors="replace")):
            usage(f"{path} was written by somebody else; move it away first")
        put(path, text.encode())
    except OSError as fault:
        print(f"fettlebook: cannot write {path}: {fault.strerror}", file=sys.stderr)
        raise SystemExit(USAGE) from None
    click.echo(str(path))
