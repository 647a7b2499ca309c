"""A value that does not say under what conditions it holds."""

from __future__ import annotations

from generator.checks import value_without_conditions
from tests.checks.manuals import patched

SPEC = "specs/hall-bolt-torque"


def test_an_empty_at_is_found() -> None:
    """The key is marked: nothing stands behind it."""
    assert patched(SPEC, "at: {}").found(value_without_conditions.problems) == [
        ("value-without-conditions", SPEC, "at")
    ]


def test_one_condition_is_enough() -> None:
    """Words alone will do, and so will one figure."""
    assert not value_without_conditions.problems(patched(SPEC, "at:\n  state: dry").kb)
    assert not value_without_conditions.problems(patched(SPEC, "at:\n  temperature: 20 °C").kb)
