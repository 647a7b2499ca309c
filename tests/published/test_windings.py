"""Winding resistance against printed wire tables and textbook examples."""

from __future__ import annotations

import pytest

from generator.physics.windings import temperature_coefficient_per_k, winding_ohm, winding_temp_c
from tests.published.checks import Check, assert_well_founded, table

NEC_8 = (
    "US National Electrical Code, chapter 9, table 8: solid wire at 75 °C, ohm per 1000 ft; from "
    "the printed 20 °C value of the gauge (ASTM B258 copper wire table)"
)
NEC_8_AL = (
    "US National Electrical Code, chapter 9, table 8, aluminium at 75 °C; from the 20 °C copper "
    "value times 28.264/17.241, the resistivities of IEC 60889 and IEC 60028"
)
HEATING_WIRE = "printed factor table of heating alloys, resistance over its 20 °C value"
KUPHALDT = "printed table of coefficients at 20 °C, Lessons in Electric Circuits, volume I"
MODELICA = "Modelica Standard Library, Electrical.Machines.Thermal.Constants"
SECTION_1 = "IEC 60028: 1 + 0.00393·(t − 20)"
FORM_234 = "NBS Handbook 100 (1966): (234.5 + t)/(234.5 + 20)"


def _copper(ohm: float, temp_c: float, ref_c: float = 20.0) -> dict[str, float]:
    return {"nominal_ohm": ohm, "temp_c": temp_c, "ref_c": ref_c}


def _at(material: str, temp_c: float, ohm: float = 1.0) -> dict[str, object]:
    return {"nominal_ohm": ohm, "temp_c": temp_c, "material": material}


OHM = [
    Check(_copper(1.588, 75.0), 1.93, 0.006, "P", NEC_8),
    Check(_copper(2.525, 75.0), 3.07, 0.006, "P", NEC_8),
    Check(_copper(4.016, 75.0), 4.89, 0.007, "P", NEC_8),
    Check(_copper(6.385, 75.0), 7.77, 0.006, "P", NEC_8),
    Check(_at("aluminium", 75.0, 2.6033), 3.18, 0.006, "P", NEC_8_AL),
    Check(_at("aluminium", 75.0, 4.1394), 5.06, 0.006, "P", NEC_8_AL),
    Check(_at("aluminium", 75.0, 6.5838), 8.05, 0.010, "P", NEC_8_AL),
    Check(
        _at("aluminium", 80.0),
        (228.0 + 80.0) / (228.0 + 20.0),
        2e-4,
        "P",
        "printed note on transformer windings: aluminium extrapolates to nought at −228 °C",
    ),
    Check(_at("nichrome", 200.0), 1.012, 0.0015, "P", HEATING_WIRE),
    Check(_at("nichrome", 300.0), 1.018, 0.0015, "P", HEATING_WIRE),
    Check(_at("nichrome", 400.0), 1.025, 0.0015, "P", HEATING_WIRE),
    Check(_at("iron-chromium-aluminium", 100.0), 1.002, 0.001, "P", HEATING_WIRE),
    Check(_at("iron-chromium-aluminium", 200.0), 1.005, 0.001, "P", HEATING_WIRE),
    Check(_at("iron-chromium-aluminium", 300.0), 1.008, 0.001, "P", HEATING_WIRE),
    Check(
        _copper(0.15, 110.0, 25.0),
        0.200,
        0.0015,
        "P",
        "printed worked example of a motor winding, 0.15 ohm at 25 °C",
    ),
    Check(_copper(1.0, 0.0), 0.92140, 1e-9, "C", SECTION_1),
    Check(_copper(1.0, 25.0), 1.01965, 1e-9, "C", SECTION_1),
    Check(_copper(1.0, 80.0), 1.23580, 1e-9, "C", SECTION_1),
    Check(_copper(0.75, 80.0), 0.927, 5e-4, "C", SECTION_1),
    Check(_copper(12.0, 80.0), 14.830, 5e-4, "C", SECTION_1),
    Check(_copper(12.0, 80.0), 14.829, 1.5e-3, "C", FORM_234),
    Check(_copper(860.0, 80.0), 1063.0, 0.5, "C", SECTION_1),
    Check(_copper(860.0, -30.0), 860.0 * 204.5 / 254.5, 0.09, "C", FORM_234),
]

COEFFICIENT = [
    Check(
        {"ref_c": 0.0},
        0.00427,
        6e-6,
        "P",
        "printed comparison of thermometer metals: copper, 0 to 100 °C",
    ),
    Check(
        {"ref_c": 0.0},
        0.00426,
        6e-6,
        "P",
        "printed examination question on a motor winding, coefficient at 0 °C",
    ),
    Check({"ref_c": 0.0}, 1.0 / 234.5, 2e-6, "P", "printed exercise, α0 = 1/234.5"),
    Check({"ref_c": 20.0, "material": "constantan"}, -0.000074, 1e-9, "P", KUPHALDT),
    Check({"ref_c": 20.0, "material": "brass"}, 1.1e-3, 1e-9, "P", MODELICA),
    Check({"ref_c": 20.0, "material": "bronze"}, 0.8e-3, 1e-9, "P", MODELICA),
    Check({"ref_c": 20.0, "material": "copper"}, 3.92e-3, 2e-5, "P", MODELICA),
    Check({"ref_c": 25.0}, 0.00385, 6e-6, "M", "NBS Handbook 100, from memory"),
    Check({"ref_c": 15.0}, 0.00401, 6e-6, "M", "NBS Handbook 100, from memory"),
]

TEMPERATURE = [
    Check(
        {"ohm": 100.0, "nominal_ohm": 80.0},
        83.63,
        0.05,
        "P",
        "printed exercise: a winding of 80 ohm at 20 °C reads 100 ohm, α0 = 1/234.5",
    ),
    Check({"ohm": 11.0, "nominal_ohm": 10.0}, 1.1 * 254.5 - 234.5, 0.02, "C", FORM_234),
    Check({"ohm": 8.0, "nominal_ohm": 10.0}, 0.8 * 254.5 - 234.5, 0.03, "C", FORM_234),
]


@pytest.mark.parametrize(
    ("model", "check"),
    table(winding_ohm, OHM)
    + table(temperature_coefficient_per_k, COEFFICIENT)
    + table(winding_temp_c, TEMPERATURE),
)
def test_windings_agree_with_the_world(model, check):
    """Resistance, coefficient and temperature of windings agree with outside values."""
    check.hold(model)


def test_the_iec_60228_table_is_not_what_we_follow():
    """The rounded factor printed with IEC 60228 differs in the third figure from copper's own."""
    rounded = (230.0 + 80.0) / 250.0
    assert abs(winding_ohm(1.0, 80.0) - rounded) > 0.004


def test_the_tables_are_well_founded():
    """Each model rests on at least three printed or library values."""
    assert_well_founded(OHM)
    assert_well_founded(COEFFICIENT + TEMPERATURE)
