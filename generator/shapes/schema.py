"""JSON Schemas of the record kinds, from which editors complete fields and mark slips.

A schema states what one record shows by itself. What follows from other records, from the order
of two figures or from how YAML is written is left to `check`.

References
----------
JSON Schema, draft 2020-12: https://json-schema.org/draft/2020-12
"""

from __future__ import annotations

import datetime
import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from generator.quantities import Written
from generator.records.kinds import KINDS
from generator.records.kinds.base import folder_of
from generator.shapes.outline import (
    SETTINGS,
    Choice,
    Either,
    Field,
    Group,
    Items,
    Leaf,
    Node,
    Table,
    Words,
    below,
    or_list,
    outline,
    symbols,
)
from generator.shapes.value_pattern import LONGEST_VALUE, pattern

DIALECT = "https://json-schema.org/draft/2020-12/schema"
FOLDER = ".schema"
"""Beside the records; its dot keeps it from being taken for a kind."""

SCHEMAS = (*KINDS, SETTINGS)

KINDS_NAMED = "x-records"
"""A keyword of our own beside a text that is an id: the kinds of record that it may name."""

Schema = dict[str, Any]


def file_name(kind: str) -> str:
    """Give the name of a kind's schema file."""
    return f"{kind}.json"


def as_text(kind: str) -> str:
    """Give the schema of a kind as a file holds it."""
    return json.dumps(schema_of(kind), ensure_ascii=False, indent=2) + "\n"


def stale(folder: Path) -> Iterator[tuple[Path, str]]:
    """Give each schema file that is missing or does not say what the shapes say, and its text."""
    for kind in SCHEMAS:
        path, text = folder / file_name(kind), as_text(kind)
        if not path.is_file() or path.read_text(encoding="utf-8") != text:
            yield path, text


def schema_of(kind: str) -> Schema:
    """Give the schema of a kind, or of the settings.

    Parameters
    ----------
    kind : str
        One of :data:`SCHEMAS`.

    Returns
    -------
    dict
        A JSON Schema that needs no other document.
    """
    root = outline(kind)
    inner: dict[str, Schema] = {}
    _define(root, inner)
    del inner[root.shape.__name__]
    schema = {"$schema": DIALECT, "title": kind, **_group(root)}
    return {**schema, "$defs": dict(sorted(inner.items()))} if inner else schema


def _define(node: Node, into: dict[str, Schema]) -> None:
    """Note what a node and those below it refer to by name."""
    if isinstance(node, Group):
        if node.shape.__name__ in into:
            return
        into[node.shape.__name__] = _group(node)
    elif isinstance(node, Leaf) and node.type is Written:
        into[_value_name(node)] = _value(node)
    for inner in below(node):
        _define(inner, into)


def _group(group: Group) -> Schema:
    required = [field.name for field in group.fields if field.required]
    schema: Schema = {
        "description": group.description,
        "type": "object",
        "properties": {field.name: _field(field) for field in group.fields},
        "additionalProperties": False,
    }
    if required:
        schema["required"] = required
    ways = [_way(field) for field in group.fields if field.name in group.ways]
    return {**schema, "oneOf": ways} if ways else schema


def _way(field: Field) -> Schema:
    """Give the schema that a group fits if it goes one way; a truth counts where it is true."""
    way: Schema = {"required": [field.name]}
    if isinstance(field.node, Leaf) and field.node.type is bool:
        way["properties"] = {field.name: {"const": True}}
    return way


def _field(field: Field) -> Schema:
    kinds = _linked(field.node)
    links = [f"The id of a record in {' or '.join(map(folder_of, kinds))}."] if kinds else []
    schema = {"description": " ".join([field.description, *links]), **_node(field.node)}
    if isinstance(field.default, (str, bool, int, float)):
        schema["default"] = field.default
    return schema


def _linked(node: Node) -> tuple[str, ...]:
    """Give the kinds that a field's own ids name; a schema cannot know which records there are."""
    if isinstance(node, Leaf):
        return node.links
    inner = () if isinstance(node, Group) else below(node)
    return next((kinds for one in inner if (kinds := _linked(one))), ())


def _node(node: Node) -> Schema:
    match node:
        case Group():
            return _reference(node.shape.__name__)
        case Choice():
            groups = [_node(group) for group in node.groups.values()]
            return {"type": "object", "oneOf": groups}
        case Either():
            return {"anyOf": [_node(form) for form in node.forms]}
        case Items():
            sizes = {"minItems": node.least or None, "maxItems": node.most}
            return {"type": "array", "items": _node(node.item), **_stated(sizes)}
        case Table():
            inner = {"propertyNames": _node(node.key), "additionalProperties": _node(node.value)}
            return {"type": "object", **inner}
        case Words():
            return {"const": node.words[0]} if len(node.words) == 1 else {"enum": [*node.words]}
        case Leaf():
            return _leaf(node)


def _reference(name: str) -> Schema:
    return {"$ref": f"#/$defs/{name}"}


def _leaf(leaf: Leaf) -> Schema:
    return {**_value_of(leaf), **({KINDS_NAMED: [*leaf.links]} if leaf.links else {})}


def _value_of(leaf: Leaf) -> Schema:
    rules = leaf.rules
    if leaf.type is Written:
        return _reference(_value_name(leaf))
    if leaf.type is datetime.date:
        return {"type": "string", "format": "date", "pattern": "^[0-9]{4}-[0-9]{2}-[0-9]{2}$"}
    if leaf.type is bool:
        return {"type": "boolean"}
    if leaf.type is str:
        # Blanks around a text do not count, so a text of blanks is an empty one.
        empty = r"\S" if rules.get("min_length") else None
        limits = {"maxLength": rules.get("max_length"), "pattern": rules.get("pattern") or empty}
        return {"type": "string", **_stated(limits)}
    limits = {
        "minimum": rules.get("ge"), "exclusiveMinimum": rules.get("gt"),
        "maximum": rules.get("le"), "exclusiveMaximum": rules.get("lt"),
    }  # fmt: skip
    return {"type": "integer" if leaf.type is int else "number", **_stated(limits)}


def _value_name(leaf: Leaf) -> str:
    quantity = (leaf.quantity or "any quantity").title().replace(" ", "")
    return f"{'Value' if leaf.spread else 'OneValue'}Of{quantity}"


def _value(leaf: Leaf) -> Schema:
    what = f"of {leaf.quantity}, in {or_list(symbols(leaf.quantity))}" if leaf.quantity else (
        "with its unit"
    )  # fmt: skip
    forms = ", a range, a spread or a limit" if leaf.spread else ""
    return {
        "description": f"A value{forms} {what}.",
        "type": "string",
        "maxLength": LONGEST_VALUE,
        "pattern": pattern(leaf.quantity, spread=leaf.spread),
    }


def _stated(limits: dict[str, Any]) -> Schema:
    return {name: limit for name, limit in limits.items() if limit is not None}
