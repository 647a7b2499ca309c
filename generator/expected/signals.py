"""How to set an oscilloscope for the signal that a spec leads one to expect."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import count
from math import sqrt
from typing import Literal

from generator.expected.choose import specs_of
from generator.expected.engine import CannotExpect, expect, needs
from generator.quantities import Interval
from generator.records.kinds.instruments import Screen
from generator.records.kinds.models import (
    CoilFlybackModel,
    LoadedPickupModel,
    PickupModel,
    PullUpModel,
    ToothRateModel,
)
from generator.records.kinds.things import Component, Spec
from generator.records.knowledge_base import KnowledgeBase

FILLED = 0.75
"""Share of the screen's height that the greatest expected wave fills."""

TURNS_SHOWN = 2.0
"""Turns of the wheel on the screen at the slowest speed, so that the gap is seen twice."""

SAMPLES_A_TOOTH = 20
"""Samples that show the shape of one tooth."""

# AC coupling of common oscilloscopes lets go below some 10 Hz (practice); ten times that passes
# upright.
AC_FROM_HZ = 100.0

STEPS = (1.0, 2.0, 5.0)


@dataclass(frozen=True, slots=True)
class ScopeSettings:
    """What to set before the first look.

    Parameters
    ----------
    volts_a_division, seconds_a_division : float
        From the 1-2-5 row, at the probe's tip.
    coupling : {"ac", "dc"}
        Of the channel.
    trigger_v : float
        Level, rising edge.
    probe : int
        Ratio: 1 or 10, 20, 100.
    samples_a_second : float
        Least sample rate, 0 where no rate is known.
    low_v, high_v : float
        The greatest wave that is expected.
    """

    volts_a_division: float
    seconds_a_division: float
    coupling: Literal["ac", "dc"]
    trigger_v: float
    probe: int
    samples_a_second: float
    low_v: float
    high_v: float


@dataclass(frozen=True, slots=True)
class _Wave:
    low_v: float
    high_v: float
    trigger_v: float
    swings: bool


def settings_for(
    kb: KnowledgeBase,
    component: str,
    vehicles: Sequence[str],
    screen: Screen,
    channels: int = 1,
) -> ScopeSettings | None:
    """Give the settings for the signal of a part, or None where no spec says what to expect.

    Parameters
    ----------
    kb : KnowledgeBase
        The manual, checked.
    component : str
        The part whose signal is looked at.
    vehicles : sequence of str
        The vehicles it is looked at on.
    screen : Screen
        The oscilloscope.
    channels : int, optional
        Signals that share the screen, one above the other.

    Raises
    ------
    CannotExpect
        If the wave is beyond the input, whatever probe is at hand.
    """
    about = [
        spec
        for spec in specs_of(kb, component)
        if spec.standing == "vehicle_value"
        and set(spec.applies_to) & set(vehicles)
    ]
    wave = next((w for w in (_wave(kb, spec, about) for spec in about) if w), None)
    rate = next((s for s in about if isinstance(s.model, ToothRateModel)), None)
    if wave is None or rate is None:
        return None
    assert isinstance(rate.model, ToothRateModel)
    wheel = kb.get("components", rate.model.wheel, Component).wheel
    speed = needs(kb, rate)["engine_speed"]
    whole = expect(kb, rate)
    if wheel is None or whole.low is None or whole.high is None or speed.low <= 0:
        return None
    span_v = wave.high_v - min(wave.low_v, 0.0)
    return ScopeSettings(
        volts_a_division=_step(span_v * channels / (FILLED * screen.divisions_up)),
        seconds_a_division=_step(TURNS_SHOWN * 60.0 / speed.low / screen.divisions_across),
        coupling="ac" if wave.swings and whole.low >= AC_FROM_HZ else "dc",
        trigger_v=wave.trigger_v,
        probe=_probe(max(abs(wave.low_v), abs(wave.high_v)), screen),
        samples_a_second=SAMPLES_A_TOOTH * whole.high,
        low_v=wave.low_v,
        high_v=wave.high_v,
    )


def _wave(kb: KnowledgeBase, spec: Spec, about: Sequence[Spec]) -> _Wave | None:
    """Give the wave that a spec describes, or None where it describes none."""
    if not isinstance(spec.model, (PickupModel, LoadedPickupModel, PullUpModel, CoilFlybackModel)):
        return None
    whole = expect(kb, spec, _cranking(kb, spec, about))
    if whole.high is None or whole.low is None:
        return None
    if isinstance(spec.model, (PickupModel, LoadedPickupModel)):
        peak_v = whole.high * sqrt(2)  # near-sine between teeth: crest factor of a sine
        return _Wave(-peak_v, peak_v, whole.low * sqrt(2) / 2, True)
    if isinstance(spec.model, CoilFlybackModel):
        return _Wave(0.0, whole.high, whole.low / 2, False)
    low = kb.find("specs", spec.model.low_level, Spec)
    rest_v = expect(kb, low).high or 0.0 if low is not None else 0.0
    return _Wave(0.0, whole.high, (whole.low + rest_v) / 2, False)


def _cranking(
    kb: KnowledgeBase, spec: Spec, about: Sequence[Spec]
) -> dict[str, Interval]:
    """Give the speeds of the tooth rate, where the wave follows speed too."""
    rate = next((s for s in about if isinstance(s.model, ToothRateModel)), None)
    if rate is None or "engine_speed" not in needs(kb, spec):
        return {}
    return dict(needs(kb, rate))


def _step(least: float) -> float:
    """Give the smallest figure of the 1-2-5 row that is not below `least`."""
    if least <= 0:
        raise ValueError(f"{least:g} has no step")
    for power in count(-9):
        for step in STEPS:
            found = float(f"{step:g}e{power}")
            if found >= least * (1 - 1e-12):
                return found
    raise AssertionError("the row has no end")


def _probe(peak_v: float, screen: Screen) -> int:
    limit_v = screen.input_limit.only
    for ratio in sorted({1, *screen.probes}):
        if peak_v <= ratio * limit_v:
            return ratio
    raise CannotExpect(
        f"the signal peaks at {peak_v:g} V, beyond the oscilloscope's input",
        "add a probe of a higher ratio to its record",
    )
