"""Rules over the whole manual, one a file; each module's text is the page about its fault.

Rules that need every link whole run only when the links are, and when every record could be
read: a missing record would otherwise be reported once by its link and again by everything that
leans on it.
"""

from __future__ import annotations

import datetime
from collections.abc import Callable, Iterable
from functools import partial

from generator import expected
from generator.checks import (
    approved_by_author,
    cause_without_way,
    circle_without_exit,
    code_and_file_differ,
    condemned_without_repair,
    dangling_link,
    duplicate_title,
    exception_not_allowed,
    gap_between_outcomes,
    implausible_value,
    leans_on_unreleased,
    long_step,
    missing_outcome,
    moved_address,
    no_value_for_vehicle,
    no_way_on,
    nothing_to_test,
    number_in_prose,
    orphan,
    overlapping_outcomes,
    part_not_fitted,
    pin_not_there,
    proof_on_another_vehicle,
    reading_of_another_quantity,
    refit_in_reverse,
    released_without_approval,
    repair_without_proof,
    replacement_without_test,
    review_overdue,
    same_outcome_twice,
    source_without_place,
    test_before_itself,
    torque_step_without_value,
    unexplained_abbreviation,
    unknown_exception,
    unused_exception,
    value_outside_band,
    value_without_conditions,
    verdict_from_band,
    verdict_on_another_part,
    verdict_without_evidence,
    verdict_without_source,
    withdrawn_without_reason,
    wrong_kind_of_link,
)
from generator.diagnosis import findings as order_of_tests
from generator.hazards import findings as cautions
from generator.problems import Problem, has_errors
from generator.records.knowledge_base import KnowledgeBase

Rule = Callable[[KnowledgeBase], list[Problem]]

LINKS: tuple[Rule, ...] = (dangling_link.problems, wrong_kind_of_link.problems)

ALONE: tuple[Rule, ...] = (
    approved_by_author.problems,
    code_and_file_differ.problems,
    duplicate_title.problems,
    exception_not_allowed.problems,
    implausible_value.problems,
    leans_on_unreleased.problems,
    long_step.problems,
    moved_address.problems,
    number_in_prose.problems,
    released_without_approval.problems,
    same_outcome_twice.problems,
    source_without_place.problems,
    unknown_exception.problems,
    value_without_conditions.problems,
    verdict_on_another_part.problems,
    verdict_without_evidence.problems,
    withdrawn_without_reason.problems,
)
"""Rules that look at what is there and miss nothing that is not."""

WHOLE: tuple[Rule, ...] = (
    expected.problems,
    cautions.problems,
    order_of_tests.problems,
    cause_without_way.problems,
    circle_without_exit.problems,
    condemned_without_repair.problems,
    gap_between_outcomes.problems,
    missing_outcome.problems,
    no_value_for_vehicle.problems,
    no_way_on.problems,
    nothing_to_test.problems,
    orphan.problems,
    overlapping_outcomes.problems,
    part_not_fitted.problems,
    pin_not_there.problems,
    proof_on_another_vehicle.problems,
    reading_of_another_quantity.problems,
    refit_in_reverse.problems,
    repair_without_proof.problems,
    replacement_without_test.problems,
    test_before_itself.problems,
    torque_step_without_value.problems,
    unexplained_abbreviation.problems,
    value_outside_band.problems,
    verdict_from_band.problems,
    verdict_without_source.problems,
)
"""Rules that count on every link."""


FOLLOWS_FROM = {order_of_tests.LOOP.name: circle_without_exit.NO_WAY_OUT.name}
"""A finding that says no more than another one at the same record, and which one that is."""


def problems(kb: KnowledgeBase, as_of: datetime.date | None = None) -> list[Problem]:
    """Give the findings of every rule that no reasoned exception silences, in no order.

    Parameters
    ----------
    kb : KnowledgeBase
        The manual.
    as_of : date, optional
        The day on which reviews are asked about; without it none is overdue.
    """
    found = _every(kb, LINKS)
    whole = not kb.broken and not has_errors(found)
    found += _every(kb, ALONE)
    if whole:
        found += _every(kb, WHOLE)
        found = _not_derived(found)
        not_asked = {review_overdue.REVIEW_OVERDUE.name}
        if as_of is not None:
            found += review_overdue.problems(kb, as_of)
            not_asked.clear()
        found += unused_exception.problems(kb, found, not_asked)
    return unused_exception.excused(kb, found)


def _every(kb: KnowledgeBase, rules: Iterable[Rule]) -> list[Problem]:
    return [
        finding
        for rule in rules
        for finding in kb.remember("rule", rule.__module__, partial(rule, kb))
    ]


def _not_derived(found: list[Problem]) -> list[Problem]:
    met = {(finding.record, finding.code) for finding in found}
    return [f for f in found if (f.record, FOLLOWS_FROM.get(f.code)) not in met]
