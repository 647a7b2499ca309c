"""Lifting a manual to the current record format, one format at a time.

A step is a pure function from a record of one format to its text in the next. It changes stretches
and leaves the rest, so comments and figures stay as they were written. There is one format so far,
and no step yet; the first one goes into :data:`STEPS` together with a manual of the format it
lifts, kept among the tests.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path

from generator.edit.files import Change, RecordFile, every
from generator.edit.source import Source, Unreadable, read
from generator.problems import Problem
from generator.shapes.outline import SETTINGS, Words, outline

Step = Callable[[str, Source], str]
"""Kind (or "settings") and record to its text in the next format.

A step leaves what is lifted already as it is: a run that was cut short is run again. The number of
the format in the settings is not its business.
"""

STEPS: dict[int, Step] = {}
"""The steps by the format they lift from."""

FORMAT = "format"


class CannotMigrate(ValueError):
    """The manual's format cannot be lifted; the text says why and what to do."""


class UnreadableManual(ValueError):
    """Records cannot be read, so none is lifted.

    Attributes
    ----------
    problems : list of Problem
        The findings.
    sources : dict
        Text of each faulty file, for excerpts.
    """

    def __init__(self, problems: list[Problem], sources: dict[str, str]) -> None:
        self.problems = problems
        self.sources = sources
        super().__init__("records cannot be read")


class BadStep(AssertionError):
    """A step gave what cannot be read, or changes its own result: a fault of ours."""


@dataclass(frozen=True, slots=True)
class Plan:
    """What lifting a manual changes; the settings come last, so that a cut-short run is seen."""

    start: int
    end: int
    changes: tuple[Change, ...]


def current() -> int:
    """Give the format that this program reads and writes."""
    wanted = next(field for field in outline(SETTINGS).fields if field.name == FORMAT)
    assert isinstance(wanted.node, Words), "the format is a closed list"
    return max(int(number) for number in wanted.node.words)


def plan(
    records: Path, shown_as: str, *, steps: Mapping[int, Step] = STEPS, end: int | None = None
) -> Plan:
    """Work out what lifting a manual changes, and write nothing.

    Parameters
    ----------
    records : Path
        The folder of records.
    shown_as : str
        What findings call it.
    steps : mapping, optional
        The steps by the format they lift from.
    end : int, optional
        The format to reach; the current one unless given.

    Returns
    -------
    Plan
        Each change; none where the manual has that format already.

    Raises
    ------
    CannotMigrate
        If the manual's format is unknown, or newer than `end`.
    UnreadableManual
        If a record cannot be read.
    """
    end = current() if end is None else end
    read_files = _read_all(every(records, shown_as))
    settings = next((one for one in read_files if one[0].kind == SETTINGS), None)
    start = _format(settings[2] if settings else None)
    if start > end:
        raise CannotMigrate(
            f"the manual has format {start}, and this program knows none above {end}; "
            "install the version it was written for, or a later one"
        )
    for number in range(start, end):
        if number not in steps:
            raise CannotMigrate(f"there is no way from format {number} to {number + 1}")
    if start == end:
        return Plan(start, end, ())
    changes = [
        Change(file, content, _lifted(file, source, start, end, steps).encode())
        for file, content, source in read_files
    ]
    changes = [change for change in changes if change.before != change.after]
    return Plan(start, end, tuple(sorted(changes, key=lambda one: one.file.kind == SETTINGS)))


def _read_all(files: list[RecordFile]) -> list[tuple[RecordFile, bytes, Source]]:
    found, problems, sources = [], [], {}
    for file in files:
        content = file.read()
        try:
            found.append((file, content, read(content, file.shown)))
        except Unreadable as wrong:
            problems += wrong.problems
            sources[file.shown] = wrong.text
    if problems:
        raise UnreadableManual(problems, sources)
    return found


def _format(settings: Source | None) -> int:
    """Give the format that the settings state."""
    if settings is None:
        raise CannotMigrate("there are no settings, so nobody knows the manual's format")
    stated = settings.data.get(FORMAT)
    if not isinstance(stated, int) or isinstance(stated, bool):
        raise CannotMigrate("the settings do not state the manual's format, as format: 1")
    return stated


def _lifted(
    file: RecordFile, source: Source, start: int, end: int, steps: Mapping[int, Step]
) -> str:
    for number in range(start, end):
        try:
            source = read(steps[number](file.kind, source).encode(), file.shown)
        except Unreadable as wrong:
            raise BadStep(f"from format {number}, {file.shown}: {wrong}") from wrong
        if steps[number](file.kind, source) != source.text:
            raise BadStep(f"from format {number}, {file.shown}: not the same when lifted twice")
    if file.kind == SETTINGS:
        return source.spliced([(source.places[(FORMAT,)].value, str(end))])
    return source.text
