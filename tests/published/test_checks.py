"""The helper that holds a model to outside values, itself held to failing when it should."""

from __future__ import annotations

import pytest

from tests.published.checks import Check, assert_well_founded


def double(x: float) -> float:
    """A model that is right by definition."""
    return 2.0 * x


def test_a_value_within_its_tolerance_passes_and_one_beyond_fails():
    """A row passes up to its tolerance and fails beyond it, naming its source."""
    Check({"x": 2.0}, 4.1, 0.11, "P", "a page").hold(double)
    with pytest.raises(AssertionError, match="a page"):
        Check({"x": 2.0}, 4.1, 0.09, "P", "a page").hold(double)


def test_not_a_number_never_passes():
    """A model that gives not-a-number fails whatever the tolerance."""
    with pytest.raises(AssertionError):
        Check({"x": float("nan")}, 4.0, 1e9, "P", "a page").hold(double)


def test_a_live_library_is_asked_when_the_row_is_held():
    """A callable is asked for its value at the time of the test."""
    asked = []

    def library() -> float:
        asked.append(True)
        return 4.0

    row = Check({"x": 2.0}, library, 0.0, "L", "a library")
    assert not asked
    row.hold(double)
    assert asked


def test_thin_or_copied_tables_are_refused():
    """Too few outside rows, a row without a source, and a copied table all fail."""
    page = Check({"x": 1.0}, 2.0, 0.0, "P", "a page")
    memory = Check({"x": 1.0}, 2.0, 0.0, "M", "from memory")
    assert_well_founded([page, page, page, memory])
    with pytest.raises(AssertionError, match="only 2"):
        assert_well_founded([page, page, memory, memory])
    with pytest.raises(AssertionError, match="without a source"):
        assert_well_founded([page, page, page, Check({"x": 1.0}, 2.0, 0.0, "C", " ")])
    with pytest.raises(AssertionError):
        assert_well_founded([page] * 13)
