"""A vehicle's value that lies outside its own plausibility band: 200 to 1200 ohm."""

from __future__ import annotations

import pytest

from generator.checks import value_outside_band
from tests.checks.manuals import patched

SPEC = "specs/inductive-winding"


@pytest.mark.parametrize(
    ("value", "outside"),
    [("1000 ohm ± 20 %", False), ("1000 ohm ± 21 %", True), ("200 to 300 ohm", False),
     ("199 to 300 ohm", True), ("1.86 kohm ± 10 %", True), ("0.86 kohm ± 10 %", False)],
)  # fmt: skip
def test_the_whole_value_has_to_lie_within(value: str, outside: bool) -> None:
    """1000 · 1.20 is the band's end and 1000 · 1.21 beyond it; units do not matter."""
    manual = patched(SPEC, f"value: {value}")
    found = value_outside_band.problems(manual.kb)
    assert [manual.marked(f) for f in found] == [value] * outside
    for one in found:
        assert one.second is not None
        assert manual.marked(one.second) == "200 to 1200 ohm"


@pytest.mark.parametrize("band", ["hall-gap", "inductive-output-band", "inductive-insulation"])
def test_a_band_has_to_be_one_and_of_the_same_quantity(band: str) -> None:
    """A vehicle's own value and a band in volts are no band of this winding."""
    manual = patched(SPEC, f"band: {band}")
    assert [m for _, _, m in manual.found(value_outside_band.problems)] == [band]
