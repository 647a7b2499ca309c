"""One finding, everywhere: what is wrong, where, why it matters and the smallest mend.

Findings are values, not exceptions. Every room gives them back; the command line and the site
only choose how to print them.
"""

from generator.problems.annotations import as_annotations
from generator.problems.finding import (
    CODES,
    SCHEMA_VERSION,
    Code,
    Elsewhere,
    Problem,
    Severity,
    Span,
    as_json,
    code,
    counts,
    elsewhere,
    has_errors,
    in_order,
    problem,
    summary,
)
from generator.problems.sarif import as_sarif
from generator.problems.text import as_text

__all__ = [
    "CODES",
    "SCHEMA_VERSION",
    "Code",
    "Elsewhere",
    "Problem",
    "Severity",
    "Span",
    "as_annotations",
    "as_json",
    "as_sarif",
    "as_text",
    "code",
    "counts",
    "elsewhere",
    "has_errors",
    "in_order",
    "problem",
    "summary",
]
