"""The data of the reading check: small, within its stated error, with the test's own meters."""

from __future__ import annotations

import html
import json
import math
import re
from itertools import pairwise
from typing import Any

import pytest

from generator.expected import MODELS, expect
from generator.pages import check_curves, check_data
from generator.quantities import QUANTITIES, Interval
from generator.records.kinds.things import Spec
from generator.records.kinds.work import Test
from tests.demo import changed, demonstration
from tests.demonstration import ROOT
from tests.expected.samples import SAMPLES, WHEEL
from tests.hazards.build import manual
from tests.pages.books import page_of, whole

KB = manual(WHEEL, *SAMPLES)
CURVED = [spec for spec in SAMPLES if not MODELS[spec.model.name].jumps]
MOST_BYTES = 4000


def drawn(spec: Spec) -> check_curves.Lines:
    """Give the lines of a sample."""
    found = check_curves.lines(KB, spec)
    assert found is not None
    return found


@pytest.mark.parametrize("spec", CURVED, ids=lambda spec: spec.model.name)
def test_the_lines_lie_within_their_stated_error(spec: Spec) -> None:
    """Between the knots, at places the build did not look at, every model is met."""
    found = drawn(spec)
    axes = [axis for axis in found.axes if axis.name != check_curves.METER]
    for share in (0.1, 0.37, 0.61, 0.93):
        for n in range(max((len(axis.knots) for axis in axes), default=2) - 1):
            at = [_between(axis.knots, n, share) for axis in axes]
            given = {a.name: Interval.of(x) for a, x in zip(axes, at, strict=True)}
            asked, point = spec, tuple(at)
            if len(axes) < len(found.axes):
                asked, point = check_curves.read_by(spec, 4.0), (*at, 1e-6 / 4.0)
            exact = expect(KB, asked, given)
            for figures, limit in ((found.low, exact.low), (found.high, exact.high)):
                assert (figures is None) == (limit is None)
                if figures is not None and limit is not None:
                    line = check_curves.read(found, figures, point)
                    allowed = found.error * (abs(limit) if found.bent else 1)
                    assert abs(line - limit) <= allowed


def _between(knots: tuple[float, ...], n: int, share: float) -> float:
    if len(knots) == 1:
        return knots[0]
    low, high = list(pairwise(knots))[n % (len(knots) - 1)]
    return low + share * (high - low)


@pytest.mark.parametrize("spec", CURVED, ids=lambda spec: spec.model.name)
def test_the_lines_are_as_good_as_a_verdict_needs(spec: Spec) -> None:
    """Half a digit of the display or half a thousandth of the figure, and few knots."""
    found = drawn(spec)
    digit = check_curves._digit(spec)
    assert found.error <= (5e-4 if found.bent else 0.5 * digit)
    assert math.prod(len(axis.knots) for axis in found.axes) <= check_curves.MOST_BENT


def test_a_thermistor_bends_and_a_coil_does_not() -> None:
    """The lines are straight in the logarithm where that takes fewer knots."""
    of = {spec.model.name: drawn(spec) for spec in CURVED}
    assert of["thermistor_points"].bent and len(of["thermistor_points"].axes[0].knots) < 80
    assert not of["winding"].bent and len(of["winding"].axes[0].knots) == 2
    assert not of["plain"].axes


def test_a_model_that_jumps_has_no_check() -> None:
    """No line is drawn through the oxygen cell's jump; its page keeps to its table."""
    spec = next(s for s in SAMPLES if s.model.name == "oxygen_cell")
    assert check_curves.lines(KB, spec) is None


def datas(page_html: str) -> list[dict[str, Any]]:
    """Give the data that a page carries."""
    found = re.findall(r' data-check="([^"]*)"', page_html)
    return [json.loads(html.unescape(each)) for each in found]


def test_every_value_of_a_test_page_has_its_check_and_it_is_small() -> None:
    """Each value block of a test page is followed by its data, of 4 kB at most."""
    book, seen = whole(), 0
    for test in book.kb.all("tests", Test):
        page = page_of(book.kb, test.key)
        blocks = re.findall(r'<div class="value[ "]', page.html)
        checks = re.findall(r' data-check="([^"]*)"', page.html)
        assert len(checks) == len(blocks), test.id
        assert all(len(html.unescape(found).encode()) < MOST_BYTES for found in checks)
        seen += len(checks)
    assert seen > 15


def test_the_meter_is_the_first_of_the_test_that_can_read_it() -> None:
    """The multimeter's resistance ranges come along, rising; a lamp and a lead are no meters."""
    (data,) = datas(page_of(demonstration(), "tests/winding-resistance").html)
    (tool,) = data["tools"]
    assert tool["title"] == "Multimeter"
    tops = [top for top, *_ in tool["ranges"]]
    assert tops == sorted(tops) and 2000.0 in tops
    assert dict(zip(tops, tool["ranges"], strict=True))[2000.0] == [2000.0, 1.0, 0.8, 2.0]
    assert tool["nulled"] is True and tool["leads"] == [0.1, 0.4]
    assert data["meter"] is None
    (pull_up,) = datas(page_of(demonstration(), "tests/hall-pull-up").html)
    assert pull_up["axes"][-1][0] == check_curves.METER
    assert pull_up["meter"] == pytest.approx([1e-7, 1e-7])


def test_outcomes_of_another_quantity_stay_out() -> None:
    """An outcome in volts says nothing of ohms, and its place in the test is kept."""
    kb = demonstration()
    test = kb.get("tests", "winding-resistance", Test)
    volts = kb.get("tests", "hall-pull-up", Test).outcomes[2]
    assert volts.reading is not None and volts.reading.quantity == "voltage"
    with_volts = changed(kb, "tests", test.id, outcomes=[volts, *test.outcomes])
    (data,) = datas(page_of(with_volts, test.key).html)
    anchors = [anchor for anchor, *_ in data["outcomes"]]
    assert anchors[0] == "found-in-limits-2" and len(anchors) == len(test.outcomes)


def test_two_values_of_one_vehicle_say_the_outcome_together() -> None:
    """A test with a second value for the same vehicle leads to no outcome by one alone."""
    (one,) = datas(page_of(demonstration(), "tests/winding-resistance").html)
    assert one["several"] is False
    two = datas(page_of(demonstration(), "tests/heat-and-wiggle-hall").html)
    assert len(two) == 2 and all(data["several"] for data in two)


def test_a_page_that_stops_has_no_check() -> None:
    """Where the job runs into reserved work no reading is instructed, and none is checked."""
    kb = demonstration()
    page = page_of(kb, "tests/winding-resistance")
    assert datas(page.html)
    replacement = page_of(kb, "replacements/replace-crank-sensor-hall")
    assert not datas(replacement.html)


def shared() -> dict[str, Any]:
    """Give what all pages share."""
    text = check_data.script()
    assert text.startswith("window.fettleReadings={") and text.endswith("};\n")
    found: dict[str, Any] = json.loads(text.removeprefix("window.fettleReadings=")[:-2])
    return found


def test_factors_come_from_the_units_and_not_from_the_script() -> None:
    """1 psi is 6894.757 Pa and 1 in is 0.0254 m (NIST SP 811, B.8): in the data, in no script."""
    found = shared()["quantities"]
    assert set(found) == set(QUANTITIES)
    assert found["pressure"]["suffixes"]["psi"][0] == pytest.approx(6894.757, rel=1e-6)
    assert found["length"]["suffixes"]["in"] == [0.0254, 0.0]
    factor, offset = found["temperature"]["suffixes"]["°f"]
    assert 212 * factor + offset == pytest.approx(100)


def test_every_word_the_scripts_ask_for_is_in_the_data() -> None:
    """No script says a key that the build does not send, and none is sent that nobody says."""
    words = set(shared()["words"])
    scripts = "".join(
        path.read_text(encoding="utf-8")
        for path in (ROOT / "site_overrides" / "assets").glob("check*.js")
    )
    asked = set(re.findall(r'"(check\.[a-z_]+|verdict\.[a-z_]+|value\.[a-z_]+)"', scripts))
    assert asked <= words | {"value.nulled"}
    sent = {word for word in words if word.startswith("check.") and word.count(".") == 1}
    made = {"check.over_said", "check.sign_said", "check.percent", "check.counts", "check.input",
            "check.leads"}  # fmt: skip
    assert sent <= asked | made
