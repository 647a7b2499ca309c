"""What is wrong with the specs themselves: a value no model can work from."""

from __future__ import annotations

from generator.expected.engine import CannotExpect, expect, table
from generator.problems import Problem, code
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

REFERENCES = {"winding": ("temperature",), "pickup_volts": ("engine_speed",)}
"""The conditions a model's written value has to state."""


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each spec that gives no reading over its usual conditions."""
    found: list[Problem] = []
    for spec in kb.all("specs", Spec):
        missing = [n for n in REFERENCES.get(spec.model.name, ()) if getattr(spec.at, n) is None]
        if missing:
            found.append(
                kb.problem(
                    NEEDS_REFERENCE, spec, ("at",),
                    f"the model {spec.model.name} needs {missing[0]} under `at`",
                    f"add {missing[0]}, as in temperature: 20 °C", of_key=True,
                )
            )  # fmt: skip
            continue
        try:
            whole = expect(kb, spec)
            table(kb, spec)
        except CannotExpect as wrong:
            path = ("model",) if spec.value is None else ("value",)
            found.append(kb.problem(NO_EXPECTATION, spec, path, str(wrong), wrong.hint))
            continue
        if whole.low is not None and whole.high is not None and whole.low > whole.high:
            found.append(
                kb.problem(
                    IMPOSSIBLE_VALUE, spec, ("value",),
                    f"the low limit {whole.low:g} lies above the high one {whole.high:g}",
                    "check the figures and their order",
                )
            )  # fmt: skip
    return found
