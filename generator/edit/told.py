"""What a field wants, in words: its description, and what it takes in brackets."""

from __future__ import annotations

import datetime
import re

from generator.quantities import Written
from generator.records.kinds.base import folder_of
from generator.shapes.outline import (
    Choice,
    Either,
    Field,
    Group,
    Items,
    Leaf,
    Node,
    Table,
    Words,
    or_list,
    symbols,
)


def told(field: Field) -> str:
    """Give a field's description and, in brackets, what it takes, as far as that is not said.

    Parameters
    ----------
    field : Field
        The field. What stands under a required one is written out below it, and not told here.
    """
    takes = _takes(field.node, field.description, written_out=field.required)
    return f"{field.description} [{takes}]" if takes else field.description


def _takes(node: Node, said: str = "", *, written_out: bool = False) -> str:
    match node:
        case Leaf():
            return _value(node, said)
        case Words():
            return _words([str(word) for word in node.words], said)
        case Items(item=Group() as group):
            more = "" if written_out else _more(group)
            return f"a list; each {more}" if more else "a list"
        case Items():
            inner = _takes(node.item, said)
            return f"a list; each is {inner}" if inner else "a list"
        case Either():
            return ", or ".join(filter(None, (_takes(form, said) for form in node.forms)))
        case Table():
            names, values = _takes(node.key) or "a word", _takes(node.value) or "a text"
            return f"lines of name: value; each name is {names}, each value {values}"
        case Choice():
            return f"name is {or_list(node.groups)}; each has fields of its own"
        case Group(is_menu=True) if written_out:
            return "{} where none of them applies"
        case Group():
            return "" if written_out else _more(node)


def _more(group: Group) -> str:
    """Name what a group may have, where only what it must have is written out."""
    names = [field.name for field in group.fields if not field.required]
    also = "" if len(names) == len(group.fields) else "also "
    return f"may {also}have {or_list(names)}" if names else ""


def _words(words: list[str], said: str) -> str:
    missing = sorted(set(words) - set(re.findall(r"\w+", said)))
    if not missing:
        return ""
    return "or unknown" if missing == ["unknown"] else or_list(words)


def _value(leaf: Leaf, said: str) -> str:
    if leaf.links:
        return f"an id from {or_list(map(folder_of, leaf.links))}"
    if leaf.type is Written:
        units = f"in {or_list(symbols(leaf.quantity))}" if leaf.quantity else "with its unit"
        return f"{'a value' if leaf.spread else 'one value without a spread'} {units}"
    if leaf.type is datetime.date:
        return "" if "2026-" in said else "a day, as 2026-10-05"
    if leaf.type is bool:
        return "" if "true" in said else "true or false"
    if leaf.type in (int, float):
        return f"a {'whole ' if leaf.type is int else ''}number{_limits(leaf)}"
    return ""


def _limits(leaf: Leaf) -> str:
    rules = leaf.rules
    from_ = f" from {rules['ge']:g}" if "ge" in rules else ""
    over = f" over {rules['gt']:g}" if "gt" in rules else ""
    to = f" {'to' if from_ else 'up to'} {rules['le']:g}" if "le" in rules else ""
    under = f" under {rules['lt']:g}" if "lt" in rules else ""
    return from_ + over + ("," if over and (to or under) else "") + to + under
