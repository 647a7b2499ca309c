"""An abbreviation that no term explains."""

from __future__ import annotations

import pytest

from generator.checks import unexplained_abbreviation
from generator.problems import Severity
from tests.checks.manuals import edited, patched

SYMPTOM = "symptoms/rough-idle-or-pulls-badly"


def test_each_is_found_once_a_record() -> None:
    """Two uses in one record are one warning, at the first."""
    manual = patched(SYMPTOM, "driving_advice: The MAF and again the MAF, and the EGR.")
    found = unexplained_abbreviation.problems(manual.kb)
    assert [f.message for f in found] == ["no term explains MAF", "no term explains EGR"]
    assert {f.severity for f in found} == {Severity.WARNING}


@pytest.mark.parametrize(
    "text",
    ["The ECM, also ECU, reads CKP.", "DC and AC volts.", "Engine SKR-116 and plug K.",
     "Code P0335 on fuse F18.", "A true-RMS meter."],
)  # fmt: skip
def test_terms_their_other_names_and_part_numbers_are_known(text: str) -> None:
    """An abbreviation, another name of a term and a number that goes on are no riddle."""
    assert not unexplained_abbreviation.problems(patched(SYMPTOM, f"driving_advice: {text}").kb)


def test_a_term_that_goes_takes_its_letters_along() -> None:
    """Without its abbreviation the term explains nothing, and every use is found."""
    manual = edited("terms/warning-lamp", "abbreviation: MIL\n", "")
    manual = patched(SYMPTOM, "driving_advice: Stop when the MIL flashes.", manual)
    assert [f.record for f in unexplained_abbreviation.problems(manual.kb)] == [SYMPTOM]


def test_names_of_publishers_are_not_asked_for() -> None:
    """A source may be issued by whoever it is."""
    manual = edited("sources/corrie-data-sheet", "title: ", "title: XYZ ")
    assert not unexplained_abbreviation.problems(manual.kb)
