"""``fettlebook``: the manual is checked, built, asked and written from here.

Data goes to standard output, progress and log to standard error. Exit status: 0 no error,
1 errors in the records, 2 usage or settings, 3 a fault of ours.
"""

from __future__ import annotations

import sys
import traceback
from pathlib import Path

import click

from generator import __version__
from generator.cli import (
    compare,
    edit,
    explain,
    export,
    inspect,
    judge,
    names,
    order,
    publish,
    start,
)
from generator.cli.shared import FAULT_OF_OURS, Options


@click.group(context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, prog_name="fettlebook")
@click.option(
    "-C", "--manual", "folder", default=".", metavar="FOLDER",
    type=click.Path(exists=True, file_okay=False, path_type=Path),
    help="The manual's folder, with mkdocs.yml and kb_source (default: this one).",
)
@click.option("-q", "--quiet", is_flag=True, help="Say nothing on standard error but faults.")
@click.option("-v", "--verbose", is_flag=True, help="Say more on standard error.")
@click.pass_context
def group(context: click.Context, folder: Path, quiet: bool, verbose: bool) -> None:
    """Make a vehicle-repair manual from checked records."""
    context.obj = Options(folder, quiet, verbose)


for command in (
    inspect.check, explain.explain, inspect.expect, judge.judge, inspect.cautions, order.order,
    publish.build, publish.serve, edit.new, edit.fmt, edit.schema, edit.migrate,
    names.where_used, names.rename_record, names.stale, compare.compare,
    start.start, export.export,
):  # fmt: skip
    group.add_command(command)


def main() -> None:
    """Run the command line; anything unforeseen is our fault and says so."""
    try:
        group.main(prog_name="fettlebook", standalone_mode=True)
    except SystemExit:
        raise
    except BrokenPipeError:
        sys.stderr.close()  # the reader of our output went away; nothing to report
        raise SystemExit(1) from None
    except Exception as fault:  # noqa: BLE001  # the last line of defence
        print(
            f"fettlebook: a fault of ours, not of your records: {type(fault).__name__}: {fault}",
            file=sys.stderr,
        )
        if "-v" in sys.argv or "--verbose" in sys.argv:
            traceback.print_exc()
        raise SystemExit(FAULT_OF_OURS) from None
