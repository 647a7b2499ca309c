"""A repair that ends without proof that it worked.

Wrong: A procedure that a test sends the reader to, or one that cuts and joins, names no test
under `verify`; or none of the tests a replacement names judges the part it fits.

Why: The vehicle would be handed over on a hope.

Mend: Name under `verify` the test that showed the fault, and what it must show now.

Fails, in procedures/repair-wiring:

    verify: []

Passes:

    verify:
      - test: harness-under-load-inductive
        expect: Every drop and every insulation within its limits.
      - test: harness-under-load-hall
        expect: Every drop and every insulation within its limits.
"""

from __future__ import annotations

from generator.checks.fault_page import fault
from generator.problems import Problem
from generator.records.kinds.facts import Action
from generator.records.kinds.work import Procedure, Replacement, Test
from generator.records.knowledge_base import KnowledgeBase

WITHOUT_PROOF = fault("repair-without-proof", __doc__)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each repair that no test proves."""
    return [*_procedures(kb), *_replacements(kb)]


def _procedures(kb: KnowledgeBase) -> list[Problem]:
    sent_to = {
        way.procedure
        for test in kb.all("tests", Test)
        for outcome in test.outcomes
        for way in outcome.next
    }
    return [
        kb.problem(
            WITHOUT_PROOF, job, ("verify",),
            f"{job.id} is a repair, and no test proves it",
            "add verify, with the test to repeat and what it must show",
        )
        for job in kb.all("procedures", Procedure)
        if not job.verify
        and (job.id in sent_to or any(s.action is Action.CUT_AND_JOIN for s in job.steps))
    ]  # fmt: skip


def _replacements(kb: KnowledgeBase) -> list[Problem]:
    return [
        kb.problem(
            WITHOUT_PROOF, job, ("verify",),
            f"none of the tests under verify judges {job.component}",
            "add the test that condemned the old part", of_key=True,
        )
        for job in kb.all("replacements", Replacement)
        if not any(
            job.component in kb.get("tests", proof.test, Test).components for proof in job.verify
        )
    ]  # fmt: skip
