"""The toothed wheel and its sensor."""

from __future__ import annotations

from math import atan2, degrees, hypot
from typing import Any

import pytest

from generator.figures import WheelWords, trigger_wheel
from tests.figures.reading import drawn_with, elements, filled_with, parsed, strokes, text_at, texts

WORDS = WheelWords(
    title="t", desc="d", sensor="sensor", gap="air gap", missing="missing", direction="clockwise"
)


def centre(root: Any) -> tuple[float, float]:
    """Give the middle of the wheel: of its largest circle."""
    hub = max(elements(root, "circle"), key=lambda each: float(each.attrib["r"]))
    return (float(hub.attrib["cx"]), float(hub.attrib["cy"]))


def clock_deg(root: Any, point: tuple[float, float]) -> float:
    """Give a point's angle clockwise from the top, -180 to 180."""
    x, y = centre(root)
    return degrees(atan2(point[0] - x, y - point[1]))


def rim(root: Any) -> list[tuple[float, float]]:
    """Give the outline of the wheel."""
    return max((strokes(p.attrib["d"])[0] for p in filled_with(root, "metal")), key=len)


@pytest.mark.parametrize(("positions", "missing"), [(60, 2), (36, 1), (36, 0), (12, 3), (4, 1)])
def test_teeth_are_counted_right(positions: int, missing: int) -> None:
    """The rim has one tooth a position less the missing ones, which are dashed."""
    root = parsed(trigger_wheel("f", WORDS, positions, missing, 0, 180))
    middle = centre(root)
    radii = [hypot(x - middle[0], y - middle[1]) for x, y in rim(root)]
    outer = sum(radius > max(radii) - 1 for radius in radii)
    assert outer == 2 * (positions - missing)
    ghosts = drawn_with(root, "accent", stroke_dasharray="2 2")
    assert sum(len(strokes(p.attrib["d"])) for p in ghosts) == missing


@pytest.mark.parametrize("missing_deg", [0, 90, -75, 200])
def test_missing_teeth_are_where_told(missing_deg: float) -> None:
    """The middle of the dashed teeth is at the angle given, and no tooth is there."""
    root = parsed(trigger_wheel("f", WORDS, 60, 2, missing_deg + 90, missing_deg))
    (ghosts,) = drawn_with(root, "accent", stroke_dasharray="2 2")
    points = [point for stroke in strokes(ghosts.attrib["d"]) for point in stroke]
    mean = (sum(x for x, _ in points) / len(points), sum(y for _, y in points) / len(points))
    off = (clock_deg(root, mean) - missing_deg + 180) % 360 - 180
    assert off == pytest.approx(0, abs=0.5)
    # Two positions of six degrees: no tooth within 5 degrees of their middle.
    middle = centre(root)
    tips = [p for p in rim(root) if hypot(p[0] - middle[0], p[1] - middle[1]) > 90]
    apart = [abs((clock_deg(root, p) - missing_deg + 180) % 360 - 180) for p in tips]
    assert min(apart) > 5


@pytest.mark.parametrize("sensor_deg", [0, 45, 130, 180, 270])
def test_sensor_faces_the_wheel_at_its_angle(sensor_deg: float) -> None:
    """The sensor's body is on its radius, outside the teeth, with a gap between."""
    root = parsed(trigger_wheel("f", WORDS, 60, 2, sensor_deg, sensor_deg + 120))
    (body,) = filled_with(root, "band")
    corners = strokes(body.attrib["d"])[0][:4]
    mean = (sum(x for x, _ in corners) / 4, sum(y for _, y in corners) / 4)
    off = (clock_deg(root, mean) - sensor_deg + 180) % 360 - 180
    assert off == pytest.approx(0, abs=0.2)
    middle = centre(root)
    assert min(hypot(x - middle[0], y - middle[1]) for x, y in corners) > 95


@pytest.mark.parametrize("sensor_deg", range(0, 360, 15))
def test_everything_stays_on_the_paper(sensor_deg: float) -> None:
    """Wherever the sensor sits, nothing is cut off and no two tags touch."""
    root = parsed(trigger_wheel("f", WORDS, 60, 2, sensor_deg, sensor_deg + 20))
    height = float(root.attrib["viewBox"].split()[3])
    points = [
        point
        for role in ("band", "metal")
        for path in filled_with(root, role)
        for point in strokes(path.attrib["d"])[0]
    ]
    tags = [(t.x, t.y - 4.3) for t in texts(root) if t.text.isdigit()]
    for x, y in [*points, *((x + dx, y + dy) for x, y in tags for dx in (-9, 9) for dy in (-9, 9))]:
        assert 1 < x < 359
        assert 1 < y < height - 1
    for index, one in enumerate(tags):
        for other in tags[index + 1 :]:
            assert hypot(one[0] - other[0], one[1] - other[1]) > 19


@pytest.mark.parametrize("clockwise", [True, False])
def test_arrow_turns_the_right_way(clockwise: bool) -> None:
    """The arrow of rotation starts behind and ends ahead, seen on a clock."""
    root = parsed(trigger_wheel("f", WORDS, 60, 2, 0, 90, clockwise))
    (arc,) = drawn_with(root, "ink", stroke_linecap="round")
    points = strokes(arc.attrib["d"])[0]
    turned = (clock_deg(root, points[-1]) - clock_deg(root, points[0])) % 360
    assert (turned < 180) is clockwise


def test_key_numbers_what_the_tags_number() -> None:
    """Each tag on the drawing is in the key, beside its words."""
    root = parsed(trigger_wheel("f", WORDS, 60, 2, 0, 90))
    tags = [t for t in texts(root) if t.text.isdigit()]
    assert sorted(t.text for t in tags) == sorted("11223344")
    for number, words in zip("1234", ("sensor", "air gap", "missing", "clockwise"), strict=True):
        line = text_at(root, words)
        assert any(t.text == number and abs(t.y - line.y) < 1 for t in tags)


def test_wheel_without_a_gap_has_no_key_for_one() -> None:
    """On a full wheel, or with empty words, the key skips the line and keeps counting."""
    root = parsed(trigger_wheel("f", WORDS, 36, 0, 0, 0))
    assert not [t for t in texts(root) if t.text == "missing"]
    assert sorted(t.text for t in texts(root) if t.text.isdigit()) == sorted("112233")


@pytest.mark.parametrize(
    ("positions", "missing", "angle"),
    [(3, 1, 0), (121, 1, 0), (60, 60, 0), (60, -1, 0), (60, 2, float("nan"))],
)
def test_what_cannot_be_drawn(positions: int, missing: int, angle: float) -> None:
    """A wheel that cannot be is refused."""
    with pytest.raises(ValueError, match=r"wheel to draw|angles"):
        trigger_wheel("f", WORDS, positions, missing, angle, 0)
