"""A record that no model can work from is a finding at the line that has to be mended."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from generator import manual
from tests.demonstration import SMALL_RECORDS

HEAD = """title: A value
author: technician
owner: technician
status: draft
applies_to: [corrie-1-2]
component: crank-sensor-inductive
quantity: whatever it is
standing: vehicle_value
method: At the plug.
source: common-practice
"""

KEY_ON = "at: {state: key on}\n"
CASES = [
    # what is wrong, the record's own lines, the code, and the text on the marked line
    ("a unit of another quantity", "value: 12 V ± 5 %\nat:\n  temperature: 20 °C\n"
     "model:\n  name: winding\n  material: copper\n", "no-expectation", "value: 12 V"),
    ("a shown unit of another quantity", KEY_ON + "unit: bar\nmodel:\n  name: platinum\n"
     "  at_zero: 200 ohm\n  curve: iec-60751\n  tolerance_class: B\n  coldest: 0 °C\n"
     "  hottest: 600 °C\n", "no-expectation", "unit: bar"),
    ("beyond the curve", KEY_ON + "model:\n  name: platinum\n  at_zero: 200 ohm\n"
     "  curve: tcr-3750\n  tolerance_class: B\n  coldest: 0 °C\n  hottest: 900 °C\n",
     "no-expectation", "hottest: 900 °C"),
    ("a reference beyond the metal", "value: 860 ohm\nat:\n  temperature: 900 °C\nmodel:\n"
     "  name: winding\n  material: copper\n", "no-expectation", "temperature: 900 °C"),
    ("no reference", "value: 0.9 V\nat: {state: key on}\nmodel:\n  name: pickup_volts\n"
     "  slowest: 100 rpm\n  fastest: 900 rpm\n", "no-reference-condition", "at:"),
    ("a drop without its current", KEY_ON + "model:\n  name: cable_drop\n  area: 2.5 mm²\n"
     "  length: 5 m\n", "no-reference-condition", "at:"),
    ("a cable of no size", "at:\n  current: 10 A\nmodel:\n  name: cable_drop\n  area: 2.6 mm²\n"
     "  length: 5 m\n", "no-expectation", "area: 2.6 mm²"),
    ("a current that cannot flow", KEY_ON + "model:\n  name: coil_dwell\n  resistance: 0.6 ohm\n"
     "  inductance: 4 mH\n  current: 40 A\n", "no-expectation", "current: 40 A"),
    ("one side open", KEY_ON + "model:\n  name: pull_up\n  pull_up: at least 4.8 V\n"
     "  resistor: 4.7 kohm\n  meter: 10 Mohm\n", "no-expectation", "pull_up: at least 4.8 V"),
    ("a range where one is needed", KEY_ON + "model:\n  name: key_on_pressure\n"
     "  tolerance: 1 to 2 kPa\n", "value-spread", "tolerance: 1 to 2 kPa"),
    ("a thermistor that rises", KEY_ON + "model:\n  name: thermistor_points\n  points:\n"
     "    - temperature: 0 °C\n      resistance: 900 ohm\n"
     "    - temperature: 50 °C\n      resistance: 4 kohm\n"
     "    - temperature: 100 °C\n      resistance: 9 kohm\n", "no-expectation",
     "temperature: 0 °C"),
    ("rows out of order", KEY_ON + "model:\n  name: curve\n  over: temperature\n"
     "  interpolation: linear\n  rows:\n    - at: 20 °C\n      value: 1 V\n"
     "    - at: 10 °C\n      value: 2 V\n", "no-expectation", "at: 10 °C"),
    ("a row in another quantity", KEY_ON + "model:\n  name: curve\n  over: temperature\n"
     "  interpolation: linear\n  rows:\n    - at: 20 °C\n      value: 1 V\n"
     "    - at: 3 V\n      value: 2 V\n", "no-expectation", "at: 3 V"),
    ("a torque for another bolt", "value: 250 N·m\nat: {state: key on}\nmodel:\n  name: torque\n"
     "  diameter: 8 mm\n  pitch: 1.25 mm\n  strength: \"8.8\"\n", "implausible-torque",
     "value: 250 N·m"),
    ("a transducer beyond its supply", KEY_ON + "model:\n  name: transducer\n"
     "  from_pressure: 15 kPa\n  from_share: 4 %\n  to_pressure: 115 kPa\n  to_share: 140 %\n"
     "  tolerance: 2 kPa\n", "no-expectation", "to_share: 140 %"),
    ("both sizes of a cable", "at:\n  current: 10 A\nmodel:\n  name: cable_drop\n"
     "  area: 2.5 mm²\n  gauge: 12\n  length: 5 m\n", "cable-size", "model:"),
    ("a band that is corrected", "value: 860 ohm ± 10 %\nat:\n  temperature: 20 °C\nmodel:\n"
     "  name: winding\n  material: copper\n", "no-expectation", "name: winding"),
]  # fmt: skip


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Give a copy of the demonstration's records."""
    made = tmp_path_factory.mktemp("manual")
    shutil.copytree(SMALL_RECORDS, made / "kb_source")
    return made


@pytest.mark.parametrize(("what", "lines", "code", "marked"), CASES, ids=[c[0] for c in CASES])
def test_a_finding_stands_at_the_line_to_mend(
    folder: Path, what: str, lines: str, code: str, marked: str
) -> None:
    """Shows that wrong units, impossible conditions and extrapolation are findings, not numbers."""
    head = HEAD
    if what == "a band that is corrected":
        head = head.replace("vehicle_value", "plausibility_band")
    text = head + lines
    path = folder / "kb_source" / "specs" / "a-value.yml"
    path.write_text(text, encoding="utf-8")
    found = [
        p for p in manual.read(folder).problems
        if p.record == "specs/a-value" and p.severity == "error"
    ]  # fmt: skip
    assert [p.code for p in found] == [code]
    assert marked in text.splitlines()[found[0].line - 1]
    assert found[0].hint
