"""A repair that ends without proof that it worked."""

from __future__ import annotations

from generator.checks import repair_without_proof
from tests.checks.manuals import edited, patched

JOB = "replacements/replace-crank-sensor-hall"


def test_a_procedure_that_a_test_sends_to_needs_a_proof() -> None:
    """Charging is called for by a reading, so a reading has to prove it."""
    manual = patched("procedures/charge-battery", "verify: []")
    assert manual.found(repair_without_proof.problems) == [
        ("repair-without-proof", "procedures/charge-battery", "[]")
    ]


def test_a_procedure_that_others_only_call_needs_none() -> None:
    """A relearn is part of a job that has its own proof."""
    assert not repair_without_proof.problems(
        patched("procedures/relearn-crank-adaptation", "verify: []").kb
    )


def test_a_replacement_is_proved_on_the_part_it_fits() -> None:
    """Only tests of other things under `verify` prove nothing about the new part."""
    other = "verify:\n  - test: battery-rest\n    expect: At or above its limit.\n"
    (found,) = repair_without_proof.problems(patched(JOB, other).kb)
    assert found.message == "none of the tests under verify judges crank-sensor-hall"
    more = other + "  - test: square-wave-on-scope\n    expect: Clean levels.\n"
    assert not repair_without_proof.problems(patched(JOB, more).kb)


def test_it_points_at_the_list() -> None:
    """The finding marks `verify`."""
    other = "verify:\n  - test: battery-rest\n    expect: At or above its limit.\n"
    manual = patched(JOB, other)
    assert [mark for _, _, mark in manual.found(repair_without_proof.problems)] == ["verify"]
    assert edited(JOB, "minutes: 45", "minutes: 46").found(repair_without_proof.problems) == []
