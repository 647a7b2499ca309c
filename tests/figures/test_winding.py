"""The band of a winding against temperature."""

from __future__ import annotations

import pytest

from generator.figures import BandReading, BandRow, BandWords, winding_band
from tests.figures.reading import (
    drawn_with,
    filled_with,
    level_ticks,
    parsed,
    scale_of,
    strokes,
    text_at,
    texts,
    upright_ticks,
)
from tests.figures.samples import HIGH_OHM, LOW_OHM, NOMINAL_OHM, TEMPS_C, winding

WORDS = BandWords(
    title="t", desc="d", temp_axis="temperature, °C", value_axis="resistance",
    low="lowest", nominal="nominal", high="highest",
)  # fmt: skip


def band(**changes: object) -> str:
    """Draw the sample's band with some arguments changed."""
    given: dict[str, object] = {
        "temps_c": TEMPS_C, "low": LOW_OHM, "nominal": NOMINAL_OHM, "high": HIGH_OHM, "unit": "Ω",
    }  # fmt: skip
    return winding_band("f", WORDS, **(given | changes))  # type: ignore[arg-type]


def test_curves_stand_on_their_axes() -> None:
    """Read back against the tick labels, each curve's ends are the numbers it was given."""
    root = parsed(winding("f"))
    across, down = scale_of(level_ticks(root), False), scale_of(upright_ticks(root), True)
    limits = drawn_with(root, "limit", stroke_width="1.3")
    nominal = drawn_with(root, "trace", stroke_width="1.8")
    curves = [strokes(each.attrib["d"])[0] for each in (*limits, *nominal)]
    for points, values in zip(curves, (LOW_OHM, HIGH_OHM, NOMINAL_OHM), strict=True):
        for point, temp_c, ohm in (
            (points[0], TEMPS_C[0], values[0]), (points[-1], TEMPS_C[-1], values[-1]),
        ):  # fmt: skip
            assert across.value_at(point[0]) == pytest.approx(temp_c, abs=0.3)
            assert down.value_at(point[1]) == pytest.approx(ohm, abs=2)


def test_limits_differ_without_colour() -> None:
    """Limits are dashed and the nominal line is not."""
    root = parsed(winding("f"))
    assert all(
        "stroke-dasharray" in p.attrib for p in drawn_with(root, "limit", stroke_width="1.3")
    )
    (nominal,) = drawn_with(root, "trace", stroke_width="1.8")
    assert "stroke-dasharray" not in nominal.attrib


def test_band_lies_between_the_limits() -> None:
    """The filled band reaches from the low limit to the high one at both ends."""
    root = parsed(winding("f"))
    (area,) = filled_with(root, "band")
    down = scale_of(upright_ticks(root), True)
    values = [down.value_at(y) for _, y in strokes(area.attrib["d"])[0]]
    assert min(values) == pytest.approx(min(LOW_OHM), abs=2)
    assert max(values) == pytest.approx(max(HIGH_OHM), abs=2)


def test_rows_show_their_figures_at_their_temperature() -> None:
    """A row's figures stand above and below the band at its temperature, as the table has them."""
    root = parsed(winding("f"))
    across = scale_of(level_ticks(root), False)
    for temp_c, low, high in ((-20, "652", "797"), (60, "896", "1095")):
        assert across.value_at(text_at(root, low).x) == pytest.approx(temp_c, abs=1)
        assert text_at(root, high).y < text_at(root, low).y


def test_crowded_rows_are_left_to_the_table() -> None:
    """Rows too close to letter are left out rather than written over each other."""
    rows = [BandRow(float(t), f"{t}low", f"{t}high") for t in range(0, 100, 2)]
    shown = [t.text for t in texts(parsed(band(rows=rows))) if t.text.endswith(("low", "high"))]
    assert 4 <= len(shown) <= 20
    assert len(shown) % 2 == 0


def test_rows_off_the_plot_are_left_out() -> None:
    """A row beyond the temperatures drawn is not squeezed to the edge."""
    assert "hot" not in band(rows=[BandRow(400, "hot", "hotter")])


def test_reading_stands_at_its_values() -> None:
    """The reading's lines meet at its temperature and its resistance."""
    root = parsed(winding("f", reading_ohm=1240))
    across, down = scale_of(level_ticks(root), False), scale_of(upright_ticks(root), True)
    (lines,) = drawn_with(root, "accent", stroke_width="0.9")
    corner = strokes(lines.attrib["d"])[0][1]
    assert across.value_at(corner[0]) == pytest.approx(85, abs=0.5)
    assert down.value_at(corner[1]) == pytest.approx(1240, abs=3)


@pytest.mark.parametrize(("ohm", "rises"), [(1e6, True), (0.0, False)])
def test_reading_far_off_is_an_arrow(ohm: float, rises: bool) -> None:
    """A reading that the scale does not reach is an arrow out of the plot, not a dot inside it."""
    root = parsed(winding("f", reading_ohm=ohm))
    assert not drawn_with(root, "accent", stroke_width="1.6")
    (head,) = filled_with(root, "accent")
    tip, *wings = strokes(head.attrib["d"])[0][:3]
    assert (tip[1] < min(y for _, y in wings)) is rises


def test_close_ends_are_named_apart() -> None:
    """A band of a hundredth still has three legible names."""
    root = parsed(band(low=[0.995 * v for v in NOMINAL_OHM], high=[1.005 * v for v in NOMINAL_OHM]))
    places = [text_at(root, name).y for name in ("highest", "nominal", "lowest")]
    assert places[1] - places[0] >= 12
    assert places[2] - places[1] >= 12


def test_flat_band_can_be_drawn() -> None:
    """A band without height or slope is no fault."""
    flat = [120.0, 120.0]
    assert "nominal" in band(temps_c=[0.0, 40.0], low=flat, nominal=flat, high=flat)


@pytest.mark.parametrize(
    ("changes", "message"),
    [
        ({"low": LOW_OHM[:-1]}, "low has 18 values"),
        ({"low": HIGH_OHM}, "in that order"),
        ({"temps_c": TEMPS_C[::-1]}, "temps_c"),
        ({"high": [*HIGH_OHM[:-1], float("inf")]}, "high"),
        ({"reading": BandReading(20, float("nan"), "OL")}, "reading"),
        ({"rows": [BandRow(float("nan"), "a", "b")]}, "row"),
    ],
)
def test_what_cannot_be_drawn(changes: dict[str, object], message: str) -> None:
    """Bad numbers are refused with the name of the argument."""
    with pytest.raises(ValueError, match=message):
        band(**changes)
