"""``export``: the whole manual as JSON, with its schema."""

from __future__ import annotations

import json
import sys
from pathlib import Path

import click

from generator.cli.shared import USAGE, Options, good_manual


@click.command()
@click.option(
    "--out", "folder", type=click.Path(file_okay=False, path_type=Path), metavar="FOLDER",
    help="Write manual.json and manual.schema.json there; without it, print the manual.",
)
@click.option("--schema", "only_schema", is_flag=True, help="Print the schema, and no manual.")
@click.pass_obj
def export(options: Options, folder: Path | None, only_schema: bool) -> None:
    """Give the whole manual as one JSON document; its schema says what stands in it."""
    from generator.edit import export as exporting
    from generator.edit.files import put

    schema = json.dumps(exporting.document_schema(), ensure_ascii=False, indent=1) + "\n"
    if only_schema:
        click.echo(schema, nl=False)
        return
    text = exporting.as_text(good_manual(options))
    if folder is None:
        click.echo(text, nl=False)
        return
    try:
        folder.mkdir(parents=True, exist_ok=True)
        for name, content in (("manual.schema.json", schema), ("manual.json", text)):
            put(folder / name, content.encode())
            click.echo(str(folder / name))
    except OSError as fault:
        print(f"fettlebook: {fault.filename}: {fault.strerror}", file=sys.stderr)
        raise SystemExit(USAGE) from None
