"""All rules together: the demonstration is clean, and one fault is one finding."""

from __future__ import annotations

import datetime
from dataclasses import replace
from pathlib import Path

from generator import checks
from generator.checks.fault_page import PAGES
from tests.checks.manuals import edited, patched
from tests.demo import demonstration, without

HERE = Path(__file__).parent
RELEASE = datetime.date(2026, 10, 5)


def test_the_demonstration_manual_is_clean() -> None:
    """Every rule, warnings included, on the day of the edition."""
    assert checks.problems(demonstration(), RELEASE) == []


def test_every_rule_has_a_file_of_tests() -> None:
    """The tests mirror the rules; the three rules on exceptions share a file."""
    shared = {"unknown-exception", "exception-not-allowed", "unused-exception"}
    lacking = [
        name for name in PAGES
        if name not in shared and not (HERE / f"test_{name.replace('-', '_')}.py").exists()
    ]  # fmt: skip
    assert lacking == []


def test_a_broken_link_silences_the_rules_that_lean_on_links() -> None:
    """A value that is gone is found at its links, and not as a torque that is missing."""
    kb = without(demonstration(), "specs", "hall-bolt-torque")
    assert {f.code for f in checks.problems(kb)} == {"dangling-link"}


def test_a_broken_link_does_not_silence_the_others() -> None:
    """A long step, a figure in prose and a slip of the pen are three findings in one run."""
    manual = edited("tests/battery-rest", "after: [look-and-wiggle]", "after: [look]")
    words = "Read it at 20 °C " + "and again " * 10
    manual = edited("tests/battery-rest", "Shut the doors and wait", words, manual)
    found = {f.code for f in checks.problems(manual.kb)}
    assert found == {"dangling-link", "long-step", "number-in-prose"}


def test_a_record_that_could_not_be_read_is_missed_by_nobody() -> None:
    """Its own finding comes from reading; no rule adds another for its absence."""
    kb = replace(
        without(demonstration(), "specs", "hall-bolt-torque"),
        broken=frozenset({"specs/hall-bolt-torque"}),
    )
    assert checks.problems(kb) == []


def test_one_slip_in_a_value_is_one_finding() -> None:
    """Five megohms lie outside the band and across the outcomes too; the slip is told once."""
    manual = edited("specs/inductive-winding", "860 ohm ± 10 %", "5 Mohm ± 10 %")
    assert [f.code for f in checks.problems(manual.kb)] == ["implausible-value"]


def test_a_circle_is_told_once() -> None:
    """Two tests that send the reader back and forth have one finding each, not two."""
    to = """outcomes:
  - finding: as_expected
    label: As it should be
    verdict: neither
    means: Go on.
    next:
      - test: {test}
  - finding: cannot_tell
    label: Nobody can say
    verdict: neither
    means: Do it again.
    next:
      - repeat: true
"""
    pair = ("recent-work", "look-and-wiggle")
    manual = None
    for here, there in (pair, pair[::-1]):
        manual = patched(f"tests/{here}", to.format(test=there), manual)
    assert manual is not None
    found = [f.code for f in checks.problems(manual.kb) if f.record.startswith("tests/")]
    assert found.count("circle-without-exit") == 2
    assert "loop-without-progress" not in found
