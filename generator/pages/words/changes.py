"""Words of the page of changes."""

from __future__ import annotations

WORDS: dict[str, str] = {
    "changes.heading": "What has changed",
    "changes.lead": "Newest first. What is about your safety stands on top of each change.",
    "changes.safety": "Safety: read this before you work from an older copy.",
    "changes.nothing": "Nothing changes for the reader.",
    "changes.not_compared": (
        "One of the two versions had errors, so their cautions could not be compared. These "
        "records were touched:"
    ),
    "changes.added": "added",
    "changes.changed": "changed",
    "changes.removed": "removed",
    "changes.more": "and {count} more",
    "changes.end": "Older changes are in the history of the records.",
    "changes.cut_short": (
        "This list was made from a shallow copy of the history: older changes are missing."
    ),
}
