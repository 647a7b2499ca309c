"""The demonstration manual with one file changed as a person would change it: in its text."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from functools import cache

from generator.problems import Elsewhere, Problem
from generator.records import shape, strict_yaml
from generator.records.kinds import Record
from generator.records.knowledge_base import KnowledgeBase, Origin
from generator.records.load import Loaded, load
from tests.demo import demonstration
from tests.demonstration import SMALL_RECORDS

FOLDER = "kb_source"
Rule = Callable[[KnowledgeBase], Iterable[Problem]]


@dataclass(frozen=True)
class Edited:
    """A manual with the text of its files.

    Parameters
    ----------
    kb : KnowledgeBase
        The manual.
    texts : dict
        Path of each file, as findings name it, to its text.
    """

    kb: KnowledgeBase
    texts: dict[str, str]

    def marked(self, found: Problem | Elsewhere) -> str:
        """Give the text that a finding, or its second place, points at."""
        lines = self.texts[found.path].split("\n")[found.line - 1 : found.end_line]
        lines[-1] = lines[-1][: found.end_column - 1]
        lines[0] = lines[0][found.column - 1 :]
        return "\n".join(lines)

    def found(self, rule: Rule) -> list[tuple[str, str, str]]:
        """Give code, record and marked text of each finding of a rule."""
        return [(f.code, f.record, self.marked(f)) for f in rule(self.kb)]


@cache
def _loaded() -> Loaded:
    return load(SMALL_RECORDS, FOLDER)


def text_of(key: str) -> str:
    """Give the text of a record's file."""
    return _loaded().sources[path_of(key)]


def path_of(key: str) -> str:
    """Give the path of a record's file, as findings name it."""
    return f"{FOLDER}/{key}.yml"


def read(key: str, text: str) -> tuple[Record | None, list[Problem], Origin]:
    """Read a text as the file of a record, with what is wrong with it."""
    reading = strict_yaml.read(text.encode(), path_of(key))
    origin = Origin(path_of(key), reading.places)
    if reading.data is None:
        return None, reading.problems, origin
    kind, id_ = key.split("/")
    record, misfits = shape.fit(kind, id_, reading.data, reading.places, origin.path)
    return record, [*reading.problems, *misfits], origin


def with_settings(text: str) -> Edited:
    """Give the manual with its settings written anew."""
    path = path_of("settings")
    reading = strict_yaml.read(text.encode(), path)
    settings, wrong = shape.fit_settings(reading.data, reading.places, path)
    assert settings is not None, wrong
    assert not reading.problems and not wrong
    kb = demonstration()
    origins = {**kb.origins, "settings": Origin(path, reading.places)}
    kb = replace(kb, settings=settings, origins=origins)
    return Edited(kb, {**_loaded().sources, path: text})


def written(key: str, text: str, into: Edited | None = None) -> Edited:
    """Give the manual with a record's file written anew, or one more file."""
    if key == "settings":
        return with_settings(text)
    manual = into or Edited(demonstration(), dict(_loaded().sources))
    record, wrong, origin = read(key, text)
    assert record is not None, wrong
    assert not wrong
    kind = key.split("/")[0]
    by_id = {**manual.kb.records[kind], record.id: record}
    kb = replace(
        manual.kb,
        records={**manual.kb.records, kind: dict(sorted(by_id.items()))},
        origins={**manual.kb.origins, key: origin},
    )
    return Edited(kb, {**manual.texts, path_of(key): text})


def edited(key: str, old: str, new: str, into: Edited | None = None) -> Edited:
    """Give the manual with one place of a record's file changed; the place must be there."""
    text = into.texts[path_of(key)] if into else text_of(key)
    assert old in text, f"{key} has no {old!r}"
    return written(key, text.replace(old, new, 1), into)


def patched(key: str, fields: str, into: Edited | None = None) -> Edited:
    """Give the manual with some of a record's fields written anew."""
    return written(key, with_fields(key, fields, into), into)


def with_fields(key: str, fields: str, into: Edited | None = None) -> str:
    """Give the text of a record's file in which some fields are others.

    A record that is not in the manual is written by the fields alone.
    """
    text = (into.texts if into else _loaded().sources).get(path_of(key), "")
    for name in re.findall(r"^([a-z_]+):", fields, re.MULTILINE):
        text = re.sub(rf"^{name}:.*\n(?:[ -].*\n|\n)*", "", text, flags=re.MULTILINE)
    return text + fields.rstrip("\n") + "\n"
