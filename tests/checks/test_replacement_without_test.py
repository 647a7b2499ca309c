"""A replacement that no test condemns the part for."""

from __future__ import annotations

from generator.checks import replacement_without_test
from tests.checks.manuals import edited, patched

JOB = "replacements/replace-crank-sensor-hall"


def test_a_replacement_of_a_part_nobody_condemns_is_found_at_the_part() -> None:
    """Tests lead here by condemning another part, and that is no ground for this one."""
    manual = edited(JOB, "component: crank-sensor-hall", "component: trigger-wheel-36-1")
    assert manual.found(replacement_without_test.problems) == [
        ("replacement-without-test", JOB, "trigger-wheel-36-1")
    ]


def test_a_vehicle_without_a_condemning_test_is_named() -> None:
    """Grounds on one vehicle are none on another."""
    manual = edited(JOB, "applies_to: [corrie-1-6]", "applies_to: [corrie-1-2, corrie-1-6]")
    (found,) = replacement_without_test.problems(manual.kb)
    assert found.message.startswith("on corrie-1-2 ")


def test_a_draft_is_no_ground_for_what_is_released() -> None:
    """With every condemning test a draft, a released replacement stands on nothing."""
    manual = None
    for test in ("hall-mean-while-cranking", "hall-steel-blade", "heat-and-wiggle-hall",
                 "identify-sensor-type", "square-wave-on-scope"):  # fmt: skip
        assert manual is None or not replacement_without_test.problems(manual.kb)
        manual = patched(f"tests/{test}", "status: draft", manual)
    assert manual is not None
    assert [f.record for f in replacement_without_test.problems(manual.kb)] == [JOB]
    manual = patched(JOB, "status: draft", manual)
    assert not replacement_without_test.problems(manual.kb), "a draft may rest on drafts"
