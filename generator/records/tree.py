"""From a parser's events to plain data, with a place for every field.

The events are taken one by one and the data is built here, so that nothing is resolved, merged or
expanded behind the author's back. Nesting is bounded as the events come in, so no parser can be
made to recurse or to search far ahead, and what an alias stands for is never built.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from typing import Any

import yaml

from generator.problems import Code, Problem, Span, elsewhere, problem
from generator.records import scalars, yaml_words
from generator.records.faults import (
    ALIAS,
    ANCHOR,
    DIRECTIVE,
    DUPLICATE_KEY,
    EMPTY_FILE,
    FAULTY,
    KEY_NOT_TEXT,
    MERGE_KEY,
    NOT_A_MAPPING,
    SEVERAL_DOCUMENTS,
    TAG,
    TOO_DEEP,
    YAML_SYNTAX,
    Faulty,
)
from generator.records.knowledge_base import Path, Place
from generator.records.marks import Marks
from generator.records.scalars import EMPTY_VALUE, TRUTH_WORD, Refused, shorten
from generator.records.source_text import CONTROL_CHARACTER, unwanted

DEEPEST = 16
"""Levels of lists and mappings inside one another; a record needs eight at most."""


class _Stop(Exception):
    """Reading on would be pointless; what was found is kept."""


@dataclass
class Tree:
    """Builds the data of one file from the parser's events.

    `doubtful` tells of a file on which the parsers may differ: each stops elsewhere at a syntax
    error and lets other names pass for tags and anchors; a question mark inside brackets is text
    to one and a mark to the other; and one lets a comment begin right after | or >.
    """

    text: str
    path: str
    parser: Any
    places: dict[Path, Place] = field(default_factory=dict)
    found: list[Problem] = field(default_factory=list)
    doubtful: bool = False
    in_brackets: int = 0

    def __post_init__(self) -> None:
        self.lines = self.text.split("\n")
        self.marks = Marks(self.lines)
        self.events: Iterator[Any] = iter(())

    def document(self) -> dict[str, Any] | None:
        """Give the file's mapping, or None where there is none to be had."""
        parser = self.parser(self.text)
        self.events = iter(parser.get_event, None)
        data: Any = None
        try:
            next(self.events)  # the stream's beginning
            start = next(self.events)
            if isinstance(start, yaml.StreamEndEvent):
                self._say(EMPTY_FILE, Span(), "the file is empty", "write the record, or delete it")
                return None
            self._directives(start)
            data = self._root()
            next(self.events)  # the document's end
            self._nothing_more()
        except _Stop:
            return None
        except yaml.YAMLError as wrong:
            self.doubtful = True
            self._say(YAML_SYNTAX, *yaml_words.explain(wrong, self.lines))
            return None
        except (ValueError, OverflowError):  # the pure parser trusts the numbers in an escape
            self._say(YAML_SYNTAX, *yaml_words.no_number(parser.get_mark(), self.lines))
            return None
        finally:
            parser.dispose()
        return data if isinstance(data, dict) else None

    def _root(self) -> Any:
        event = next(self.events)
        if _is_bare(event):
            self._say(EMPTY_FILE, Span(), "the file says nothing", "write the record, or delete it")
            return None
        data, span = self._node(event, (), 1)
        self.places[()] = Place(None, span)
        if not isinstance(data, (dict, Faulty)):
            kind = "a list" if isinstance(data, list) else "a single value"
            first = Span(span.line, span.column, span.line, len(self.lines[span.line - 1]) + 1)
            hint = "begin with a field, as in title: Crank sensor"
            self._say(NOT_A_MAPPING, first, f"the file holds {kind}, not fields by name", hint)
        return data

    def _directives(self, start: Any) -> None:
        if start.version or start.tags:
            self.doubtful = True
            for number, line in enumerate(self.lines, 1):
                if line.startswith("%"):
                    span = Span(number, 1, number, len(line) + 1)
                    shown = shorten(line)
                    self._say(DIRECTIVE, span, f"`{shown}` is a directive", "delete the line")
                elif line.startswith("---"):
                    return

    def _nothing_more(self) -> None:
        event = next(self.events)
        if isinstance(event, yaml.DocumentStartEvent):
            message = "a second document begins here"
            hint = "put it into a file of its own, or delete the line"
            self._say(SEVERAL_DOCUMENTS, self.marks.span(event), message, hint)

    # Nodes

    def _node(self, event: Any, path: Path | None, depth: int) -> tuple[Any, Span]:
        """Give the value that begins with an event, and its stretch.

        A path of None marks what lies under a key that was refused: it is searched for faults,
        but has no place of its own.
        """
        span = self.marks.span(event)
        if isinstance(event, yaml.AliasEvent):
            self.doubtful = True
            name = shorten(str(event.anchor))
            hint = "write the value out"
            self._say(ALIAS, span, f"`*{name}` stands for a value written elsewhere", hint)
            return FAULTY, span
        self._decorations(event, span)
        if isinstance(event, yaml.ScalarEvent):
            return self._scalar(event, span), span
        if depth > DEEPEST:
            message = f"this is {depth} levels deep; {DEEPEST} is the most"
            place = Span(span.line, span.column, span.line, span.column + 1)
            self._say(TOO_DEEP, place, message, "write it flatter")
            raise _Stop
        build = self._list if isinstance(event, yaml.SequenceStartEvent) else self._mapping
        self.in_brackets += bool(event.flow_style)
        made = build(event, path, depth)
        self.in_brackets -= bool(event.flow_style)
        return made

    def _decorations(self, event: Any, span: Span) -> None:
        self.doubtful = self.doubtful or bool(event.anchor or event.tag)
        if event.anchor:
            name = shorten(event.anchor)
            message = f"`&{name}` names this value for use elsewhere"
            self._say(ANCHOR, self.marks.first_word(span), message, f"delete &{name}")
        if event.tag:
            message = f"the tag {shorten(event.tag)} stands here"
            hint = "delete the tag; write text in quotes and numbers plainly"
            self._say(TAG, self.marks.first_word(span), message, hint)

    def _scalar(self, event: Any, span: Span) -> Any:
        if event.style:
            self._doubt(event, span)
            bad = unwanted(event.value)
            if bad is not None:
                hint = "leave it out of the text"
                self._say(CONTROL_CHARACTER, span, f"the text holds {bad}", hint)
                return FAULTY
            return event.value
        self._doubt(event, span)
        meant = scalars.plain(event.value)
        if isinstance(meant, Refused):
            if event.value == "" and event.tag:
                return FAULTY
            self._say(meant.code, span, meant.message, meant.hint)
            return FAULTY
        return meant

    def _list(self, event: Any, path: Path | None, depth: int) -> tuple[list[Any], Span]:
        items: list[Any] = []
        last = start = self.marks.span(event)
        while not isinstance(item := next(self.events), yaml.SequenceEndEvent):
            here = None if path is None else (*path, len(items))
            value, last = self._node(item, here, depth + 1)
            if here is not None:
                self.places[here] = Place(None, last)
            items.append(value)
        return items, self.marks.whole(event, start, item, last)

    def _mapping(self, event: Any, path: Path | None, depth: int) -> tuple[dict[str, Any], Span]:
        fields: dict[str, Any] = {}
        firsts: dict[str, Span] = {}
        last = start = self.marks.span(event)
        while not isinstance(key_event := next(self.events), yaml.MappingEndEvent):
            key, key_span = self._key(key_event, depth)
            again = key is not None and key in fields
            if key is not None and again:
                message = f"`{shorten(key)}` is written twice; the first is on line "
                message += str(firsts[key].line)
                self._say(DUPLICATE_KEY, key_span, message, "keep one of the two", firsts[key])
            here = None if path is None or key is None or again else (*path, key)
            value_event = next(self.events)
            value, last = self._value(value_event, key_span, here, depth)
            if here is not None:
                self.places[here] = Place(key_span, last)
            if key is not None and not again:
                fields[key] = value
                firsts[key] = key_span
        return fields, self.marks.whole(event, start, key_event, last)

    def _value(self, event: Any, key_span: Span, path: Path | None, depth: int) -> tuple[Any, Span]:
        """Give a field's value; one that was left out is found fault with at its key."""
        if _is_bare(event):
            message = f"`{shorten(self.marks.written(key_span))}` has no value"
            hint = "write the value, or leave the key out where it does not apply"
            self._say(EMPTY_VALUE, key_span, message, hint)
            return FAULTY, key_span
        return self._node(event, path, depth + 1)

    def _key(self, event: Any, depth: int) -> tuple[str | None, Span]:
        """Give a key, or None where it cannot be one."""
        span = self.marks.span(event)
        if not isinstance(event, yaml.ScalarEvent):
            if isinstance(event, yaml.AliasEvent):
                return None, self._node(event, None, depth)[1]
            message = "a list or a group of fields stands as a key"
            self._say(KEY_NOT_TEXT, self.marks.first_word(span), message, _NAME)
            return None, self._node(event, None, depth + 1)[1]
        self._decorations(event, span)
        if event.style not in (None, "", "'", '"'):
            message = "a block of text stands as a key"
            self._say(KEY_NOT_TEXT, self.marks.first_word(span), message, _NAME)
            return None, span
        if event.style in ("'", '"'):
            return (None if self._scalar(event, span) is FAULTY else event.value), span
        self._doubt(event, span)
        if event.value == "<<":
            message = "`<<` takes over the fields of another mapping"
            self._say(MERGE_KEY, span, message, "write the fields out")
            return None, span
        meant = scalars.plain(event.value)
        if isinstance(meant, str):
            return meant, span
        if isinstance(meant, Refused) and meant.code is TRUTH_WORD:
            self._say(TRUTH_WORD, span, meant.message, f'put it in quotes: "{event.value}"')
        else:
            shown = shorten(event.value) or "nothing"
            self._say(KEY_NOT_TEXT, span, f"`{shown}` stands as a key, but is not a word", _NAME)
        return None, span

    def _doubt(self, event: Any, span: Span) -> None:
        if event.style in ("|", ">"):
            header = self.lines[span.line - 1][span.column - 1 :]
            self.doubtful = self.doubtful or bool(CRAMPED.search(header))
        elif not event.style:
            self.doubtful = self.doubtful or (self.in_brackets > 0 and "?" in event.value)

    def _say(
        self, what: Code, span: Span, message: str, hint: str, first: Span | None = None
    ) -> None:
        found = problem(what, self.path, span, message, hint)
        if first is not None:
            found = replace(found, second=elsewhere(self.path, first, "first written here"))
        self.found.append(found)


def _is_bare(event: Any) -> bool:
    """Say whether nothing at all is written where a value could stand."""
    plain = isinstance(event, yaml.ScalarEvent) and not event.style
    return plain and not (event.value or event.anchor or event.tag)


_NAME = "name the field with a word"
CRAMPED = re.compile(r"[|>][-+0-9]*#")
