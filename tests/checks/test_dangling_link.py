"""A link to a record that does not exist."""

from __future__ import annotations

from dataclasses import replace

from generator.checks import dangling_link
from tests.checks.manuals import edited
from tests.demo import demonstration, without

TEST = "tests/winding-resistance"


def test_a_slip_of_the_pen_is_found_at_the_id_with_what_was_meant() -> None:
    """The finding marks the id alone and names the nearest there is."""
    manual = edited(TEST, "after: [identify-sensor-type]", "after: [identify-sensor-typ]")
    (found,) = dangling_link.problems(manual.kb)
    assert (found.code, manual.marked(found)) == ("dangling-link", "identify-sensor-typ")
    assert found.hint == "did you mean identify-sensor-type?"


def test_an_id_like_no_other_asks_for_the_record() -> None:
    """Where nothing is near, the mend is to write the record."""
    manual = edited(TEST, "after: [identify-sensor-type]", "after: [zzz]")
    (found,) = dangling_link.problems(manual.kb)
    assert found.hint == "write tests/zzz.yml"


def test_the_settings_link_too() -> None:
    """A first look that is gone is found in the settings."""
    found = dangling_link.problems(without(demonstration(), "tests", "recent-work"))
    assert [f.path for f in found if f.record == ""] == ["kb_source/settings.yml"]


def test_a_record_that_could_not_be_read_is_no_dangling_link() -> None:
    """What has a finding of its own is not found once more by each link to it."""
    kb = without(demonstration(), "specs", "inductive-winding")
    assert dangling_link.problems(kb)
    assert not dangling_link.problems(replace(kb, broken=frozenset({"specs/inductive-winding"})))


def test_common_practice_is_a_source_without_a_record() -> None:
    """The one source that needs no record is no dangling link; as a test's id it would be."""
    assert not dangling_link.problems(demonstration())
    manual = edited(TEST, "after: [identify-sensor-type]", "after: [common-practice]")
    assert manual.found(dangling_link.problems) == [("dangling-link", TEST, "common-practice")]
