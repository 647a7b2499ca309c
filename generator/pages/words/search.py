"""Words of the search: its box, its answers and the kinds of page it finds."""

from __future__ import annotations

WORDS: dict[str, str] = {
    "search.open": "Search",
    "search.close": "Close",
    "search.label": "Complaint, code or part",
    "search.found.none": "Nothing found. Try another word, or one of the lists in the menu.",
    "search.found.one": "1 page found",
    "search.found.more": "{count} pages found",
    "search.found.most": "The first {count} of many pages; another word narrows it down",
    "search.loading": "Getting the index ready",
    "search.missing": "The index cannot be read here. The lists in the menu lead everywhere.",
    "search.kind.symptoms": "Complaint",
    "search.kind.codes": "Fault code",
    "search.kind.components": "Part",
    "search.kind.tests": "Test",
    "search.kind.replacements": "Replacement",
    "search.kind.procedures": "Procedure",
    "search.kind.vehicles": "Vehicle",
    "search.kind.circuits": "Circuit",
    "search.kind.terms": "Term",
    "search.kind.tools": "Tool",
    "search.kind.supplies": "Supply",
    "search.kind.hazards": "Caution",
    "search.kind.cases": "Solved case",
    "search.kind.people": "Role",
    "search.kind.sources": "Source",
    "search.kind.pages": "Overview",
    "search.hybrid": "hybrid",
}
