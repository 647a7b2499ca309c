"""An outcome that is there twice."""

from __future__ import annotations

from generator.checks import same_outcome_twice
from tests.checks.manuals import edited

TEST = "tests/identify-sensor-type"


def test_the_second_is_found_and_the_first_is_shown() -> None:
    """Both places are labels of the same words."""
    hall = "Hall: number and engine code agree, a supply on pin 1"
    inductive = "Inductive: number and engine code agree, no supply on any pin"
    manual = edited(TEST, hall, inductive)
    (found,) = same_outcome_twice.problems(manual.kb)
    assert found.second is not None
    assert inductive in manual.marked(found)
    assert inductive in manual.marked(found.second)
    assert found.second.line < found.line


def test_one_finding_with_two_labels_is_right() -> None:
    """The sensor is one of two kinds, and each is its own outcome of the finding `is_a`."""
    manual = edited(TEST, "minutes: ", "minutes: 1")
    outcomes = manual.kb.records["tests"]["identify-sensor-type"].outcomes  # type: ignore[attr-defined]
    assert [o.finding for o in outcomes].count("is_a") == 2
    assert not same_outcome_twice.problems(manual.kb)
