"""The finding itself, the registry of codes, and the JSON form."""

from __future__ import annotations

import json
from collections.abc import Iterable, Sequence
from dataclasses import asdict, dataclass
from enum import StrEnum

SCHEMA_VERSION = 1
"""Version of the JSON shape below; it rises when a field changes its meaning."""


class Severity(StrEnum):
    """How bad a finding is; only errors stop a site."""

    ERROR = "error"
    WARNING = "warning"


@dataclass(frozen=True, slots=True)
class Span:
    """A stretch of a source file; lines and columns count characters from 1.

    `end_line` and `end_column` name the first character *after* the stretch.
    """

    line: int = 1
    column: int = 1
    end_line: int = 1
    end_column: int = 1


@dataclass(frozen=True, slots=True)
class Elsewhere:
    """A second place that helps to see what is wrong, as where a title was taken first.

    Parameters
    ----------
    path : str
        File, as in a finding.
    line, column, end_line, end_column : int
        Where, as in a finding.
    says : str
        What stands there: "first used here".
    """

    path: str
    line: int
    column: int
    end_line: int
    end_column: int
    says: str


@dataclass(frozen=True, slots=True)
class Problem:
    """One finding.

    Parameters
    ----------
    code : str
        Stable name of the fault, one of :data:`CODES`.
    severity : Severity
        Error or warning.
    path : str
        File, as given by the user, always with "/".
    line, column, end_line, end_column : int
        Where, counted in characters from 1; the end is exclusive.
    message : str
        What is wrong, with what was found and what was expected.
    why : str
        Why it matters to the person who relies on the manual.
    hint : str
        The smallest mend.
    record : str
        "kind/id" of the record, or "" where none is known.
    second : Elsewhere or None
        A second place to look at, where one helps.
    """

    code: str
    severity: Severity
    path: str
    line: int
    column: int
    end_line: int
    end_column: int
    message: str
    why: str
    hint: str
    record: str = ""
    second: Elsewhere | None = None

    @property
    def order(self) -> tuple[str, int, int, str, str]:
        """Sorting key: place first, so that a file reads from top to bottom."""
        return (self.path, self.line, self.column, self.code, self.message)


@dataclass(frozen=True, slots=True)
class Code:
    """A kind of fault: its stable name, its usual severity and why it matters."""

    name: str
    severity: Severity
    why: str


CODES: dict[str, Code] = {}
"""Every code there is, by name; :func:`code` fills it as rooms are imported."""


def code(name: str, why: str, severity: Severity = Severity.ERROR) -> Code:
    """Declare a code once, beside the rule that gives it.

    Parameters
    ----------
    name : str
        Named for the fault, never for the mend: ``dangling-link``.
    why : str
        One sentence on what goes wrong for the reader if it stays.
    severity : Severity
        Error unless said otherwise.

    Returns
    -------
    Code
        The registered code.

    Raises
    ------
    ValueError
        If the name is taken by another reason: codes are unique.
    """
    made = Code(name, severity, why)
    if CODES.setdefault(name, made) != made:
        raise ValueError(f"the code {name} is declared twice")
    return made


def problem(
    what: Code, path: str, span: Span, message: str, hint: str, record: str = "",
    second: Elsewhere | None = None,
) -> Problem:  # fmt: skip
    """Give the finding of one fault at one place."""
    return Problem(
        what.name, what.severity, path, span.line, span.column, span.end_line, span.end_column,
        message, what.why, hint, record, second,
    )  # fmt: skip


def elsewhere(path: str, span: Span, says: str) -> Elsewhere:
    """Give a second place, from a stretch of a file."""
    return Elsewhere(path, span.line, span.column, span.end_line, span.end_column, says)


def in_order(problems: Iterable[Problem]) -> list[Problem]:
    """Give the findings once each, in the fixed order of place, code and message."""
    return sorted(set(problems), key=lambda found: (found.order, found.hint, found.record))


def has_errors(problems: Iterable[Problem]) -> bool:
    """Say whether any finding stops the site."""
    return any(found.severity is Severity.ERROR for found in problems)


def counts(problems: Iterable[Problem]) -> dict[str, int]:
    """Give how many findings of each severity there are."""
    tally = {severity.value: 0 for severity in Severity}
    for found in problems:
        tally[found.severity.value] += 1
    return tally


def as_json(problems: Sequence[Problem]) -> str:
    """Give the findings as the versioned JSON document that other programs read."""
    document = {
        "schema": SCHEMA_VERSION,
        "findings": [_as_data(found) for found in problems],
        "counts": counts(problems),
    }
    return json.dumps(document, ensure_ascii=False, indent=2)


def _as_data(found: Problem) -> dict[str, object]:
    """Give a finding as plain data; `second` is left out where there is no second place."""
    data = asdict(found)
    if found.second is None:
        del data["second"]
    return data


def summary(problems: Sequence[Problem]) -> str:
    """Give the closing line: "2 errors, 1 warning"."""
    tally = counts(problems)
    return ", ".join(
        f"{tally[severity]} {severity}{'' if tally[severity] == 1 else 's'}" for severity in tally
    )
