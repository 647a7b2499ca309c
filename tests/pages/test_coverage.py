"""What the small manual covers, counted by hand from its record files."""

from __future__ import annotations

import datetime
from functools import cache

from generator.pages.coverage import Cover, Coverage, coverage
from generator.records.kinds.base import ReasonedException, Signed
from tests.demo import changed, demonstration, without


@cache
def whole() -> Coverage:
    """Give the coverage of the small manual."""
    return coverage(demonstration().remembering())


def lacks(found: Coverage, part: str) -> tuple[str, ...]:
    """Give what one part lacks."""
    return next(one.lacks for one in found.parts if one.part.id == part)


def test_parts_counted_by_hand() -> None:
    """Of 15 part files: 9 stand under causes, 10 under tests, 2 replaced, 7 drawn."""
    found = whole()
    assert len(found.parts) == 15
    counts = {need: found.having(need) for need in ("symptom", "test", "replacement", "figure")}
    assert counts == {"symptom": 9, "test": 10, "replacement": 2, "figure": 7}


def test_each_way_a_part_is_drawn_counts() -> None:
    """A circuit, a wheel, a wheel it reads, leads on its posts; a harness has none of them."""
    for part in ("main-relay", "trigger-wheel-60-2", "crank-sensor-hall", "battery"):
        assert "figure" not in lacks(whole(), part)
    assert lacks(whole(), "crank-sensor-harness") == ("replacement", "figure")


def test_the_weakest_part_comes_first_and_what_nobody_is_sent_to_last() -> None:
    """The starter is judged and has no more; the undertray is named in steps alone."""
    order = [one.part.id for one in whole().parts]
    assert order[0] == "starter"
    assert lacks(whole(), "starter") == ("symptom", "replacement", "figure")
    idle = {one.part.id for one in whole().parts if not one.led_to}
    assert idle == {
        "air-duct", "cooling-fan", "exhaust", "ignition-and-injection-fuse", "undertray"
    }  # fmt: skip
    assert order.index("battery") < min(order.index(part) for part in idle)


def test_a_part_that_loses_its_only_test_is_the_weakest() -> None:
    """The pulley's ring is judged by other tests too; the starter by one alone."""
    kb = without(demonstration(), "tests", "battery-cranking")
    found = coverage(kb)
    assert "test" in lacks(found, "starter") and "test" not in lacks(found, "battery")
    assert not next(one.led_to for one in found.parts if one.part.id == "starter")


def test_vehicles_counted_by_hand() -> None:
    """11 parts on the 1.2 and 12 on the 1.6; of 8 on each a file gives a value of its own."""
    counts = {
        one.vehicle.id: [sum(cover is c for _, cover in one.parts) for c in Cover]
        for one in whole().vehicles
    }
    assert counts == {"corrie-1-2": [8, 0, 3], "corrie-1-6": [8, 0, 4]}
    assert whole().vehicles[0].vehicle.id == "corrie-1-6"  # 8 of 12 is less than 8 of 11


def test_a_band_alone_is_cover_in_part() -> None:
    """The exhaust has one value; made a plausibility band it says nothing of this vehicle."""
    kb = demonstration()
    (own,) = [s for s in kb.records["specs"].values() if s.component == "exhaust"]  # type: ignore[attr-defined]
    found = coverage(changed(kb, "specs", own.id, standing="plausibility_band"))
    for one in found.vehicles:
        covers = {part.id: cover for part, cover in one.parts}
        if "exhaust" in covers:
            assert covers["exhaust"] is Cover.PART


def test_a_code_whose_tests_fit_one_vehicle_is_covered_in_part() -> None:
    """All five codes are whole; one left with a test of the 1.6 lacks one on the 1.2."""
    assert [one.without for one in whole().codes] == [()] * 5
    found = coverage(changed(demonstration(), "codes", "p0335", tests=["hall-pull-up"]))
    assert found.codes[0].code.id == "p0335"
    assert found.codes[0].without == ("corrie-1-2",) and found.codes[0].cover is Cover.PART


def test_values_nobody_vouches_for() -> None:
    """34 value files: 10 common practice, 24 of an invented sheet; once it is read, they count."""
    assert whole().values == 34
    reasons = [one.reasons for one in whole().unverified]
    assert (reasons.count(("practice",)), reasons.count(("invented",))) == (10, 24)
    read = changed(demonstration(), "sources", "corrie-data-sheet", read="in_part")
    assert {one.reasons for one in coverage(read).unverified} == {("practice",)}
    kb = changed(demonstration(), "specs", "inductive-winding", reviewed=None)
    kb = changed(kb, "sources", "corrie-data-sheet", read="second_hand")
    why = {one.spec.id: one.reasons for one in coverage(kb).unverified}
    assert why["inductive-winding"] == ("unreviewed", "second_hand")
    assert why["crank-time"] == ("practice",)


def test_reviews_have_owner_and_day() -> None:
    """Two years after the release, one for work with a WARNING box; none is due on its last day."""
    by_key = {one.record.key: one for one in whole().reviews}
    assert len(by_key) == 176
    term, job = by_key["terms/air-gap"], by_key["tests/battery-cranking"]
    assert (term.due, job.due) == (datetime.date(2028, 9, 21), datetime.date(2027, 9, 21))
    assert not job.overdue(datetime.date(2027, 9, 21)) and job.overdue(datetime.date(2027, 9, 22))
    never = changed(demonstration(), "terms", "air-gap", reviewed=None, approved=None)
    first = coverage(never).reviews[0]
    assert first.record.key == "terms/air-gap" and first.due is None
    assert not first.overdue(datetime.date(2099, 1, 1))


def test_a_later_review_moves_the_day() -> None:
    """The later of review and release counts."""
    seen = Signed(by="workshop-lead", date=datetime.date(2027, 2, 28))
    found = coverage(changed(demonstration(), "terms", "air-gap", reviewed=seen))
    (term,) = [one for one in found.reviews if one.record.key == "terms/air-gap"]
    assert term.due == datetime.date(2029, 2, 28)


def test_exceptions_are_counted() -> None:
    """None stands in the small manual; one written down is given with its record."""
    assert whole().exceptions == ()
    one = ReasonedException(
        check="long-step", reason="It has to be in sight.", approved_by="workshop-lead",
        date=datetime.date(2026, 9, 21),
    )  # fmt: skip
    found = coverage(changed(demonstration(), "tests", "look-and-wiggle", exceptions=[one]))
    assert [(r.key, e.check) for r, e in found.exceptions] == [
        ("tests/look-and-wiggle", "long-step")
    ]  # fmt: skip
