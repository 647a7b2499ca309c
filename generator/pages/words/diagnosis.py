"""Words of the complaint pages."""

from __future__ import annotations

WORDS: dict[str, str] = {
    # symptom
    "symptom.kind": "Complaint",
    "symptom.said": "Owners say",
    "symptom.when": "When it shows",
    "symptom.driving": "May it be driven?",
    "symptom.stop": "Do not drive",
    "symptom.take_care": "Drive with care",
    "symptom.may_drive": "May be driven",
    "symptom.start": "Start here",
    "symptom.opening": "First looks, always in this order",
    "symptom.opening_lead": "Before any part is touched. {minutes} minutes in all.",
    "symptom.order": "Then test in this order",
    "symptom.order_lead": "Most doubt removed for each minute comes first.",
    "symptom.minutes": "{minutes} min",
    "symptom.settles": "can settle {share} % of the doubt",
    "symptom.opens_way": "has to come before {tests}",
    "symptom.doubt_left": "{doubt} % of the doubt is left after it",
    "symptom.no_tests": "This manual has no further test for this vehicle. See the causes below.",
    "symptom.elsewhere": "Causes this manual has no test for",
    "symptom.causes": "What can lie behind it",
    "symptom.causes_lead": "Weights are this shop’s judgement, no source. They only set the order.",
    "symptom.cause": "Cause",
    "symptom.weight": "Weight",
    "symptom.reason": "Why",
    "symptom.shown_by": "Shown by",
    "symptom.only_on": "{vehicles} only",
    "symptom.confused": "Easily confused with",
    "symptom.codes": "Codes that often come along",
    "symptom.doubt_title": "Doubt left against minutes",
    "symptom.doubt_desc": (
        "Step line. After the opening, doubt stands at 100 %. {steps}"
    ),
    "symptom.doubt_step": "After test {n}, {title}, at {minutes} minutes, {doubt} % is left.",
    "symptom.axis_minutes": "minutes after the opening",
    "symptom.axis_doubt": "doubt left, %",
}
