"""Switched coils against a circuit simulator, an integrator and printed examples."""

from __future__ import annotations

import pytest
from scipy import integrate

from generator.physics.coils import (
    coil_current_a,
    coil_energy_j,
    dwell_s,
    release_current_a,
    release_s,
    switch_peak_v,
    time_constant_s,
)
from tests.published.checks import Check, assert_well_founded, table

SPICE = "ngspice 39, transient analysis, printed figure"
ARTICLE = "printed magazine answer on a solenoid: 200 mA, 10 mJ, 8.3 ms with a diode, 2 ms clamped"
LESSON = "printed lesson on RL circuits: 5 V, 100 ohm, 100 mH"
EXERCISE = "printed exercise: 12 V, 1.24 kΩ, 6.95 µH, after one time constant and to 73.6 %"
# The article's solenoid, from its own figures: L = 2·10 mJ/(200 mA)², R = L/8.3 ms and, as it
# leaves the resistance out while the clamp works, V = L·200 mA/2 ms.
ARTICLE_H, ARTICLE_OHM, ARTICLE_CLAMP_V = 0.5, 60.0, 50.0

IGNITION = {"supply_v": 14.0, "coil_ohm": 0.6, "coil_h": 4e-3}
INJECTOR = {"supply_v": 13.5, "coil_ohm": 14.5, "coil_h": 12e-3}


def integrated_a(time_s: float, supply_v: float, coil_ohm: float, coil_h: float) -> float:
    """Current by scipy's integrator on L·di/dt = V − i·R."""
    solution = integrate.solve_ivp(
        lambda _, i: (supply_v - i * coil_ohm) / coil_h,
        (0.0, time_s),
        [0.0],
        rtol=1e-10,
        atol=1e-12,
    )
    return float(solution.y[0, -1])


def _integrated(time_s: float, coil: dict[str, float]) -> Check:
    return Check(
        {"time_s": time_s, **coil},
        lambda: integrated_a(time_s, **coil),
        1e-6,
        "L",
        "scipy.integrate.solve_ivp",
    )


CURRENT = [
    Check({"time_s": 1e-3, **IGNITION}, 3.250147, 1e-4, "L", SPICE),
    Check({"time_s": 2.378e-3, **IGNITION}, 7.000409, 1e-4, "L", SPICE),
    Check({"time_s": 6e-3, **IGNITION}, 13.84671, 5e-4, "L", SPICE),
    Check({"time_s": 0.5e-3, **INJECTOR}, 0.4221966, 1e-5, "L", SPICE),
    Check({"time_s": 2.5e-3, **INJECTOR}, 0.8856368, 1e-5, "L", SPICE),
    Check(
        {"time_s": 3e-3, "supply_v": 12.0, "coil_ohm": 0.5, "coil_h": 2.5e-3, "initial_a": 2.0},
        11.92614,
        5e-4,
        "L",
        SPICE,
    ),
    _integrated(1.7e-3, IGNITION),
    _integrated(0.9e-3, INJECTOR),
    Check(
        {"time_s": 6.95e-6 / 1240.0, "supply_v": 12.0, "coil_ohm": 1240.0, "coil_h": 6.95e-6},
        6.12e-3,
        1e-5,
        "P",
        EXERCISE,
    ),
]

DWELL = [
    Check({"current_a": 7.0, **IGNITION}, 2.377833e-3, 1e-7, "L", SPICE),
    Check({"current_a": 0.6, **INJECTOR}, 8.557849e-4, 1e-7, "L", SPICE),
    Check(
        {"current_a": 7.12e-3, "supply_v": 12.0, "coil_ohm": 1240.0, "coil_h": 6.95e-6},
        7.45e-9,
        2e-11,
        "P",
        EXERCISE,
    ),
    Check({"current_a": 7.0, **IGNITION}, 2.378e-3, 5e-7, "C", "−(L/R)·ln(1 − I·R/V)"),
]

RELEASE = [
    Check(
        {"current_a": 7.0, "clamp_v": 386.0, "coil_ohm": 0.6, "coil_h": 4e-3},
        7.214706e-5,
        1e-7,
        "L",
        SPICE,
    ),
    Check(
        {"current_a": 0.9, "clamp_v": 40.0, "coil_ohm": 14.5, "coil_h": 12e-3},
        2.336734e-4,
        2e-7,
        "L",
        SPICE,
    ),
    Check(
        {"current_a": 0.12, "clamp_v": 0.7, "coil_ohm": 85.0, "coil_h": 0.3},
        9.689780e-3,
        2e-6,
        "L",
        SPICE,
    ),
    Check(
        {"current_a": 0.2, "clamp_v": ARTICLE_CLAMP_V, "coil_ohm": 1e-3, "coil_h": ARTICLE_H},
        2e-3,
        1e-5,
        "P",
        ARTICLE,
    ),
]

FALLING = [
    Check(
        {"time_s": 2e-3, "current_a": 0.12, "clamp_v": 0.7, "coil_ohm": 85.0, "coil_h": 0.3},
        6.452716e-2,
        1e-6,
        "L",
        SPICE,
    ),
    Check(
        {"time_s": 0.02, "current_a": 0.12, "clamp_v": 0.7, "coil_ohm": 85.0, "coil_h": 0.3},
        0.0,
        0.0,
        "C",
        "a clamp does not drive a coil backwards",
    ),
]

CONSTANT = [
    Check({"coil_ohm": 100.0, "coil_h": 0.1}, 1e-3, 1e-12, "P", LESSON),
    Check({"coil_ohm": ARTICLE_OHM, "coil_h": ARTICLE_H}, 8.3e-3, 5e-5, "P", ARTICLE),
    Check(
        {"coil_ohm": 180.0, "coil_h": 0.050},
        0.28e-3,
        5e-6,
        "P",
        "printed textbook solution: 50 mH and 180 ohm, 0.28 ms",
    ),
]

ENERGY = [
    Check({"current_a": 0.2, "coil_h": ARTICLE_H}, 10e-3, 1e-9, "P", ARTICLE),
    Check({"current_a": 7.0, "coil_h": 4e-3}, 0.098, 1e-9, "C", "L·I²/2"),
]
PEAK = [Check({"supply_v": 14.0, "flyback_v": 386.0}, 400.0, 1e-9, "C", "Kirchhoff")]


@pytest.mark.parametrize(
    ("model", "check"),
    table(coil_current_a, CURRENT)
    + table(dwell_s, DWELL)
    + table(release_s, RELEASE)
    + table(release_current_a, FALLING)
    + table(time_constant_s, CONSTANT)
    + table(coil_energy_j, ENERGY)
    + table(switch_peak_v, PEAK),
)
def test_coils_agree_with_the_world(model, check):
    """Rise, dwell, release, time constant and energy agree with outside values."""
    check.hold(model)


def test_the_tables_are_well_founded():
    """Each model rests on at least three printed or library values."""
    for rows in (CURRENT, DWELL, RELEASE + FALLING, CONSTANT):
        assert_well_founded(rows)
