"""A spec and the conditions of the day: the reading to expect, and the working."""

from __future__ import annotations

from collections.abc import Sequence

from generator.expected.models import MODELS
from generator.expected.result import CONDITIONS, Conditions, Expectation
from generator.physics.domain import OutsideRange
from generator.quantities import Unit, unit_named
from generator.records.kinds.things import Spec
from generator.records.knowledge_base import KnowledgeBase

COMPUTED_UNITS = {"tooth_rate": "Hz", "pull_up": "V", "square_mean": "V"}
"""Units of the models whose specs need no written value."""


class CannotExpect(ValueError):
    """No reading can be given, and why; `hint` is the smallest mend."""

    def __init__(self, message: str, hint: str) -> None:
        self.hint = hint
        super().__init__(message)


def unit_of(spec: Spec) -> Unit:
    """Give the unit a spec is shown in.

    Raises
    ------
    CannotExpect
        If the record writes neither a value nor a known unit.
    """
    if spec.value is not None:
        written: Unit = spec.value.unit
        return written
    unit = unit_named(spec.unit or COMPUTED_UNITS.get(spec.model.name, ""))
    if unit is None:
        raise CannotExpect("the spec has no value and no unit", "write a value, as 860 ohm ± 10 %")
    return unit


def expect(kb: KnowledgeBase, spec: Spec, conditions: Conditions | None = None) -> Expectation:
    """Give the limits of a spec under the conditions of the day.

    Parameters
    ----------
    kb : KnowledgeBase
        The manual, checked.
    spec : Spec
        The value asked for.
    conditions : mapping, optional
        Condition names to intervals in base units. A condition the model needs and nobody
        states takes its usual range, and `assumed` says so. A plausibility band is never
        corrected: it takes no conditions.

    Returns
    -------
    Expectation
        Unrounded limits and the working.

    Raises
    ------
    CannotExpect
        For a condition the spec does not follow, or one beyond the model's range.
    """
    use = MODELS[spec.model.name]
    stated = dict(conditions or {})
    for name in stated:
        if name not in use.needs:
            known = ", ".join(use.needs) or "nothing: it holds as it is written"
            what = "is no condition" if name not in CONDITIONS else "does not change this value"
            raise CannotExpect(f"{name} {what}", f"{spec.id} follows {known}")
    if spec.standing == "plausibility_band" and spec.model.name != "plain":
        raise CannotExpect(
            "a plausibility band is never corrected for conditions", "give it the model plain"
        )
    try:
        usual = use.usual(spec)
        assumed = tuple(name for name in use.needs if name not in stated)
        given = {name: stated.get(name, usual[name]) for name in use.needs}
        limits = use.limits(kb, spec, given)
    except OutsideRange as beyond:
        raise CannotExpect(
            str(beyond), f"stay within {beyond.low:g} to {beyond.high:g} {beyond.unit}"
        ) from None
    except (KeyError, ValueError) as wrong:
        raise CannotExpect(str(wrong), "complete the record") from None
    return Expectation(
        spec, limits.low, limits.nominal, limits.high, unit_of(spec), given, assumed, limits.trail
    )


def table(kb: KnowledgeBase, spec: Spec) -> Sequence[Expectation]:
    """Give the rows a mechanic meets: one expectation for each set of usual conditions."""
    return [expect(kb, spec, row) for row in MODELS[spec.model.name].rows(spec)]
