"""The hand-drawn elements."""

from __future__ import annotations

from math import dist

import pytest

from generator.figures.document import Words
from generator.figures.drawing import Drawing, boxes, polar, rounded, through
from generator.figures.style import Role
from tests.figures.reading import drawn_with, elements, filled_with, parsed, strokes, texts

WORDS = Words(title="t", desc="d")


@pytest.mark.parametrize(
    ("clock_deg", "point"), [(0, (5, 0)), (90, (15, 10)), (180, (5, 20)), (270, (-5, 10))]
)
def test_polar_is_a_clock(clock_deg: float, point: tuple[float, float]) -> None:
    """Angles run clockwise from the top, with y down the sheet (closed form)."""
    assert polar((5, 10), 10, clock_deg) == pytest.approx(point)


def test_boxes_stand_where_wanted() -> None:
    """Rectangles drawn one from the other still have their own corners."""
    corners = [(1.5, 2.0), (21.5, 2.0), (1.5, 40.0)]
    for subpath, (x, y) in zip(strokes(boxes(corners, 15, 33)), corners, strict=True):
        assert subpath[:4] == [(x, y), (x + 15, y), (x + 15, y + 33), (x, y + 33)]


def test_rounded_keeps_its_ends_and_cuts_corners() -> None:
    """A rounded corner starts and ends at its radius from the corner."""
    (points,) = strokes(rounded([(0, 0), (50, 0), (50, 80)], 9))
    assert points == [(0, 0), (41, 0), (50, 9), (50, 80)]


def test_rounded_never_overshoots_a_short_leg() -> None:
    """A leg shorter than the radius is cut at its middle."""
    (points,) = strokes(rounded([(0, 0), (8, 0), (8, 80)], 9))
    assert points[1] == (4, 0)


def test_arrowhead_points_where_told() -> None:
    """An arrowhead's tip is its end, and its wings lie back along the way."""
    drawing = Drawing("f")
    drawing.arrow((0, 0), (30, 40), Role.ACCENT, head=10)
    (head,) = filled_with(parsed(drawing.finish("kind", WORDS, 50)), "accent")
    tip, left, right = strokes(head.attrib["d"])[0][:3]
    assert tip == pytest.approx((30, 40))
    middle = ((left[0] + right[0]) / 2, (left[1] + right[1]) / 2)
    # Ten units back along 3:4.
    assert middle == pytest.approx((24, 32), abs=0.01)
    assert dist(left, right) == pytest.approx(8.4, abs=0.02)


def test_lines_of_text_step_down() -> None:
    """Lines of one text share their look and stand fifteen units apart."""
    drawing = Drawing("f")
    drawing.text(10, 20, ["one", "two"], Role.MUTED, align="end", bold=True)
    one, two = texts(parsed(drawing.finish("kind", WORDS, 50)))
    assert (one.y, two.y) == (20, 35)
    assert (one.anchor, one.bold, one.fill) == (two.anchor, two.bold, two.fill)
    assert (one.anchor, one.bold) == ("end", True)


def test_path_draws_dashes() -> None:
    """Dashes reach the element: they tell lines apart without colour."""
    drawing = Drawing("f")
    drawing.path(through([(0, 0), (5, 5)]), edge=Role.LIMIT, width=1.5, dashes="4 2")
    root = parsed(drawing.finish("kind", WORDS, 50))
    assert len(drawn_with(root, "limit", stroke_dasharray="4 2", stroke_width="1.5")) == 1


def test_tag_rings_its_number() -> None:
    """A tag's number stands in the middle of its ring."""
    drawing = Drawing("f")
    drawing.tag(40, 50, "3")
    root = parsed(drawing.finish("kind", WORDS, 90))
    (ring,) = elements(root, "circle")
    (number,) = texts(root)
    assert (ring.attrib["cx"], ring.attrib["cy"]) == ("40", "50")
    assert (number.text, number.x, number.anchor) == ("3", 40, "middle")
