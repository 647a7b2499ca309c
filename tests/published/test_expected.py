"""The main job end to end: written records to the figures that outside sources give.

Each value passes the grammar, the units, the engine and the model, so that a slip in any of them
shows.
"""

from __future__ import annotations

from dataclasses import dataclass

import pytest

from generator.expected import expect
from generator.quantities import Interval, convert, unit_named
from generator.records.kinds.things import Spec
from tests.expected.test_engine import at, value, with_


@dataclass(frozen=True)
class Published:
    """A figure from outside and where it comes from."""

    spec: Spec
    conditions: dict[str, float]
    low: float | None
    nominal: float | None
    high: float | None
    tolerance: float
    source: str


PICKUP = {"name": "pickup_volts", "slowest": "100 rpm", "fastest": "900 rpm"}
WHEEL = {"name": "tooth_rate", "wheel": "wheel"}
ROWS = [
    Published(value(), {"temperature": 80.0}, 957.0, 1063.0, 1169.0, 0.6,
              "closed form, IEC 60028: 860·(1 + 0.00393·60) = 1062.8, and ± 10 % of it"),
    Published(value(), {"temperature": 20.0}, 774.0, 860.0, 946.0, 1e-9,
              "the reference condition itself: ± 10 % of 860 by arithmetic"),
    Published(value(value="12 ohm ± 5 %"), {"temperature": 80.0}, 14.088, 14.830, 15.571, 0.001,
              "closed form, IEC 60028: 12·1.2358"),
    Published(value(value="0.75 ohm ± 4 %"), {"temperature": 80.0}, 0.8898, 0.9269, 0.9639, 0.0002,
              "closed form, IEC 60028: 0.75·1.2358"),
    Published(value(value="1.588 ohm ± 0 %"), {"temperature": 75.0}, 1.93, 1.93, 1.93, 0.006,
              "US National Electrical Code, chapter 9, table 8: solid wire, 75 °C"),
    Published(value(value="16.13 ohm ± 0 %"), {"temperature": 0.0}, 14.86, 14.86, 14.86, 0.01,
              "NBS Handbook 100 (1966), factor .92140 at 0 °C"),
    Published(value(value=None, at={}, model=WHEEL), {"engine_speed": 200.0}, 193.333, 200.0, 200.0,
              1e-3, "closed form: 60 positions at 200 rpm give 200 Hz; 58 teeth counted 193.3 Hz"),
    Published(value(value=None, at={}, model=WHEEL), {"engine_speed": 600.0}, 580.0, 600.0, 600.0,
              1e-9, "closed form: a counter sees 58 teeth, 580 Hz at 600 rpm"),
    Published(value(value="0.9 V ± 30 %", quantity="voltage", at={"engine_speed": "200 rpm"},
                    model=PICKUP), {"engine_speed": 300.0}, 0.945, 1.35, 1.755, 1e-9,
              "Faraday's law, IEC 60050-121-11-28: volts in proportion to speed, times 1.5"),
    Published(value(value=None, quantity="voltage", at={},
                    model={"name": "square_mean", "high": "5 V", "low": "0.3 V",
                           "duty": "50 %"}), {}, 2.65, 2.65, 2.65, 1e-9,
              "closed form: mean of a square wave, Vhi·d + Vlo·(1 − d)"),
    Published(value(value=None, quantity="voltage", at={},
                    model={"name": "square_mean", "high": "5 V", "low": "0.3 V",
                           "duty": "10 %"}), {}, 0.77, 0.77, 0.77, 1e-9,
              "closed form: mean of a square wave, Vhi·d + Vlo·(1 − d)"),
    Published(value(value=None, quantity="voltage", at={},
                    model={"name": "pull_up", "pull_up": "5 V", "resistor": "2.49 kohm",
                           "meter": "5.896 kohm"}), {}, 3.515, 3.515, 3.515, 1e-3,
              "closed form: divider 5 V·5896/(2490 + 5896)"),
]  # fmt: skip


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row.source[:40])
def test_a_record_gives_the_published_figure(row: Published) -> None:
    """Shows that text in a record comes out as the figure an outside source gives."""
    found = at(row.spec, **row.conditions)
    for got, wanted in ((found.low, row.low), (found.nominal, row.nominal), (found.high, row.high)):
        assert got == pytest.approx(wanted, abs=row.tolerance), row.source


UNITS = [
    (1.0, "lbf·ft", "N·m", 1.355818, 5e-7, "NIST SP 811 (2008), appendix B.8, pound-force foot"),
    (1.0, "lbf·in", "N·m", 0.1129848, 5e-8, "NIST SP 811 (2008), B.8, pound-force inch"),
    (1.0, "psi", "Pa", 6894.757, 5e-4, "NIST SP 811 (2008), B.8, pound-force per square inch"),
    (1.0, "inHg", "Pa", 3386.389, 5e-4, "NIST SP 811 (2008), B.8, inch of mercury, conventional"),
    (1.0, "bar", "psi", 14.50377, 5e-6, "NIST SP 811 (2008): 1e5 Pa over 6894.757 Pa"),
    (90.0, "°C", "°F", 194.0, 1e-9, "NIST SP 811 (2008), B.8: t/°F = 1.8·t/°C + 32"),
    (-40.0, "°F", "°C", -40.0, 1e-9, "NIST SP 811 (2008), B.8: the two scales meet at −40"),
    (1.0, "in", "mm", 25.4, 1e-12, "NIST SP 811 (2008), B.8, inch (exact)"),
    (1.0, "mph", "km/h", 1.609344, 1e-9, "NIST SP 811 (2008), B.8, mile per hour (exact)"),
]


@pytest.mark.parametrize(("number", "source", "target", "wanted", "tolerance", "where"), UNITS)
def test_units_convert_as_published(
    number: float, source: str, target: str, wanted: float, tolerance: float, where: str
) -> None:
    """Shows that each conversion a reader sees is the published one."""
    from_, to = unit_named(source), unit_named(target)
    assert from_ is not None and to is not None
    assert convert(number, from_, to) == pytest.approx(wanted, abs=tolerance), where


def test_a_torque_is_shown_from_one_value_in_both_units() -> None:
    """Shows that 10 N·m is 7.38 lbf·ft (NIST SP 811: 10/1.355818), whichever was written."""
    for text in ("10 N·m", "7.375621 lbf·ft"):
        spec = value(value=text, quantity="torque", at={}, model={"name": "plain"})
        found = expect(with_(spec), spec, {})
        assert found.nominal == pytest.approx(10.0, abs=1e-5)
        assert Interval.of(found.nominal or 0).single
