"""Words of the pages about faults, for whoever writes records."""

from __future__ import annotations

WORDS: dict[str, str] = {
    "faults.heading": "Faults of records",
    "faults.kind": "For contributors",
    "faults.lead": (
        "The check names each fault it finds by one of these. The same pages come up with "
        "fettlebook explain and the name."
    ),
    "faults.group.checks": "Records that do not fit each other, or their reader",
    "faults.group.engines": "Values and steps that do not hold",
    "faults.group.shape": "Fields that are not what they must be",
    "faults.group.reading": "Files that cannot be read safely",
    "faults.group.other": "Others",
    "faults.error": "An error: no page is made while it stands.",
    "faults.warning": "A warning: the manual is made all the same.",
    "faults.excusable": "A record may be excused from it with a reason, an approver and a date.",
    "faults.wrong": "What is wrong",
    "faults.why": "Why it matters",
    "faults.mend": "How to mend it",
    "faults.fails": "Does not pass",
    "faults.passes": "Passes",
    "faults.in": "In {record}",
    "faults.back": "All faults",
    "faults.exceptions": "Reasoned exceptions",
    "faults.exceptions_lead": (
        "Where a check finds fault and somebody has decided that it does not apply. A caution "
        "can never be silenced."
    ),
    "faults.no_exceptions": "There are none: every check holds for every record.",
    "faults.allowed": "Allowed {date} by",
}
