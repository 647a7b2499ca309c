"""A link to a record of the wrong kind."""

from __future__ import annotations

from generator.checks import dangling_link, wrong_kind_of_link
from tests.checks.manuals import edited

TEST = "tests/winding-resistance"


def test_an_id_of_another_kind_is_found_with_the_place_of_its_record() -> None:
    """The finding says what the id is, and points at that record."""
    manual = edited(TEST, "specs: [inductive-winding", "specs: [crank-sensor-inductive")
    (found,) = wrong_kind_of_link.problems(manual.kb)
    assert manual.marked(found) == "crank-sensor-inductive"
    assert "one of the components; one of the specs" in found.message
    assert found.second is not None
    assert found.second.path == "kb_source/components/crank-sensor-inductive.yml"
    assert not dangling_link.problems(manual.kb), "one fault, one finding"


def test_an_id_that_two_kinds_share_is_right_where_one_of_them_is_asked_for() -> None:
    """`battery-cranking` is a test and a value; each field means its own."""
    manual = edited("tests/battery-cranking", "after: [battery-rest]", "after: []")
    assert "battery-cranking" in manual.kb.records["specs"]
    assert not wrong_kind_of_link.problems(manual.kb)
