"""Platinum sensors against the IEC 60751 tables and an independent library."""

from __future__ import annotations

import pytest
from rtd_sensor import pt100, tolerance
from rtd_sensor.models import CallendarVanDusenRTDModel

from generator.physics.platinum import (
    platinum_band,
    platinum_ohm,
    platinum_temp_c,
    platinum_tolerance_k,
)
from tests.published.checks import Check, assert_well_founded, table

PRINTED = "printed Pt100 reference table, IEC 60751"
CLASSES = "printed table of IEC 60751 tolerances in ohm, Pt100"
LIBRARY = "rtd-sensor 0.8.0, pt100"
FILM = CallendarVanDusenRTDModel(
    r0_ohms=1000.0,
    a=3.8102e-3,
    b=-6.01888e-7,
    c=-6.0e-12,
    minimum_temperature_c=-50.0,
    maximum_temperature_c=600.0,
)
SHEET = "printed sheets of thin-film sensors: 3750 ppm/K between 0 and 100 °C"
FILM_LIBRARY = "rtd-sensor 0.8.0, Callendar-Van Dusen with the sheet's coefficients"


def _pt100(temp_c: float) -> dict[str, float]:
    return {"temp_c": temp_c, "r0_ohm": 100.0}


def _library(temp_c: float) -> Check:
    return Check(_pt100(temp_c), lambda: pt100.celsius_to_resistance(temp_c), 1e-9, "L", LIBRARY)


def _film(temp_c: float) -> Check:
    return Check(
        {"temp_c": temp_c, "r0_ohm": 1000.0, "curve": "tcr-3750"},
        lambda: FILM.celsius_to_resistance(temp_c),
        1e-9,
        "L",
        FILM_LIBRARY,
    )


OHM = [
    *(_library(t) for t in (-200.0, -100.0, -0.5, 0.0, 25.0, 100.0, 200.0, 600.0, 850.0)),
    Check(_pt100(-200.0), 18.52, 0.005, "P", PRINTED),
    Check(_pt100(-100.0), 60.26, 0.005, "P", PRINTED),
    Check(_pt100(50.0), 119.40, 0.005, "P", PRINTED),
    Check(_pt100(150.0), 157.33, 0.006, "P", PRINTED),
    Check(_pt100(600.0), 313.71, 0.005, "P", PRINTED),
    Check({"temp_c": 100.0, "r0_ohm": 200.0}, 2 * 138.5055, 1e-4, "L", LIBRARY + ", twice"),
]
OTHER_CURVES = [
    *(_film(t) for t in (-40.0, 0.0, 100.0, 400.0, 600.0)),
    Check({"temp_c": 100.0, "r0_ohm": 1000.0, "curve": "tcr-3750"}, 1375.0, 0.01, "P", SHEET),
    Check(
        {"temp_c": 100.0, "r0_ohm": 200.0, "curve": "tcr-3770"},
        200.0 * 1.3770,
        0.01,
        "M",
        "about 3770 ppm/K, from memory",
    ),
    Check(
        {"temp_c": 850.0, "r0_ohm": 200.0, "curve": "tcr-3770"},
        200.0 * 3.904811 * (1.0 - 0.019),
        0.4,
        "M",
        "1.9 % below IEC 60751 at 850 °C, from memory",
    ),
]


def _inverse(ohm: float) -> Check:
    return Check(
        {"ohm": ohm, "r0_ohm": 100.0},
        lambda: pt100.resistance_to_celsius(ohm),
        1e-6,
        "L",
        LIBRARY,
    )


TEMPERATURE = [
    *(_inverse(ohm) for ohm in (20.0, 60.2558, 99.0, 138.5055, 390.48)),
    Check({"ohm": 60.26, "r0_ohm": 100.0}, -100.0, 0.02, "P", PRINTED),
    Check({"ohm": 175.86, "r0_ohm": 100.0}, 200.0, 0.02, "P", PRINTED),
    Check(
        {"ohm": 2500.0, "r0_ohm": 1000.0, "curve": "tcr-3750"},
        lambda: FILM.resistance_to_celsius(2500.0),
        1e-6,
        "L",
        FILM_LIBRARY,
    ),
]


def _tolerance(temp_c: float, tolerance_class: str) -> Check:
    return Check(
        {"temp_c": temp_c, "tolerance_class": tolerance_class},
        lambda: tolerance.thermometer_tolerance_c(
            temp_c, tolerance_class=tolerance_class, construction="wire_wound"
        ),
        1e-12,
        "L",
        "rtd-sensor 0.8.0, thermometer_tolerance_c",
    )


TOLERANCE = [
    _tolerance(-100.0, "A"),
    _tolerance(450.0, "A"),
    _tolerance(200.0, "AA"),
    _tolerance(-196.0, "B"),
    _tolerance(600.0, "C"),
    Check(
        {"temp_c": 200.0, "tolerance_class": "B"},
        1.3,
        1e-9,
        "P",
        "printed manual of a humidity probe: class B at 200 °C, up to ±1.3 K",
    ),
]


def band_half_width_ohm(temp_c: float, tolerance_class: str) -> float:
    """Half the width of a Pt100's band, which tables print as ± ohm."""
    low, _, high = platinum_band(temp_c, 100.0, tolerance_class)
    return float(high - low) / 2.0


HALF_WIDTH = [
    Check({"temp_c": -100.0, "tolerance_class": "A"}, 0.14, 0.006, "P", CLASSES),
    Check({"temp_c": 0.0, "tolerance_class": "A"}, 0.06, 0.006, "P", CLASSES),
    Check({"temp_c": 200.0, "tolerance_class": "A"}, 0.20, 0.006, "P", CLASSES),
    Check({"temp_c": 400.0, "tolerance_class": "A"}, 0.33, 0.006, "P", CLASSES),
    Check({"temp_c": 0.0, "tolerance_class": "B"}, 0.12, 0.006, "P", CLASSES),
    Check({"temp_c": 100.0, "tolerance_class": "B"}, 0.30, 0.006, "P", CLASSES),
    Check({"temp_c": 300.0, "tolerance_class": "B"}, 0.64, 0.006, "P", CLASSES),
    Check({"temp_c": 600.0, "tolerance_class": "B"}, 1.06, 0.03, "P", CLASSES),
]


@pytest.mark.parametrize(
    ("model", "check"),
    table(platinum_ohm, OHM)
    + table(platinum_ohm, OTHER_CURVES)
    + table(platinum_temp_c, TEMPERATURE)
    + table(platinum_tolerance_k, TOLERANCE)
    + table(band_half_width_ohm, HALF_WIDTH),
)
def test_platinum_agrees_with_the_world(model, check):
    """Curves, inverses, classes and bands agree with outside values."""
    check.hold(model)


def test_the_tables_are_well_founded():
    """Each model rests on at least three printed or library values."""
    for rows in (OHM, OTHER_CURVES, TEMPERATURE, TOLERANCE, HALF_WIDTH):
        assert_well_founded(rows)
