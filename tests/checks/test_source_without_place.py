"""A value from a document that does not say where in it."""

from __future__ import annotations

from generator.checks import source_without_place
from generator.problems import Severity
from tests.checks.manuals import edited, patched

SPEC = "specs/hall-bolt-torque"


def test_a_document_without_a_place_is_a_warning_at_the_source() -> None:
    """The manual is made all the same."""
    manual = edited(SPEC, "where: Crank sensor, row 7\n", "")
    (found,) = source_without_place.problems(manual.kb)
    assert (found.severity, manual.marked(found)) == (Severity.WARNING, "corrie-data-sheet")


def test_common_practice_has_no_page() -> None:
    """Where there is no document there is no place in it."""
    assert not source_without_place.problems(
        patched("specs/crank-time", "source: common-practice").kb
    )
