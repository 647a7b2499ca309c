"""Readings that no outcome speaks of.

The band of the cranking speed is 150 to 300 rpm; the test's "low" says 20 to 150 rpm.
"""

from __future__ import annotations

import pytest

from generator.checks import gap_between_outcomes
from tests.checks.manuals import edited

TEST = "tests/speed-on-scan-tool"
LOW = "    reading: 20 to 150 rpm"


@pytest.mark.parametrize(
    ("reading", "said"),
    [
        ("    reading: 20 to 140 rpm", ["between 140 rpm and 150 rpm"]),
        ("    reading: 30 to 150 rpm", ["between 20 rpm and 30 rpm"]),
        ("    reading: 30 to 140 rpm",
         ["between 20 rpm and 30 rpm", "between 140 rpm and 150 rpm"]),
        (LOW, []),
        ("    reading: 10 to 150 rpm", []),
    ],
)  # fmt: skip
def test_each_gap_is_told_by_its_ends(reading: str, said: list[str]) -> None:
    """Stretches that meet leave nothing out; each that does not is named."""
    manual = edited(TEST, LOW, reading)
    found = gap_between_outcomes.problems(manual.kb)
    assert [f.message.removeprefix("no outcome takes a reading ") for f in found] == said
    assert {manual.marked(f) for f in found} <= {"outcomes"}


def test_a_high_that_ends_leaves_the_rest_out() -> None:
    """What lies above the last reading is a gap too."""
    label = "    label: Higher than any starter turns"
    manual = edited(TEST, label, label + "\n    reading: 300 to 500 rpm")
    (found,) = gap_between_outcomes.problems(manual.kb)
    assert found.message.endswith("above 500 rpm")


def test_low_without_a_reading_takes_everything_below() -> None:
    """Left out, `reading` follows the limits, and there is no gap to leave."""
    assert not gap_between_outcomes.problems(edited(TEST, LOW + "\n", "").kb)


def test_a_side_without_an_outcome_is_another_fault() -> None:
    """Where "low" is missing altogether, missing-outcome says so and this rule is silent."""
    manual = edited(TEST, "  - finding: low\n", "  - finding: fault_seen\n")
    assert not gap_between_outcomes.problems(manual.kb)
