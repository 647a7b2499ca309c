"""A record to fill in: every field of its kind, described, in canonical order.

What is required stands open, with nothing behind its key, and reading finds fault with each blank
that is left. What may stay out stands behind a # without a space.
"""

from __future__ import annotations

import inspect
import textwrap
from collections.abc import Iterable, Iterator

from generator.edit.outline import TAG, Choice, Field, Group, Items, Node, outline
from generator.edit.schema import FOLDER, file_name
from generator.edit.told import told

_WIDTH = 100
_HOW = (
    "Fill in what is blank. A line that begins with # and no space may stay out; take its # away "
    "to use it. `fettlebook check` names each blank that is left."
)


def blank(kind: str) -> str:
    """Give the text of a record to fill in.

    Parameters
    ----------
    kind : str
        Its kind.
    """
    root = outline(kind)
    about = inspect.cleandoc(root.shape.__doc__ or "").split("\n")[0]
    head = [
        f"# yaml-language-server: $schema=../{FOLDER}/{file_name(kind)}",
        *_comment(about, 0),
        *_comment(_HOW, 0),
    ]
    fields = [line for field in root.fields for line in ("", *_field(field, 0))]
    return "\n".join([*head, *fields]) + "\n"


def _field(field: Field, indent: int, dash: str = "") -> Iterator[str]:
    """Give a field with its description above it; a dash before its key takes two columns."""
    margin = " " * indent
    yield from _comment(told(field), indent)
    if field.required:
        yield f"{margin}{dash}{field.name}:"
        yield from _inside(field.node, indent + len(dash) + 2)
    else:
        yield from (f"{margin}#{line}" for line in _left_out(field))


def _inside(node: Node, indent: int) -> Iterator[str]:
    """Give what stands under a required key."""
    margin = " " * indent
    if isinstance(node, Group):
        yield from _fields(node.fields, indent)
    elif isinstance(node, Choice):
        yield f"{margin}{TAG}:"
    elif isinstance(node, Items) and isinstance(node.item, Group):
        yield from _item(node.item, indent)
        for _ in range(1, node.least):
            yield from _dashed(_bare(node.item.fields, noted=False), margin)
    elif isinstance(node, Items):
        yield from [f"{margin}-"] * max(1, node.least)


def _item(group: Group, indent: int) -> Iterator[str]:
    first, *rest = group.fields
    if first.required:
        yield from _field(first, indent, dash="- ")
        yield from _fields(rest, indent + 2)
    else:
        yield " " * indent + "-"
        yield from _fields(group.fields, indent + 2)


def _fields(fields: Iterable[Field], indent: int) -> Iterator[str]:
    """Give fields; where none is required they are a menu, and each takes a line."""
    fields = list(fields)
    if any(field.required for field in fields):
        for field in fields:
            yield from _field(field, indent)
    else:
        for field in fields:
            yield from _noted(" " * indent + f"#{field.name}:", told(field))


def _left_out(field: Field) -> Iterator[str]:
    """Give a field that may stay out, without the # before each line."""
    default = field.default
    if isinstance(default, bool):
        yield f"{field.name}: {str(default).lower()}"
    elif isinstance(default, (str, int, float)):
        yield f"{field.name}: {default}"
    else:
        yield f"{field.name}:"
        yield from (f"  {line}" for line in _bare_inside(field.node, noted=True))


def _bare(fields: Iterable[Field], *, noted: bool) -> Iterator[str]:
    """Give the required ones of some fields, each on a line with or without its description."""
    for field in fields:
        if field.required:
            yield from _noted(f"{field.name}:", told(field) if noted else "")
            yield from (f"  {line}" for line in _bare_inside(field.node, noted=noted))


def _bare_inside(node: Node, *, noted: bool) -> Iterator[str]:
    if isinstance(node, Group):
        yield from _bare(node.fields, noted=noted)
    elif isinstance(node, Choice):
        yield f"{TAG}:"
    elif isinstance(node, Items) and isinstance(node.item, Group):
        yield from _dashed(_bare(node.item.fields, noted=noted), "")
    elif isinstance(node, Items):
        yield "-"


def _dashed(lines: Iterable[str], margin: str) -> Iterator[str]:
    """Give the lines of a list item."""
    lines = list(lines)
    for number, line in enumerate(lines or [""]):
        yield f"{margin}{'  ' if number else '- '}{line}".rstrip()


def _noted(line: str, note: str) -> Iterator[str]:
    """Give a line with a note behind it, or above it where the line would be too long."""
    if not note:
        yield line
    elif len(line) + len(note) + 4 <= _WIDTH:
        yield f"{line}  # {note}"
    else:
        yield from _comment(note, len(line) - len(line.lstrip()))
        yield line


def _comment(text: str, indent: int) -> list[str]:
    start = " " * indent + "# "
    return textwrap.wrap(
        text, _WIDTH, initial_indent=start, subsequent_indent=start,
        break_long_words=False, break_on_hyphens=False,
    )  # fmt: skip
