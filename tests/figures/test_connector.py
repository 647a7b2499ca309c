"""A connector as seen from one side."""

from __future__ import annotations

from dataclasses import replace

import pytest

from generator.figures import Cavity, Connector, Keyway, Words
from generator.figures.connector import placed
from generator.figures.drawing import Drawing
from tests.figures.reading import elements, parsed, strokes, texts
from tests.figures.samples import TWO_ROWS


def drawn(connector: Connector, probed: set[str] | None = None) -> str:
    """Draw a connector alone."""
    drawing = Drawing("f")
    placed(connector, 40).draw(drawing, probed or set())
    return drawing.finish("kind", Words(title="t", desc="d"), 300)


def test_pins_stand_in_their_cavities_as_listed() -> None:
    """Reading order on the sheet is the order given, row by row."""
    at = placed(TWO_ROWS, 40)
    found = {t.text: (t.x, t.y) for t in texts(parsed(drawn(TWO_ROWS))) if t.text.isdigit()}
    assert sorted(found, key=lambda pin: (found[pin][1], found[pin][0])) == list("12345678")
    for row, cavities in enumerate(TWO_ROWS.rows):
        for column, cavity in enumerate(cavities):
            left, top = at.cell(row, column)
            x, y = found[cavity.pin]
            assert left < x < left + at.cell_wide
            assert top < y < top + at.cell_tall


def test_wires_stand_under_their_pins() -> None:
    """A wire's colour stands in the cavity of its pin."""
    found = {t.text: t for t in texts(parsed(drawn(TWO_ROWS)))}
    assert found["GY/WH"].x == found["2"].x
    assert found["GN/YE"].x == found["7"].x
    assert 0 < found["GN/YE"].y - found["7"].y < 20


def test_empty_cavity_is_hatched() -> None:
    """A place without a terminal is hatched, and only that."""
    root = parsed(drawn(TWO_ROWS))
    hatched = [p for p in elements(root, "path") if p.attrib.get("fill") == "url(#f-hatch)"]
    (outline,) = [strokes(p.attrib["d"]) for p in hatched]
    left, top = placed(TWO_ROWS, 40).cell(0, 3)
    assert len(outline) == 1
    assert outline[0][0] == pytest.approx((left + 1.5, top + 1.5))


def test_probed_pin_is_bold() -> None:
    """A probed pin is set off by weight and outline, not by colour alone."""
    root = parsed(drawn(TWO_ROWS, {"6"}))
    assert [t.text for t in texts(root) if t.bold] == ["6"]


def test_open_and_plugged_look_different() -> None:
    """Open terminals are slots, wires from behind are rings."""

    def arcs(connector: Connector) -> int:
        paths = elements(parsed(drawn(connector)), "path")
        return sum("a" in p.attrib["d"] for p in paths)

    assert arcs(TWO_ROWS) == 2
    assert arcs(replace(TWO_ROWS, plugged=False)) == 0


@pytest.mark.parametrize("keyway", Keyway)
def test_keyway_stands_on_its_side(keyway: Keyway) -> None:
    """The keyway sticks out on the side given, and is left out if there is none."""
    connector = Connector(((Cavity("1"), Cavity("2")),), keyway)
    boxes = [
        tuple(float(r.attrib[k]) for k in ("x", "y", "width", "height"))
        for r in elements(parsed(drawn(connector)), "rect")[1:]
    ]
    housing = boxes[-1]
    sides = {
        Keyway.TOP: lambda key: key[1] < housing[1],
        Keyway.BOTTOM: lambda key: key[1] + key[3] > housing[1] + housing[3],
        Keyway.LEFT: lambda key: key[0] < housing[0],
        Keyway.RIGHT: lambda key: key[0] + key[2] > housing[0] + housing[2],
    }
    if keyway is Keyway.NONE:
        assert len(boxes) == 1
    else:
        (key,) = boxes[:-1]
        assert [side for side, sticks_out in sides.items() if sticks_out(key)] == [keyway]


@pytest.mark.parametrize("pin", [c.pin for c in TWO_ROWS.cavities()])
def test_probe_lands_in_its_cavity(pin: str) -> None:
    """Wherever the pin, the probe's tip is inside its cavity, from the nearer side."""
    at = placed(TWO_ROWS, 40)
    row, column = divmod(int(pin) - 1, 4)
    left, top = at.cell(row, column)
    probe = at.probed(pin)
    assert left < probe.tip[0] < left + at.cell_wide
    assert top < probe.tip[1] < top + at.cell_tall
    assert probe.from_above is (row == 0)


def test_probes_come_from_the_nearer_side() -> None:
    """Of four rows, the upper two are reached from above and the lower two from below."""
    rows = tuple((Cavity(f"{row}a"), Cavity(f"{row}b")) for row in range(4))
    at = placed(Connector(rows), 0)
    assert [at.probed(f"{row}a").from_above for row in range(4)] == [True, True, False, False]


def test_shorter_row_stands_in_the_middle() -> None:
    """Two cavities over three stand centred."""
    at = placed(Connector(((Cavity("1"), Cavity("2")), (Cavity("3"), Cavity("4"), Cavity("5")))), 0)
    assert at.cell(0, 0)[0] == pytest.approx(at.cell(1, 0)[0] + at.cell_wide / 2)


@pytest.mark.parametrize(
    ("rows", "message"),
    [
        ((), "at least one cavity"),
        (((),), "at least one cavity"),
        (((Cavity("1"), Cavity("1")),), "twice"),
        ((tuple(Cavity(str(k)) for k in range(40)),), "30 cavities"),
    ],
)
def test_what_cannot_be_drawn(rows: tuple[tuple[Cavity, ...], ...], message: str) -> None:
    """A connector that cannot be, or cannot be read, is refused."""
    with pytest.raises(ValueError, match=message):
        placed(Connector(rows), 0)


def test_no_such_pin() -> None:
    """A pin the connector lacks is refused by name."""
    with pytest.raises(ValueError, match="'9'"):
        placed(TWO_ROWS, 0).probed("9")
