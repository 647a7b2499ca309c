"""Oscilloscope settings follow from the signal that the specs lead one to expect."""

from __future__ import annotations

from math import sqrt
from typing import Any

import pytest

from generator.expected import CannotExpect
from generator.expected.signals import ScopeSettings, settings_for
from generator.records.kinds.instruments import Screen
from generator.records.kinds.things import Spec
from tests.expected.samples import WHEEL, spec_of
from tests.hazards.build import manual

RATE = spec_of({"name": "tooth_rate", "wheel": "wheel"})
PICKUP = spec_of(
    {"name": "pickup_volts", "slowest": "100 rpm", "fastest": "900 rpm"}, "0.9 V ± 30 %",
    at={"engine_speed": "200 rpm"},
)  # fmt: skip
LOW = spec_of("plain", "at most 0.5 V", id_="low")
SQUARE = spec_of({"name": "pull_up", "pull_up": "5 V", "resistor": "4.7 kohm",
                  "meter": "10 Mohm", "low_level": "low"})  # fmt: skip


def screen(**fields: Any) -> Screen:
    """Give an oscilloscope of ten by eight divisions."""
    return Screen.model_validate({"input_limit": "100 V", **fields}, strict=False)


def asked(*specs: Spec, screen_: Screen | None = None, channels: int = 1) -> ScopeSettings | None:
    """Ask for the settings on the sensor of the petrol car."""
    kb = manual(WHEEL, *specs)
    return settings_for(kb, "sensor", ["petrol-car"], screen_ or screen(), channels)


def test_a_pickups_wave_fills_the_screen_without_leaving_it() -> None:
    """Closed form: 1.17 V RMS at 200 rpm is 1.755 at 300, a peak of 2.48, 4.96 V in all.

    Six of eight divisions: 0.83 V, so 1 V. Two turns at 150 rpm are 0.8 s: 100 ms a division.
    """
    found = asked(RATE, PICKUP)
    assert found is not None
    assert found.high_v == pytest.approx(1.755 * sqrt(2))
    assert (found.volts_a_division, found.seconds_a_division) == (1.0, 0.1)
    assert found.coupling == "ac", "145 teeth a second and more swing about zero"
    # 0.63 V at 200 rpm is 0.4725 at 150: half its peak.
    assert found.trigger_v == pytest.approx(0.4725 * sqrt(2) / 2)
    assert found.samples_a_second == pytest.approx(20 * 300.0)


def test_a_square_wave_is_triggered_between_its_levels() -> None:
    """Closed form: a high level of 5 V·10/(10.0047), a low one of 0.5: half way is 2.75 V."""
    found = asked(RATE, SQUARE, LOW)
    assert found is not None
    assert found.trigger_v == pytest.approx((5 * 10e6 / 10.0047e6 + 0.5) / 2)
    assert (found.coupling, found.volts_a_division) == ("dc", 1.0)
    both = asked(RATE, SQUARE, LOW, channels=2)
    assert both is not None
    assert both.volts_a_division == 2.0, "two signals share the screen"


def test_the_probe_keeps_the_input_within_its_limit() -> None:
    """Shows hit and near miss: a peak of 2.48 V on inputs of 3, 2 and 0.1 V."""
    assert asked(RATE, PICKUP, screen_=screen(input_limit="3 V")).probe == 1  # type: ignore[union-attr]
    small = screen(input_limit="2 V", probes=[100, 10])
    assert asked(RATE, PICKUP, screen_=small).probe == 10  # type: ignore[union-attr]
    with pytest.raises(CannotExpect, match="beyond the oscilloscope"):
        asked(RATE, PICKUP, screen_=screen(input_limit="0.1 V", probes=[10]))


def test_without_a_wave_or_a_rate_there_is_nothing_to_set() -> None:
    """Shows that no setting is invented."""
    assert asked(RATE) is None
    assert asked(PICKUP) is None
    assert asked(RATE, LOW) is None
