"""A value that does not say under what conditions it holds.

Wrong: Nothing stands under `at`: no temperature, no speed, no supply, no gap and no words.

Why: A reading differs between hot and cold, plugged and unplugged; without its conditions a value
is only a number.

Mend: Write the conditions it was measured under, or in `state` what the part or the vehicle must
be doing.

Fails, in specs/hall-bolt-torque:

    at: {}

Passes:

    at:
      state: thread clean and dry
"""

from __future__ import annotations

from generator.checks.fault_page import fault
from generator.problems import Problem
from generator.records.kinds.things import Conditions, Spec
from generator.records.knowledge_base import KnowledgeBase

WITHOUT_CONDITIONS = fault("value-without-conditions", __doc__)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each value without a single condition."""
    return [
        kb.problem(
            WITHOUT_CONDITIONS, spec, ("at",), "it states no condition",
            "add what it was measured at, as state: engine cold", of_key=True,
        )
        for spec in kb.all("specs", Spec)
        if not any(getattr(spec.at, name) is not None for name in Conditions.model_fields)
    ]  # fmt: skip
