"""The bench itself: what it grows is sound, and what it tells is what it measured."""

from __future__ import annotations

from collections import Counter
from pathlib import Path

from generator.records.kinds.base import links_of
from generator.records.load import load
from tests.bench import report, rivals
from tests.bench.grow import OF_THE_SHOP, grow
from tests.bench.measure import Cost
from tests.bench.targets import exponents
from tests.demo import demonstration


def test_a_grown_manual_is_copies_of_the_small_one(tmp_path: Path) -> None:
    """Every kind in proportion, vehicles the same, no finding, each link within its own copy."""
    small = Counter(record.kind for record in demonstration())
    records = grow(tmp_path / "kb", 3 * small.total())
    loaded = load(tmp_path / "kb")
    assert loaded.kb is not None and loaded.problems == []
    assert sum(1 for _ in loaded.kb) == records
    assert Counter(record.kind for record in loaded.kb) == {
        kind: count * (1 if kind in OF_THE_SHOP else 3) for kind, count in small.items()
    }
    spec = loaded.kb.records["tests"]["winding-resistance-2"]
    named = [(kinds, id_) for _path, kinds, id_ in links_of(spec)]
    assert ("components",) in [kinds for kinds, _id in named]
    assert all(
        id_.endswith("-2") or set(kinds) <= OF_THE_SHOP or id_ == "common-practice"
        for kinds, id_ in named
    )
    assert len({record.title for record in loaded.kb.records["tests"].values()}) == (
        3 * small["tests"]
    )


def test_the_others_pages_are_of_the_stated_size() -> None:
    """Each has so many bytes, and the same ones every time."""
    assert {len(rivals.page(number).encode()) for number in range(20)} == {rivals.PAGE_BYTES}
    assert rivals.page(3) == rivals.page(3) != rivals.page(4)


def test_growth_in_proportion_has_the_exponent_one() -> None:
    """Ten times the records for ten times the work is 1, for a hundred times 2."""
    assert exponents({100: Cost(0, 2, 0), 1000: Cost(0, 20, 0)}) == {(100, 1000): 1.0}
    assert exponents({100: Cost(0, 2, 0), 1000: Cost(0, 200, 0)}) == {(100, 1000): 2.0}


def test_the_table_says_what_is_met_and_what_is_not() -> None:
    """A ratio stands beside its aim, with the verdict; an unmeasured one is not told."""
    costs = {
        "check, cold": {1000: Cost(9, 9, 90)},
        "composing the YAML": {1000: Cost(2, 2, 50)},
        "build, nothing changed": {1000: Cost(0.2, 0.2, 40)},
        "one page with Material": {1000: Cost(1, 1, 60)},
    }
    text = report.text(costs, {1000: 500}, "memory", rivals.PAGE_BYTES, 30.0)
    assert "| check, cold | composing the YAML | 1,000 | 4.50 | 3 | not met |" in text
    assert "| build, nothing changed | one page with Material | 1,000 | 0.20 | 1.5 | met |" in text
    assert "| one figure, ms of one processor |  |  | 30.0 | 25 | not met |" in text
    assert "Hugo |" not in text
