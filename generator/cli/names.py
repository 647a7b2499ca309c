"""Commands about the names of records: where-used and rename; and stale, what is due a review."""

from __future__ import annotations

import datetime
import json
import sys

import click

from generator import manual
from generator.checks import review_overdue
from generator.cli.shared import ERRORS, FORMATS, USAGE, Options, colour, read_manual, usage
from generator.edit import ids, rename
from generator.edit.files import ChangedMeanwhile
from generator.edit.source import Unreadable
from generator.problems import Severity, as_json, as_text, in_order, summary
from generator.records.knowledge_base import KnowledgeBase


def _whole_manual(options: Options) -> KnowledgeBase:
    """Read the manual, or stop where a record cannot be read: a reference in it would be missed."""
    read = read_manual(options)
    known = {record.key for record in read.kb} if read.kb is not None else set()
    wrong = {one.record for one in read.problems if one.severity is Severity.ERROR}
    if read.kb is None or wrong - known:
        print(as_text(read.problems, read.sources, colour(sys.stderr.isatty())), file=sys.stderr)
        print("fettlebook: not every record can be read, so nothing is said of it", file=sys.stderr)
        raise SystemExit(ERRORS)
    return read.kb


@click.command("where-used")
@click.argument("id_", metavar="ID")
@click.option("--format", "form", type=FORMATS, default="text", help="How to print.")
@click.pass_obj
def where_used(options: Options, id_: str, form: str) -> None:
    """Print every place that names a record: ID alone, or as KIND/ID."""
    kb = _whole_manual(options)
    kind, _, name = id_.rpartition("/")
    try:
        asked = [ids.kind_named(kind)] if kind else list(kb.records)
    except ids.Unfit as wrong:
        usage(str(wrong))
    kinds = [kind for kind in asked if name in kb.records.get(kind, {})]
    if not kinds:
        usage(f"there is no record {id_}")
    found = []
    for kind in kinds:
        for link in rename.uses(kb, kind, name):
            origin = kb.origins[link.key]
            span = origin.span(link.path)
            field = ".".join(map(str, link.path))
            found.append(
                {"file": origin.path, "line": span.line, "column": span.column,
                 "field": field, "names": f"{kind}/{name}"}
            )  # fmt: skip
    if form == "json":
        click.echo(json.dumps({"schema": 1, "uses": found}, indent=2, ensure_ascii=False))
        return
    for use in found:
        click.echo(f"{use['file']}:{use['line']}:{use['column']}: {use['field']}")
    many = len(kinds) > 1
    options.log(f"{len(found)} places" + (f" name {' or '.join(kinds)}/{name}" if many else ""))


@click.command("rename")
@click.argument("kind")
@click.argument("old")
@click.argument("new")
@click.pass_obj
def rename_record(options: Options, kind: str, old: str, new: str) -> None:
    """Give a record another id: its file, all references to it, and a page at its old address.

    The path of each file that changes is printed. Nothing else in those files changes.
    """
    kb = _whole_manual(options)
    try:
        kind = ids.kind_named(kind)
        plan = rename.plan(
            kb, options.folder / manual.RECORDS, manual.RECORDS, kind, old, new
        )  # fmt: skip
    except (ids.Unfit, rename.CannotRename) as wrong:
        usage(str(wrong))
    except Unreadable as wrong:  # it was spoilt since the manual was read
        print(as_text(wrong.problems, {}, colour(sys.stderr.isatty())), file=sys.stderr)
        raise SystemExit(ERRORS) from None
    try:
        rename.carry_out(plan)
    except FileExistsError:
        usage(f"{plan.new} is there already, and stays as it is")
    except (ChangedMeanwhile, OSError) as fault:
        print(f"fettlebook: {fault}; run it again", file=sys.stderr)
        raise SystemExit(USAGE) from None
    for change in plan.changes:
        click.echo(change.file.shown)
    click.echo(f"{manual.RECORDS}/{kind}/{plan.new.name}")


@click.command()
@click.option(
    "--as-of", "day", type=click.DateTime(["%Y-%m-%d"]), metavar="DATE", required=True,
    help="The day on which to ask, as 2027-01-01; the clock is never read.",
)
@click.option("--format", "form", type=FORMATS, default="text", help="How to print.")
@click.pass_obj
def stale(options: Options, day: datetime.datetime, form: str) -> None:
    """Print the records whose review is overdue on a day, file by file, with their owner."""
    kb = _whole_manual(options)
    found = in_order(review_overdue.problems(kb, day.date()))
    if form == "json":
        click.echo(as_json(found))
        return
    for problem in found:
        owner = next(record.owner for record in kb if record.key == problem.record)
        click.echo(f"{problem.path}:{problem.line}: {owner}: {problem.message}")
    click.echo(summary(found) if found else "nothing is overdue")
