"""A vehicle's value that lies outside its own plausibility band.

Wrong: The value names a band over all designs under `band`, and does not lie within it; or the
band is no band, or not one of the same quantity.

Why: Value and band contradict each other, so one of them has a wrong digit or a wrong unit.

Mend: Check both against their sources.

Fails, in specs/inductive-winding:

    value: 1860 ohm ± 10 %

Passes:

    value: 860 ohm ± 10 %
"""

from __future__ import annotations

from dataclasses import replace

from generator.checks.fault_page import fault
from generator.checks.implausible_value import implausible
from generator.checks.places import second
from generator.checks.readings import quantity_of
from generator.problems import Problem
from generator.quantities import Written
from generator.records.kinds.things import Spec
from generator.records.knowledge_base import KnowledgeBase, Path

OUTSIDE_BAND = fault("value-outside-band", __doc__)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each value that its own band does not hold."""
    found = []
    for spec in kb.all("specs", Spec):
        if spec.band is None or any(implausible(spec)):
            continue  # a slip that no vehicle has is found already
        band = kb.get("specs", spec.band, Spec)
        wrong = _wrong(spec, band)
        if wrong is not None:
            path, message = wrong
            made = kb.problem(
                OUTSIDE_BAND, spec, path, message, "check both against their sources"
            )
            found.append(replace(made, second=second(kb, band, ("value",), "the band")))
    return found


def _wrong(spec: Spec, band: Spec) -> tuple[Path, str] | None:
    if band.standing != "plausibility_band":
        return ("band",), f"{band.id} is a vehicle's own value, not a band"
    quantities = {quantity_of(band), quantity_of(spec)}
    if "" in quantities:
        return None  # a value without a unit that fits its model has a finding of its own
    if len(quantities) > 1:
        return ("band",), f"{band.id} is of another quantity"
    value: Written | None = spec.value
    limits: Written | None = band.value
    if value is None or limits is None or _within(value, limits):
        return None
    return ("value",), f"{value.text} does not lie within {limits.text}"


def _within(value: Written, limits: Written) -> bool:
    low_holds = limits.low is None or value.low is None or value.low >= limits.low
    high_holds = limits.high is None or value.high is None or value.high <= limits.high
    return low_holds and high_holds
