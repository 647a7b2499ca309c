"""The page's own judge of readings, held to the generator's over thousands of random cases."""

from __future__ import annotations

import json
import math
from functools import cache
from random import Random
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from generator.cli.judge import as_text
from generator.pages import check_data
from generator.quantities import figure, show_range, unit_named
from tests.browser.reading_cases import Case, Cases, demonstrated, every_model
from tests.demonstration import ROOT

ASSETS = ROOT / "site_overrides" / "assets"
FORMS: list[dict[str, Any]] = json.loads(
    (ROOT / "tests/quantities/reading-forms.json").read_text(encoding="utf-8")
)
# What the sums of doubles may lose in another order.
DUST = 1e-9
# Readings of each value; with every model and every value of the demonstration over 5,000 cases.
EACH = 90

JUDGE = """([data, cases]) => cases.map(([n, reading, said, meter]) => {
  const found = fettleCheck.judge(data[n], reading, said, meter, fettleReadings);
  const told = fettleLines.lines(
    data[n], found, fettleReadings.risk, data[n].units[0],
    (name) => fettleReadings.conditions[name].units[0], fettleReadings);
  return { ...found, told: [...told.texts, ...told.remarks] };
})"""


@pytest.fixture(scope="module")
def bare(browser: Browser) -> Page:
    """Give an empty page with the kernel alone: it needs nothing of a manual's page."""
    page = browser.new_page()
    page.add_script_tag(content=check_data.script())
    for name in ("check-kernel", "check-typed", "check-lines"):
        page.add_script_tag(path=ASSETS / f"{name}.js")
    return page


@cache
def cases(which: str) -> Cases:
    """Give the random cases, made once."""
    if which == "every model":
        return every_model(EACH, Random(5))
    return demonstrated(EACH, Random(6))


@cache
def _answers(page: Page, which: str) -> list[dict[str, Any]]:
    found = cases(which)
    given = [[case.data, case.reading, case.said, case.meter] for case in found.cases]
    answers: list[dict[str, Any]] = page.evaluate(JUDGE, [found.data, given])
    return answers


BOTH = pytest.mark.parametrize("which", ["every model", "demonstration"])


@BOTH
def test_the_page_gives_the_generators_verdict(bare: Page, which: str) -> None:
    """The same word and the same remarks, or the page says that its own rounding decides."""
    found, answers = cases(which), _answers(bare, which)
    assert len(answers) > 1500
    words = {case.verdict.word for case in found.cases}
    assert words == {"in_limits", "low", "high", "open", "implausible", "cannot_tell"}
    for case, answer in zip(found.cases, answers, strict=True):
        if answer["close"]:
            continue
        assert answer["word"] == case.verdict.word, _described(case, answer)
        codes = [code for code, *_ in answer["remarks"]]
        assert codes == [remark.code for remark in case.verdict.remarks], _described(case, answer)


@BOTH
def test_the_pages_limits_lie_within_the_error_it_states(bare: Page, which: str) -> None:
    """Outer and sure limits over whatever is left open, against the model's own."""
    found, answers = cases(which), _answers(bare, which)
    for case, answer in zip(found.cases, answers, strict=True):
        whole, data = case.verdict.expectation, found.data[case.data]
        exact = {
            "low": whole.low, "high": whole.high,
            "sureLow": case.verdict.sure_low, "sureHigh": case.verdict.sure_high,
        }  # fmt: skip
        for side, wanted in exact.items():
            got = answer[side]
            assert (wanted is None) == math.isinf(got), _described(case, answer)
            if wanted is not None:
                allowed = data["error"] * (abs(wanted) if data["bent"] else 1)
                assert abs(got - wanted) <= allowed + DUST, _described(case, answer)


@BOTH
def test_the_pages_probability_is_the_generators(bare: Page, which: str) -> None:
    """A normal density is 0.4 at most: the lines' error moves a probability by so much, twice."""
    found, answers = cases(which), _answers(bare, which)
    judged = 0
    for case, answer in zip(found.cases, answers, strict=True):
        taken, data = case.verdict.measured, found.data[case.data]
        if answer["close"] or taken is None or taken.u == 0:
            continue
        judged += 1
        assert answer["measured"]["value"] == pytest.approx(taken.value, rel=1e-12, abs=1e-12)
        assert answer["measured"]["u"] == pytest.approx(taken.u, rel=1e-12)
        assert answer["measured"]["leads"] == pytest.approx(taken.leads_share, rel=1e-9)
        limits = (case.verdict.expectation.low, case.verdict.expectation.high)
        most = max(abs(x) for x in limits if x is not None) if data["bent"] else 1
        moved = 2 * 0.4 * data["error"] * most / taken.u
        assert abs(answer["probability"] - case.verdict.probability) <= moved + DUST
    assert judged > 500


def test_the_page_seldom_leaves_it_to_its_own_rounding(bare: Page) -> None:
    """Readings as near the limits as these are: on the demonstration's values one in a hundred."""
    close = [answer["close"] for answer in _answers(bare, "demonstration")]
    assert sum(close) <= len(close) / 100


def test_the_page_says_it_in_the_words_of_the_command(bare: Page) -> None:
    """Line by line as `judge` prints it; a figure may differ where the lines' error rounds it."""
    found, answers = cases("demonstration"), _answers(bare, "demonstration")
    other = 0
    for case, answer in zip(found.cases, answers, strict=True):
        if answer["close"]:
            continue
        printed = [line.strip() for line in as_text(case.verdict).splitlines()[1:]]
        assert len(answer["told"]) == len(printed), _described(case, answer)
        other += answer["told"] != printed
    assert other <= len(answers) / 100


def test_the_tails_of_the_normal_distribution_are_right(bare: Page) -> None:
    """Against the C library's erfc, from −30 to 30 standard deviations, to 13 digits."""
    at = [n / 16 for n in range(-480, 481)]
    found = bare.evaluate("all => all.map(fettleCheck.below)", at)
    for z, probability in zip(at, found, strict=True):
        assert probability == pytest.approx(0.5 * math.erfc(-z / math.sqrt(2)), rel=1e-13)


def test_a_reading_is_read_as_the_generator_reads_it(bare: Page) -> None:
    """Every form of the one table: the same figure, or refused for the same fault."""
    asked = [(form["text"], _quantity(form["shown"]), form["shown"]) for form in FORMS]
    found = bare.evaluate(
        "all => all.map(([text, quantity, unit]) =>"
        " fettleTyped.read(text, quantity, unit, fettleReadings))",
        asked,
    )
    for form, answer in zip(FORMS, found, strict=True):
        if "refused" in form:
            assert answer.get("kind") == form["refused"], form
        elif form.get("over_range"):
            assert answer == {"over": True}, form
        else:
            assert answer["value"] == pytest.approx(form["value"], rel=1e-12), form


def _quantity(symbol: str) -> str:
    unit = unit_named(symbol)
    assert unit is not None
    return unit.quantity


def _described(case: Case, answer: dict[str, Any]) -> str:
    return f"{case.spec.id} {case.reading} at {case.said} by {case.meter}: {answer}"


def test_figures_are_rounded_as_the_generator_rounds_them(bare: Page) -> None:
    """Limits inwards, ties to even, a real minus sign, no dust: as the page prints them."""
    random = Random(3)
    values = [random.uniform(-1, 1) * 10.0 ** random.randint(-9, 9) for _ in range(800)]
    values += [0.5, 1.5, 2.5, -0.5, 0.1 + 0.2, 1e21, 1.5e-7, 0.0]
    asked = [(value, random.randint(0, 4)) for value in values]
    shown = bare.evaluate("all => all.map(([x, places]) => fettleTyped.figure(x, places))", asked)
    assert shown == [figure(value, places) for value, places in asked]
    bands = [(low, low + abs(low) * random.random(), random.randint(0, 4)) for low in values[:800]]
    got = bare.evaluate(
        "all => all.map(([low, high, places]) => fettleTyped.showRange(low, high, places))", bands
    )
    assert got == [list(show_range(low, high, places)) for low, high, places in bands]


def test_the_kernel_holds_no_model() -> None:
    """No formula of a sensor or a coil is in the scripts: all they know is in the data."""
    text = "".join(path.read_text(encoding="utf-8") for path in ASSETS.glob("check-*.js"))
    for word in ("copper", "thermistor", "pull_up", "0.00393", "273.15", "3.28", "6.89", "25.4"):
        assert word not in text
