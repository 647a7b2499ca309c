"""Random readings of every value on a test's page, and the verdicts that the generator gives."""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import dataclass, field
from random import Random
from typing import Any

from generator.expected import Reading, Verdict, family, judge
from generator.expected.readings import ranges_for
from generator.pages.book import Book
from generator.pages.check_data import check_data
from generator.quantities import Interval, parse
from generator.records.kinds.instruments import Meter
from generator.records.kinds.knowledge import Tool
from generator.records.kinds.things import Spec
from generator.records.kinds.work import Test
from generator.records.knowledge_base import KnowledgeBase
from tests.demo import demonstration
from tests.expected.samples import SAMPLES, WHEEL
from tests.hazards.build import made, manual

FUNCTIONS = {
    "resistance": ("2 kohm", "1 ohm", "200 Mohm"), "dc_volts": ("20 V", "10 mV", "2000 V"),
    "ac_volts": ("2 V", "1 mV", "2000 V"), "current": ("10 A", "10 mA", "5000 A"),
    "frequency": ("2 kHz", "1 Hz", "9000 kHz"), "duty": ("100 %", "0.1 %", "100000 %"),
    "temperature": ("200 °C", "0.1 °C", "2000 °C"), "pressure": ("250 kPa", "0.1 kPa", "300 MPa"),
    "speed": ("2000 rpm", "1 rpm", "90000 rpm"), "time": ("20 ms", "0.01 ms", "900 s"),
    "length": ("20 mm", "0.01 mm", "90 m"),
}  # fmt: skip
"""What the instrument of these cases reads: a range, one count, and the top of the next."""

METER: Tool = made(
    Tool, "tools", "meter", tool_class="multimeter", needs="To read.", calibrated=True,
    meter={
        "ranges": [
            {"function": name, "up_to": top, "digit": digit, "percent": 0.8, "counts": 2}
            for name, (first, digit, second) in FUNCTIONS.items() for top in (first, second)
        ],
        "input_resistance": "10 Mohm", "leads": "0.1 to 0.4 ohm",
    },
)  # fmt: skip


@dataclass
class Case:
    """One reading: what the script gets, and what the generator says."""

    spec: Spec
    data: int
    reading: dict[str, Any]
    said: dict[str, list[float]]
    meter: dict[str, Any] | None
    verdict: Verdict


@dataclass
class Cases:
    """All of them; the data of each value once."""

    data: list[dict[str, Any]] = field(default_factory=list)
    cases: list[Case] = field(default_factory=list)

    def add(
        self, kb: KnowledgeBase, test: Test, spec: Spec, tool: Tool, random: Random, n: int
    ) -> None:  # fmt: skip
        """Add `n` random readings of a value."""
        text = check_data(Book.of(kb), test, spec)
        if not text:
            return
        self.data.append(json.loads(text))
        data = self.data[-1]
        for _ in range(n):
            said = dict(_said(data, random))
            shown, used, nulled = _meter(data, tool, random)
            reading = _reading(data, random)
            taken = Reading(
                "", reading.get("value"), reading.get("over", False),
                reading.get("impossible", False),
            )  # fmt: skip
            conditions = {name: Interval(*span) for name, span in said.items()}
            verdict = judge(kb, spec, taken, conditions, used, nulled=nulled)
            self.cases.append(Case(spec, len(self.data) - 1, reading, said, shown, verdict))


def every_model(n: int, random: Random) -> Cases:
    """Give cases of a spec of every model."""
    found = Cases()
    kb = manual(WHEEL, METER, *SAMPLES)
    like = demonstration().get("tests", "winding-resistance", Test)
    for spec in SAMPLES:
        test = like.model_copy(update={"specs": [spec.id], "tools": ["meter"]})
        found.add(kb, test, spec, METER, random, n)
    return found


def demonstrated(n: int, random: Random) -> Cases:
    """Give cases of every value on the test pages of the demonstration manual."""
    found, kb = Cases(), demonstration()
    seen = set()
    for test in kb.all("tests", Test):
        for id_ in test.specs:
            spec = kb.get("specs", id_, Spec)
            for member in [spec, *family(kb, spec)]:
                tools = [kb.get("tools", t, Tool) for t in test.tools]
                tool = next((t for t in tools if t.meter and ranges_for(t.meter, member)), METER)
                if member.id not in seen:
                    seen.add(member.id)
                    found.add(kb, test, member, tool, random, n)
    return found


def _said(data: dict[str, Any], random: Random) -> Iterator[tuple[str, list[float]]]:
    for name, knots in data["axes"]:
        dice = random.random()
        if name == "meter" or dice < 0.2:
            continue
        one = random.uniform(knots[0], knots[-1])
        width = 0.0 if dice < 0.7 else random.random() ** 3 * (knots[-1] - knots[0])
        yield name, [max(knots[0], one - width), min(knots[-1], one + width)]


def _reading(data: dict[str, Any], random: Random) -> dict[str, Any]:
    """Give a reading near a limit as often as not, far off at times, and at times none."""
    dice = random.random()
    if dice < 0.04:
        return {"over": True}
    if dice < 0.06:
        return {"impossible": True}
    figures = [x for side in ("low", "high") for x in data[side] or ()]
    near = random.choice(figures)
    if dice < 0.75:
        value = near * (1 + random.gauss(0, 0.02)) + random.gauss(0, 0.002) * max(map(abs, figures))
    else:
        value = random.uniform(min(figures) - abs(near), max(figures) + abs(near))
    if data["quantity"] in ("resistance", "frequency", "time", "length", "rotational speed"):
        value = abs(value)
    return {"value": value * 1000 if dice > 0.97 else value}


def _meter(
    data: dict[str, Any], tool: Tool, random: Random
) -> tuple[dict[str, Any] | None, Tool | None, bool | None]:
    """Give a meter twice, for the script and for the generator, its record changed or not."""
    if random.random() < 0.2 or not data["tools"] or tool.meter is None:
        return None, None, None
    shown, meter = dict(data["tools"][0]), tool.meter
    if random.random() < 0.5:
        percent, counts = random.choice([0.05, 0.5, 1.5, 3.0]), random.choice([0, 1, 5, 20])
        shown["ranges"] = [[top, digit, percent, counts] for top, digit, _, _ in shown["ranges"]]
        ranges = [r.model_copy(update={"percent": percent, "counts": counts}) for r in meter.ranges]
        meter = meter.model_copy(update={"ranges": ranges})
    if random.random() < 0.5:
        mohm = random.choice([1, 1.7, 5, 11, 200])
        shown["input"] = [mohm * 1e6, mohm * 1e6]
        meter = _with(meter, "input_resistance", f"{mohm} Mohm")
    if random.random() < 0.5:
        ohm = random.choice([0.0, 0.2, 1.3])
        shown["leads"] = [ohm, ohm]
        meter = _with(meter, "leads", f"{ohm} ohm")
    nulled = random.choice([True, False])
    shown["nulled"] = nulled
    return shown, tool.model_copy(update={"meter": meter}), nulled


def _with(meter: Meter, name: str, text: str) -> Meter:
    return meter.model_copy(update={name: parse(text, "resistance")})
