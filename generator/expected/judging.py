"""A reading held against its limits, with the meter's error taken in."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from itertools import product
from typing import Literal

from generator.expected.engine import expect
from generator.expected.meter_kind import shown_share, with_input_of
from generator.expected.models import MODELS
from generator.expected.readings import Measured, Reading, measured, meter_of, ranges_for, top_of
from generator.expected.remarks import (
    Remark,
    band_remarks,
    doubts,
    limits_of_proof,
    slips,
)
from generator.expected.result import Conditions, Expectation
from generator.physics.deciding import USUAL_RISK, Judgement, judge_interval
from generator.quantities import Interval
from generator.records.kinds.knowledge import Tool
from generator.records.kinds.things import Spec
from generator.records.knowledge_base import KnowledgeBase

Word = Literal["in_limits", "low", "high", "open", "implausible", "cannot_tell"]

INFINITE = float("inf")


@dataclass(frozen=True, slots=True)
class Verdict:
    """What a reading says.

    Parameters
    ----------
    word : str
        The verdict.
    reading : Reading
        As it was written.
    expectation : Expectation
        The limits over all that the conditions leave open.
    sure_low, sure_high : float or None
        Limits that hold whatever the conditions turn out to be: a reading within them is in. The
        low one may lie above the high one, where the conditions decide.
    measured : Measured or None
        The figure with the instrument taken off; None where there is none.
    probability : float
        That the verdict is right; of conformance where it cannot tell.
    risk : float
        Greatest accepted probability of a wrong verdict.
    remarks : tuple of Remark
        What it does not prove, or what would decide.
    """

    word: Word
    reading: Reading
    expectation: Expectation
    sure_low: float | None
    sure_high: float | None
    measured: Measured | None
    probability: float
    risk: float
    remarks: tuple[Remark, ...] = field(default=())


def judge(
    kb: KnowledgeBase,
    spec: Spec,
    reading: Reading,
    conditions: Conditions | None = None,
    tool: Tool | None = None,
    *,
    nulled: bool | None = None,
    risk: float = USUAL_RISK,
) -> Verdict:
    """Hold a reading against a spec.

    Parameters
    ----------
    kb : KnowledgeBase
        The manual, checked.
    spec : Spec
        The value; one that `choose` gave, where there are several.
    reading : Reading
        Unrounded, as on the display.
    conditions : mapping, optional
        What is known of the conditions; what is not takes its usual range.
    tool : Tool, optional
        The instrument. Without it the bare figure is judged, and the verdict says so.
    nulled : bool, optional
        Whether the leads were taken off; the tool's record says it otherwise.
    risk : float, optional
        Greatest accepted probability of a wrong verdict.

    Returns
    -------
    Verdict

    Raises
    ------
    CannotExpect
        If the spec gives no limits here, or the instrument cannot read it.

    Notes
    -----
    A reading is "in" where it is so under every condition that is left open, and "low" or
    "high" where it is so under every one; else the conditions decide, and the verdict says
    which. Each is guarded after JCGM 106:2012: given where its probability is at least
    1 − risk.
    """
    share: float | None = 1.0
    if tool is not None:
        meter = meter_of(tool)
        spec, share = with_input_of(spec, meter), shown_share(kb, spec, meter)
    whole = _times(expect(kb, spec, conditions), share or 1.0)
    sure_low, sure_high = _sure(kb, spec, whole, share or 1.0)
    blank = Verdict(
        "cannot_tell", reading, whole, _open(sure_low), _open(sure_high), None, 0.0, risk
    )
    if reading.impossible:
        return replace(blank, word="implausible", probability=1.0, remarks=(Remark("impossible"),))
    if share is None:
        return replace(blank, remarks=(Remark("true_rms"),))
    if reading.over_range or reading.value is None:
        return _over_range(blank, spec, tool)
    found = measured(spec, reading.value, tool, nulled)
    if found is None:
        return replace(blank, remarks=(Remark("beyond_meter"),))
    return _decided(kb, spec, replace(blank, measured=found), (sure_low, sure_high), tool)


def _times(whole: Expectation, share: float) -> Expectation:
    if share == 1.0:
        return whole
    low, nominal, high = (
        None if v is None else v * share for v in (whole.low, whole.nominal, whole.high)
    )
    return replace(whole, low=low, nominal=nominal, high=high)


def _open(limit: float) -> float | None:
    return None if limit in (INFINITE, -INFINITE) else limit


def _sure(
    kb: KnowledgeBase, spec: Spec, whole: Expectation, share: float
) -> tuple[float, float]:
    """Give the limits that hold at every corner of the conditions left open."""
    low, high = -INFINITE, INFINITE
    breaks = MODELS[spec.model.name].breaks(spec)
    for corner in _corners(whole.conditions, breaks):
        here = expect(kb, spec, corner)
        low = max(low, -INFINITE if here.low is None else here.low * share)
        high = min(high, INFINITE if here.high is None else here.high * share)
    return low, high


def _corners(conditions: Conditions, breaks: Mapping[str, Sequence[float]]) -> list[Conditions]:
    """Give the ends and the middle of each condition, and where a model turns or leaps."""
    names = list(conditions)
    sides = [
        [
            Interval.of(x)
            for x in sorted({c.low, c.middle, c.high, *breaks.get(name, ())})
            if c.low <= x <= c.high
        ]
        for name, c in conditions.items()
    ]
    return [dict(zip(names, at, strict=True)) for at in product(*sides)]


def _judged(found: Measured, low: float, high: float, risk: float) -> Judgement | None:
    return judge_interval(found.value, found.u, low, high, risk) if low <= high else None


def _decided(
    kb: KnowledgeBase, spec: Spec, blank: Verdict, sure: tuple[float, float], tool: Tool | None
) -> Verdict:
    found, whole = blank.measured, blank.expectation
    assert found is not None
    outer = _ends(whole)
    inside = _judged(found, *sure, blank.risk)
    outside = _judged(found, *outer, blank.risk)
    assert outside is not None
    bare = (Remark("bare_figure"),) if tool is None else ()
    if spec.standing == "plausibility_band":
        if outside.verdict in ("low", "high"):
            return replace(
                blank, word="implausible", probability=outside.probability,
                remarks=(Remark("check_hookup"), *bare),
            )  # fmt: skip
        return replace(
            blank, probability=outside.inside, remarks=(Remark("band_proves_nothing"), *bare)
        )
    if inside is not None and inside.verdict == "in":
        return replace(
            blank, word="in_limits", probability=inside.probability,
            remarks=(*limits_of_proof(spec, whole), *band_remarks(kb, spec, found.value), *bare),
        )  # fmt: skip
    if outside.verdict in ("low", "high"):
        word: Word = "low" if outside.verdict == "low" else "high"
        read_off = found.value if blank.reading.value is None else blank.reading.value
        more = (*slips(read_off, outer), *band_remarks(kb, spec, found.value), *bare)
        return replace(blank, word=word, probability=outside.probability, remarks=more)
    chance = inside.inside if inside is not None else outside.inside
    # With the meter's error left out, would the reading have decided?
    certain = replace(found, u=0.0)
    at_core, at_rim = _judged(certain, *sure, blank.risk), _judged(certain, *outer, blank.risk)
    by_condition = (at_core is None or at_core.verdict != "in") and (
        at_rim is not None and at_rim.verdict == "in"
    )
    return replace(
        blank, probability=chance, remarks=(*doubts(spec, whole, found, by_condition), *bare)
    )


def _ends(whole: Expectation) -> tuple[float, float]:
    return (
        -INFINITE if whole.low is None else whole.low,
        INFINITE if whole.high is None else whole.high,
    )


def _over_range(blank: Verdict, spec: Spec, tool: Tool | None) -> Verdict:
    """Judge a reading beyond the range: an open circuit, or a range too small."""
    whole = blank.expectation
    if whole.unit.quantity != "resistance":
        return replace(blank, remarks=(Remark("higher_range"),))
    ranges = ranges_for(meter_of(tool), spec) if tool is not None else []
    top = top_of(ranges[-1]) if ranges else None
    if spec.standing == "plausibility_band":
        if whole.high is not None and (top is None or top > whole.high):
            return replace(blank, word="implausible", probability=1.0,
                           remarks=(Remark("check_hookup"),))  # fmt: skip
        return replace(blank, remarks=(Remark("higher_range"),))
    if whole.high is not None:
        if top is not None and top <= whole.high:
            return replace(blank, remarks=(Remark("higher_range"),))
        remarks = () if top is not None else (Remark("open_if_range_reaches"),)
        return replace(blank, word="open", probability=1.0,
                       remarks=(Remark("open_or_leads"), *remarks))  # fmt: skip
    if top is None:
        return replace(blank, remarks=(Remark("name_meter"),))
    if whole.low is not None and top < whole.low:
        return replace(blank, remarks=(Remark("higher_range"),))
    return replace(blank, word="in_limits", probability=1.0,
                   remarks=limits_of_proof(spec, whole))  # fmt: skip


def as_data(verdict: Verdict) -> Mapping[str, object]:
    """Give a verdict as plain data, figures in the unit to show."""
    whole, found = verdict.expectation, verdict.measured
    return {
        "schema": 1,
        "spec": whole.spec.id,
        "verdict": verdict.word,
        "reading": verdict.reading.text,
        "unit": whole.unit.symbol,
        "corrected": None if found is None else whole.shown(found.value),
        "standard_uncertainty": None if found is None else _width(whole, found.u),
        "low": whole.shown(whole.low),
        "nominal": whole.shown(whole.nominal),
        "high": whole.shown(whole.high),
        "sure_low": whole.shown(verdict.sure_low),
        "sure_high": whole.shown(verdict.sure_high),
        "probability": verdict.probability,
        "risk": verdict.risk,
        "standing": whole.spec.standing,
        "assumed": list(whole.assumed),
        "remarks": [{"code": r.code, **r.values} for r in verdict.remarks],
    }


def _width(whole: Expectation, width: float) -> float:
    """Convert a width: a unit with an offset, as °F, has none for a difference."""
    zero, one = whole.shown(0.0), whole.shown(width)
    return (one or 0.0) - (zero or 0.0)
