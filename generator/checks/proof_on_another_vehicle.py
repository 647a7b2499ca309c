"""A proof that cannot be made on the vehicle that was repaired.

Wrong: For one of the job's vehicles no test under `verify` applies, or a test there applies to
none of them.

Why: The mechanic could not make the test that is to prove the repair.

Mend: Name a test that applies to the vehicle, beside the others.

Fails, in replacements/replace-crank-sensor-hall:

    verify:
      - test: winding-resistance
        expect: Within its limits.

Passes:

    verify:
      - test: square-wave-on-scope
        expect: Both levels within limits.
"""

from __future__ import annotations

from generator.checks.fault_page import fault
from generator.problems import Problem
from generator.records.kinds.work import Procedure, Replacement, Test
from generator.records.knowledge_base import KnowledgeBase

PROOF_ELSEWHERE = fault("proof-on-another-vehicle", __doc__)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each vehicle without a proof, and each proof without a vehicle."""
    found = []
    jobs: list[Replacement | Procedure] = [
        *kb.all("replacements", Replacement), *kb.all("procedures", Procedure)
    ]  # fmt: skip
    for job in jobs:
        tests = [kb.get("tests", proof.test, Test) for proof in job.verify]
        useless = [n for n, t in enumerate(tests) if not set(t.applies_to) & set(job.applies_to)]
        found += [
            kb.problem(
                PROOF_ELSEWHERE, job, ("verify", index, "test"),
                f"{tests[index].id} applies to no vehicle of this job",
                "name a test that applies to one",
            )
            for index in useless
        ]  # fmt: skip
        left = [v for v in job.applies_to if not any(v in test.applies_to for test in tests)]
        if tests and left and not useless:
            found.append(
                kb.problem(
                    PROOF_ELSEWHERE, job, ("verify",),
                    f"no test here applies to {', '.join(left)}, which this job is for",
                    "add a test that does", of_key=True,
                )
            )  # fmt: skip
    return found
