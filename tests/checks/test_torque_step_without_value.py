"""A fastener tightened without a torque."""

from __future__ import annotations

from generator.checks import torque_step_without_value
from tests.checks.manuals import edited

JOB = "procedures/set-gap-1-6"
SPEC = "    spec: hall-bolt-torque\n"


def test_a_tightening_step_without_its_value_is_found() -> None:
    """The act is marked: it is what asks for a torque."""
    assert edited(JOB, SPEC, "").found(torque_step_without_value.problems) == [
        ("torque-step-without-value", JOB, "tighten")
    ]


def test_another_value_is_no_torque() -> None:
    """A gap says nothing about how tight."""
    manual = edited(JOB, SPEC, "    spec: hall-gap\n")
    assert [f.record for f in torque_step_without_value.problems(manual.kb)] == [JOB]


def test_a_torque_among_several_values_is_enough() -> None:
    """One step may name the gap to hold as well."""
    manual = edited(JOB, SPEC, "    spec: [hall-gap, hall-bolt-torque]\n")
    assert not torque_step_without_value.problems(manual.kb)


def test_finger_tight_is_no_tightening() -> None:
    """A step that fits has no torque to tell."""
    manual = edited(JOB, "    action: tighten\n", "    action: fit\n")
    manual = edited(JOB, SPEC, "", manual)
    assert not torque_step_without_value.problems(manual.kb)
