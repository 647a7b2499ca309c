"""Commands that publish: build and serve."""

from __future__ import annotations

import logging
import sys
from pathlib import Path

import click

from generator import layout
from generator.cli.shared import FAULT_OF_OURS, USAGE, Options, good_reading, usage
from generator.publish import inputs, last
from generator.publish.place import place_of, refusal


def _settings_file(options: Options) -> Path:
    path = options.folder / layout.SETTINGS
    if not path.is_file():
        usage(f"there is no {layout.SETTINGS} in {options.folder}")
    return path


def _log_of_host(options: Options) -> None:
    # The host's warnings must reach whoever counts them, so the handler is quiet, not the logger.
    handler = logging.StreamHandler(sys.stderr)
    handler.setLevel(logging.INFO if options.verbose else logging.ERROR)
    logging.basicConfig(handlers=[handler], format="%(levelname)s %(message)s")
    logging.getLogger("mkdocs").setLevel(logging.INFO)


@click.command()
@click.option(
    "--site-dir", "site_dir", type=click.Path(path_type=Path), metavar="FOLDER",
    help="Where to put the site (default: site, in the manual's folder; preview for a preview).",
)
@click.option("--preview", is_flag=True, help="Show drafts too, each marked; never publish it.")
@click.pass_obj
def build(options: Options, site_dir: Path | None, preview: bool) -> None:
    """Build the site: a whole new one, or the old one untouched."""
    settings_file = _settings_file(options)
    usual = layout.PREVIEW if preview else layout.SITE
    site = place_of(site_dir or options.folder / usual)
    refused = refusal(options.folder.resolve(), site)
    if preview and site == place_of(options.folder / layout.SITE):
        refused = f"{site} is what readers get; put a preview elsewhere"
    if refused:
        usage(refused)
    before = None if preview else inputs.of(options.folder)
    if last.stands(options.folder, site, before):
        options.log("nothing has changed")
        click.echo(str(site / "index.html"))
        return
    options.log("checking the records")
    read = good_reading(options)
    _log_of_host(options)
    from generator.publish.build import NotBuilt
    from generator.publish.build import build as build_site

    options.log("building the pages")
    try:
        build_site(settings_file, site, read, before, preview=preview)
    except NotBuilt as fault:
        print(f"fettlebook: the site was not built, the old one stands: {fault}", file=sys.stderr)
        raise SystemExit(FAULT_OF_OURS) from None
    except OSError as fault:
        print(f"fettlebook: cannot write the site, the old one stands: {fault}", file=sys.stderr)
        raise SystemExit(USAGE) from None
    click.echo(str(site / "index.html"))


@click.command()
@click.option("--address", default="127.0.0.1:8000", metavar="HOST:PORT", help="Where to serve.")
@click.pass_obj
def serve(options: Options, address: str) -> None:
    """Serve the manual, drafts too, and refresh the page whenever a record is saved."""
    settings_file = _settings_file(options)
    host, colon, port = address.rpartition(":")
    if not colon or not host or not port.isdigit():
        usage(f"{address!r} is not HOST:PORT")
    from mkdocs.commands.serve import serve as host_serve
    from mkdocs.exceptions import Abort, MkDocsException

    logging.basicConfig(stream=sys.stderr, format="%(message)s")
    logging.getLogger("mkdocs").setLevel(logging.ERROR if options.quiet else logging.INFO)
    try:
        host_serve(str(settings_file), dev_addr=address)
    except (Abort, MkDocsException) as fault:
        usage(f"cannot serve: {fault}")
    except OSError as fault:
        usage(f"cannot serve at {address}: {fault.strerror}")
