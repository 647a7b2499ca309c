"""What each kind of misfit is called, and how it is said."""

from __future__ import annotations

import datetime
import re
from collections.abc import Callable, Iterator
from difflib import get_close_matches
from typing import Any

from generator.problems import Code, code
from generator.records.fields import Located, branches, words_of
from generator.records.knowledge_base import Path
from generator.records.rules import RECORD_RULE, RULES
from generator.records.scalars import shorten

MISSING_KEY = code("missing-key", "The page would have a gap where the reader looks for it.")
WRONG_TYPE = code("wrong-type", "The page could not show it as what it is.")
UNKNOWN_WORD = code(
    "unknown-word",
    "Order, cautions and verdicts follow from these words; an unknown one means nothing to them.",
)
OUT_OF_RANGE = code("out-of-range", "No such figure makes sense here, so one digit is wrong.")
BAD_ID = code("bad-id", "An id becomes a file name and an address, and has to be safe as both.")
BARE_DATE = code(
    "bare-date",
    "Programs rewrite a bare date in their own way, so a text would not stay as written.",
)
BAD_DATE = code("bad-date", "A review could not be found overdue.")
EMPTY_TEXT = code("empty-text", "The page would have a heading with nothing under it.")
TOO_LONG = code("too-long", "It would not fit the place it is shown in, least of all on a phone.")
TOO_FEW = code("too-few-items", "The page would leave out what a reader needs to decide.")
TOO_MANY = code("too-many-items", "It would not fit the page or the drawing.")
BAD_PATTERN = code("bad-pattern", "It could not be looked up by anybody who needs it.")
UNKNOWN_FORMAT = code(
    "unknown-format", "Records of another format could be read wrongly without a word."
)
Said = tuple[Code, Path, str, str]
"""The code, the field it is about, what is wrong, and the mend."""

ID_PATTERN = "^[a-z0-9]+(-[a-z0-9]+)*$"
_ALTERNATIVES = re.compile(r"\^\(([\w|]+)\)\$")
_SHORT = 30


def mid_sentence(text: str) -> str:
    """Give a description for use after a colon: no full stop, no capital."""
    text = text.rstrip(".")
    return text if text[1:2].isupper() else text[:1].lower() + text[1:]


def words(error: Any, where: Located) -> Iterator[Said]:
    """Say one misfit.

    Parameters
    ----------
    error : mapping
        The library's account of it.
    where : Located
        The field.

    Yields
    ------
    tuple
        Code, field, message and hint.
    """
    kind: str = error["type"]
    rules: dict[str, Any] = error.get("ctx", {})
    if kind in _TYPES:
        yield _wrong_type(where, *_TYPES[kind])
    elif kind in _SAY:
        yield _SAY[kind](where, rules)
    else:
        yield _rule(where, kind, error["msg"], rules)


def _name(where: Located) -> str:
    """Name the field: its key, or that of the list it is an item of."""
    for segment in reversed(where.path):
        if isinstance(segment, str):
            return f"`{shorten(segment)}`"
    return "the record"


def found(value: Any) -> str:
    """Say what was found."""
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, str):
        return f"the text `{shorten(value)}`"
    if isinstance(value, (int, float)):
        return f"the number {value}"
    if isinstance(value, datetime.date):
        return f"the date {value.isoformat()}"
    return "a list" if isinstance(value, list) else "a group of fields"


# Types

_TYPES: dict[str, tuple[str, str]] = {
    "string_type": ("a text", "text"),
    "list_type": ("a list", "list"),
    "model_type": ("a group of fields", "mapping"),
    "model_attributes_type": ("a group of fields", "mapping"),
    "dict_type": ("a group of fields", "mapping"),
    "int_type": ("a whole number", "whole"),
    "int_from_float": ("a whole number", "whole"),
    "float_type": ("a number", "number"),
    "bool_type": ("true or false", "truth"),
    "date_type": ("a date", "date"),
    "date_from_datetime_parsing": ("a date", "date"),
}  # fmt: skip


def _wrong_type(where: Located, wanted: str, sort: str) -> Said:
    value = where.value
    message = f"{_name(where)} needs {wanted}, but {found(value)} stands here"
    if sort == "text" and isinstance(value, datetime.date):
        hint = f'put it in quotes: "{value.isoformat()}"'
        return BARE_DATE, where.path, message, hint
    if sort == "date" and isinstance(value, str):
        hint = "write year, month and day, as 2026-10-05"
        return BAD_DATE, where.path, f"`{shorten(value)}` is not a date", hint
    return WRONG_TYPE, where.path, message, _type_hint(value, sort)


def _type_hint(value: Any, sort: str) -> str:
    short = isinstance(value, str) and len(value) <= _SHORT and not re.search(r"[,:\[\]{}#]", value)
    if sort == "text":
        if isinstance(value, (bool, int, float)):
            return "put it in quotes, as it is to be shown"
        return "write one text"
    if sort == "list":
        return f"write [{value}]" if short else "write each item on a line of its own, after a -"
    if sort == "mapping":
        return "write its fields on lines of their own, indented"
    if sort == "truth":
        return "write true or false, without quotes"
    if sort == "date":
        return "write year, month and day, as 2026-10-05"
    if isinstance(value, str):
        return "write the bare number, without quotes and without a unit"
    return "write a whole number" if sort == "whole" else "write a number"


# Words of a closed list


def _unknown_word(where: Located, rules: dict[str, Any]) -> Said:
    del rules
    known = words_of(where.annotation)
    if where.path == ("format",):
        hint = f"this program reads format {', '.join(known)}; install the one it was written for"
        return UNKNOWN_FORMAT, where.path, f"the format is {found(where.value)}", hint
    return _not_among(where, known)


def _not_among(where: Located, known: tuple[str, ...]) -> Said:
    value = str(where.value) if type(where.value) is int else where.value
    figures = all(word.isdigit() for word in known)
    if not isinstance(value, str) or (type(where.value) is int and not figures):
        wanted = "one figure of a list" if figures else "one word of a list"
        message = f"{_name(where)} needs {wanted}, but {found(where.value)} stands here"
        return WRONG_TYPE, where.path, message, _one_of(known)
    message = f"`{shorten(value)}` is not among what {_name(where)} can be"
    plain = value.strip().lower().replace(" ", "_").replace("-", "_")[:_SHORT]
    near = [word for word in known if word.lower() == plain]
    near = near or get_close_matches(plain, known, n=1, cutoff=0.6)
    return UNKNOWN_WORD, where.path, message, f"did you mean {near[0]}?" if near else _one_of(known)


def _one_of(known: tuple[str, ...]) -> str:
    return "use one of " + ", ".join(known)


def _pattern(where: Located, rules: dict[str, Any]) -> Said:
    pattern, value = str(rules["pattern"]), str(where.value)
    alternatives = _ALTERNATIVES.fullmatch(pattern)
    if alternatives:
        return _not_among(where, tuple(alternatives.group(1).split("|")))
    if pattern == ID_PATTERN:
        better = re.sub(r"[^a-z0-9]+", "-", value.lower()).strip("-")[:60].strip("-")
        hint = "write small letters and digits with single hyphens between"
        if better:
            hint += f", as {better}"
        return BAD_ID, where.path, f"`{shorten(value)}` cannot be an id", hint
    described = where.info.description if where.info is not None else None
    hint = f"write {mid_sentence(described)}" if described else "compare it with another record"
    message = f"`{shorten(value)}` is not of the form that {_name(where)} has"
    return BAD_PATTERN, where.path, message, hint


def _tag(where: Located, rules: dict[str, Any]) -> Said:
    del rules
    named = where.value.get("name") if isinstance(where.value, dict) else None
    inner = Located((*where.path, "name"), None, named, None, noise=False, annotation=None)
    return _not_among(inner, branches(where.annotation))


def _no_tag(where: Located, rules: dict[str, Any]) -> Said:
    del rules
    message = f"`name` is missing from {_name(where)}"
    hint = "add name: " + ", ".join(branches(where.annotation))
    return MISSING_KEY, where.path, message, hint


# Sizes


def _too_short(where: Located, rules: dict[str, Any]) -> Said:
    del rules
    described = where.info.description if where.info is not None else None
    hint = f"write {mid_sentence(described)}" if described else "write it, or leave the item out"
    return EMPTY_TEXT, where.path, f"{_name(where)} holds an empty text", hint


def _too_long(where: Located, rules: dict[str, Any]) -> Said:
    most, has = rules["max_length"], len(str(where.value).strip())
    message = f"{_name(where)} has {has} characters; {most} is the most"
    hint = "say it in fewer words" if most > 60 else "use a shorter one"
    return TOO_LONG, where.path, message, hint


def _few(where: Located, rules: dict[str, Any]) -> Said:
    least, has = rules["min_length"], rules["actual_length"]
    described = where.info.description if where.info is not None else None
    hint = f"add what is missing: {mid_sentence(described)}" if described else "add what is missing"
    return TOO_FEW, where.path, f"{_name(where)} has {has} items; {least} is the least", hint


def _many(where: Located, rules: dict[str, Any]) -> Said:
    most, has = rules["max_length"], rules.get("actual_length") or "more"
    message = f"{_name(where)} has {has} items; {most} is the most"
    return TOO_MANY, where.path, message, "split it"


_LIMITS = {"gt": "more than", "ge": "at least", "lt": "less than", "le": "at most"}


def _range(where: Located, rules: dict[str, Any]) -> Said:
    name, limit = next((name, rules[name]) for name in _LIMITS if name in rules)
    message = f"{_name(where)} is {where.value}; {_LIMITS[name]} {limit:g} is expected"
    return OUT_OF_RANGE, where.path, message, "check the figure and its unit"


_SAY: dict[str, Callable[[Located, dict[str, Any]], Said]] = {
    "literal_error": _unknown_word,
    "enum": _unknown_word,
    "string_pattern_mismatch": _pattern,
    "union_tag_invalid": _tag,
    "union_tag_not_found": _no_tag,
    "string_too_short": _too_short,
    "string_too_long": _too_long,
    "too_short": _few,
    "too_long": _many,
    "greater_than": _range,
    "greater_than_equal": _range,
    "less_than": _range,
    "less_than_equal": _range,
}

# Rules of our own, which bring their words along


def _rule(where: Located, kind: str, message: str, rules: dict[str, Any]) -> Said:
    if kind == "written-form" and not isinstance(where.value, str):
        here = found(where.value)
        message = f"{_name(where)} needs a value with its unit, but {here} stands here"
    hint = str(rules.get("hint", "compare it with another record"))
    path = (*where.path, *rules.get("at", ()))
    return RULES.get(kind, RECORD_RULE), path, message, hint
