"""The page about a fault: one fixed shape, written once, as the text of the rule that finds it.

::

    A link to a record that does not exist.

    Wrong: What is wrong, and what the rule takes for right.

    Why: Why it matters to the person who relies on the manual.

    Mend: The smallest way to mend it.

    Fails, in tests/winding-resistance:

        after: [identify-the-sensor-type]

    Passes:

        after: [identify-sensor-type]

The examples are fields of the record named; a test puts them there and looks what is found.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from inspect import cleandoc
from textwrap import dedent

from generator.problems import Code, Severity, code

_PARAGRAPH = r"[^\n]+(?:\n[^\n]+)*"
_SHAPE = re.compile(
    rf"(?P<title>[^\n]+)\n\n"
    rf"Wrong: (?P<wrong>{_PARAGRAPH})\n\n"
    rf"Why: (?P<why>{_PARAGRAPH})\n\n"
    rf"Mend: (?P<mend>{_PARAGRAPH})"
    rf"(?:\n\nFails, in (?P<record>[a-z0-9/-]+):\n\n(?P<fails>.+?)"
    rf"\n\nPasses:\n\n(?P<passes>.+?))?\s*",
    re.DOTALL,
)


@dataclass(frozen=True, slots=True)
class FaultPage:
    """What there is to say about a fault.

    Parameters
    ----------
    title : str
        The fault, as a heading.
    wrong, why, mend : str
        What is wrong, why it matters, how to mend it; a paragraph each, `wrong` may be empty.
    record : str
        "kind/id" of the record the examples are fields of; empty where they stand alone.
    fails, passes : str
        YAML that has the fault, and YAML that has not; empty where no YAML shows it.
    """

    title: str
    wrong: str
    why: str
    mend: str
    record: str = ""
    fails: str = ""
    passes: str = ""


PAGES: dict[str, FaultPage] = {}
"""Code to page, for the rules of this room; :func:`fault` fills it as they are imported."""

EXCUSABLE: set[str] = set()
"""Codes that a record may silence with a reason."""


def fault(
    name: str,
    text: str | None,
    severity: Severity = Severity.ERROR,
    *,
    excusable: bool = True,
) -> Code:
    """Declare the code of a rule, from the rule's own text.

    Parameters
    ----------
    name : str
        Named for the fault: ``dangling-link``.
    text : str
        The rule's docstring, in the shape above; "Why" goes into every finding.
    severity : Severity
        Error unless said otherwise.
    excusable : bool
        Whether a record may silence it with a reason. What a page cannot be made without, and
        what guards the release, may not.

    Returns
    -------
    Code
        The registered code.

    Raises
    ------
    ValueError
        If the text is not of the shape.
    """
    page = parsed(text or "")
    PAGES[name] = page
    if excusable:
        EXCUSABLE.add(name)
    return code(name, page.why, severity)


def parsed(text: str) -> FaultPage:
    """Read a page from its text.

    Raises
    ------
    ValueError
        If the text is not of the shape.
    """
    match = _SHAPE.fullmatch(cleandoc(text))
    if match is None:
        raise ValueError(f"this is not the page of a fault: {text.strip()[:60]!r}")
    part = {name: found or "" for name, found in match.groupdict().items()}
    words = {name: " ".join(part[name].split()) for name in ("title", "wrong", "why", "mend")}
    words["title"] = words["title"].rstrip(".")
    examples = {name: dedent(part[name]) for name in ("fails", "passes")}
    return FaultPage(**words, record=part["record"], **examples)
