"""A replacement that no test condemns, or one that ends without proof.

Parts changed on a guess are the commonest waste of the trade. Every replacement is reached from a
test whose outcome condemns that very part, and the tests that prove the repair fit the vehicle.
"""

from __future__ import annotations

from generator.problems import Problem, code
from generator.records.kinds.work import Replacement, Test
from generator.records.knowledge_base import KnowledgeBase

UNPROVED_REPLACEMENT = code(
    "replacement-without-test",
    "The part would be changed on a guess.",
)
PROOF_ELSEWHERE = code(
    "proof-on-another-vehicle",
    "The mechanic could not make the test that is to prove the repair.",
)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each replacement that no outcome leads to by condemning its part."""
    condemned = {
        (way.replacement, part)
        for test in kb.all("tests", Test)
        for outcome in test.outcomes
        if outcome.verdict == "condemns"
        for way in outcome.next
        for part in outcome.about or test.components
    }
    found: list[Problem] = []
    for job in kb.all("replacements", Replacement):
        if (job.id, job.component) not in condemned:
            found.append(
                kb.problem(
                    UNPROVED_REPLACEMENT, job, ("component",),
                    f"no test condemns {job.component} and leads to this replacement",
                    "give a test an outcome that condemns it, with next: replacement here",
                )
            )  # fmt: skip
        for index, proof in enumerate(job.verify):
            test = kb.get("tests", proof.test, Test)
            lacking = [v for v in job.applies_to if v not in test.applies_to]
            if lacking:
                found.append(
                    kb.problem(
                        PROOF_ELSEWHERE, job, ("verify", index, "test"),
                        f"{proof.test} does not apply to {lacking[0]}, which this job is for",
                        "name a test that applies to every vehicle of the job",
                    )
                )  # fmt: skip
    return found
