"""The meter and its leads."""

from __future__ import annotations

import itertools
from typing import Any

import pytest

from generator.figures import Cavity, Connector, HookupWords, Lead, Meter, meter_hookup
from tests.figures.reading import (
    drawn_with,
    elements,
    filled_with,
    parsed,
    strokes,
    text_at,
    texts,
)
from tests.figures.samples import ONE_ROW, TWO_ROWS, hookup, hookup_to_stud

WORDS = HookupWords(
    title="t", desc="d", dial="Dial", red="Red lead", black="Black lead", keyway="key up",
    state="unplugged", view="looking into the terminals",
)  # fmt: skip
METER = Meter("0.86", "kΩ", ("10 A", "COM", "VΩ"))


def on_pins(
    red: str, black: str, connector: Connector | None = TWO_ROWS, meter: Meter = METER
) -> str:
    """Draw a hookup with both leads on pins."""
    leads = Lead("VΩ", "red text", red), Lead("COM", "black text", black)
    return meter_hookup("f", WORDS, meter, connector, *leads)


def needle_ends(root: Any) -> list[tuple[float, float]]:
    """Give where the two probes' needles end, the first drawn first."""
    needles = drawn_with(root, "ink", stroke_width="2", fill="none")
    return [strokes(each.attrib["d"])[-1][-1] for each in needles]


def cables(root: Any, role: str) -> list[list[tuple[float, float]]]:
    """Give the cables of a role; the first is the sample beside the text."""
    return [strokes(p.attrib["d"])[0] for p in drawn_with(root, role, stroke_width="3.2")]


@pytest.mark.parametrize(("red", "black"), list(itertools.permutations("12356", 2)))
def test_probes_end_under_the_right_numbers(red: str, black: str) -> None:
    """Each needle ends in the column and row of its pin."""
    root = parsed(on_pins(red, black))
    ends = needle_ends(root)
    # The lead of the right-hand socket, here the red one, is drawn first.
    for (x, y), pin in zip(ends, (red, black), strict=True):
        number = text_at(root, pin)
        assert x == pytest.approx(number.x, abs=0.5)
        assert abs(y - number.y) < 40


@pytest.mark.parametrize(("red", "black"), [("3", "6"), ("1", "8"), ("5", "7")])
def test_leads_start_in_their_sockets(red: str, black: str) -> None:
    """Each cable starts under the name of its socket."""
    root = parsed(on_pins(red, black))
    for role, socket in (("red-lead", "VΩ"), ("black-lead", "COM")):
        start = cables(root, role)[-1][0]
        assert start[0] == pytest.approx(text_at(root, socket).x, abs=0.5)


def test_leads_differ_without_colour() -> None:
    """The black lead is ringed along its length, in the drawing and in the sample beside it."""
    root = parsed(on_pins("1", "2"))
    rings = [p.attrib["d"] for p in drawn_with(root, "metal") if "stroke-dasharray" in p.attrib]
    black = [p.attrib["d"] for p in drawn_with(root, "black-lead", stroke_width="3.2")]
    red = [p.attrib["d"] for p in drawn_with(root, "red-lead", stroke_width="3.2")]
    assert rings == black
    assert not set(rings) & set(red)


def test_words_say_what_the_drawing_shows() -> None:
    """Display, setting, both leads with sockets and pins, state, view and keyway are written."""
    shown = [t.text for t in texts(parsed(on_pins("1", "2")))]
    for wanted in ("0.86", "kΩ", "Red lead: VΩ", "red text", "Black lead: COM", "black text",
                   "unplugged", "looking into the terminals", "key up"):  # fmt: skip
        assert wanted in shown


def test_stud_is_named_and_gripped() -> None:
    """A lead that goes to no pin ends at a stud with its name beside it."""
    root = parsed(hookup_to_stud("f"))
    named = [t for t in texts(root) if t.text.startswith("battery negative") and t.bold]
    assert len(named) == 1
    ends = needle_ends(root)
    assert any(abs(y - named[0].y) < 30 and x < named[0].x for x, y in ends)


def test_two_studs_need_no_connector() -> None:
    """A battery is measured at its posts, without any connector."""
    leads = Lead("VΩ", "positive post"), Lead("COM", "negative post")
    root = parsed(meter_hookup("f", WORDS, METER, None, *leads))
    shown = [t.text for t in texts(root)]
    assert shown.count("positive post") == shown.count("negative post") == 2
    assert "unplugged" not in shown


def test_state_is_drawn_as_well_as_written() -> None:
    """The two halves of the connector touch when it is plugged, and stand apart when not."""

    def halves(markup: str) -> list[float]:
        found = [r for r in elements(parsed(markup), "rect") if r.attrib.get("width") == "11"]
        return sorted(float(r.attrib["x"]) for r in found)

    left, right = halves(hookup("f"))
    assert right - left == 11
    left, right = halves(on_pins("1", "2", ONE_ROW))
    assert right - left > 11


@pytest.mark.parametrize(
    ("display", "size_at_least"), [("OL", 24), ("0.860 kΩ", 20), ("20 characters at all", 12)]
)
def test_display_fits_its_window(display: str, size_at_least: float) -> None:
    """What the meter shows is as large as fits, never under twelve units, never outside."""
    root = parsed(on_pins("1", "2", meter=Meter(display, "kΩ", METER.sockets)))
    window = next(r for r in elements(root, "rect") if r.attrib.get("height") == "40")
    left = float(window.attrib["x"])
    shown = [t for t in texts(root) if t.mono]
    assert "".join(t.text.replace(" ", "") for t in shown) == display.replace(" ", "")
    for text in shown:
        assert text.size >= size_at_least
        assert text.box[0] >= left
        assert text.box[2] <= left + float(window.attrib["width"])


def test_inner_rows_are_reached_between_columns() -> None:
    """On a connector of four rows, a needle passes the rows before at the edge of a column."""
    rows = tuple(tuple(Cavity(str(10 * r + c)) for c in range(10)) for r in range(1, 5))
    root = parsed(on_pins("24", "33", Connector(rows)))
    needles = drawn_with(root, "ink", stroke_width="2", fill="none")
    cell = text_at(root, "25").x - text_at(root, "24").x
    for needle, pin in zip(needles, ("24", "33"), strict=True):
        way = strokes(needle.attrib["d"])[-1]
        assert text_at(root, pin).x - way[0][0] == pytest.approx(cell / 2, abs=0.1)


def test_grips_are_filled_with_their_lead() -> None:
    """Each probe's grip has its lead's colour."""
    root = parsed(on_pins("1", "2"))
    assert len(filled_with(root, "red-lead")) == len(filled_with(root, "black-lead")) == 1


@pytest.mark.parametrize(
    ("red", "black", "connector", "message"),
    [
        (Lead("mA", "a", "1"), Lead("COM", "b", "2"), TWO_ROWS, "no socket 'mA'"),
        (Lead("VΩ", "a", "1"), Lead("VΩ", "b", "2"), TWO_ROWS, "in one socket"),
        (Lead("VΩ", "a", "1"), Lead("COM", "b", "1"), TWO_ROWS, "same place"),
        (Lead("VΩ", "post"), Lead("COM", "post"), None, "same place"),
        (Lead("VΩ", "a", "9"), Lead("COM", "b", "2"), TWO_ROWS, "no terminal at pin '9'"),
        (Lead("VΩ", "a", "4"), Lead("COM", "b", "2"), TWO_ROWS, "no terminal at pin '4'"),
        (Lead("VΩ", "a", "1"), Lead("COM", "post"), None, "no terminal at pin '1'"),
        (Lead("VΩ", ""), Lead("COM", "b", "2"), TWO_ROWS, "needs the text"),
    ],
)
def test_what_cannot_be_connected(
    red: Lead, black: Lead, connector: Connector | None, message: str
) -> None:
    """A hookup that no one could make is refused: a wrong drawing blows a fuse."""
    with pytest.raises(ValueError, match=message):
        meter_hookup("f", WORDS, METER, connector, red, black)
