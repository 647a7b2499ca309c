"""Commands that write records and what belongs to them: new, fmt, schema, migrate."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from generator import manual
from generator.cli.shared import ERRORS, USAGE, Options, colour, usage
from generator.edit import ids
from generator.edit import migrate as lifting
from generator.edit.blank import blank
from generator.edit.files import ChangedMeanwhile, NotARecord, RecordFile, chosen, create, put
from generator.edit.order import ordered
from generator.edit.source import Unreadable, read
from generator.problems import Problem, as_text, summary
from generator.records.load import SUFFIX
from generator.shapes import schema as schemas
from generator.shapes.outline import outline


def _records(options: Options) -> Path:
    folder = options.folder / manual.RECORDS
    if not folder.is_dir():
        usage(f"there is no folder {manual.RECORDS} in {options.folder}")
    return folder


def _print_findings(problems: list[Problem], sources: dict[str, str]) -> None:
    print(as_text(problems, sources, colour(sys.stderr.isatty())), file=sys.stderr)
    print(summary(problems), file=sys.stderr)


def _cannot_write(fault: OSError) -> None:
    print(f"fettlebook: {fault.filename}: {fault.strerror}", file=sys.stderr)


@click.command()
@click.argument("kind")
@click.argument("id_", metavar="ID")
@click.pass_obj
def new(options: Options, kind: str, id_: str) -> None:
    """Write a record to fill in, with every field of its kind described.

    KIND is a folder of records, as tests or components. ID becomes the file's name and the
    page's address.
    """
    records = _records(options)
    try:
        kind = ids.kind_named(kind)
        path = records / kind / f"{ids.fit_id(kind, id_)}{SUFFIX}"
    except ids.Unfit as wrong:
        usage(str(wrong))
    if not path.parent.resolve().is_relative_to(records.resolve()):
        usage(f"{path.parent} links to a place outside the records")
    try:
        path.parent.mkdir(exist_ok=True)
    except OSError as fault:
        _cannot_write(fault)
        raise SystemExit(USAGE) from None
    try:
        create(path, blank(kind).encode())
    except FileExistsError:
        usage(f"{path} is there already, and stays as it is")
    except OSError as fault:
        _cannot_write(fault)
        raise SystemExit(USAGE) from None
    click.echo(str(path))
    if not (records / schemas.FOLDER / schemas.file_name(kind)).is_file() and not options.quiet:
        click.echo("editors complete the fields after:  fettlebook schema", err=True)


@click.command()
@click.argument("paths", nargs=-1, type=click.Path(exists=True, path_type=Path))
@click.option("--check", "only_check", is_flag=True, help="Write nothing; exit 1 if it would.")
@click.pass_obj
def fmt(options: Options, paths: tuple[Path, ...], only_check: bool) -> None:
    """Put the keys of records in their order; all else stays as it was written.

    PATHS are records or folders of records; without any, the whole manual. The path of each
    record that changes is printed.
    """
    records = _records(options)
    try:
        files = chosen(records, manual.RECORDS, paths or (records,))
    except NotARecord as wrong:
        usage(str(wrong))
    problems: list[Problem] = []
    sources: dict[str, str] = {}
    changed = failed = 0
    for file in files:
        try:
            changes = _format(file, write=not only_check)
        except Unreadable as wrong:
            problems += wrong.problems
            sources[file.shown] = wrong.text
        except ChangedMeanwhile as wrong:
            print(f"fettlebook: {wrong}; run it again", file=sys.stderr)
            failed += 1
        except OSError as fault:
            _cannot_write(fault)
            failed += 1
        else:
            changed += changes
            if changes:
                click.echo(file.shown)
    if problems:
        _print_findings(problems, sources)
    if problems or failed or (only_check and changed):
        raise SystemExit(ERRORS)


def _format(file: RecordFile, *, write: bool) -> bool:
    """Order the keys of one record, and say whether that changes it."""
    before = file.read()
    after = ordered(read(before, file.shown), outline(file.kind)).encode()
    if after == before:
        return False
    if write:
        file.replace(before, after)
    return True


@click.command()
@click.argument("kind", required=False)
@click.option(
    "--out",
    "folder",
    type=click.Path(file_okay=False, path_type=Path),
    metavar="FOLDER",
    help=f"Where to write them (default: {manual.RECORDS}/{schemas.FOLDER}).",
)
@click.option("--check", "only_check", is_flag=True, help="Write nothing; exit 1 if it would.")
@click.pass_obj
def schema(options: Options, kind: str | None, folder: Path | None, only_check: bool) -> None:
    """Write the schemas from which editors complete fields, one for each kind and the settings.

    With KIND, print the schema of that kind and write nothing. The path of each schema that
    changes is printed.
    """
    if kind is not None:
        try:
            known = kind if kind in schemas.SCHEMAS else ids.kind_named(kind)
        except ids.Unfit as wrong:
            usage(str(wrong))
        click.echo(schemas.as_text(known), nl=False)
        return
    folder = folder or _records(options) / schemas.FOLDER
    changed = list(schemas.stale(folder))
    if not only_check:
        try:
            folder.mkdir(parents=True, exist_ok=True)
            for path, text in changed:
                put(path, text.encode())
        except OSError as fault:
            _cannot_write(fault)
            raise SystemExit(USAGE) from None
    for path, _ in changed:
        click.echo(str(path))
    if only_check and changed:
        raise SystemExit(ERRORS)


@click.command()
@click.pass_obj
def migrate(options: Options) -> None:
    """Lift the records to the format of this program, comments and all."""
    try:
        plan = lifting.plan(_records(options), manual.RECORDS)
    except lifting.CannotMigrate as wrong:
        usage(str(wrong))
    except lifting.UnreadableManual as wrong:
        _print_findings(wrong.problems, wrong.sources)
        raise SystemExit(ERRORS) from None
    if plan.start == plan.end:
        click.echo(f"already at format {plan.end}")
        return
    try:
        for change in plan.changes:
            change.file.replace(change.before, change.after)
    except (ChangedMeanwhile, OSError) as fault:
        print(f"fettlebook: {fault}; run it again", file=sys.stderr)
        raise SystemExit(ERRORS) from None
    for change in plan.changes:
        click.echo(change.file.shown)
    options.log(f"lifted from format {plan.start} to {plan.end}")
