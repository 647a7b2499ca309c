"""What is wrong with the specs themselves: a value no model can work from."""

from __future__ import annotations

from generator.expected.choose import families, ties
from generator.expected.engine import CannotExpect, expect, table
from generator.expected.models import MODELS
from generator.expected.models.plain import plausible_torque
from generator.problems import Problem, code
from generator.records.kinds.models import TorqueModel
from generator.records.kinds.things import Spec
from generator.records.knowledge_base import KnowledgeBase

NO_EXPECTATION = code(
    "no-expectation",
    "A reader beside the vehicle would get no figure, or one that nobody can vouch for.",
)
IMPOSSIBLE_VALUE = code(
    "impossible-value",
    "No part can read this, so either the figure or its unit is wrong.",
)
NEEDS_REFERENCE = code(
    "no-reference-condition",
    "A value that follows conditions means nothing until the conditions it was measured at "
    "are stated.",
)
IMPLAUSIBLE_TORQUE = code(
    "implausible-torque",
    "No bolt of that size and strength is tightened so: a digit or the unit is wrong, and the "
    "thread or the joint would pay for it.",
)
OVERRIDE_TIE = code(
    "override-tie",
    "For one vehicle two values would be right, and a reader would get either.",
)
OVERRIDE_STRAY = code(
    "override-stray",
    "A value that stands in for another has to be the same reading of the same part.",
)

HINTS = {"temperature": "temperature: 20 °C", "engine_speed": "engine_speed: 200 rpm",
         "current": "current: 10 A"}  # fmt: skip


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each spec that gives no reading over its usual conditions."""
    found: list[Problem] = []
    for spec in kb.all("specs", Spec):
        found.extend(_spec(kb, spec))
    found.extend(_overrides(kb))
    return found


def _spec(kb: KnowledgeBase, spec: Spec) -> list[Problem]:
    wanted = MODELS[spec.model.name].reference
    missing = [name for name in wanted if getattr(spec.at, name) is None]
    if missing:
        return [
            kb.problem(
                NEEDS_REFERENCE, spec, ("at",),
                f"the model {spec.model.name} needs {missing[0]} under `at`",
                f"add {missing[0]}, as in {HINTS[missing[0]]}", of_key=True,
            )
        ]  # fmt: skip
    try:
        whole = expect(kb, spec)
        table(kb, spec)
    except CannotExpect as wrong:
        path = wrong.path or (("model",) if spec.value is None else ("value",))
        return [kb.problem(NO_EXPECTATION, spec, path, str(wrong), wrong.hint)]
    if whole.low is not None and whole.high is not None and whole.low > whole.high:
        field = "model" if spec.value is None else "value"
        return [
            kb.problem(
                IMPOSSIBLE_VALUE, spec, (field,),
                f"the low limit {whole.low:g} lies above the high one {whole.high:g}",
                "check the figures and their order", of_key=spec.value is None,
            )
        ]  # fmt: skip
    return _torque(kb, spec) if isinstance(spec.model, TorqueModel) else []


def _torque(kb: KnowledgeBase, spec: Spec) -> list[Problem]:
    low, _, high = plausible_torque(spec)
    value = spec.value
    written = [v for v in (value.low, value.high) if v is not None] if value else []
    if all(low <= torque_nm <= high for torque_nm in written):
        return []
    return [
        kb.problem(
            IMPLAUSIBLE_TORQUE, spec, ("value",),
            f"for this thread a torque lies between {low:.2g} and {high:.3g} N·m",
            "compare the source: the unit, the decimal point, the thread",
        )
    ]  # fmt: skip


def _overrides(kb: KnowledgeBase) -> list[Problem]:
    found = []
    for general, members in families(kb).items():
        root = kb.get("specs", general, Spec)
        astray: set[str] = set()
        for spec in members:
            other = kb.find("specs", spec.overrides, Spec)
            if spec.overrides is None:
                continue
            if other is None or root.overrides is not None:
                message, hint = f"{spec.id} overrides itself in a round", "take one link out"
            elif (spec.component, spec.quantity) != (other.component, other.quantity):
                message = f"{spec.overrides} is {other.quantity} of {other.component}"
                hint = f"name a spec of {spec.quantity} of {spec.component}"
            elif spec.standing != other.standing:
                message = f"one is a {spec.standing.replace('_', ' ')}, the other is not"
                hint = "a band stays a band: give both one standing"
            else:
                continue
            astray.add(spec.id)
            found.append(kb.problem(OVERRIDE_STRAY, spec, ("overrides",), message, hint))
        found.extend(
            kb.problem(
                OVERRIDE_TIE, two, ("overrides",) if two.overrides else ("title",),
                f"{one.id} and {two.id} hold for the same vehicles and neither is more exact",
                "narrow one of them by vehicle, engine or build range",
            )
            for one, two in ties(kb, [spec for spec in members if spec.id not in astray])
        )  # fmt: skip
    return found
