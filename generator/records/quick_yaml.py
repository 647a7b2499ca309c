"""The quick way through a file that nothing is wrong with.

Nine files in ten are plain: no finding, no trick, nothing on which readers of YAML differ. This
reader knows such a file when it meets one and gives its data; on anything else it gives up, and
:mod:`generator.records.strict_yaml` reads the file with a place for every field. It builds the
same data from the same events, and a test holds the two together.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache
from typing import Any

import yaml

from generator.records import scalars
from generator.records.source_text import unwanted
from generator.records.tree import CRAMPED, DEEPEST

try:
    from yaml.cyaml import CParser  # type: ignore[attr-defined]
except ImportError:  # PyYAML was installed without its C library
    CParser = None  # type: ignore[assignment,misc]


class _GiveUp(Exception):
    """Something is not plain."""


def read(text: str) -> dict[str, Any] | None:
    """Give the data of a plain file, or None for any other.

    Parameters
    ----------
    text : str
        The file, free of characters that must not be.
    """
    if CParser is None or CRAMPED.search(text):
        return None
    parser = CParser(text)
    event = parser.get_event
    try:
        event()  # the stream's beginning
        start = event()
        if type(start) is not yaml.DocumentStartEvent or start.version or start.tags:
            return None
        first = event()
        if type(first) is not yaml.MappingStartEvent:
            return None
        data = _mapping(event, first, 1, 0)
        event()  # the document's end
        return data if type(event()) is yaml.StreamEndEvent else None
    except (_GiveUp, yaml.YAMLError, ValueError, OverflowError):
        return None
    finally:
        parser.dispose()


def _mapping(next_event: Callable[[], Any], start: Any, depth: int, brackets: int) -> Any:
    _plain_collection(start, depth)
    brackets += bool(start.flow_style)
    fields: dict[str, Any] = {}
    while type(event := next_event()) is not yaml.MappingEndEvent:
        if type(event) is not yaml.ScalarEvent or event.anchor or event.tag:
            raise _GiveUp
        key = _key(event, brackets)
        if key in fields:
            raise _GiveUp
        fields[key] = _value(next_event, next_event(), depth + 1, brackets)
    return fields


def _list(next_event: Callable[[], Any], start: Any, depth: int, brackets: int) -> Any:
    _plain_collection(start, depth)
    brackets += bool(start.flow_style)
    items = []
    while type(event := next_event()) is not yaml.SequenceEndEvent:
        items.append(_value(next_event, event, depth + 1, brackets))
    return items


def _plain_collection(start: Any, depth: int) -> None:
    if start.anchor or start.tag or depth > DEEPEST:
        raise _GiveUp


def _value(next_event: Callable[[], Any], event: Any, depth: int, brackets: int) -> Any:
    kind = type(event)
    if kind is yaml.ScalarEvent:
        if event.anchor or event.tag:
            raise _GiveUp
        return _scalar(event, brackets)
    if kind is yaml.SequenceStartEvent:
        return _list(next_event, event, depth, brackets)
    if kind is yaml.MappingStartEvent:
        return _mapping(next_event, event, depth, brackets)
    raise _GiveUp


def _scalar(event: Any, brackets: int) -> Any:
    text: str = event.value
    if event.style:
        if event.style == '"' and unwanted(text) is not None:
            raise _GiveUp
        return text
    if brackets and "?" in text:
        raise _GiveUp
    meant = _meaning(text)
    if type(meant) is scalars.Refused:
        raise _GiveUp
    return meant


def _key(event: Any, brackets: int) -> str:
    if event.style not in (None, "", "'", '"'):
        raise _GiveUp
    if event.value == "<<" and not event.style:
        raise _GiveUp
    key = _scalar(event, brackets)
    if not isinstance(key, str):
        raise _GiveUp
    return key


_meaning = lru_cache(maxsize=1 << 14)(scalars.plain)
