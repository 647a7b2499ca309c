"""The figures of values: what they draw of a wheel with a gap, and of one without."""

from __future__ import annotations

import pytest

from generator.pages.book import Book
from generator.pages.pictures import value_picture
from generator.pages.values import value_view
from generator.records.kinds.things import Component, Spec, Wheel
from tests.demo import changed, demonstration

PICTURES = [
    ("inductive-output", "trigger-wheel-60-2", "2 teeth missing"),
    ("hall-high-level", "trigger-wheel-36-1", "1 tooth missing"),
]


def picture(spec: str, wheel: str, missing: int) -> str:
    """Draw a value's figure with so many teeth missing from the wheel that its part reads."""
    read = demonstration().get("components", wheel, Component).wheel
    assert read is not None
    other = Wheel(positions=read.positions, missing=missing)
    book = Book.of(changed(demonstration(), "components", wheel, wheel=other))
    return str(value_picture(book, value_view(book, book.kb.get("specs", spec, Spec))))


@pytest.mark.parametrize(("spec", "wheel", "gap"), PICTURES)
def test_gap_of_the_wheel_is_named(spec: str, wheel: str, gap: str) -> None:
    """A wheel with a gap gives a wave with that gap, in the figure and in its description."""
    drawn = picture(spec, wheel, int(gap[0]))
    assert f">{gap}<" in drawn
    assert "No tooth is missing" not in drawn


@pytest.mark.parametrize(("spec", "wheel", "gap"), PICTURES)
def test_wheel_without_a_gap_is_drawn_whole(spec: str, wheel: str, gap: str) -> None:
    """A wheel that misses no tooth gives an even wave and nothing about a gap."""
    drawn = picture(spec, wheel, 0)
    assert "No tooth is missing" in drawn
    assert gap not in drawn
    assert "hatch" not in drawn.split("</defs>")[-1]
