"""An outcome whose reading no value of the test measures.

Wrong: An outcome gives a reading in the unit of a quantity that none of the test's values has.

Why: The reader would look for ohms on a meter that is set to volts.

Mend: Write the reading in a unit of what the test measures, or add the value it belongs to.

Fails, in tests/winding-resistance:

    outcomes:
      - finding: shorted
        label: Next to nothing
        reading: at most 0.5 V
        verdict: condemns
        means: Shorted through.
        next:
          - replacement: replace-crank-sensor-inductive
      - finding: cannot_tell
        label: The temperature is unknown
        verdict: neither
        means: Near a limit it decides.
        next:
          - repeat: true

Passes:

    outcomes:
      - finding: shorted
        label: Next to nothing
        reading: at most 50 ohm
        verdict: condemns
        means: Shorted through.
        next:
          - replacement: replace-crank-sensor-inductive
      - finding: cannot_tell
        label: The temperature is unknown
        verdict: neither
        means: Near a limit it decides.
        next:
          - repeat: true
"""

from __future__ import annotations

from generator.checks.fault_page import fault
from generator.checks.readings import quantity_of
from generator.problems import Problem
from generator.quantities import Written
from generator.records.kinds.things import Spec
from generator.records.kinds.work import Test
from generator.records.knowledge_base import KnowledgeBase

ANOTHER_QUANTITY = fault("reading-of-another-quantity", __doc__)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each reading that belongs to none of its test's values."""
    found = []
    for test in kb.all("tests", Test):
        ids = {*test.specs, *(id_ for step in test.steps for id_ in step.specs)}
        measured = sorted({quantity_of(kb.get("specs", id_, Spec)) for id_ in ids})
        if "" in measured:
            continue  # nobody can say what it measures; that value has a finding of its own
        for index, outcome in enumerate(test.outcomes):
            reading: Written | None = outcome.reading
            if reading is None or reading.quantity in measured:
                continue
            found.append(
                kb.problem(
                    ANOTHER_QUANTITY, test, ("outcomes", index, "reading"),
                    f"{reading.text} is a {reading.quantity}, and this test measures "
                    f"{' and '.join(measured) or 'nothing'}",
                    "write it in a unit of what is measured, or add the value under specs",
                )
            )  # fmt: skip
    return found
