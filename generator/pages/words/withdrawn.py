"""Words for what is not released: drafts in a preview, and what was withdrawn."""

from __future__ import annotations

WORDS: dict[str, str] = {
    "draft.mark": "Draft",
    "draft.page": "Draft. Nobody has released this page. Do not work from it.",
    "draft.preview": "Preview with drafts, for whoever writes them. Not the shop’s manual.",
    "withdrawn.kind": "Withdrawn",
    "withdrawn.lead": "This page was withdrawn. Do not work from it, and not from a copy of it.",
    "withdrawn.reason": "Why",
    "withdrawn.by": "Withdrawn {date} by {who}",
    "withdrawn.instead": "Use instead",
    "withdrawn.no_other": "Nothing replaces it.",
}
