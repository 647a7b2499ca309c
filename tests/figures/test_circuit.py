"""A circuit as a strip."""

from __future__ import annotations

from itertools import pairwise
from typing import Any

import pytest

from generator.figures import CircuitStop, CircuitWords, Stop, circuit_strip
from tests.figures.reading import drawn_with, elements, filled_with, parsed, strokes, text_at, texts
from tests.figures.samples import circuit

WORDS = CircuitWords(title="t", desc="d", also_feeds="also feeds")


def written(root: Any) -> dict[str, float]:
    """Give each text, its no-break spaces plain, with its height on the sheet."""
    return {t.text.replace("\u00a0", " "): t.y for t in texts(root)}


def test_stops_run_down_in_order() -> None:
    """Labels stand one below the other, from the feed to ground."""
    root = parsed(circuit("f"))
    labels = ["Battery, 12 V", "F14, 10 A", "Main relay K3", "Splice S7", "Connector C21, pin 3",
              "Crankshaft sensor", "Ground G4"]  # fmt: skip
    shown = written(root)
    places = [shown[label] for label in labels]
    assert places == sorted(places)
    assert all(later - earlier >= 40 for earlier, later in pairwise(places))


def test_wire_stands_between_its_stops() -> None:
    """A wire's colour stands below the stop it leaves and above the one it reaches."""
    root = parsed(circuit("f"))
    shown = written(root)
    assert shown["engine bay, row 2"] < shown["RD/BU 1.5 mm²"] < shown["Main relay K3"]
    assert shown["Hall, three wires"] < shown["BK"] < shown["Ground G4"]


def test_trunk_is_unbroken() -> None:
    """One line joins every stop to the next."""
    root = parsed(circuit("f"))
    wires = [
        strokes(p.attrib["d"])[0]
        for p in drawn_with(root, "ink", stroke_width="1.6")
        if len(strokes(p.attrib["d"])[0]) == 2
    ]
    trunk = sorted((a[1], b[1]) for a, b in wires if a[0] == b[0] == 40 and b[1] - a[1] > 30)
    assert len(trunk) == 6
    assert all(first[1] == then[0] for first, then in pairwise(trunk))


def test_shared_feeds_branch_with_arrows() -> None:
    """Each part on the same splice has an arrow at its name, off a dashed line from the splice."""
    root = parsed(circuit("f"))
    heads = [strokes(p.attrib["d"])[0][0] for p in filled_with(root, "trace2")]
    names = [t for t in texts(root) if t.text in {"camshaft sensor, pin 1", "purge valve"}]
    for name, tip in zip(names, heads, strict=True):
        assert tip[0] < name.x
        assert abs(tip[1] - (name.y - 4.3)) < 1
    (rail,) = [p for p in drawn_with(root, "trace2") if "stroke-dasharray" in p.attrib]
    start = strokes(rail.attrib["d"])[0][0]
    assert start[1] == pytest.approx(text_at(root, "Splice S7").y - 4.3, abs=0.1)


def test_mark_has_ring_flag_and_words() -> None:
    """The stop to measure at is ringed, flagged and in words."""
    root = parsed(circuit("f"))
    rings = [c for c in elements(root, "circle") if "accent" in c.attrib.get("stroke", "")]
    assert len(rings) == 1
    assert len(filled_with(root, "accent")) == 1
    assert any(t.text.startswith("Measure here") and t.bold for t in texts(root))


def test_each_kind_has_a_symbol_of_its_own() -> None:
    """No two kinds of stop look alike."""
    drawn = set()
    for kind in Stop:
        markup = circuit_strip("f", WORDS, [CircuitStop(kind, "a"), CircuitStop(Stop.GROUND, "b")])
        body = markup.split("</desc>")[1]
        drawn.add(body)
    assert len(drawn) == len(Stop)


def test_long_branches_push_the_next_stop_down() -> None:
    """Ten shared feeds, each of two lines, run into nothing below."""
    feeds = tuple(f"part number {k} of many, with a name that takes two lines" for k in range(10))
    stops = [CircuitStop(Stop.SPLICE, "S", also_feeds=feeds), CircuitStop(Stop.GROUND, "G")]
    root = parsed(circuit_strip("f", WORDS, stops))
    lines = [t for t in texts(root) if t.text not in {"S", "G"}]
    assert len(lines) == 21
    assert max(t.y for t in lines) + 15 < text_at(root, "G").y


def test_one_stop_is_no_circuit() -> None:
    """A circuit of one stop is refused."""
    with pytest.raises(ValueError, match="two stops"):
        circuit_strip("f", WORDS, [CircuitStop(Stop.GROUND, "G")])
