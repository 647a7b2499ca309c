"""Inductive pickups against a maker's example, field theory, scipy and a circuit simulator."""

from __future__ import annotations

import numpy as np
import pytest
from scipy import integrate, signal

from generator.physics.pickup import gap_factor, load_factor, loaded_pickup_volts, pickup_volts
from tests.published.checks import Check, assert_well_founded, table

EXAMPLE = (
    "printed worked example of a magnetic-sensor maker: 386 mV peak at 300 rpm, 200 mV at 155 rpm"
)
SPICE = "ngspice 39, AC analysis of coil and load, printed figure"
WALLACE = "spacing loss, 54.6 dB a wavelength (Wallace 1951, from memory)"


def faraday_peak_v(speed_rpm: float) -> float:
    """Peak of dΦ/dt by numpy's gradient, for 60 teeth and 1 mWb of flux linkage."""
    time_s = np.linspace(0.0, 0.02, 400_001)
    linkage_wb = 1e-3 * np.sin(2.0 * np.pi * speed_rpm * time_s)
    return float(np.max(np.gradient(linkage_wb, time_s)))


def _faraday(ref_rpm: float, rpm: float) -> Check:
    inputs = {"ref_v": faraday_peak_v(ref_rpm), "ref_rpm": ref_rpm, "speed_rpm": rpm}
    source = "numpy.gradient of a sinusoidal flux linkage of 60 teeth a turn"
    return Check(inputs, lambda: faraday_peak_v(rpm), 1e-3, "L", source)


AMPLITUDE = [
    Check({"ref_v": 0.386, "ref_rpm": 300.0, "speed_rpm": 155.0}, 0.200, 0.001, "P", EXAMPLE),
    _faraday(200.0, 100.0),
    _faraday(200.0, 300.0),
    _faraday(200.0, 900.0),
    Check({"ref_v": 0.7, "ref_rpm": 200.0, "speed_rpm": 300.0}, 1.05, 1e-9, "C", "proportion"),
]


def row_of_poles(height: float, pitch: float) -> float:
    """Fundamental of the field above a row of line poles, by scipy's quadrature."""

    def field(x: float) -> float:
        scale = 2.0 * np.pi / pitch
        below = np.cosh(scale * height) - np.cos(scale * x)
        return float(np.sinh(scale * height) / below * np.cos(scale * x))

    return float(integrate.quad(field, 0.0, pitch, limit=200)[0])


def _gap(gap_m: float, ref_gap_m: float, pitch_m: float) -> Check:
    inputs = {"gap_m": gap_m, "ref_gap_m": ref_gap_m, "pitch_m": pitch_m}
    source = "scipy.integrate.quad of the summed field of a row of line poles"
    return Check(
        inputs,
        lambda: row_of_poles(gap_m, pitch_m) / row_of_poles(ref_gap_m, pitch_m),
        1e-6,
        "L",
        source,
    )


GAP = [
    _gap(1.5e-3, 1.0e-3, 9.0e-3),
    _gap(0.5e-3, 1.0e-3, 9.0e-3),
    _gap(2.0e-3, 0.8e-3, 6.0e-3),
    Check(
        {"gap_m": 5e-3, "ref_gap_m": 0.0, "pitch_m": 5e-3}, 10 ** (-54.6 / 20), 1e-5, "M", WALLACE
    ),
]

COIL = {"coil_ohm": 860.0, "coil_h": 0.4, "load_ohm": 10e3}
STIFF = {"coil_ohm": 1200.0, "coil_h": 1.5, "load_ohm": 22e3}


def scipy_factor(frequency_hz: float, coil_ohm: float, coil_h: float, load_ohm: float) -> float:
    """Magnitude of the transfer function by scipy.signal.freqs."""
    _, response = signal.freqs(
        [load_ohm], [coil_h, coil_ohm + load_ohm], worN=[2.0 * np.pi * frequency_hz]
    )
    return float(abs(response[0]))


def _loaded(frequency_hz: float, coil: dict[str, float]) -> Check:
    return Check(
        {"frequency_hz": frequency_hz, **coil},
        lambda: scipy_factor(frequency_hz, **coil),
        1e-9,
        "L",
        "scipy.signal.freqs",
    )


LOAD = [
    Check({"frequency_hz": 60.0, **COIL}, 0.9207216, 1e-6, "L", SPICE),
    Check({"frequency_hz": 580.0, **COIL}, 0.9126257, 1e-6, "L", SPICE),
    Check({"frequency_hz": 6000.0, **COIL}, 0.5381205, 1e-6, "L", SPICE),
    Check({"frequency_hz": 60.0, **STIFF}, 0.9479943, 1e-6, "L", SPICE),
    Check({"frequency_hz": 580.0, **STIFF}, 0.9230010, 1e-6, "L", SPICE),
    Check({"frequency_hz": 6000.0, **STIFF}, 0.3599314, 1e-6, "L", SPICE),
    _loaded(1234.0, COIL),
    _loaded(15_000.0, STIFF),
]

# On a wheel of 60 positions the tooth frequency in hertz equals the speed in rpm.
LOADED = [
    Check(
        {"ref_v": 0.5, "ref_rpm": 60.0, "speed_rpm": 580.0, "positions": 60, **COIL},
        0.5 * 580.0 / 60.0 * 0.9126257 / 0.9207216,
        1e-5,
        "L",
        SPICE,
    ),
    Check(
        {"ref_v": 0.5, "ref_rpm": 60.0, "speed_rpm": 6000.0, "positions": 60, **COIL},
        0.5 * 6000.0 / 60.0 * 0.5381205 / 0.9207216,
        1e-4,
        "L",
        SPICE,
    ),
    Check(
        {"ref_v": 1.0, "ref_rpm": 580.0, "speed_rpm": 6000.0, "positions": 60, **STIFF},
        6000.0 / 580.0 * 0.3599314 / 0.9230010,
        1e-4,
        "L",
        SPICE,
    ),
]


@pytest.mark.parametrize(
    ("model", "check"),
    table(pickup_volts, AMPLITUDE)
    + table(gap_factor, GAP)
    + table(load_factor, LOAD)
    + table(loaded_pickup_volts, LOADED),
)
def test_pickups_agree_with_the_world(model, check):
    """Amplitude, gap law and load agree with outside values."""
    check.hold(model)


def test_the_tables_are_well_founded():
    """Each model rests on at least three printed or library values."""
    for rows in (AMPLITUDE, GAP, LOAD, LOADED):
        assert_well_founded(rows)
