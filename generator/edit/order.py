"""Keys in canonical order, by moving what is written; nothing is ever written anew.

Comments travel with the key they stand above or beside. What stands apart stays: a comment at the
head of a file that a blank line follows, and one behind the last key.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from typing import Any, NamedTuple

from generator.edit import blocks
from generator.edit.source import Source, Unreadable, meaning, read
from generator.records.knowledge_base import Path
from generator.shapes.outline import TAG, Choice, Either, Group, Items, Node, Table

_KEPT_END = re.compile(r"[|>][0-9]?\+")
_CUT_END = re.compile(r"[|>][0-9]?-")


class MeaningChanged(AssertionError):
    """An ordered text says something else than it did: a fault of ours, found in time."""


def ordered(source: Source, root: Group) -> str:
    """Give a record's text with the keys of each group in canonical order.

    Parameters
    ----------
    source : Source
        The record.
    root : Group
        The outline of its kind.

    Returns
    -------
    str
        The text; the very same where every key is in its place. Keys that the shape does not
        know come last, in the order they were written. Blank lines between moved fields lose
        blanks that nobody sees. Three things are left as they are: a group in braces with a
        comment inside, a group with a key that begins with a question mark, and a file with a
        block of text of which the blank lines at its end count.

    Raises
    ------
    MeaningChanged
        Never, unless this module is wrong.
    """
    groups = list(_out_of_order(root, source.data, ()))
    if not groups or _blank_lines_count(source):
        return source.text
    if not source.text.endswith("\n"):
        line_end = "\r\n" if source.lines[0].endswith("\r") else "\n"
        source = replace(source, text=source.text + line_end)
    groups.reverse()  # the inner ones first: a group moves as a whole, whatever its order inside
    text = source.text
    for group in groups:
        if _in_braces(source, group):
            text = _swapped(source, text, group)
    lines = text.split("\n")
    _clear_blank_lines(source, lines)
    for group in groups:
        if not _in_braces(source, group):
            move = blocks.move(source, *group)
            if move is not None:
                move.apply(lines)
    text = "\n".join(lines)
    _insist_on_same_meaning(text, source)
    return text


def _insist_on_same_meaning(text: str, source: Source) -> None:
    try:
        same = meaning(read(text.encode(), "").data) == meaning(source.data)
    except Unreadable:
        same = False
    if not same:
        raise MeaningChanged("ordering the keys would change what the record says")


class _Disorder(NamedTuple):
    """A group whose keys are not in canonical order, as they stand and as they are to stand."""

    path: Path
    written: list[str]
    wanted: list[str]


def _out_of_order(node: Node, data: Any, path: Path) -> Iterator[_Disorder]:
    """Give each group whose keys are not in canonical order, the outer ones first."""
    node = _form(node, data)
    if isinstance(node, Items) and isinstance(data, list):
        for index, item in enumerate(data):
            yield from _out_of_order(node.item, item, (*path, index))
    elif isinstance(node, Table) and isinstance(data, dict):
        for key, value in data.items():
            yield from _out_of_order(node.value, value, (*path, key))
    elif isinstance(node, Group) and isinstance(data, dict):
        inner = {field.name: field.node for field in node.fields}
        known = [name for name in inner if name in data]
        wanted = [*known, *(key for key in data if key not in inner)]
        if wanted != list(data):
            yield _Disorder(path, list(data), wanted)
        for key in known:
            yield from _out_of_order(inner[key], data[key], (*path, key))


def _form(node: Node, data: Any) -> Node:
    """Give which of several forms data has, where a shape allows several."""
    if isinstance(node, Either):
        fit = Items if isinstance(data, list) else (Group, Choice, Table)
        node = next((form for form in node.forms if isinstance(form, fit)), node)
    if isinstance(node, Choice) and isinstance(data, dict):
        return node.groups.get(str(data.get(TAG)), node)
    return node


def _blank_lines_count(source: Source) -> bool:
    """Say whether blank lines at the end of some block of text are part of it."""
    for path, place in source.places.items():
        written = source.written(place.value)
        if written[:1] in ("|", ">"):
            header = written.split("\n", 1)[0]
            ends_file = source.edges(place.value)[1] == len(source.text)
            last_line = str(source.at(path)).rstrip("\n").rpartition("\n")[2]
            if (
                _KEPT_END.match(header)
                or (ends_file and not _CUT_END.match(header))
                or not last_line.strip()
            ):
                return True
    return False


def _clear_blank_lines(source: Source, lines: list[str]) -> None:
    """Take the blanks out of blank lines between fields, for a block of text may come before one.

    Behind such a block, a line of blanks that is longer than its margin would be part of it.
    """
    in_value: set[int] = set()
    for path, place in source.places.items():
        if not isinstance(source.at(path), (dict, list)):
            in_value.update(range(place.value.line - 1, place.value.end_line))
    for number, line in enumerate(lines):
        if number not in in_value and not line.strip():
            lines[number] = line.strip(" ")


def _in_braces(source: Source, group: _Disorder) -> bool:
    return source.written(source.places[group.path].value).startswith("{")


def _swapped(source: Source, text: str, group: _Disorder) -> str:
    """Give a text with the fields of one group in braces in another order.

    The fields change places and what is between them stays, so the text keeps its length and
    every stretch around the group stays true.
    """
    start, end = source.edges(source.places[group.path].value)
    slots = {key: _slot(source, (*group.path, key)) for key in group.written}
    cuts = [start, *(edge for key in group.written for edge in slots[key]), end]
    between = [text[cuts[n] : cuts[n + 1]] for n in range(0, len(cuts), 2)]
    if any(part.strip(" \r\n{},") for part in between):
        return text
    fields = [text[slice(*slots[key])] for key in group.wanted]
    inner = "".join(part for pair in zip(between, [*fields, ""], strict=True) for part in pair)
    return text[:start] + inner + text[end:]


def _slot(source: Source, path: Path) -> tuple[int, int]:
    """Give where a field begins and ends, its key included."""
    place = source.places[path]
    assert place.key is not None, "a field of a group has a key"
    return source.edges(place.key)[0], source.edges(place.value)[1]
