"""Figures of values: each from the very expectations that its table shows."""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Sequence
from functools import partial
from math import sqrt
from typing import Any

from markupsafe import Markup

from generator.diagnosis import Place
from generator.expected import Expectation, expect
from generator.figures import (
    BandRow,
    BandWords,
    DoubtWords,
    PickupWords,
    SquareLevels,
    SquareWords,
    doubt_curve,
    pickup_wave,
    square_wave,
    winding_band,
)
from generator.pages.book import Book
from generator.pages.prose import drawn
from generator.pages.strings import say
from generator.pages.values import ValueView
from generator.physics import pickup, switching
from generator.quantities import Interval, figure
from generator.records.kinds.models import PullUpModel
from generator.records.kinds.things import Component, Spec, Wheel

WINDOW = 14
"""Tooth positions that a waveform figure shows; the whole wheel would be a grey block."""

SAMPLES_A_TOOTH = 24
"""Enough for a smooth sine at the size of a phone."""

SWITCHING_DUTY = 0.5
"""Duty drawn where a record states none; the figure is about shape and levels."""


def _once(book: Book, draw: Callable[..., str], *what: Any, **more: Any) -> Markup:
    """Give a figure, drawn unless the very same was drawn before: nothing else goes into it."""
    shown = f"{draw.__module__} {draw.__qualname__} {what!r} {more!r}"
    key = hashlib.blake2b(shown.encode(), digest_size=20).hexdigest()
    return drawn(book.kb.remember("figure", key, partial(draw, *what, **more)))


def value_picture(book: Book, view: ValueView) -> Markup:
    """Give the figure of a value, or nothing where a figure would say no more than the text."""
    kind = view.spec.model.name
    if kind == "winding":
        return _winding(book, view)
    if kind == "pickup_volts":
        return _pickup(book, view)
    if kind == "pull_up":
        return _square(book, view)
    return Markup()


def _winding(book: Book, view: ValueView) -> Markup:
    rows = view.expectations
    if any(e.low is None or e.nominal is None or e.high is None for e in rows):
        return Markup()
    desc = " ".join(
        say("figure.winding_row", condition=r.condition, low=r.low, high=r.high, unit=view.unit)
        for r in view.rows
    )
    return _once(book, winding_band,
        f"band-{view.spec.id}",
        BandWords(
            title=say("figure.winding_title", title=view.spec.title),
            desc=say("figure.winding_desc", rows=desc),
            temp_axis=say("figure.temperature"), value_axis=view.spec.quantity,
            low=say("figure.low"), nominal=say("figure.nominal"), high=say("figure.high"),
        ),
        [e.conditions["temperature"].low for e in rows],
        [e.shown(e.low) or 0.0 for e in rows],
        [e.shown(e.nominal) or 0.0 for e in rows],
        [e.shown(e.high) or 0.0 for e in rows],
        view.unit,
        rows=[
            BandRow(e.conditions["temperature"].low, row.low, row.high)
            for e, row in zip(rows, view.rows, strict=True)
        ],
    )  # fmt: skip


def _wheel_of(book: Book, spec: Spec) -> Wheel | None:
    component = book.kb.get("components", spec.component, Component)
    wheel = book.kb.find("components", component.reads, Component)
    return wheel.wheel if wheel else None


def missing_words(missing: int) -> str:
    """Say how many teeth are missing."""
    return say("figure.missing.1") if missing == 1 else say("figure.missing.n", n=missing)


def _gap_words(wheel: Wheel) -> str:
    """Give what stands over the gap of a wave; nothing over a wheel that has all its teeth."""
    return missing_words(wheel.missing) if wheel.missing else ""


def _window(wheel: Wheel) -> tuple[slice, tuple[float, float] | None, list[float]]:
    """Give the samples around the gap, where that is if there is one, and the angles; degrees."""
    pitch_deg = 360 / wheel.positions
    shown = min(WINDOW, wheel.positions)
    # The gap is the last of the revolution: show its neighbourhood, turned so that it is inside.
    start = wheel.positions - shown
    cut = slice(start * SAMPLES_A_TOOTH, wheel.positions * SAMPLES_A_TOOTH)
    turn = shown // 2 - wheel.missing
    first_gap = (shown - wheel.missing - turn) * pitch_deg
    span = (first_gap, first_gap + wheel.missing * pitch_deg) if wheel.missing else None
    step = pitch_deg / SAMPLES_A_TOOTH
    return cut, span, [round(n * step, 4) for n in range(shown * SAMPLES_A_TOOTH)]


def _turned(samples: Sequence[float], wheel: Wheel) -> list[float]:
    """Turn the wheel so that its gap lies in the middle of the window."""
    shown = min(WINDOW, wheel.positions)
    turn = (shown // 2 - wheel.missing) * SAMPLES_A_TOOTH
    return [*samples[turn:], *samples[:turn]]


def _pickup(book: Book, view: ValueView) -> Markup:
    wheel = _wheel_of(book, view.spec)
    at = view.spec.at.engine_speed
    if wheel is None or at is None:
        return Markup()
    here = expect(book.kb, view.spec, {"engine_speed": Interval.of(at.only)})
    nominal_v = _nominal_v(here)
    shape = pickup.pickup_waveform(
        wheel.positions, wheel.missing, wheel.positions * SAMPLES_A_TOOTH
    )
    peak_v = nominal_v * sqrt(2)  # near-sine between teeth: crest factor of a sine
    cut, span, angles = _window(wheel)
    volts = [float(v) * peak_v for v in _turned(list(shape), wheel)[cut]]
    return _once(book, pickup_wave,
        f"wave-{view.spec.id}",
        PickupWords(
            title=say("figure.pickup_title"),
            desc=say(
                "figure.pickup_desc", volts=figure(nominal_v, 2), speed=f"{at.only:g}",
                gap=say("figure.pickup_gap", missing=wheel.missing) if wheel.missing
                else say("figure.pickup_no_gap"),
            ),
            angle_axis=say("figure.angle"), volt_axis=say("figure.volts"),
            gap=_gap_words(wheel),
            peak_to_peak=say("figure.peak_to_peak", volts=figure(2 * peak_v, 1)),
        ),
        angles, volts, span, wheel.positions, (-peak_v, peak_v),
    )  # fmt: skip


def _nominal_v(expectation: Expectation) -> float:
    if expectation.nominal is not None:
        return expectation.nominal
    return ((expectation.low or 0.0) + (expectation.high or 0.0)) / 2


def _square(book: Book, view: ValueView) -> Markup:
    wheel, model = _wheel_of(book, view.spec), view.spec.model
    here = view.expectations[0]
    low_spec = None
    if isinstance(model, PullUpModel):
        low_spec = book.kb.find("specs", model.low_level, Spec)
    if wheel is None or low_spec is None or here.low is None or here.high is None:
        return Markup()
    low_max_v = expect(book.kb, low_spec).high
    if low_max_v is None:
        return Markup()
    high_v, low_v = _nominal_v(here), low_max_v / 2
    wave = switching.square_waveform(
        wheel.positions, wheel.missing, high_v, low_v, SWITCHING_DUTY,
        wheel.positions * SAMPLES_A_TOOTH,
    )  # fmt: skip
    cut, span, angles = _window(wheel)
    return _once(book, square_wave,
        f"wave-{view.spec.id}",
        SquareWords(
            title=say("figure.square_title"),
            desc=say(
                "figure.square_desc", low=figure(low_max_v, 1), high=figure(high_v, 1),
                gap=say("figure.square_gap", missing=missing_words(wheel.missing))
                if wheel.missing else say("figure.square_no_gap"),
            ),
            angle_axis=say("figure.angle"), volt_axis=say("figure.volts"),
            high=say("figure.square_high", low=figure(here.low, 1), high=figure(here.high, 1)),
            low=say("figure.square_low", high=figure(low_max_v, 1)),
            threshold=say("figure.square_between"),
            gap=_gap_words(wheel),
            flat_high=say("figure.square_flat_high"), flat_low=say("figure.square_flat_low"),
        ),
        angles, [float(v) for v in _turned(list(wave), wheel)[cut]],
        SquareLevels(low_v, low_max_v, here.low, high_v), span, wheel.positions,
    )  # fmt: skip


def doubt_picture(book: Book, figure_id: str, places: Sequence[Place]) -> Markup:
    """Draw how doubt falls along the order of tests."""
    if not places:
        return Markup()
    steps = " ".join(
        say(
            "symptom.doubt_step", n=n, title=place.test.title, minutes=f"{place.elapsed:g}",
            doubt=f"{place.doubt * 100:.0f}",
        )
        for n, place in enumerate(places, start=1)
    )  # fmt: skip
    return _once(book, doubt_curve,
        figure_id,
        DoubtWords(
            title=say("symptom.doubt_title"), desc=say("symptom.doubt_desc", steps=steps),
            minutes_axis=say("symptom.axis_minutes"), doubt_axis=say("symptom.axis_doubt"),
        ),
        [0.0, *(place.elapsed for place in places)],
        [100.0, *(place.doubt * 100 for place in places)],
    )  # fmt: skip
