"""Findings of every form: one stretch, several lines, a whole file, a second place, odd names."""

from __future__ import annotations

from generator.problems import Code, Problem, Severity, Span, elsewhere, problem

FAULT = Code("sample-fault", Severity.ERROR, "It misleads the reader.")
SLIP = Code("sample-slip", Severity.WARNING, "It puzzles the reader.")
FILE = "kb_source/specs/hall gap.yml"


def one(**changes: object) -> Problem:
    """Give a finding in one line, with some parts changed."""
    given = {
        "what": FAULT, "path": FILE, "span": Span(4, 8, 4, 15), "message": "the unit is unknown",
        "hint": "write mm", "record": "specs/hall-gap", **changes,
    }  # fmt: skip
    return problem(**given)  # type: ignore[arg-type]


SEVERAL_LINES = one(span=Span(4, 8, 6, 3))
TO_THE_END = one(span=Span(4, 8, 5, 1))
WHOLE_FILE = one(what=SLIP, span=Span(), record="")
WITH_SECOND = one(second=elsewhere("kb_source/specs/gap.yml", Span(1, 8, 1, 20), "first here"))
ODD = one(
    path="kb_source/specs/50 %,ä:b.yml", message="`{a: [b](1)}`, 100 %\nof it", hint="::error::x"
)
EVERY = [one(), SEVERAL_LINES, TO_THE_END, WHOLE_FILE, WITH_SECOND, ODD, one()]
