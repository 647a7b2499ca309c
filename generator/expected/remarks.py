"""What a verdict does not prove, and what would decide one that cannot be given."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from generator.expected.readings import Measured
from generator.expected.result import CONDITIONS, Expectation
from generator.quantities import Interval, base_unit, convert, figure, unit_named
from generator.quantities.show import places_for
from generator.records.kinds.base import COMMON_PRACTICE
from generator.records.kinds.things import Spec
from generator.records.knowledge_base import KnowledgeBase

# Below this a two-wire ohmmeter reads its own leads and contacts as much as the part, ohm
# (practice): a drop under load says more.
LOW_OHM = 2.0
# Warmer than this a part beside an engine counts as read hot, °C (practice).
HOT_C = 70.0


@dataclass(frozen=True, slots=True)
class Remark:
    """One thing to say with a verdict: its code and what fills the words' blanks."""

    code: str
    values: Mapping[str, str] = field(default_factory=dict)


def limits_of_proof(spec: Spec, whole: Expectation) -> tuple[Remark, ...]:
    """Say what "in limits" leaves open."""
    found = [Remark("asleep")]
    at = whole.conditions.get("temperature")
    if at is not None and at.high < HOT_C:
        found.append(Remark("fails_hot"))
    if whole.low is None or whole.high is None:
        found.append(Remark("one_sided"))
    if spec.source == COMMON_PRACTICE:
        found.append(Remark("practice"))
    return tuple(found)


def band_remarks(kb: KnowledgeBase, spec: Spec, value: float) -> tuple[Remark, ...]:
    """Say how a reading lies to the band over all designs; the vehicle's own value wins."""
    band = kb.find("specs", spec.band, Spec)
    if band is None or band.value is None:
        return ()
    low, high = band.value.low, band.value.high
    outside = (low is not None and value < low) or (high is not None and value > high)
    return (Remark("outside_band", {"band": band.value.text}),) if outside else ()


def slips(value: float, limits: tuple[float, float]) -> tuple[Remark, ...]:
    """Say where a reading would be in limits if its unit were a thousand times another."""
    for factor in (1000.0, 0.001):
        if limits[0] <= value * factor <= limits[1]:
            return (Remark("unit_slip"),)
    return ()


def doubts(
    spec: Spec, whole: Expectation, found: Measured, by_condition: bool
) -> tuple[Remark, ...]:
    """Say what would decide.

    Parameters
    ----------
    spec : Spec
        What was read.
    whole : Expectation
        Its limits over the conditions left open.
    found : Measured
        The figure and its uncertainty.
    by_condition : bool
        Whether the conditions left open keep it undecided, whatever the meter.
    """
    remarks = []
    if by_condition:
        remarks += [
            Remark("state_condition", {"condition": CONDITIONS[name].asks, "range": _span(name, c)})
            for name, c in whole.conditions.items()
            if not c.single
        ]
    if found.u > 0 and not by_condition:
        if found.leads_share > 0.1:
            remarks.append(Remark("null_leads"))
        if whole.unit.quantity == "resistance" and found.value < LOW_OHM:
            remarks.append(Remark("drop_under_load"))
        remarks.append(Remark("better_meter"))
    if not remarks:
        remarks.append(Remark("other_method", {"method": spec.method}))
    return tuple(remarks)


def _span(name: str, interval: Interval) -> str:
    low, high = (_in_unit(name, end) for end in (interval.low, interval.high))
    return f"{low} to {high} {CONDITIONS[name].unit}"


def _in_unit(name: str, value: float) -> str:
    known = CONDITIONS[name]
    unit = unit_named(known.unit)
    assert unit is not None
    shown = convert(value, base_unit(known.quantity), unit)
    return figure(shown, 0 if shown.is_integer() else places_for(shown, 3))
