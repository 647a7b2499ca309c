"""``start``: a manual of one's own."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from generator.cli.shared import USAGE, Options, usage


@click.command()
@click.argument("path", type=click.Path(path_type=Path), default=".")
@click.option("--name", default="Your shop", metavar="TEXT", help="The shop's name.")
@click.option("--place", default="Your town", metavar="TEXT", help="Where it is.")
@click.option("--alone", is_flag=True, help="One person has the shop; every page then says so.")
@click.pass_obj
def start(options: Options, path: Path, name: str, place: str, alone: bool) -> None:
    """Lay down a manual of your own in PATH: settings, one worked example, a workflow.

    Without PATH it is the folder you are in, which has to be empty. It passes check and builds at
    once. Nothing is ever written over.
    """
    from generator.edit import start as starting

    if not name.strip() or not place.strip() or not (name + place).isprintable():
        usage("a name and a place are a line of plain text each")
    folder = options.folder / path
    try:
        starting.lay_down(folder, starting.files(name, place, alone=alone))
    except starting.CannotStart as wrong:
        usage(str(wrong))
    except OSError as fault:
        print(f"fettlebook: {fault.filename}: {fault.strerror}", file=sys.stderr)
        raise SystemExit(USAGE) from None
    click.echo(str(folder))
    options.log(f"next:  fettlebook -C {folder} build")
