"""Tests that lead to each other and nowhere else."""

from __future__ import annotations

from generator.checks import circle_without_exit
from tests.checks.manuals import patched

TO = """outcomes:
  - finding: as_expected
    label: As it should be
    verdict: neither
    means: Go on.
    next:
      - {way}
  - finding: cannot_tell
    label: Nobody can say
    verdict: neither
    means: Do it again.
    next:
      - repeat: true
"""
ONE, OTHER = "tests/hall-pull-up", "tests/hall-ground-under-load"


def test_two_tests_that_send_the_reader_back_and_forth_are_both_found() -> None:
    """Each of the circle has a finding, and nothing else has."""
    manual = patched(ONE, TO.format(way="test: hall-ground-under-load"))
    manual = patched(OTHER, TO.format(way="test: hall-pull-up"), manual)
    found = circle_without_exit.problems(manual.kb)
    assert [f.record for f in found] == [OTHER, ONE]
    assert {manual.marked(f) for f in found} == {"outcomes"}
    assert all("corrie-1-6" in f.message for f in found)


def test_one_way_out_frees_the_whole_circle() -> None:
    """A single referral is an exit for every test that can reach it."""
    manual = patched(ONE, TO.format(way="test: hall-ground-under-load"))
    manual = patched(OTHER, TO.format(way="refer: The maker's helpdesk."), manual)
    assert not circle_without_exit.problems(manual.kb)


def test_an_exit_for_another_vehicle_frees_nobody_here() -> None:
    """A way out on the 1.2 does not help the reader of a 1.6."""
    way = "refer: The maker's helpdesk.\n        vehicles: [corrie-1-2]\n      - repeat: true"
    manual = patched("tests/look-and-wiggle", TO.format(way=way))
    (found,) = circle_without_exit.problems(manual.kb)
    assert "on corrie-1-6 every" in found.message
