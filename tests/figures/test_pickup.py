"""The waveform of an inductive pickup."""

from __future__ import annotations

import pytest

from generator.figures import PickupWords, pickup_wave
from tests.figures.reading import (
    drawn_with,
    elements,
    filled_with,
    level_ticks,
    parsed,
    scale_of,
    strokes,
    text_at,
    upright_ticks,
)
from tests.figures.samples import MISSING_SPAN, PICKUP_V, WINDOW_DEG, pickup

WORDS = PickupWords(
    title="t", desc="d", angle_axis="angle, °", volt_axis="V", gap="2 missing",
    peak_to_peak="4.6 V peak to peak",
)  # fmt: skip


def wave(**changes: object) -> str:
    """Draw the sample's wave with some arguments changed."""
    given: dict[str, object] = {
        "angle_deg": WINDOW_DEG, "volts": PICKUP_V, "missing_span": MISSING_SPAN, "tooth_count": 60,
    }  # fmt: skip
    return pickup_wave("f", WORDS, **(given | changes))  # type: ignore[arg-type]


def test_wave_stands_on_its_axes() -> None:
    """Read back against the tick labels, the wave spans ±2.3 V and rests at nought in the gap."""
    root = parsed(pickup("f"))
    (trace,) = drawn_with(root, "trace")
    across, down = scale_of(level_ticks(root), False), scale_of(upright_ticks(root), True)
    points = [(across.value_at(x), down.value_at(y)) for x, y in strokes(trace.attrib["d"])[0]]
    volts = [volt for _, volt in points]
    assert max(volts) == pytest.approx(2.3, abs=0.03)
    assert min(volts) == pytest.approx(-2.3, abs=0.03)
    resting = [volt for angle, volt in points if 349 < angle < 359]
    assert all(abs(volt) < 0.03 for volt in resting)
    assert points[0][0] == pytest.approx(300, abs=0.3)
    assert points[-1][0] == pytest.approx(396, abs=0.3)


def test_teeth_are_where_the_wheel_has_them() -> None:
    """A 96° window of a 60-position wheel shows 16 positions: 14 teeth and two dashed ones."""
    root = parsed(pickup("f"))
    (rim,) = filled_with(root, "metal")
    tops = min(y for _, y in strokes(rim.attrib["d"])[0])
    corners = [point for point in strokes(rim.attrib["d"])[0] if point[1] == tops]
    assert len(corners) == 2 * 14
    (ghosts,) = drawn_with(root, "accent", stroke_dasharray="2,2")
    assert len(strokes(ghosts.attrib["d"])) == 2
    across = scale_of(level_ticks(root), False)
    middles = [across.value_at(sum(x for x, _ in s[:4]) / 4) for s in strokes(ghosts.attrib["d"])]
    # Positions 58 and 59 of 60, six degrees each: middles at 351 and 357.
    assert middles == pytest.approx([351, 357], abs=0.5)


def test_gap_is_hatched_over_its_angles() -> None:
    """The hatching covers the angles given, and its text stands above it."""
    root = parsed(pickup("f"))
    across = scale_of(level_ticks(root), False)
    (hatched,) = [p for p in elements(root, "path") if p.attrib.get("fill") == "url(#f-hatch)"]
    angles = [across.value_at(x) for x, _ in strokes(hatched.attrib["d"])[0]]
    assert min(angles) == pytest.approx(348, abs=0.4)
    assert max(angles) == pytest.approx(360, abs=0.4)
    assert text_at(root, "2 teeth missing").y < min(y for _, y in strokes(hatched.attrib["d"])[0])


@pytest.mark.parametrize(("span_v", "wanted"), [(None, (-2.3, 2.3)), ((-1.0, 1.5), (-1.0, 1.5))])
def test_dimension_spans_what_its_text_says(
    span_v: tuple[float, float] | None, wanted: tuple[float, float]
) -> None:
    """The peak-to-peak dimension ends at the whole wave's peaks, or where the caller says."""
    root = parsed(wave(peak_span_v=span_v))
    down = scale_of(upright_ticks(root), True)
    (ends,) = [p for p in drawn_with(root, "ink") if p.attrib.get("stroke-dasharray")]
    volts = sorted(down.value_at(points[0][1]) for points in strokes(ends.attrib["d"]))
    assert volts == pytest.approx(wanted, abs=0.03)


def test_dead_pickup_can_be_drawn() -> None:
    """A flat line is a finding, not a fault of the figure."""
    root = parsed(wave(volts=[0.0] * len(WINDOW_DEG)))
    (trace,) = drawn_with(root, "trace")
    assert len({y for _, y in strokes(trace.attrib["d"])[0]}) == 1


def test_wheel_without_a_gap_has_every_tooth() -> None:
    """A wheel that misses no tooth shows all sixteen of its window, nothing hatched or dashed."""
    root = parsed(wave(missing_span=None))
    (rim,) = filled_with(root, "metal")
    tops = min(y for _, y in strokes(rim.attrib["d"])[0])
    assert len([point for point in strokes(rim.attrib["d"])[0] if point[1] == tops]) == 2 * 16
    assert not drawn_with(root, "accent", stroke_dasharray="2,2")
    assert not [p for p in elements(root, "path") if "hatch" in p.attrib.get("fill", "")]
    (trace,) = drawn_with(root, "trace")
    assert text_at(root, "V").y < min(y for _, y in strokes(trace.attrib["d"])[0])


def test_fine_sampling_costs_little() -> None:
    """Ten times the samples of the same wave stay within a waveform's limit."""
    from math import pi, sin

    angle_deg = [300 + 0.01 * k for k in range(9601)]
    volts = [2.3 * sin(2 * pi * each / 6) for each in angle_deg]
    assert len(wave(angle_deg=angle_deg, volts=volts).encode()) <= 16 * 1024


@pytest.mark.parametrize(
    ("changes", "message"),
    [
        ({"volts": PICKUP_V[1:]}, "volts has"),
        ({"missing_span": (280.0, 310.0)}, "missing_span"),
        ({"missing_span": (360.0, 348.0)}, "missing_span"),
        ({"missing_span": (float("nan"), 350.0)}, "missing_span"),
        ({"tooth_count": 0}, "tooth_count"),
        ({"peak_span_v": (0.0, float("nan"))}, "peak_span_v"),
        ({"angle_deg": [*WINDOW_DEG[:-1], WINDOW_DEG[0]]}, "angle_deg"),
    ],
)
def test_what_cannot_be_drawn(changes: dict[str, object], message: str) -> None:
    """Bad numbers are refused with the name of the argument."""
    with pytest.raises(ValueError, match=message):
        wave(**changes)
