"""Figures to show: inwards, never empty, never "-0"."""

from __future__ import annotations

import re
from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from generator.quantities import figure, show_range
from generator.quantities.show import places_for

# Subnormal floats have fewer digits than the twelve that figures are taken to.
FINITE = st.floats(-1e12, 1e12, allow_nan=False, allow_subnormal=False)
PLACES = st.integers(0, 4)
DUST = Fraction(1, 10**11)
"""Relative: figures are taken to twelve digits before they are rounded."""


def number(text: str) -> Fraction:
    """Read a shown figure, exactly."""
    return Fraction(text.replace("−", "-"))


@pytest.mark.parametrize(
    ("value", "places", "shown"),
    [  # IEEE 754 and ISO 80000-1 annex B, rule A: a tie goes to the even digit
        (860, 0, "860"), (0.5, 0, "0"), (1.5, 0, "2"), (2.5, 0, "2"), (0.125, 2, "0.12"),
        (2.675, 2, "2.68"),  # the shortest figure of the float, not its binary expansion
        (-0.04, 1, "0.0"), (-3.2, 1, "−3.2"), (0.1 + 0.2, 1, "0.3"), (1e21, 0, "1" + "0" * 21),
        (5e-324, 2, "0.00"), (1.7976931348623157e308, 0, "179769313486" + "0" * 297),
    ],
)  # fmt: skip
def test_figure(value: float, places: int, shown: str) -> None:
    """A figure has its decimals, a real minus sign, no exponent and no negative zero."""
    assert figure(value, places) == shown


@pytest.mark.parametrize(
    ("low", "high", "places", "shown"),
    [  # closed-form: the low limit up, the high one down, at the decimals asked for
        (773.4, 946.7, 0, ("774", "946")),
        (2.21, 2.24, 1, ("2.21", "2.24")),  # one decimal would give 2.3 to 2.2
        (2.0, 2.04, 1, ("2.00", "2.04")),  # one decimal would give one figure
        (-3.26, -1.14, 1, ("−3.2", "−1.2")),
        (-0.04, 0.04, 1, ("−0.04", "0.04")),
        (None, 0.349, 2, ("", "0.34")),
        (9.601, None, 2, ("9.61", "")),
        (None, None, 2, ("", "")),
        (5.25, 5.25, 1, ("5.2", "5.2")),
        (10.1 - 0.2, 10.1 + 0.2, 1, ("9.9", "10.3")),  # dust on both ends
        (0.1 + 0.2, 0.7, 1, ("0.3", "0.7")),  # 0.30000000000000004 is 0.3
        (1e-9, 3e-9, 0, ("0.000000001", "0.000000003")),
        (1000000.1, 1000000.4, 0, ("1000000.1", "1000000.4")),
    ],
)
def test_show_range(
    low: float | None, high: float | None, places: int, shown: tuple[str, str]
) -> None:
    """Limits are rounded inwards, with more decimals where the band would collapse."""
    assert show_range(low, high, places) == shown


@given(FINITE, FINITE, PLACES)
def test_rounding_never_widens_a_band(first: float, second: float, places: int) -> None:
    """A reading inside the shown limits is inside the true ones; the shown band is not empty."""
    low, high = min(first, second), max(first, second)
    true_low, true_high = Fraction(low), Fraction(high)
    assume(true_high - true_low > max(abs(true_low), abs(true_high)) * DUST * 4)
    shown_low, shown_high = (number(text) for text in show_range(low, high, places))
    assert shown_low < shown_high
    assert shown_low >= true_low - abs(true_low) * DUST
    assert shown_high <= true_high + abs(true_high) * DUST


@given(FINITE, PLACES)
def test_rounding_never_widens_a_side(limit: float, places: int) -> None:
    """A limit alone is rounded inwards too, by less than one step."""
    true = Fraction(limit)
    dust, step = abs(true) * DUST, Fraction(1, 10**places)
    at_least, at_most = show_range(limit, None, places)[0], show_range(None, limit, places)[1]
    assert true - dust <= number(at_least) < true + step + dust
    assert true - step - dust < number(at_most) <= true + dust


@given(FINITE, st.integers(0, 4), st.integers(1, 10**6))
def test_limits_on_the_grid_are_shown_as_they_are(start: float, places: int, steps: int) -> None:
    """Limits that need no rounding are not rounded: what was written is what is shown."""
    low = Fraction(int(start), 10**places) if abs(start) < 10**7 else Fraction(0)
    high = low + Fraction(steps, 10**places)
    shown = show_range(float(low), float(high), places)
    assert tuple(number(text) for text in shown) == (low, high)


@given(st.floats(allow_nan=False, allow_infinity=False), st.integers(0, 9))
def test_any_figure_can_be_shown(value: float, places: int) -> None:
    """Every finite float, however large or small, has a figure with the decimals asked for."""
    shown = figure(value, places)
    tail = rf"\.\d{{{places}}}" if places else ""
    assert re.fullmatch(rf"−?\d+{tail}", shown)
    assert number(shown) != 0 or not shown.startswith("−")


@given(st.floats(allow_nan=False, allow_infinity=False), st.floats(0, 1e300), PLACES)
def test_any_band_can_be_shown(low: float, width: float, places: int) -> None:
    """Every band, however narrow or wide, gives two figures in order."""
    assume(abs(low + width) < 1e308)
    shown_low, shown_high = show_range(low, low + width, places)
    assert number(shown_low) <= number(shown_high)


def test_inverted_band_is_our_own_fault() -> None:
    """A band whose low limit lies above its high one is never shown."""
    with pytest.raises(ValueError, match="not a band"):
        show_range(2.0, 1.0, 1)


@given(st.floats(1e-6, 1e9))
def test_places_show_the_digits_asked_for(value: float) -> None:
    """The decimals for three digits show at least three of them."""
    digits = figure(value, places_for(value)).replace(".", "").lstrip("0")
    assert len(digits) >= 3
