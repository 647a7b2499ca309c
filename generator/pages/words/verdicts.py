"""Words of verdicts: what a reading says, what it leaves open, what would decide."""

from __future__ import annotations

WORDS: dict[str, str] = {
    "verdict.in_limits": "In limits",
    "verdict.low": "Low",
    "verdict.high": "High",
    "verdict.open": "Open circuit",
    "verdict.implausible": "Implausible",
    "verdict.cannot_tell": "Cannot tell",
    "verdict.limits": "Limits: {limits} {unit}",
    "verdict.sure": "Whatever the conditions left open: {limits} {unit}",
    "verdict.no_core": "No reading is in limits under every condition left open.",
    "verdict.measured": "With the meter’s error: {value} {unit}, standard uncertainty {u} {unit}",
    "verdict.probability": "Right with a probability of {percent} %; accepted risk {risk} %",
    "verdict.more_than": "more than {percent}",
    "verdict.chance": "Within limits with a probability of {percent} %; accepted risk {risk} %",
    "verdict.remark.asleep": (
        "It does not prove the part sound: a fault that comes and goes may be asleep."
    ),
    "verdict.remark.fails_hot": (
        "A part that fails hot reads well at this temperature. Read it again where it fails."
    ),
    "verdict.remark.one_sided": "Only one side has a limit; the other is not judged.",
    "verdict.remark.practice": (
        "The limit is common practice, not the maker’s. Where the maker states one, it wins."
    ),
    "verdict.remark.outside_band": (
        "It lies outside the band over all designs, {band}. This vehicle’s own value wins; check "
        "unit and leads once more."
    ),
    "verdict.remark.unit_slip": (
        "A thousand times more or less would be in limits: check the unit on the display."
    ),
    "verdict.remark.impossible": "Nothing can read this: check the sign, the unit and the leads.",
    "verdict.remark.check_hookup": (
        "No sound part of any design reads this. Check leads, range and unit before the part."
    ),
    "verdict.remark.band_proves_nothing": (
        "A band over all designs proves nothing from inside. The vehicle’s own value decides."
    ),
    "verdict.remark.open_or_leads": (
        "Touch the leads together first: a broken lead reads the same."
    ),
    "verdict.remark.open_if_range_reaches": (
        "It holds if the range reached above the high limit; on a smaller range it says nothing."
    ),
    "verdict.remark.higher_range": "Choose a higher range, or another meter, and read again.",
    "verdict.remark.beyond_meter": "The figure is beyond every range of this meter: check it.",
    "verdict.remark.name_meter": (
        "Whether it is above the limit depends on the meter’s top range: name the meter."
    ),
    "verdict.remark.true_rms": (
        "This meter is right on a sine only, and the wave is not known: use a true-RMS meter."
    ),
    "verdict.remark.state_condition": (
        "State the {condition} more closely than {range}: the limits move with it."
    ),
    "verdict.remark.null_leads": (
        "Hold the tips together, take that figure off, and read again: the leads decide here."
    ),
    "verdict.remark.drop_under_load": (
        "An ohmmeter reads its own contacts at so low a value: measure the drop under load."
    ),
    "verdict.remark.better_meter": (
        "The meter’s error reaches over the limit: use a meter, or a range, with a smaller one."
    ),
    "verdict.remark.other_method": "Measure again by the method of this value: {method}",
    "verdict.remark.bare_figure": (
        "The bare figure was judged; the meter’s error is not taken in. Name the meter."
    ),
}
