"""A verdict where the test has shown nothing."""

from __future__ import annotations

import pytest

from generator.checks import verdict_without_evidence
from tests.checks.manuals import edited

TEST = "tests/output-while-cranking"


@pytest.mark.parametrize(
    ("label", "verdict"),
    [("Within limits, but the fault is asleep", "clears"),
     ("The engine turns slowly or unevenly", "condemns")],
)  # fmt: skip
def test_a_verdict_on_a_sleeping_fault_or_a_failed_test_is_found(label: str, verdict: str) -> None:
    """The word is marked, and the hint is the one word that is right."""
    label = f"    label: {label}\n"
    manual = edited(TEST, label + "    verdict: neither", label + f"    verdict: {verdict}")
    (found,) = verdict_without_evidence.problems(manual.kb)
    assert (manual.marked(found), found.hint) == (verdict, "write neither")


def test_a_verdict_with_the_complaint_present_is_right() -> None:
    """The test's own "in limits" clears the sensor, and may."""
    manual = edited(TEST, "minutes: ", "minutes: 1")
    assert "clears" in manual.texts[f"kb_source/{TEST}.yml"]
    assert not verdict_without_evidence.problems(manual.kb)
