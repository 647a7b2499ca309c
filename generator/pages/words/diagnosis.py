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
    "symptom.order_lead": (
        "The order with the fewest minutes to expect until a cause is proved, the first looks done."
    ),
    "symptom.method.ratio": "Most doubt settled for each minute comes first; no order is quicker.",
    "symptom.method.exact": "Every order was weighed; with these weights none is quicker.",
    "symptom.method.look_ahead": (
        "There are too many orders to weigh each; at each place the best few tests were tried."
    ),
    "symptom.naive": "Minutes to expect, against other orders",
    "symptom.naive.this": "This order",
    "symptom.naive.by_weight": "Likeliest cause first",
    "symptom.naive.by_minutes": "Quickest test first",
    "symptom.naive.by_name": "As the alphabet has it",
    "symptom.naive.saved": "{minutes} min ({more} min more)",
    "symptom.naive.lead": (
        "Causes this manual has no test for are counted with the whole of each order."
    ),
    "symptom.minutes": "{minutes} min",
    "symptom.settles": "can settle {share} % of the doubt, {rate} % a minute",
    "symptom.opens_way": "has to come before {tests}",
    "symptom.others": "{n} other tests",
    "symptom.doubt_left": "{doubt} % of the doubt is left after it",
    "symptom.under_one": "less than 1",
    "symptom.takes_over": (
        "going straight on from the test before, leave this for it and skip the steps that set it "
        "up: {what}; {minutes} min saved"
    ),
    "symptom.why_here": "Why it stands here",
    "symptom.restore": "before it, restore: {what}",
    "setup.disconnect_battery": "battery off",
    "setup.raise_on_lift": "on the lift",
    "setup.remove": "{part} off",
    "setup.unplug": "{part} unplugged",
    "symptom.not_found": (
        "When all of them have found nothing, it is “not found”: write down what was tested and "
        "found good, and go on with what this manual does not cover, or ask the owner to note when "
        "it shows."
    ),
    "symptom.narrow": "What you know moves the odds",
    "symptom.narrow_lead": (
        "Likeliest causes, each with its share, before any test. Judgement, moved by what is known."
    ),
    "symptom.nothing_known": "Nothing known",
    "symptom.with_code": "Code {code} stored",
    "symptom.share_of": "{cause} {share} %",
    "when.hot": "Shows hot",
    "when.cold": "Shows cold",
    "when.wet": "Shows in the wet",
    "when.under_load": "Shows under load",
    "when.over_bumps": "Shows over bumps",
    "symptom.causes_counted": (
        "{vehicle}: {cases} solved of it, which makes the weight {weight}."
    ),
    "symptom.cases": "Solved cases",
    "symptom.no_tests": "This manual has no further test for this vehicle. See the causes below.",
    "symptom.elsewhere": "Causes this manual has no test for",
    "symptom.causes": "What can lie behind it",
    "symptom.causes_lead": (
        "Weights are this shop’s judgement, no source, moved by its solved cases. They only set "
        "the order."
    ),
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
    # following the order by tapping
    "tap.heading": "Tap what you find",
    "tap.lead": (
        "The order changes with each answer, on this device alone. Do every step of a page: each "
        "test here starts from a restored vehicle."
    ),
    "tap.known": "What is known",
    "tap.next": "Next test",
    "tap.left": "Then",
    "tap.found": "What did it find?",
    "tap.undo": "Undo the last answer",
    "tap.again": "Begin again",
    "tap.copy": "Copy for the job card",
    "tap.copied": "Copied",
    "tap.print": "Print",
    "tap.restore": "Before it, restore",
    "tap.odds": "Likeliest now",
    "tap.contradiction": "This contradicts everything else, and was left out",
    "tap.proved": "Proved",
    "tap.refer": "This manual ends here",
    "tap.not_found": "Not found",
    "tap.none_left": "No test is left",
    "tap.path": "Found so far",
    "tap.other": "Answer another test instead",
    "tap.excluded": "Found good",
    "tap.unsettled": "Not settled",
    "tap.minutes": "min",
    "tap.look_there": "Not covered here, look there",
    # solved cases
    "cases.heading": "Solved cases",
    "cases.lead": (
        "What vehicles came with, what was found and whether it stayed away. Cases that stayed "
        "away move the weights of their complaint; the shop’s judgement counts for {prior} of them."
    ),
    "cases.vehicle": "Vehicle",
    "cases.known": "Known",
    "cases.readings": "Tested",
    "cases.cause": "It was",
    "cases.proof": "Proved by",
    "cases.fixed": "Fixed by",
    "cases.later": "Later",
    "cases.stayed_away": "It stayed away, and counts.",
    "cases.came_back": "It came back, so it does not count.",
    "cases.too_early": "Too early to say; it does not count yet.",
    "cases.noted": "{reading} ({note})",
}
