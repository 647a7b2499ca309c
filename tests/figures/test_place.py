"""Where on an engine to look."""

from __future__ import annotations

import itertools
from typing import Any

import pytest

from generator.figures import Reach, Seen, Zone, where_to_look
from tests.figures.reading import elements, filled_with, parsed, strokes, texts
from tests.figures.samples import place_words

ALL = list(itertools.product(Zone, Seen, Reach))


def hatched(root: Any) -> list[tuple[float, float, float, float]]:
    """Give the hatched rectangles: left, top, right, bottom."""
    found = [r for r in elements(root, "rect") if r.attrib.get("fill") == "url(#f-hatch)"]
    boxes = [[float(r.attrib[k]) for k in ("x", "y", "width", "height")] for r in found]
    return [(x, y, x + wide, y + tall) for x, y, wide, tall in boxes]


@pytest.mark.parametrize(("zone", "seen", "reach"), ALL)
def test_one_zone_is_hatched_pointed_to_and_bold(zone: Zone, seen: Seen, reach: Reach) -> None:
    """The zone is told by pattern, pointer and weight: colour is never needed."""
    root = parsed(where_to_look("f", place_words(), zone, seen, reach))
    ((left, top, right, bottom),) = hatched(root)
    (dot,) = [c for c in elements(root, "circle") if c.attrib["r"] == "4"]
    assert left < float(dot.attrib["cx"]) < right
    assert top < float(dot.attrib["cy"]) < bottom
    name = getattr(place_words(), zone.value).split()[0]
    bold = [t.text for t in texts(root) if t.bold and "accent" in t.fill]
    assert bold[0].startswith(name)


@pytest.mark.parametrize("seen", Seen)
def test_zones_are_four_places_in_order(seen: Seen) -> None:
    """From the front at the left: pulley, timing drive, beside the block, flywheel end."""
    lefts = [
        hatched(parsed(where_to_look("f", place_words(), zone, seen, Reach.ABOVE)))[0][0]
        for zone in (
            Zone.CRANK_PULLEY, Zone.TIMING_DRIVE, Zone.BESIDE_BLOCK, Zone.FLYWHEEL_END,
        )
    ]  # fmt: skip
    assert lefts == sorted(lefts)
    assert len(set(lefts)) == 4


@pytest.mark.parametrize(("zone", "seen"), list(itertools.product(Zone, Seen)))
def test_arrow_comes_from_the_side_the_hand_does(zone: Zone, seen: Seen) -> None:
    """The small arrow points up from below and down from above."""
    for reach, rises in ((Reach.BELOW, True), (Reach.ABOVE, False)):
        root = parsed(where_to_look("f", place_words(), zone, seen, reach))
        (head,) = filled_with(root, "accent")
        tip, *wings = strokes(head.attrib["d"])[0][:3]
        assert (tip[1] < wings[0][1]) is rises


def test_side_view_from_below_has_a_broad_arrow_to_the_zone() -> None:
    """Seen from the side, an arrow rises to the zone from under the engine."""
    root = parsed(where_to_look("f", place_words(), Zone.FLYWHEEL_END, Seen.SIDE, Reach.BELOW))
    ((left, _, right, bottom),) = hatched(root)
    (arrow,) = [
        strokes(p.attrib["d"])[0]
        for p in filled_with(root, "paper")
        if "accent" in p.attrib["stroke"]
    ]
    tip = min(arrow, key=lambda point: point[1])
    assert left < tip[0] < right
    assert 0 < tip[1] - bottom < 6


def test_all_zones_are_named() -> None:
    """The other zones keep their names, so that one knows what it is not."""
    shown = " ".join(t.text for t in texts(parsed(where_to_look("f", place_words(), *ALL[0]))))
    for word in ("pulley", "timing", "beside", "flywheel"):
        assert word in shown
