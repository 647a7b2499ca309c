"""Words at the foot of a page: who keeps it, until when it is in time, and how far to trust it."""

from __future__ import annotations

WORDS: dict[str, str] = {
    "standing.owner": "Kept by {who}",
    "standing.due": "Next review by {date}",
    "standing.overdue": "Review overdue",
    "standing.good": "Confidence: good.",
    "standing.fair": "Confidence: fair.",
    "standing.low": "Confidence: low.",
    "standing.verified": "{have} of {all} values verified.",
    "standing.no_values": "It gives no values.",
    "standing.how": "How this is judged",
    "standing.sources": "Sources:",
    "standing.practice": "common practice",
    "standing.no_source": "none named",
    "standing.rule": "Confidence of a page",
    "standing.rule_verified": (
        "A value is verified if it is reviewed and its document was read. Common practice, hearsay "
        "and figures invented for a demonstration do not count."
    ),
    "standing.rule_low": (
        "Low: nobody has reviewed the page, or fewer than half of its values are verified."
    ),
    "standing.rule_good": (
        "Good: somebody other than its author has reviewed it, it names a document, and every "
        "value is verified."
    ),
    "standing.rule_fair": "Fair: anything between.",
}
