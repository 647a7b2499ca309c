"""A proof that cannot be made on the vehicle that was repaired."""

from __future__ import annotations

from generator.checks import proof_on_another_vehicle
from tests.checks.manuals import edited, patched

JOB = "replacements/replace-crank-sensor-hall"


def test_a_test_of_another_vehicle_is_found_where_it_is_named() -> None:
    """One useless proof among good ones is found at its id, and nowhere else."""
    manual = edited(JOB, "  - test: square-wave-on-scope", "  - test: winding-resistance")
    assert manual.found(proof_on_another_vehicle.problems) == [
        ("proof-on-another-vehicle", JOB, "winding-resistance")
    ]


def test_a_vehicle_without_any_proof_is_named() -> None:
    """Where each proof helps somebody and one vehicle is left out, the list is marked."""
    only = "verify:\n  - test: harness-under-load-inductive\n    expect: Within limits.\n"
    manual = patched("procedures/repair-wiring", only)
    (found,) = proof_on_another_vehicle.problems(manual.kb)
    assert manual.marked(found) == "verify"
    assert "corrie-1-6" in found.message


def test_each_vehicle_may_have_its_own_proof() -> None:
    """Two proofs, each for one vehicle, are enough for a job on both."""
    both = """verify:
  - test: harness-under-load-inductive
    expect: Within limits.
  - test: harness-under-load-hall
    expect: Within limits.
"""
    assert not proof_on_another_vehicle.problems(patched("procedures/repair-wiring", both).kb)
