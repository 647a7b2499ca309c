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
from generator.cli.lazy import LazyGroup
from generator.cli.options import FAULT_OF_OURS, Options

COMMANDS = {
    "check": "inspect:check", "explain": "explain:explain", "expect": "inspect:expect",
    "judge": "judge:judge", "cautions": "inspect:cautions", "order": "order:order",
    "build": "publish:build", "serve": "publish:serve", "new": "edit:new", "fmt": "edit:fmt",
    "schema": "edit:schema", "migrate": "edit:migrate", "where-used": "names:where_used",
    "rename": "names:rename_record", "stale": "names:stale", "compare": "compare:compare",
    "start": "start:start", "export": "export:export", "report": "report:report",
    "changes": "changes:changes",
}  # fmt: skip


@click.group(
    cls=LazyGroup,
    where={name: f"generator.cli.{place}" for name, place in COMMANDS.items()},
    context_settings={"help_option_names": ["-h", "--help"]},
)
@click.version_option(__version__, prog_name="fettlebook")
@click.option(
    "-C",
    "--manual",
    "folder",
    default=".",
    metavar="FOLDER",
    type=click.Path(exists=True, file_okay=False, path_type=Path),
    help="The manual's folder, with mkdocs.yml and kb_source (default: this one).",
)
@click.option("-q", "--quiet", is_flag=True, help="Say nothing on standard error but faults.")
@click.option("-v", "--verbose", is_flag=True, help="Say more on standard error.")
@click.pass_context
def group(context: click.Context, folder: Path, quiet: bool, verbose: bool) -> None:
    """Make a vehicle-repair manual from checked records."""
    context.obj = Options(folder, quiet, verbose)


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
