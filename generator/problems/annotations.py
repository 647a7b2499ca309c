"""Findings as annotation lines: what a forge shows beside the changed lines of a pull request.

One line a finding, in the form of a workflow command::

    ::error file=kb_source/specs/x.yml,line=4,col=8,endColumn=15,title=value-unit::the unit …

References
----------
GitHub Docs, "Workflow commands for GitHub Actions": setting an error or warning message. The
form is read by other forges too. Its last column counts as marked; ours does not.
"""

from __future__ import annotations

from collections.abc import Sequence

from generator.problems.finding import Problem


def as_annotations(problems: Sequence[Problem]) -> str:
    """Give one annotation line for each finding, in their order; "" where there is none."""
    return "\n".join(_line(found) for found in problems)


def _line(found: Problem) -> str:
    place = {"file": found.path, "line": str(found.line)}
    if found.end_line == found.line:
        place["col"] = str(found.column)
        place["endColumn"] = str(max(found.column, found.end_column - 1))
    else:  # columns mean something only within one line
        place["endLine"] = str(_last_line(found))
    place["title"] = found.code
    told = ",".join(f"{name}={_property(text)}" for name, text in place.items())
    lines = [found.message, found.why, f"hint: {found.hint}"]
    if found.second is not None:
        lines.insert(1, f"see {found.second.path}:{found.second.line}: {found.second.says}")
    return f"::{found.severity.value} {told}::{_data(chr(10).join(lines))}"


def _last_line(found: Problem) -> int:
    """Give the last line that holds anything of the stretch; its end is exclusive."""
    return found.end_line if found.end_column > 1 else found.end_line - 1


def _data(text: str) -> str:
    """Escape what would end the line, and the escape itself."""
    return text.replace("%", "%25").replace("\r", "%0D").replace("\n", "%0A")


def _property(text: str) -> str:
    """Escape what would end a property as well."""
    return _data(text).replace(":", "%3A").replace(",", "%2C")
