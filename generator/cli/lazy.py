"""A group of commands each of which is imported when it is called, and not before.

Half a second of imports stands before every command, and before the help that names them all;
most commands need a tenth of it.
"""

from __future__ import annotations

import ast
from collections.abc import Mapping
from importlib import import_module
from importlib.util import find_spec
from pathlib import Path
from typing import Any

import click


class LazyGroup(click.Group):
    """A group of commands that are named, not imported.

    Parameters
    ----------
    where : mapping
        Name of a command to "module:function", in the order in which help lists them.
    """

    def __init__(self, *args: Any, where: Mapping[str, str], **options: Any) -> None:
        super().__init__(*args, **options)
        self.where = where

    def list_commands(self, ctx: click.Context) -> list[str]:
        """Give the names of the commands."""
        return list(self.where)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        """Import a command."""
        if cmd_name not in self.where:
            return None
        module, _, function = self.where[cmd_name].partition(":")
        command = getattr(import_module(module), function)
        assert isinstance(command, click.Command)
        return command

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """List the commands with the first sentence of each one's own words."""
        limit = formatter.width - 6 - max(map(len, self.where))
        rows = [
            (name, click.Command(name, help=_words_of(place)).get_short_help_str(limit))
            for name, place in self.where.items()
        ]
        with formatter.section("Commands"):
            formatter.write_dl(rows)


def _words_of(place: str) -> str:
    """Give a function's own words, read from its file."""
    module, _, function = place.partition(":")
    spec = find_spec(module)
    assert spec is not None and spec.origin is not None
    tree = ast.parse(Path(spec.origin).read_text(encoding="utf-8"))
    return next(
        ast.get_docstring(node) or ""
        for node in tree.body
        if isinstance(node, ast.FunctionDef) and node.name == function
    )
