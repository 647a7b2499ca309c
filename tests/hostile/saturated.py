"""The small manual with something hostile in every field that takes a text."""

from __future__ import annotations

from collections.abc import Iterator
from copy import deepcopy
from functools import cache
from itertools import count
from typing import Any

from pydantic import ValidationError

from generator.records import strict_yaml
from generator.records.kinds import KINDS, Record, Settings
from generator.records.knowledge_base import KnowledgeBase
from tests.demo import demonstration
from tests.demonstration import SMALL_RECORDS
from tests.hostile.texts import MARK, TEXTS

Path = tuple[str | int, ...]

LOOKED_UP = {"unit", "quantity", "state", "tool_class", "supply_class", "cause"}
"""Fields with a word of a list that a check across records holds them to; with another, no page."""


def saturated(turn: int) -> KnowledgeBase:
    """Give the manual with a hostile text in every field that takes one.

    Over as many turns as there are texts, every field gets every text.
    """
    kb = demonstration()
    number = count(turn)
    records: dict[str, dict[str, Record]] = {kind: {} for kind in kb.records}
    for record in kb:
        data = _written(record.kind, record.id)
        filled = _filled(data, _texts(record.kind, record.id), number)
        made = KINDS[record.kind].model_validate(filled)
        made.named(record.kind, record.id)
        records[record.kind][record.id] = made
    settings = strict_yaml.read((SMALL_RECORDS / "settings.yml").read_bytes(), "settings.yml").data
    settings = _filled(settings, _taking(Settings, settings), number)
    return KnowledgeBase(Settings.model_validate(settings), records, kb.origins)


def fields() -> dict[str, set[str]]:
    """Give the fields of each kind that take a text, numbers of items left out."""
    found: dict[str, set[str]] = {}
    for record in demonstration():
        names = {
            "/".join(step for step in path if isinstance(step, str))
            for path in _texts(record.kind, record.id)
        }
        found.setdefault(record.kind, set()).update(names)
    return found


@cache
def _written(kind: str, id_: str) -> Any:
    return strict_yaml.read((SMALL_RECORDS / kind / f"{id_}.yml").read_bytes(), f"{id_}.yml").data


@cache
def _texts(kind: str, id_: str) -> tuple[Path, ...]:
    return _taking(KINDS[kind], _written(kind, id_))


def _taking(shape: type[Record] | type[Settings], data: Any) -> tuple[Path, ...]:
    """Give where the shape takes any text: not an id, a value, a word of a list, or an address."""
    found = []
    for path in _strings(data, ()):
        if path[-1] in LOOKED_UP:
            continue
        tried = _put(deepcopy(data), path, f"{MARK} <b>&\"'")
        try:
            shape.model_validate(tried)
        except ValidationError:
            continue
        found.append(path)
    return tuple(found)


def _strings(data: Any, path: Path) -> Iterator[Path]:
    if isinstance(data, str):
        yield path
    elif isinstance(data, dict):
        for key, value in data.items():
            yield from _strings(value, (*path, key))
    elif isinstance(data, list):
        for n, value in enumerate(data):
            yield from _strings(value, (*path, n))


def _put(data: Any, path: Path, text: str) -> Any:
    *way, last = path
    at = data
    for step in way:
        at = at[step]
    at[last] = text
    return data


def _filled(data: Any, paths: tuple[Path, ...], number: Iterator[int]) -> Any:
    filled = deepcopy(data)
    for path in paths:
        which = next(number)
        # The number keeps titles apart; a text too long for its field is none that could be there.
        _put(filled, path, f"{TEXTS[which % len(TEXTS)]} {which}"[:400].strip())
    return filled
