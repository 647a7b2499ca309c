"""A record that nobody has looked at for too long."""

from __future__ import annotations

import datetime
from dataclasses import replace

import pytest

from generator import checks
from generator.checks import review_overdue
from generator.checks.review_overdue import later
from generator.problems import Severity
from tests.checks.manuals import edited
from tests.demo import demonstration

D = datetime.date


def overdue(day: datetime.date) -> set[str]:
    """Give the records of the demonstration whose review is overdue on a day."""
    return {f.record for f in review_overdue.problems(demonstration(), day)}


def test_the_day_it_is_due_on_is_not_overdue() -> None:
    """Released on 21 September 2026: a term is overdue from 22 September 2028 on, work that
    carries a WARNING a year before."""
    term, job = "terms/air-gap", "replacements/replace-crank-sensor-inductive"
    assert not overdue(D(2027, 9, 21))
    assert job in overdue(D(2027, 9, 22))
    assert term not in overdue(D(2028, 9, 21))
    assert term in overdue(D(2028, 9, 22))


def test_it_is_a_warning_at_the_later_of_the_two_days() -> None:
    """The approval is the last look, and its day is marked."""
    manual = edited("terms/air-gap", "date: 2026-09-21", "date: 2020-01-31")
    manual = edited("terms/air-gap", "date: 2026-09-14", "date: 2020-01-30", manual)
    (found,) = review_overdue.problems(manual.kb, D(2026, 10, 5))
    assert (found.severity, manual.marked(found)) == (Severity.WARNING, "2020-01-31")
    assert "due on 2022-01-31" in found.message


def test_the_settings_say_how_often() -> None:
    """A shop that looks every three years has nothing overdue after two and a half."""
    every = demonstration().settings.review_every.model_copy(
        update={"months": 36, "months_with_danger": 36}
    )
    settings = demonstration().settings.model_copy(update={"review_every": every})
    kb = replace(demonstration(), settings=settings)
    assert not review_overdue.problems(kb, D(2029, 3, 1))
    assert review_overdue.problems(kb, D(2029, 10, 1))


def test_without_a_day_nothing_is_overdue() -> None:
    """The program reads no clock."""
    kb = edited("terms/air-gap", "date: 2026-09-21", "date: 1999-09-21").kb
    assert "review-overdue" not in {f.code for f in checks.problems(kb)}


@pytest.mark.parametrize(
    ("day", "months", "expected"),
    [
        (D(2026, 9, 21), 24, D(2028, 9, 21)),
        (D(2027, 8, 31), 6, D(2028, 2, 29)),  # 2028 is a leap year
        (D(2026, 8, 31), 6, D(2027, 2, 28)),
        (D(2026, 12, 1), 1, D(2027, 1, 1)),
        (D(2026, 1, 31), 12, D(2027, 1, 31)),
    ],
)
def test_months_are_counted_by_the_calendar(
    day: datetime.date, months: int, expected: datetime.date
) -> None:
    """A day that the month does not have is its last day (Gregorian calendar)."""
    assert later(day, months) == expected
