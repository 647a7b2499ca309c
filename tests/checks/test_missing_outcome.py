"""A test without an outcome for a reading that the mechanic can get."""

from __future__ import annotations

import pytest

from generator.checks import missing_outcome
from generator.records.kinds.facts import Finding
from generator.records.kinds.work import Test
from tests.demo import changed, demonstration


def lacking(id_: str, *dropped: str) -> str:
    """Give what is said of a test once its outcomes of some findings are dropped."""
    kb = demonstration()
    test = kb.get("tests", id_, Test)
    kept = [o for o in test.outcomes if o.finding.value not in dropped]
    assert len(kept) < len(test.outcomes)
    said = [p.message for p in missing_outcome.problems(changed(kb, "tests", id_, outcomes=kept))]
    assert len(said) <= 1, "one test, one finding"
    return said[0].removeprefix("no outcome for ") if said else ""


@pytest.mark.parametrize(
    ("id_", "dropped"),
    [
        ("winding-resistance", "open"),
        ("winding-resistance", "shorted"),
        ("winding-resistance", "low"),
        ("winding-resistance", "high"),
        ("winding-resistance", "erratic"),
        ("winding-resistance", "changes_when_moved"),
        ("winding-resistance", "complaint_absent"),
        ("winding-resistance", "cannot_tell"),
        ("insulation-to-ground", "shorted"),
        ("harness-under-load-hall", "open"),
        ("hall-mean-while-cranking", "flat_low"),
        ("hall-mean-while-cranking", "flat_high"),
        ("wheel-and-gap-pulley", "low"),
        ("speed-on-scan-tool", "high"),
        ("recent-work", "cannot_tell"),
        ("battery-rest", "low"),
    ],
)
def test_what_the_mechanic_can_get_is_asked_for(id_: str, dropped: str) -> None:
    """Each finding that quantity, model and method call for is missed when it is dropped."""
    assert lacking(id_, dropped) == dropped


@pytest.mark.parametrize(
    ("id_", "dropped"),
    [
        ("wheel-and-gap-pulley", "changes_when_moved"),  # no electrical quantity
        ("battery-rest", "shorted"),  # a one-sided limit on a part without a connector
        ("recent-work", "fault_seen"),  # asked, not measured
        ("control-unit-feed", "fault_seen"),
    ],
)
def test_what_does_not_apply_is_not_asked_for(id_: str, dropped: str) -> None:
    """A gap has no wire to move, a question no reading to jump."""
    assert lacking(id_, dropped) == ""


def test_a_limit_on_one_side_asks_for_one_side() -> None:
    """`at least 12.4 V` has no "high"; the demonstration's own test has none and is right."""
    outcomes = demonstration().get("tests", "battery-rest", Test).outcomes
    assert Finding.HIGH not in {o.finding for o in outcomes}
    assert not missing_outcome.problems(demonstration())


def test_a_dead_level_may_be_called_open_or_flat() -> None:
    """A feed of 5 ± 0.25 V needs an answer to "nothing", under whichever name."""
    assert lacking("hall-supply-under-load", "open") == "flat_high or flat_low or open"
    assert lacking("hall-pull-up", "flat_low") == "flat_high or flat_low or open"


def test_several_are_told_in_one_finding() -> None:
    """The list is in alphabetical order."""
    assert lacking("winding-resistance", "open", "low", "erratic") == "erratic, low, open"
