"""The shape of a record as a plain tree: what `new` leaves blank, `fmt` orders, `schema` states.

The shapes are the one source. What the type checker needs of them (annotations, optionals, marks)
is taken apart here, once.
"""

from __future__ import annotations

import inspect
import re
import types
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from enum import Enum
from functools import cache
from typing import Annotated, Any, Literal, Union, get_args, get_origin

from pydantic import BaseModel, TypeAdapter, ValidationError
from pydantic.fields import FieldInfo

from generator.quantities import UNITS, Written
from generator.records.kinds import KINDS, Settings
from generator.records.kinds.base import Link, Measure
from generator.records.kinds.cases import Case
from generator.records.kinds.models import Cable, Piece
from generator.records.kinds.work import WAYS, Next

SETTINGS = "settings"
"""Stands for the manual's settings where a kind is asked for."""

TAG = "name"
"""The field that says which of several shapes a group has."""


ONE_OF: Mapping[type[BaseModel], tuple[str, ...]] = {
    Next: WAYS,
    Case: ("replacement", "procedure", "other_fix"),
    Cable: ("area", "gauge"),
    Piece: ("cable", "resistance"),
}
"""Fields of which a group has exactly one; the shapes state it in code, which cannot be read."""


@dataclass(frozen=True, slots=True)
class Leaf:
    """One value.

    Parameters
    ----------
    type : type
        str, int, float, bool, date or Written.
    rules : mapping
        Its limits by their pydantic names: gt, ge, lt, le, min_length, max_length, pattern.
    links : tuple of str
        Kinds of record it may name.
    quantity : str or None
        What a written value measures, where only one quantity will do.
    spread : bool
        Whether a written value may be a range or have a spread.
    """

    type: type
    rules: Mapping[str, Any]
    links: tuple[str, ...] = ()
    quantity: str | None = None
    spread: bool = True


@dataclass(frozen=True, slots=True)
class Words:
    """One word of a closed list."""

    words: tuple[str | int, ...]


@dataclass(frozen=True, slots=True)
class Items:
    """A list."""

    item: Node
    least: int
    most: int | None


@dataclass(frozen=True, slots=True)
class Table:
    """Values by name, where the names are the author's."""

    key: Node
    value: Node


@dataclass(frozen=True, slots=True)
class Group:
    """Fields by name."""

    shape: type[BaseModel]

    @property
    def fields(self) -> tuple[Field, ...]:
        """The fields in canonical order."""
        return fields_of(self.shape)

    @property
    def description(self) -> str:
        """What it is, in a sentence."""
        return inspect.cleandoc(self.shape.__doc__ or "").split("\n")[0]

    @property
    def is_menu(self) -> bool:
        """Whether no field is required, so that an author picks those that apply."""
        return not any(field.required for field in self.fields)

    @property
    def ways(self) -> tuple[str, ...]:
        """The fields of which it has exactly one."""
        found = (names for shape, names in ONE_OF.items() if issubclass(self.shape, shape))
        return next(found, ())


@dataclass(frozen=True, slots=True)
class Choice:
    """One of several groups, told apart by their :data:`TAG`."""

    groups: Mapping[str, Group]


@dataclass(frozen=True, slots=True)
class Either:
    """One of several forms that differ in their type."""

    forms: tuple[Node, ...]


Node = Leaf | Words | Items | Table | Group | Choice | Either


@dataclass(frozen=True, slots=True)
class Field:
    """A field of a group; `default` is None where leaving it out means "none"."""

    name: str
    node: Node
    required: bool
    description: str
    default: Any


def outline(kind: str) -> Group:
    """Give the tree of a kind, or of the settings.

    Parameters
    ----------
    kind : str
        A folder of records, or :data:`SETTINGS`.
    """
    return Group(Settings if kind == SETTINGS else KINDS[kind])


def below(node: Node) -> tuple[Node, ...]:
    """Give the nodes directly under a node."""
    match node:
        case Group():
            return tuple(field.node for field in node.fields)
        case Choice():
            return tuple(node.groups.values())
        case Either():
            return node.forms
        case Items():
            return (node.item,)
        case Table():
            return (node.key, node.value)
        case _:
            return ()


def symbols(quantity: str) -> list[str]:
    """Give the symbols of the units that measure a quantity."""
    return [unit.symbol for unit in UNITS if unit.quantity == quantity]


def or_list(words: Iterable[str | int]) -> str:
    """Give words as a sentence lists them: "a, b or c"."""
    *before, last = map(str, words)
    return f"{', '.join(before)} or {last}" if before else last


@cache
def fields_of(shape: type[BaseModel]) -> tuple[Field, ...]:
    """Give the fields of a shape in canonical order: as declared, the tag of a choice first."""
    made = [
        Field(
            name,
            _node(info.annotation, info.metadata),
            info.is_required(),
            info.description or "",
            None if info.is_required() or info.default_factory else info.default,
        )
        for name, info in shape.model_fields.items()
    ]
    return tuple(sorted(made, key=lambda field: not _is_tag(field)))


def _is_tag(field: Field) -> bool:
    return field.name == TAG and isinstance(field.node, Words) and len(field.node.words) == 1


def _node(annotation: Any, marks: Iterable[Any]) -> Node:
    origin, arguments = get_origin(annotation), get_args(annotation)
    if origin is Annotated:
        return _node(arguments[0], (*arguments[1:], *marks))
    if origin in (Union, types.UnionType):
        return _either([member for member in arguments if member is not type(None)], marks)
    if origin is Literal:
        return Words(arguments)
    if origin is list:
        rules = _rules(marks)
        least, most = rules.get("min_length", 0), rules.get("max_length")
        return Items(_node(arguments[0], ()), least, most)
    if origin is dict:
        return Table(_node(arguments[0], ()), _node(arguments[1], ()))
    if issubclass(annotation, Enum):
        return Words(tuple(word.value for word in annotation))
    if issubclass(annotation, BaseModel):
        return Group(annotation)
    return _leaf(annotation, tuple(marks))


def _either(members: list[Any], marks: Iterable[Any]) -> Node:
    nodes = [_node(member, marks) for member in members]
    if len(nodes) == 1:
        return nodes[0]
    groups = [node for node in nodes if isinstance(node, Group)]
    if len(groups) < len(nodes):
        return Either(tuple(nodes))
    return Choice({_tag(group): group for group in groups})


def _tag(group: Group) -> str:
    tag = group.fields[0].node
    assert isinstance(tag, Words), f"{group.shape.__name__} has no {TAG} to be told apart by"
    return str(tag.words[0])


_ALTERNATIVES = re.compile(r"\^\(([\w|]+)\)\$")


def _leaf(type_: type, marks: tuple[Any, ...]) -> Leaf | Words:
    rules = _rules(marks)
    alternatives = _ALTERNATIVES.fullmatch(str(rules.get("pattern", "")))
    if alternatives:
        return Words(tuple(alternatives.group(1).split("|")))
    links = tuple(kind for mark in marks if isinstance(mark, Link) for kind in mark.kinds)
    if type_ is not Written:
        return Leaf(type_, rules, links)
    quantity = next((mark.quantity for mark in marks if isinstance(mark, Measure)), None)
    return Leaf(type_, rules, links, quantity, _takes_spread(marks, quantity))


def _takes_spread(marks: tuple[Any, ...], quantity: str | None) -> bool:
    """Ask the type itself: what it does with a range is written in its validators alone."""
    unit = next(unit for unit in UNITS if quantity in (None, unit.quantity))
    field: TypeAdapter[Any] = TypeAdapter(Annotated[(Written, *marks)])
    try:
        field.validate_python(f"1 to 2 {unit.symbol}")
    except ValidationError:
        return False
    return True


_RULES = ("gt", "ge", "lt", "le", "min_length", "max_length", "pattern")


def _rules(marks: Iterable[Any]) -> dict[str, Any]:
    """Give the limits that an annotation's marks state, whichever class states them."""
    rules: dict[str, Any] = {}
    for mark in marks:
        if isinstance(mark, FieldInfo):
            rules.update(_rules(mark.metadata))
            continue
        for name in _RULES:
            limit = getattr(mark, name, None)
            if limit is not None:
                rules[name] = limit
    return rules
