"""``fettlebook explain``: the page about a fault, at the terminal."""

from __future__ import annotations

import textwrap
from difflib import get_close_matches

import click

from generator.checks.fault_page import EXCUSABLE
from generator.checks.pages import by_group, every_page, page_of
from generator.cli.shared import usage
from generator.pages.strings import say
from generator.problems import CODES

WIDTH = 88
"""Columns of a paragraph: readable at arm's length on any terminal."""


@click.command()
@click.argument("code", required=False)
def explain(code: str | None) -> None:
    """Explain a fault that the check found, with an example; without a name, list them all."""
    if code is None:
        click.echo(_list())
    elif code in CODES:
        click.echo(_page(code))
    else:
        near = get_close_matches(code, list(CODES), n=1, cutoff=0.5)
        meant = f"did you mean {near[0]}?" if near else "explain alone lists them all"
        usage(f"there is no fault {code}; {meant}")


def _list() -> str:
    pages = every_page()
    width = max(map(len, pages))
    blocks = []
    for group, names in by_group().items():
        lines = [say(f"faults.group.{group}")]
        lines += [f"  {name:{width}}  {pages[name].title}" for name in names]
        blocks.append("\n".join(lines))
    return "\n\n".join(blocks)


def _page(name: str) -> str:
    page = page_of(name)
    blocks = [f"{name}: {page.title}\n{say('faults.' + CODES[name].severity.value)}"]
    for part in ("wrong", "why", "mend"):
        words = getattr(page, part)
        if words:
            blocks.append(f"{say('faults.' + part)}\n{_indented(words)}")
    for part in ("fails", "passes"):
        example = getattr(page, part)
        if example:
            where = f" ({page.record}.yml)" if page.record else ""
            blocks.append(f"{say('faults.' + part)}{where}\n{textwrap.indent(example, '    ')}")
    if name in EXCUSABLE:
        blocks.append(say("faults.excusable"))
    return "\n\n".join(blocks)


def _indented(words: str) -> str:
    return textwrap.fill(words, WIDTH, initial_indent="  ", subsequent_indent="  ")
