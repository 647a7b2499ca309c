"""A verdict that condemns a part and leaves it in the vehicle."""

from __future__ import annotations

import pytest

from generator.checks import condemned_without_repair
from tests.checks.manuals import edited
from tests.demo import demonstration

TEST = "tests/heat-and-wiggle-inductive"


@pytest.mark.parametrize(
    "way",
    ["carry_on: true", "repeat: true", "test: winding-resistance", "done: Give it back."],
)
def test_a_condemned_part_that_is_not_mended_is_found(way: str) -> None:
    """Going on, going back and ending are no repair."""
    manual = edited(TEST, "      - replacement: replace-crank-sensor-inductive", f"      - {way}")
    (found,) = condemned_without_repair.problems(manual.kb)
    assert (found.record, manual.marked(found)) == (TEST, "next")
    assert "crank-sensor-inductive" in found.message


@pytest.mark.parametrize("way", ["refer: The maker.", "procedure: clear-and-watch-codes"])
def test_somebody_else_or_a_procedure_may_mend_it(way: str) -> None:
    """A referral and a procedure are ways to a repair."""
    manual = edited(TEST, "      - replacement: replace-crank-sensor-inductive", f"      - {way}")
    assert not condemned_without_repair.problems(manual.kb)


def test_the_replacement_of_another_part_mends_nothing() -> None:
    """Where the replacement is of the wheel, each test that condemns the sensor is found."""
    manual = edited(
        "replacements/replace-crank-sensor-hall",
        "component: crank-sensor-hall", "component: trigger-wheel-36-1",
    )  # fmt: skip
    found = condemned_without_repair.problems(manual.kb)
    assert {f.record for f in found} >= {"tests/hall-steel-blade", "tests/square-wave-on-scope"}
    assert all("crank-sensor-hall" in f.message for f in found)


def test_a_part_is_asked_after_only_on_vehicles_that_have_it() -> None:
    """One outcome condemns the sensor of either engine, with the replacement of each."""
    test = demonstration().records["tests"]["identify-sensor-type"]
    (both,) = [o for o in test.outcomes if len(o.about) == 2]  # type: ignore[attr-defined]
    assert {way.replacement for way in both.next} == {
        "replace-crank-sensor-hall", "replace-crank-sensor-inductive"
    }  # fmt: skip
    assert not condemned_without_repair.problems(demonstration())
