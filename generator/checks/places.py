"""Where things stand: second places for findings, and every word that a record shows."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from typing import Any

from pydantic import StringConstraints

from generator.problems import Elsewhere, elsewhere
from generator.records.kinds import Record
from generator.records.kinds.base import Shape, shapes_in
from generator.records.knowledge_base import KnowledgeBase, Path


def second(
    kb: KnowledgeBase, record: Record, path: Path, says: str, *, of_key: bool = False
) -> Elsewhere:
    """Give a second place: a field of a record, and what stands there."""
    origin = kb.origins[record.key]
    return elsewhere(origin.path, origin.span(path, of_key=of_key), says)


def words_of(shape: Shape, path: Path = ()) -> Iterator[tuple[Path, str]]:
    """Walk every text a person wrote for a reader: no ids, no words of a closed list.

    Yields
    ------
    tuple
        The path of the field, and its text.
    """
    for name, written in _fields(type(shape)):
        yield from _words_in(getattr(shape, name), written, (*path, name))


@cache
def _fields(shape: type[Shape]) -> tuple[tuple[str, bool], ...]:
    """Give each field of a shape with text in it, and whether it is text itself.

    Every walk asks for the same.
    """
    return tuple(
        (name, written)
        for name, field in shape.model_fields.items()
        for written in [_is_text(field.annotation, tuple(field.metadata))]
        if written or any(map(_fields, shapes_in(field.annotation)))
    )


def _words_in(value: Any, written: bool, path: Path) -> Iterator[tuple[Path, str]]:
    if isinstance(value, Shape):
        yield from words_of(value, path)
    elif isinstance(value, (list, tuple)):
        for index, item in enumerate(value):
            yield from _words_in(item, written, (*path, index))
    elif written and isinstance(value, str):
        yield path, value


def _is_text(annotation: Any, metadata: tuple[Any, ...]) -> bool:
    """Tell free text from an id or a choice, which have a pattern: through lists and optionals."""
    for mark in metadata:
        if isinstance(mark, StringConstraints):
            return mark.pattern is None
    return any(
        _is_text(inner, tuple(getattr(inner, "__metadata__", ())))
        for inner in getattr(annotation, "__args__", ())
    )
