"""A verdict on a part that the test does not judge."""

from __future__ import annotations

from generator.checks import verdict_on_another_part
from tests.checks.manuals import edited

TEST = "tests/hall-pull-up"
COMPONENTS = "components: [engine-control-unit, crank-sensor-harness]"


def test_each_verdict_on_a_stranger_is_found() -> None:
    """Two outcomes condemn the harness; without it among the components both are found."""
    manual = edited(TEST, COMPONENTS, "components: [engine-control-unit]")
    found = verdict_on_another_part.problems(manual.kb)
    assert [manual.marked(f) for f in found] == ["crank-sensor-harness"] * 2
    assert all(f.second and manual.marked(f.second) == "components" for f in found)


def test_an_outcome_that_says_neither_may_speak_of_anything() -> None:
    """What is told and not judged needs no component."""
    manual = edited(TEST, COMPONENTS, COMPONENTS.replace("]", ", battery]"))
    assert not verdict_on_another_part.problems(manual.kb)
    label = "    label: It wanders\n    verdict: neither\n"
    manual = edited(TEST, label, label + "    about: [main-relay]\n")
    assert not verdict_on_another_part.problems(manual.kb)
