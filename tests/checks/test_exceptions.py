"""Reasoned exceptions: what they silence, and what they never do."""

from __future__ import annotations

import pytest

from generator import checks, site
from generator.checks import exception_not_allowed, unknown_exception, unused_exception
from generator.checks.fault_page import EXCUSABLE, PAGES
from generator.problems import CODES, Severity
from tests.checks.manuals import Edited, edited, patched

JOB = "procedures/set-gap-1-6"
ENTRY = """exceptions:
  - check: {check}
    reason: The bolt has a shoulder and is turned home by hand.
    approved_by: workshop-lead
    date: 2026-09-21
"""


def excused(check: str, manual: Edited | None = None) -> Edited:
    """Give a manual in which a job is excused from a check."""
    return patched(JOB, ENTRY.format(check=check), manual)


def codes(manual: Edited) -> list[str]:
    """Give the codes that are found in the job, all rules run."""
    return [f.code for f in checks.problems(manual.kb) if f.record == JOB]


def without_torque() -> Edited:
    """Give a manual in which the job tightens a bolt without a value."""
    return edited(JOB, "    spec: hall-bolt-torque\n", "")


def test_a_reason_silences_one_check_on_one_record() -> None:
    """The fault is there without the entry, and gone with it; nothing else is."""
    assert codes(without_torque()) == ["torque-step-without-value"]
    assert codes(excused("torque-step-without-value", without_torque())) == []


def test_another_records_fault_stays() -> None:
    """The same fault elsewhere has no reason."""
    replacement = "replacements/replace-crank-sensor-hall"
    manual = edited(replacement, "    spec: hall-bolt-torque\n", "", without_torque())
    found = checks.problems(excused("torque-step-without-value", manual).kb)
    assert [(f.code, f.record) for f in found] == [("torque-step-without-value", replacement)]


@pytest.mark.parametrize("check", sorted(set(CODES) - EXCUSABLE))
def test_cautions_files_and_releases_cannot_be_silenced(check: str) -> None:
    """Every code outside the room of reasoned checks is refused, one by one."""
    manual = excused(check)
    assert manual.found(exception_not_allowed.problems) == [("exception-not-allowed", JOB, check)]


def test_a_caution_stays_a_finding_when_somebody_tries() -> None:
    """A silent step is found although the record claims an exception, which is found too."""
    vouched = "    plain: workshop-lead\n  - do: Slide the sensor"
    manual = edited(JOB, vouched, "  - do: Slide the sensor")
    assert codes(manual) == ["silent-step"]
    assert sorted(codes(excused("silent-step", manual))) == ["exception-not-allowed", "silent-step"]


def test_a_code_that_does_not_exist_is_found_with_what_was_meant() -> None:
    """A slip of the pen silences nothing and is told."""
    manual = excused("torque-step-without-values", without_torque())
    (found,) = unknown_exception.problems(manual.kb)
    assert manual.marked(found) == "torque-step-without-values"
    assert found.hint == "did you mean torque-step-without-value?"
    assert sorted(codes(manual)) == ["torque-step-without-value", "unknown-exception"]
    assert not exception_not_allowed.problems(manual.kb)


def test_an_exception_that_is_not_needed_any_more_is_a_warning() -> None:
    """The fault mended, the entry would wait for the next one."""
    manual = excused("torque-step-without-value")
    (found,) = [f for f in checks.problems(manual.kb) if f.record == JOB]
    assert (found.code, found.severity) == ("unused-exception", Severity.WARNING)
    assert manual.marked(found) == "torque-step-without-value"


def test_what_was_not_asked_is_not_called_unused() -> None:
    """Without a day nobody can say whether a review is overdue."""
    manual = excused("review-overdue")
    assert codes(manual) == []
    day = manual.kb.records["procedures"]["set-gap-1-6"].approved.date  # type: ignore[union-attr]
    found = checks.problems(manual.kb, day)
    assert [f.code for f in found if f.record == JOB] == ["unused-exception"]


def test_nothing_is_unused_before_every_rule_has_run() -> None:
    """With a broken link the rules that lean on links are silent, and so is this one."""
    manual = excused("torque-step-without-value")
    manual = edited("tests/battery-rest", "after: [look-and-wiggle]", "after: [nothing]", manual)
    assert [f.code for f in checks.problems(manual.kb)] == ["dangling-link"]


def test_excused_findings_alone_are_dropped() -> None:
    """An entry for a check that may not be silenced drops nothing, whatever it says."""
    manual = excused("silent-step", edited(JOB, "minutes: 30", "minutes: 31"))
    found = [f for f in checks.problems(manual.kb) if f.record == JOB]
    assert unused_exception.excused(manual.kb, found) == found


@pytest.mark.soak  # a whole site each
@pytest.mark.parametrize("check", sorted(EXCUSABLE))
def test_the_pages_can_be_made_in_spite_of_an_excused_fault(check: str) -> None:
    """What a page cannot be made without is not excusable: each of these leaves the site whole."""
    page = PAGES[check]
    manual = patched(page.record, page.fails)
    assert site.make(manual.kb, []).pages
