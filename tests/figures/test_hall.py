"""The square wave of a Hall sensor."""

from __future__ import annotations

from itertools import pairwise

import pytest

from generator.figures import SquareLevels, SquareWords, square_wave
from tests.figures.reading import (
    drawn_with,
    filled_with,
    level_ticks,
    parsed,
    scale_of,
    strokes,
    text_at,
    upright_ticks,
)
from tests.figures.samples import HALL_V, LEVELS, MISSING_SPAN, WINDOW_DEG, hall

WORDS = SquareWords(
    title="t", desc="d", angle_axis="angle, °", volt_axis="V", high="high", low="low",
    threshold="neither", gap="gap", flat_high="Stuck high.", flat_low="Stuck low.",
)  # fmt: skip


def wave(**changes: object) -> str:
    """Draw the sample's wave with some arguments changed."""
    given: dict[str, object] = {
        "angle_deg": WINDOW_DEG, "volts": HALL_V, "levels": LEVELS, "missing_span": MISSING_SPAN,
        "tooth_count": 60,
    }  # fmt: skip
    return square_wave("f", WORDS, **(given | changes))  # type: ignore[arg-type]


def test_edges_are_upright_and_levels_true() -> None:
    """Read back against the tick labels: only 0.2 V and 5 V, joined by upright edges."""
    root = parsed(hall("f"))
    trace = drawn_with(root, "trace", stroke_width="1.8")[0]
    down = scale_of(upright_ticks(root), True)
    points = strokes(trace.attrib["d"])[0]
    for (x, y), (next_x, next_y) in pairwise(points):
        assert abs(x - next_x) < 0.02 or abs(y - next_y) < 0.02
        assert down.value_at(y) == pytest.approx(5, abs=0.05) or down.value_at(y) == pytest.approx(
            0.2, abs=0.05
        )


def test_gap_is_one_long_high() -> None:
    """The longest level stretch is the missing teeth's: 12° and the half pitch that follows."""
    root = parsed(hall("f"))
    trace = drawn_with(root, "trace", stroke_width="1.8")[0]
    across, down = scale_of(level_ticks(root), False), scale_of(upright_ticks(root), True)
    points = strokes(trace.attrib["d"])[0]
    runs = [(b[0] - a[0], a[1]) for a, b in pairwise(points)]
    longest, y = max(runs)
    assert longest * across.slope == pytest.approx(15, abs=0.6)
    assert down.value_at(y) == pytest.approx(5, abs=0.05)


def test_threshold_region_lies_between_the_limits() -> None:
    """The first band, the wave's own, reaches from 0.5 V to 4.5 V, with a dashed line at each."""
    root = parsed(hall("f"))
    down = scale_of(upright_ticks(root), True)
    ys = [y for _, y in strokes(filled_with(root, "band")[0].attrib["d"])[0]]
    assert down.value_at(max(ys)) == pytest.approx(0.5, abs=0.05)
    assert down.value_at(min(ys)) == pytest.approx(4.5, abs=0.05)
    dashed = [p for p in drawn_with(root, "limit") if "stroke-dasharray" in p.attrib]
    assert len(dashed) == 6  # two in the wave and in each of two panels


def test_panels_show_a_flat_line_outside_the_threshold_region() -> None:
    """The left panel's line lies above its threshold region, the right one's below."""
    root = parsed(hall("f"))
    flat = [strokes(p.attrib["d"])[0] for p in drawn_with(root, "trace", stroke_width="2.2")]
    regions = [strokes(p.attrib["d"])[0] for p in filled_with(root, "band")[1:]]
    for line in flat:
        assert len({y for _, y in line}) == 1
    assert flat[0][0][0] < flat[1][0][0]
    assert flat[0][0][1] < min(y for _, y in regions[0])
    assert flat[1][0][1] > max(y for _, y in regions[1])


def test_captions_stand_below_their_panels() -> None:
    """What a stuck line points to is written under the panel that shows it."""
    root = parsed(wave())
    high, low = text_at(root, "Stuck high."), text_at(root, "Stuck low.")
    panels = [strokes(p.attrib["d"])[0] for p in drawn_with(root, "trace", stroke_width="2.2")]
    for caption, panel in ((high, panels[0]), (low, panels[1])):
        assert panel[0][0] <= caption.x < panel[-1][0]
        assert caption.y > panel[0][1]


def test_teeth_stand_in_their_half_of_the_pitch() -> None:
    """A tooth stands where the signal is low, or where the caller says."""
    for share, middles in (((0.5, 1.0), [352.5, 358.5]), ((0.0, 0.5), [349.5, 355.5])):
        root = parsed(wave(tooth_share=share))
        across = scale_of(level_ticks(root), False)
        (ghosts,) = drawn_with(root, "accent", stroke_dasharray="2,2")
        found = [across.value_at(sum(x for x, _ in s[:4]) / 4) for s in strokes(ghosts.attrib["d"])]
        assert found == pytest.approx(middles, abs=0.5)


@pytest.mark.parametrize(
    ("changes", "message"),
    [
        ({"levels": SquareLevels(0.2, 4.5, 0.5, 5.0)}, "must ascend"),
        ({"levels": SquareLevels(0.2, 0.5, 4.5, float("nan"))}, "levels"),
        ({"volts": HALL_V[1:]}, "volts has"),
        ({"missing_span": (0.0, 12.0)}, "missing_span"),
        ({"tooth_count": -1}, "tooth_count"),
        ({"tooth_share": (0.7, 0.3)}, "tooth_share"),
    ],
)
def test_what_cannot_be_drawn(changes: dict[str, object], message: str) -> None:
    """Bad numbers are refused with the name of the argument."""
    with pytest.raises(ValueError, match=message):
        wave(**changes)
