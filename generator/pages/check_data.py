"""What a page's script needs to judge a reading: limits, meters, outcomes, and what all share.

A value's own data stands in an attribute on the test's page, in base units::

    {
      "standing": "vehicle_value", "practice": false,   as the record says
      "quantity": "resistance", "ac": null,             "ac" or "dc" for a voltage
      "units": [["ohm", 0], …]                          unit and decimals shown: the record's own
                                                        and, where there is one, its counterpart's
      "axes": [["temperature", [-20, 100]], …],         name and knots; the meter's conductance last
      "low": […], "high": […], "bent": false, "error": 0.0006,     see pages/check_curves.py
      "meter": [1e-07, 1e-07],                          conductance taken where no meter is named
      "source": [1000, 1200],                           resistance the meter looks into, or null
      "band": [200, 1200, "200 to 1200 ohm"],           or null
      "method": "…",
      "tools": [{"title": "Multimeter", "ranges": [[200, 0.1, 0.9, 2], …], "input": [low, high],
                 "leads": [0.1, 0.4], "nulled": true, "share": 1}],
                                 range: top, one count, percent of the reading, counts
      "outcomes": [["found-low-4", "low", null, null], …],         anchor, finding, written reading
      "several": false                                  whether other values of it say the outcome
    }
"""

from __future__ import annotations

import json
from typing import Any

from generator.expected import CONDITIONS
from generator.expected.engine import unit_of
from generator.expected.meter_kind import shown_share
from generator.expected.readings import LEADS_OHM, function_of, ranges_for, top_of
from generator.expected.remarks import HOT_C, LOW_OHM
from generator.pages import check_curves, routes
from generator.pages.book import Book
from generator.pages.strings import say
from generator.pages.systems import CONDITIONS_TO_US, TO_SI, counterpart, places_in
from generator.pages.words import ALL
from generator.physics.deciding import USUAL_RISK
from generator.quantities import QUANTITIES, UNITS, Unit, unit_named
from generator.quantities.typed import SHORT, as_data
from generator.records.kinds.base import COMMON_PRACTICE
from generator.records.kinds.knowledge import Tool
from generator.records.kinds.models import DividerModel, PullUpModel
from generator.records.kinds.things import Spec
from generator.records.kinds.work import Test

SAID = (
    "heading", "reading", "unit", "over", "over_said", "sign", "sign_said", "usual", "spread",
    "meter", "meter_line", "accuracy", "leads_off", "leads_in", "another", "bare", "percent",
    "counts", "input", "nulled", "leads", "next", "several", "in_several", "no_outcome", "again",
    "close", "beyond", "range", "span", "kept_before", "kept_after", "kept_not", "kept_full",
    "keep", "keep_not", "was_before", "was_after", "of_revision",
)  # fmt: skip
FAULTS = ("form", "comma", "unit", "quantity", "milli", "impossible", "meter")
"""Words that the script puts on a page, beside those of the verdicts."""


def check_data(book: Book, test: Test, spec: Spec) -> str:
    """Give the data of one value on a test's page as JSON; "" where no line may be drawn."""
    lines = check_curves.lines(book.kb, spec)
    if lines is None:
        return ""
    unit, source = unit_of(spec), spec.circuit_resistance
    band = book.kb.find("specs", spec.band, Spec)
    data: dict[str, Any] = {
        "standing": spec.standing,
        "practice": spec.source == COMMON_PRACTICE,
        "quantity": unit.quantity,
        "ac": function_of(spec)[:2] if unit.quantity == "voltage" else None,
        "units": _units(unit, spec.places),
        "axes": [[axis.name, axis.knots] for axis in lines.axes],
        "low": lines.low, "high": lines.high, "bent": lines.bent, "error": lines.error,
        "meter": _taken(spec),
        "source": None if source is None
        else [e for e in (source.low, source.high) if e is not None],
        "band": None if band is None or band.value is None else
        [band.value.low, band.value.high, band.value.text],
        "method": spec.method,
        "tools": [
            found
            for tool in (book.kb.get("tools", id_, Tool) for id_ in test.tools)
            for found in [_tool(book, spec, tool)]
            if found is not None
        ],
        "outcomes": _outcomes(test, unit.quantity),
        "several": _several(book, test, spec),
    }  # fmt: skip
    return json.dumps(data, ensure_ascii=False, separators=(",", ":"))


def _taken(spec: Spec) -> list[float] | None:
    """Give the conductance that a model takes where no meter is named, in siemens."""
    if not isinstance(spec.model, (PullUpModel, DividerModel)):
        return None
    meter = spec.model.meter
    return [0.0, 0.0] if meter is None else [1 / meter.high, 1 / meter.low]


def _units(unit: Unit, places: int) -> list[tuple[str, int]]:
    other = counterpart(unit)
    own = [(unit.symbol, places)]
    return own if other is None else [*own, (other.symbol, places_in(other, unit, places))]


def _tool(book: Book, spec: Spec, tool: Tool) -> dict[str, Any] | None:
    """Give an instrument as far as this value is read with it, or None where it cannot."""
    meter = tool.meter
    ranges = ranges_for(meter, spec) if meter is not None else []
    if meter is None or not ranges:
        return None
    leads, load = meter.leads, meter.input_resistance
    known = leads is not None and leads.low is not None and leads.high is not None
    return {
        "title": tool.title,
        "ranges": [[top_of(r), r.digit.only, r.percent, r.counts] for r in ranges],
        "input": None if load is None or load.low is None else [load.low, load.high or load.low],
        "leads": [leads.low, leads.high] if known and leads is not None else list(LEADS_OHM),
        "nulled": meter.leads_nulled,
        "share": shown_share(book.kb, spec, meter),
    }


def _outcomes(test: Test, quantity: str) -> list[list[Any]]:
    """Give the outcomes that a reading of this quantity may lead to."""
    return [
        [routes.outcome(outcome.finding, index), str(outcome.finding),
         *((None, None) if outcome.reading is None
           else (outcome.reading.low, outcome.reading.high))]
        for index, outcome in enumerate(test.outcomes)
        if outcome.reading is None or outcome.reading.quantity == quantity
    ]  # fmt: skip


def _several(book: Book, test: Test, spec: Spec) -> bool:
    """Say whether the same vehicle has another value in this test: one alone decides nothing."""
    others = [book.kb.get("specs", id_, Spec) for id_ in test.specs]
    return any(
        other.standing == "vehicle_value"
        and other.id not in (spec.id, spec.overrides)
        and other.overrides != spec.id
        and (spec.overrides is None or other.overrides != spec.overrides)
        and set(other.applies_to) & set(spec.applies_to)
        for other in others
    )


def script() -> str:
    """Give what every page's reading check shares, as a script a folder can serve too."""
    shared = {
        "risk": USUAL_RISK,
        "low_ohm": LOW_OHM,
        "hot_c": HOT_C,
        "quantities": {
            quantity: {
                **as_data(quantity),
                "units": [unit.symbol for unit in UNITS if unit.quantity == quantity],
            }
            for quantity in QUANTITIES
        },
        "over_range": as_data("resistance")["over_range"],
        "short": sorted({letter for short in SHORT.values() for letter in short}),
        "conditions": {
            known.name: {
                "quantity": known.quantity, "asks": known.asks,
                "units": [known.unit, *_other(known.name, known.unit)],
            }
            for known in CONDITIONS.values()
        },
        "us": sorted(TO_SI),
        "leads": LEADS_OHM,
        "words": {
            **{f"check.{word}": say(f"check.{word}") for word in SAID},
            **{f"check.fault.{fault}": say(f"check.fault.{fault}") for fault in FAULTS},
            **{key: say(key) for key in ALL if key.startswith("verdict.")},
            **{key: say(key) for key in ("value.at_least", "value.at_most")},
        },
    }  # fmt: skip
    for quantity in shared["quantities"].values():  # type: ignore[attr-defined]
        del quantity["over_range"]
    plain = json.dumps(shared, ensure_ascii=False, separators=(",", ":"))
    return f"window.fettleReadings={plain};\n"


def _other(name: str, symbol: str) -> list[str]:
    unit = unit_named(symbol)
    other = unit_named(CONDITIONS_TO_US.get(name, "")) or (counterpart(unit) if unit else None)
    return [other.symbol] if other else []
