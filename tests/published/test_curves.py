"""Reading between the rows of a table against numpy's and scipy's interpolation."""

from __future__ import annotations

import math

import pytest
from scipy.interpolate import make_interp_spline

from generator.physics.curves import TabulatedCurve
from tests.published.checks import Check, assert_well_founded, table

SCIPY = "scipy.interpolate.make_interp_spline, k = 1"
SCIPY_LOG = SCIPY + ", on the logarithms"
SENSOR_TABLE = "printed table of a 10 kΩ temperature sensor"
TEMPS_C = (0.0, 25.0, 50.0, 100.0, 120.0)
OHMS = (27936.0, 10000.0, 4103.0, 946.6, 578.1)
SENSOR = TabulatedCurve(TEMPS_C, OHMS, "log-linear")
FLOAT_X, FLOAT_Y = (0.0, 3.0, 10.0, 12.5), (0.4, 1.9, 1.1, 4.5)
SENDER = TabulatedCurve(FLOAT_X, FLOAT_Y)


def curve_at(curve: TabulatedCurve, x: float) -> float:
    """Value of a curve, as a plain function for the table."""
    return float(curve.at(x))


def curve_inverse(curve: TabulatedCurve, y: float) -> float:
    """Inverse of a curve, as a plain function for the table."""
    return float(curve.inverse(y))


def _linear(x: float) -> Check:
    def by_scipy() -> float:
        return float(make_interp_spline(FLOAT_X, FLOAT_Y, k=1)(x))

    return Check({"curve": SENDER, "x": x}, by_scipy, 1e-12, "L", SCIPY)


def _log(x: float) -> Check:
    def by_scipy() -> float:
        return math.exp(float(make_interp_spline(TEMPS_C, [math.log(r) for r in OHMS], k=1)(x)))

    return Check({"curve": SENSOR, "x": x}, by_scipy, 1e-8, "L", SCIPY_LOG)


def _log_inverse(ohm: float) -> Check:
    def by_scipy() -> float:
        logs = [math.log(r) for r in reversed(OHMS)]
        return float(make_interp_spline(logs, TEMPS_C[::-1], k=1)(math.log(ohm)))

    return Check({"curve": SENSOR, "y": ohm}, by_scipy, 1e-9, "L", SCIPY_LOG)


AT = [
    *(_linear(x) for x in (0.0, 1.3, 3.0, 7.7, 12.5)),
    *(_log(x) for x in (0.0, 10.0, 37.0, 75.0, 119.0)),
    Check({"curve": SENSOR, "x": 25.0}, 10000.0, 0.0, "P", SENSOR_TABLE),
    Check({"curve": SENSOR, "x": 120.0}, 578.1, 0.0, "P", SENSOR_TABLE),
    Check({"curve": SENDER, "x": 6.5}, 1.5, 1e-12, "C", "half way between 1.9 and 1.1"),
]
INVERSE = [
    *(_log_inverse(ohm) for ohm in (20e3, 6000.0, 700.0)),
    Check({"curve": SENSOR, "y": 4103.0}, 50.0, 1e-9, "P", SENSOR_TABLE),
]


@pytest.mark.parametrize(("model", "check"), table(curve_at, AT) + table(curve_inverse, INVERSE))
def test_curves_agree_with_the_world(model, check):
    """Both interpolations and the inverse agree with scipy and with the printed rows."""
    check.hold(model)


def _beta(temp_c: float) -> float:
    return 10_000.0 * math.exp(3435.0 * (1.0 / (temp_c + 273.15) - 1.0 / 298.15))


@pytest.mark.parametrize(("kind", "worst"), [("log-linear", 0.004), ("linear", 0.024)])
def test_the_stated_error_between_rows_holds(kind, worst):
    """On rows 10 K apart of a β curve (closed form) each interpolation errs as stated, one way."""
    rows = [20.0, 30.0, 40.0]
    curve = TabulatedCurve(rows, [_beta(t) for t in rows], kind)
    error = curve.at(25.0) / _beta(25.0) - 1.0
    assert worst / 2.0 < error < worst


def test_the_tables_are_well_founded():
    """Values and inverse each rest on at least three library values."""
    for rows in (AT, INVERSE):
        assert_well_founded(rows)
