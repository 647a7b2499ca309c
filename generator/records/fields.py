"""From the library's account of an error to the field a person wrote.

The library names the branches of unions among the keys, and gives the errors of every branch it
tried. Walking the shape beside the data tells the two apart.
"""

from __future__ import annotations

import types
from dataclasses import dataclass
from typing import Annotated, Any, Literal, Union, get_args, get_origin

from pydantic import BaseModel
from pydantic.fields import FieldInfo

from generator.records.knowledge_base import Path

MISSING: Any = object()
"""Stands for a value that is not in the data."""


@dataclass(frozen=True, slots=True)
class Located:
    """The field that an error speaks of.

    Parameters
    ----------
    path : tuple
        The way to it in the data.
    info : FieldInfo or None
        Its description and rules; None for an item of a list and for unknown keys.
    value : object
        What was written, or :data:`MISSING`.
    around : type or None
        The shape it is a field of.
    noise : bool
        True where the error comes from a branch that the author did not mean.
    annotation : object
        The type of the field.
    of_key : bool
        True where the error is in the key itself; `value` is then the key.
    """

    path: Path
    info: FieldInfo | None
    value: Any
    around: type[BaseModel] | None
    noise: bool
    annotation: Any
    of_key: bool = False


def locate(shape: type[BaseModel], loc: tuple[str | int, ...], data: Any) -> Located:
    """Find the field of an error.

    Parameters
    ----------
    shape : type
        The shape that was fitted.
    loc : tuple
        The library's way to the error.
    data : object
        What was written.

    Returns
    -------
    Located
        The field.
    """
    annotation: Any = shape
    info: FieldInfo | None = None
    around: type[BaseModel] | None = None
    key_type: Any = None
    path: Path = ()
    noise = False
    for segment in loc:
        members = _members(annotation)
        if len(members) > 1:
            annotation, fits = _branch(members, str(segment), data)
            noise = noise or not fits
            continue
        if segment == "[key]":
            return Located(path, None, path[-1], None, noise, key_type, of_key=True)
        path = (*path, segment)
        data = _inside(data, segment)
        info, around = None, None
        member = members[0] if members else None
        if isinstance(member, type) and issubclass(member, BaseModel):
            around = member
            info = member.model_fields.get(str(segment))
            annotation = None if info is None else info.annotation
        elif get_origin(member) in (list, dict):
            key_type, annotation = get_args(member)[0], get_args(member)[-1]
        else:
            annotation = None
    return Located(path, info, data, around, noise, annotation)


def words_of(annotation: Any) -> tuple[str, ...]:
    """Give the closed list of words a field takes, or nothing where it is not one."""
    for member in _members(annotation):
        if get_origin(member) is Literal:
            return tuple(str(word) for word in get_args(member))
        if isinstance(member, type) and hasattr(member, "__members__"):
            return tuple(str(word.value) for word in member.__members__.values())
    return ()


def branches(annotation: Any) -> tuple[str, ...]:
    """Give the names of the shapes a field can have."""
    return tuple(
        word
        for member in _members(annotation)
        if isinstance(member, type) and issubclass(member, BaseModel)
        for word in _tags(member)
    )


def _members(annotation: Any) -> list[Any]:
    """Give the types of a union (without None), or the one type."""
    origin = get_origin(annotation)
    if origin is Annotated:
        return _members(get_args(annotation)[0])
    if origin in (Union, types.UnionType):
        return [
            inner
            for member in get_args(annotation)
            if member is not type(None)
            for inner in _members(member)
        ]
    return [] if annotation is None else [annotation]


def _branch(members: list[Any], label: str, data: Any) -> tuple[Any, bool]:
    """Give the branch of a union that a label names, and whether the data means it."""
    for member in members:
        if isinstance(member, type) and issubclass(member, BaseModel) and label in _tags(member):
            return member, True
    lists = [member for member in members if get_origin(member) is list]
    others = [member for member in members if get_origin(member) is not list]
    if label.startswith("list["):
        return (lists or members)[0], isinstance(data, list)
    return (others or members)[0], not (lists and isinstance(data, list))


def _tags(member: type[BaseModel]) -> tuple[str, ...]:
    name = member.model_fields.get("name")
    return words_of(name.annotation) if name is not None else ()


def _inside(data: Any, segment: str | int) -> Any:
    if isinstance(data, dict) and segment in data:
        return data[segment]
    if isinstance(data, list) and isinstance(segment, int) and segment < len(data):
        return data[segment]
    return MISSING
