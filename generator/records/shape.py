"""Fitting what was written into the shape of its kind, with every misfit in a mechanic's words.

A missing field points at what it is missing from, an unknown one at its key, a bad value at the
value. What follows from another finding is not reported.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from difflib import get_close_matches
from typing import Any, TypeVar

from pydantic import BaseModel, ValidationError

from generator.problems import Code, Problem, Span, code, in_order, problem
from generator.records import misfits
from generator.records.fields import MISSING, Located, locate
from generator.records.kinds import KINDS, Record, Settings
from generator.records.knowledge_base import Origin, Path, Place
from generator.records.misfits import MISSING_KEY
from generator.records.rules import OF_A_KEY
from generator.records.scalars import shorten
from generator.records.strict_yaml import FAULTY

S = TypeVar("S", bound=BaseModel)

UNKNOWN_KEY = code(
    "unknown-key",
    "What is written under it would reach no reader, and nobody would notice.",
)

MOST_MISFITS = 300
"""Misfits that are put into words; a file with more is no record at all."""
_LONGEST_KEY = 60


def fit(
    kind: str, id_: str, data: Any, places: Mapping[Path, Place], path: str
) -> tuple[Record | None, list[Problem]]:
    """Give the record that a file holds.

    Parameters
    ----------
    kind, id_ : str
        The folder it lies in and the name of its file.
    data : mapping
        What strict reading made of the file.
    places : mapping
        Where each field stands.
    path : str
        The file, for findings.

    Returns
    -------
    tuple of Record or None, list of Problem
        The record, or what does not fit.
    """
    record, found = _fit(KINDS[kind], data, Origin(path, places), f"{kind}/{id_}")
    if record is not None:
        record.named(kind, id_)
    return record, found


def fit_settings(
    data: Any, places: Mapping[Path, Place], path: str
) -> tuple[Settings | None, list[Problem]]:
    """Give the manual's settings; the same as :func:`fit` in all else."""
    return _fit(Settings, data, Origin(path, places), "settings")


def _fit(shape: type[S], data: Any, origin: Origin, record: str) -> tuple[S | None, list[Problem]]:
    try:
        return shape.model_validate(data), []
    except ValidationError as wrong:
        errors = wrong.errors(include_url=False)[:MOST_MISFITS]
    misfits_ = [
        (error, located)
        for error in errors
        for located in [locate(shape, error["loc"], data)]
        if not located.noise and not _refused(data, located.path)
    ]
    found = list(_problems(misfits_, origin, record))
    return None, in_order(found)


def _problems(found: list[tuple[Any, Located]], origin: Origin, record: str) -> Iterator[Problem]:
    """Put each misfit into words, the unknown keys first: they explain missing ones."""
    missing = {
        where.path for error, where in found if error["type"] == "missing"
    }  # fmt: skip
    meant: set[Path] = set()
    for error, where in found:
        if error["type"] == "extra_forbidden":
            made, named = _unknown_key(where, missing - meant, origin, record)
            meant.update(named)
            yield made
    for error, where in found:
        if error["type"] == "missing" and where.path not in meant:
            yield _missing_key(where, origin, record)
        elif error["type"] not in ("missing", "extra_forbidden"):
            for what, path, message, hint in misfits.words(error, where):
                if not _is_refused_value(where, path):
                    span = _place(what, path, where, origin)
                    yield problem(what, origin.path, span, message, hint, record)


def _unknown_key(
    where: Located, missing: set[Path], origin: Origin, record: str
) -> tuple[Problem, set[Path]]:
    """Give the finding of an unknown key, and the missing field it was meant for."""
    key = str(where.path[-1])
    known = list(where.around.model_fields) if where.around is not None else []
    wanted = [name for name in known if (*where.path[:-1], name) in missing]
    near: list[str] = []
    if len(key) <= _LONGEST_KEY:
        plain = key.lower().replace("-", "_").replace(" ", "_")
        near = get_close_matches(plain, wanted, n=1, cutoff=0.6)
        near = near or get_close_matches(plain, known, n=1, cutoff=0.7)
    message = f"there is no field `{shorten(key)}` here"
    hint = f"did you mean {near[0]}?" if near else "use one of " + ", ".join(known)
    span = origin.span(where.path, of_key=True)
    meant = {(*where.path[:-1], name) for name in near if name in wanted}
    return problem(UNKNOWN_KEY, origin.path, span, message, hint, record), meant


def _missing_key(where: Located, origin: Origin, record: str) -> Problem:
    key, parent = str(where.path[-1]), where.path[:-1]
    inside = _name_of(parent)
    message = f"`{key}` is missing" + (f" from {inside}" if inside else "")
    described = where.info.description if where.info is not None else None
    hint = f"add {key}" + (f": {misfits.mid_sentence(described)}" if described else "")
    return problem(MISSING_KEY, origin.path, _head(parent, origin), message, hint, record)


def _name_of(path: Path) -> str:
    """Name a part of a record: "`next`", or "item 2 of `steps`"."""
    if not path:
        return ""
    last = path[-1]
    if isinstance(last, int):
        outer = _name_of(path[:-1])
        return f"item {last + 1} of {outer}" if outer else f"item {last + 1}"
    return f"`{shorten(last)}`"


def _place(what: Code, path: Path, where: Located, origin: Origin) -> Span:
    """Give the place of a misfit: the key, the value, or the head of a group of fields."""
    on_group = isinstance(where.value, dict) and path == where.path
    if what is MISSING_KEY or (on_group and what is not misfits.WRONG_TYPE):
        return _head(path, origin)
    return origin.span(path, of_key=where.of_key or what.name in OF_A_KEY)


def _head(path: Path, origin: Origin) -> Span:
    """Give the place that stands for a mapping as a whole: its key, or its first field's."""
    if not path:
        return Span()
    place = origin.places.get(path)
    if place is None or place.key is not None:
        return origin.span(path, of_key=True)
    keys = [
        inner.key
        for way, inner in origin.places.items()
        if way[:-1] == path and inner.key is not None
    ]  # fmt: skip
    return min(keys, key=lambda span: (span.line, span.column)) if keys else place.value


def _refused(data: Any, path: Path) -> bool:
    """Say whether strict reading refused a value on the way to a field."""
    for segment in path:
        if data is FAULTY:
            return True
        try:
            data = data[segment]
        except (KeyError, IndexError, TypeError):
            return False
    return data is FAULTY


def _is_refused_value(where: Located, path: Path) -> bool:
    """Say whether words about a field inside `where` are about a value already refused."""
    value = where.value
    for segment in path[len(where.path) :]:
        value = value.get(segment, MISSING) if isinstance(value, dict) else MISSING
    return value is FAULTY
