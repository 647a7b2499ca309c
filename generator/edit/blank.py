"""A record to fill in: every field of its kind, described, in canonical order.

What is required stands open, with nothing behind its key, and reading finds fault with each blank
that is left. What may stay out stands behind a # without a space.
"""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Iterator, Mapping

from pydantic import BaseModel

from generator.edit.told import told
from generator.records.kinds.things import Spec
from generator.shapes.outline import TAG, Choice, Field, Group, Items, Node, or_list, outline
from generator.shapes.schema import FOLDER, file_name

_WIDTH = 100
_LEFT_OUT_WIDTH = 84
"""Narrower, for the margins that are put before it."""
_HOW = (
    "Fill in what is blank. What stands behind a # without a space may stay out; to use it, take "
    "the # away, and those of the lines indented under it. `fettlebook check` names each blank "
    "that is left."
)

OPEN: Mapping[type[BaseModel], tuple[str, ...]] = {Spec: ("value",)}
"""Fields that may stay out and seldom do: a spec has a value unless its model computes it."""

BEGINS = {"status": "draft"}
"""Fields that a new record has filled in: nobody has released it yet."""


def blank(kind: str) -> str:
    """Give the text of a record to fill in.

    Parameters
    ----------
    kind : str
        Its kind.
    """
    root = outline(kind)
    head = [
        f"# yaml-language-server: $schema=../{FOLDER}/{file_name(kind)}",
        *_comment(root.description, 0),
        *_comment(_HOW, 0),
    ]
    fields = [line for field in root.fields for line in ("", *_field(root, field, 0))]
    return "\n".join([*head, *fields]) + "\n"


def _is_open(group: Group, field: Field) -> bool:
    """Say whether a field is left blank to be filled in, rather than behind a #."""
    first_way = field.name in group.ways[:1] and not group.is_menu
    return field.required or first_way or field.name in OPEN.get(group.shape, ())


def _field(group: Group, field: Field, indent: int, dash: str = "") -> Iterator[str]:
    """Give a field with its description above it; a dash before its key takes two columns."""
    margin = " " * indent
    yield from _exactly_one(group, field, indent)
    yield from _comment(told(field), indent)
    if indent == 0 and field.name in BEGINS:
        yield f"{field.name}: {BEGINS[field.name]}"
    elif _is_open(group, field):
        yield f"{margin}{dash}{field.name}:"
        yield from _inside(field.node, indent + len(dash) + 2)
    else:
        yield from (f"{margin}#{line}" for line in _left_out(field))


def _exactly_one(group: Group, field: Field, indent: int) -> list[str]:
    if field.name not in group.ways[:1]:
        return []
    return _comment(f"Exactly one of {or_list(group.ways)}.", indent)


def _inside(node: Node, indent: int) -> Iterator[str]:
    """Give what stands under a blank key."""
    margin = " " * indent
    if isinstance(node, Group):
        yield from _fields(node, node.fields, indent)
    elif isinstance(node, Choice):
        yield f"{margin}{TAG}:"
    elif isinstance(node, Items) and isinstance(node.item, Group):
        yield from _item(node.item, indent)
        for _ in range(1, node.least):
            yield from _dashed(_bare(node.item, noted=False), margin)
    elif isinstance(node, Items):
        yield from [f"{margin}-"] * max(1, node.least)


def _item(group: Group, indent: int) -> Iterator[str]:
    first, *rest = group.fields
    if _is_open(group, first):
        yield from _field(group, first, indent, dash="- ")
        yield from _fields(group, rest, indent + 2)
    else:
        yield " " * indent + "-"
        yield from _fields(group, group.fields, indent + 2)


def _fields(group: Group, fields: Iterable[Field], indent: int) -> Iterator[str]:
    """Give fields of a group; those of a menu take a line each."""
    for field in fields:
        if group.is_menu:
            yield from _exactly_one(group, field, indent)
            yield from _noted(" " * indent + f"#{field.name}:", told(field))
        else:
            yield from _field(group, field, indent)


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


def _bare(group: Group, *, noted: bool) -> Iterator[str]:
    """Give the blank fields of a group, each on a line with or without its description."""
    for field in group.fields:
        if _is_open(group, field):
            yield from _exactly_one(group, field, 0) if noted else ()
            yield from _noted(f"{field.name}:", told(field) if noted else "", _LEFT_OUT_WIDTH)
            yield from (f"  {line}" for line in _bare_inside(field.node, noted=noted))


def _bare_inside(node: Node, *, noted: bool) -> Iterator[str]:
    if isinstance(node, Group):
        yield from _bare(node, noted=noted)
    elif isinstance(node, Choice):
        yield f"{TAG}:"
    elif isinstance(node, Items) and isinstance(node.item, Group):
        yield from _dashed(_bare(node.item, noted=noted), "")
    elif isinstance(node, Items):
        yield "-"


def _dashed(lines: Iterable[str], margin: str) -> Iterator[str]:
    """Give the lines of a list item."""
    lines = list(lines)
    for number, line in enumerate(lines or [""]):
        yield f"{margin}{'  ' if number else '- '}{line}".rstrip()


def _noted(line: str, note: str, width: int = _WIDTH) -> Iterator[str]:
    """Give a line with a note behind it, or above it where the line would be too long."""
    if not note:
        yield line
    elif len(line) + len(note) + 4 <= width:
        yield f"{line}  # {note}"
    else:
        yield from _comment(note, len(line) - len(line.lstrip()), width)
        yield line


def _comment(text: str, indent: int, width: int = _WIDTH) -> list[str]:
    start = " " * indent + "# "
    return textwrap.wrap(
        text, width, initial_indent=start, subsequent_indent=start,
        break_long_words=False, break_on_hyphens=False,
    )  # fmt: skip
