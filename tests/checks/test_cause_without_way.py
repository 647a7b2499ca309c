"""A cause that can be neither tested nor looked up."""

from __future__ import annotations

from generator.checks import cause_without_way
from tests.checks.manuals import edited

SYMPTOM = "symptoms/cranks-no-start"
ONLY = """    tests: [inductive-input-bias]
    vehicles: [corrie-1-2]
"""


def test_a_cause_said_to_be_on_both_needs_a_test_on_both() -> None:
    """Without its `vehicles` the cause stands on the 1.6 too, where nothing shows it."""
    manual = edited(SYMPTOM, ONLY, "    tests: [inductive-input-bias]\n")
    assert manual.found(cause_without_way.problems) == [
        ("cause-without-way", SYMPTOM, "Input of the control unit")
    ]


def test_where_to_look_is_enough() -> None:
    """A cause without any test that says where to look is no dead end."""
    new = "    tests: []\n    refer: The maker's data on the control unit.\n"
    assert not cause_without_way.problems(edited(SYMPTOM, ONLY, new).kb)
